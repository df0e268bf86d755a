"""The table of sheets: how each is laid out, on which paper, and whether a shoot has anything to say on it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.paper.allergen_sheet import allergen_sheet
from binder.paper.base_sheet import base_sheet
from binder.paper.budget_sheet import budget_sheet
from binder.paper.call_sheet import call_sheet
from binder.paper.check_sheet import check_sheet
from binder.paper.claim_sheet import claim_sheet, has_claims, unknown_claims
from binder.paper.cost_sheet import cost_sheet
from binder.paper.equipment_sheet import equipment_sheet
from binder.paper.flow_sheet import flow_sheet, has_base
from binder.paper.label_pages import label_pages
from binder.paper.list_pages import SheetLayout
from binder.paper.mise_sheet import mise_sheet
from binder.paper.mise_times_sheet import mise_times_sheet
from binder.paper.paper_size import card_paper, list_paper
from binder.paper.people_sheet import has_people, people_sheet
from binder.paper.prep_sheet import prep_sheet
from binder.paper.recipe_sheet import recipe_sheet
from binder.paper.running_order_sheet import running_order_sheet
from binder.paper.sheet_kind import SheetKind
from binder.paper.shopping_sheet import shopping_sheet
from binder.paper.station_cards import at_station_pages, card_pages
from binder.paper.unknown_figures import no_unknown_figures, unknown_budget, unknown_costs, unknown_spend
from binder.paper.wrap_sheet import has_purchases, wrap_sheet

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from binder.kitchen.binder import Binder
    from binder.paper.job import Job
    from binder.paper.list_pages import Sheet
    from binder.paper.page import Page
    from binder.paper.paper_size import PaperSize


class On(StrEnum):
    """What a sheet is usually printed on."""

    CARD = "card"
    LIST = "list"
    LYING = "list, its long side level"
    LABELS = "labels"


def _always(_binder: Binder, _shoot_id: str) -> bool:
    return True


@dataclass(frozen=True)
class SheetEntry:
    """A line of the table. `unknown` gives the phrases that must stand on the sheet, where figures are not known."""

    pages: Callable[[Job], list[Page]]
    on: On = On.LIST
    has_any: Callable[[Binder, str], bool] = _always
    unknown: Callable[[Binder, str], Iterable[str]] = no_unknown_figures

    def usual_paper(self, binder: Binder) -> PaperSize:
        """The paper where none is asked for: A5 and A4, or half Letter and Letter, by the binder's measures."""
        measures = binder.settings.measures
        return card_paper(measures) if self.on is On.CARD else list_paper(measures)


def _laid_out(sheet: Callable[[Job], Sheet]) -> Callable[[Job], list[Page]]:
    def pages(job: Job) -> list[Page]:
        return SheetLayout(sheet(job), job.paper).pages()

    return pages


SHEETS: dict[SheetKind, SheetEntry] = {
    SheetKind.CARDS: SheetEntry(card_pages, On.CARD),
    SheetKind.STATIONS: SheetEntry(at_station_pages, On.CARD),
    SheetKind.LABELS: SheetEntry(label_pages, On.LABELS),
    SheetKind.SHOPPING: SheetEntry(_laid_out(shopping_sheet), unknown=unknown_spend),
    SheetKind.MISE: SheetEntry(_laid_out(mise_sheet)),
    SheetKind.MISE_TIMES: SheetEntry(_laid_out(mise_times_sheet)),
    SheetKind.RUNNING_ORDER: SheetEntry(_laid_out(running_order_sheet)),
    SheetKind.PEOPLE: SheetEntry(_laid_out(people_sheet), has_any=has_people),
    SheetKind.CALL: SheetEntry(_laid_out(call_sheet)),
    SheetKind.PREP: SheetEntry(_laid_out(prep_sheet)),
    SheetKind.EQUIPMENT: SheetEntry(_laid_out(equipment_sheet)),
    SheetKind.BASE: SheetEntry(_laid_out(base_sheet)),
    SheetKind.FLOW: SheetEntry(_laid_out(flow_sheet), On.LYING, has_any=has_base),
    SheetKind.COSTS: SheetEntry(_laid_out(cost_sheet), unknown=unknown_costs),
    SheetKind.BUDGET: SheetEntry(_laid_out(budget_sheet), unknown=unknown_budget),
    SheetKind.CLAIMS: SheetEntry(_laid_out(claim_sheet), has_any=has_claims, unknown=unknown_claims),
    SheetKind.ALLERGENS: SheetEntry(_laid_out(allergen_sheet)),
    SheetKind.CHECKS: SheetEntry(_laid_out(check_sheet)),
    SheetKind.RECIPES: SheetEntry(_laid_out(recipe_sheet)),
    SheetKind.WRAP: SheetEntry(_laid_out(wrap_sheet), has_any=has_purchases),
}
"""Every sheet by its kind, in the order of a print set."""
