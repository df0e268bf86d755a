"""The table of sheets: how each is laid out, on which paper, and whether a shoot has anything to say on it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.paper.base_sheet import base_sheet
from binder.paper.check_sheet import check_sheet
from binder.paper.cost_sheet import cost_sheet
from binder.paper.list_pages import SheetLayout
from binder.paper.mise_sheet import mise_sheet
from binder.paper.paper_size import card_paper, list_paper
from binder.paper.sheet_kind import SheetKind
from binder.paper.shopping_sheet import shopping_sheet
from binder.paper.station_cards import card_pages
from binder.paper.unknown_figures import no_unknown_figures, unknown_costs, unknown_spend

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
    SheetKind.SHOPPING: SheetEntry(_laid_out(shopping_sheet), unknown=unknown_spend),
    SheetKind.MISE: SheetEntry(_laid_out(mise_sheet)),
    SheetKind.BASE: SheetEntry(_laid_out(base_sheet)),
    SheetKind.COSTS: SheetEntry(_laid_out(cost_sheet), unknown=unknown_costs),
    SheetKind.CHECKS: SheetEntry(_laid_out(check_sheet)),
}
"""Every sheet by its kind, in the order of a print set."""
