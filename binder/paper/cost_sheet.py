"""The costs sheet: the dishes against their caps, then each dish line by line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.cap_basis import basis_sentence
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import shoot_costs
from binder.figures.portion_text import number_style
from binder.kitchen.money import honest_digits
from binder.kitchen.wording import _
from binder.paper.block import text
from binder.paper.card_words import count_text
from binder.paper.cell import Bar, Cell, Column, cell
from binder.paper.dish_costs import dish_sections
from binder.paper.list_pages import Section, Sheet
from binder.paper.list_type import ON_THE_DESK
from binder.paper.mark import cap_state
from binder.paper.run import Run, unbroken
from binder.paper.sheet_words import money, shoot_words
from binder.paper.table import Table, table

if TYPE_CHECKING:
    from binder.figures.cost import DishCost
    from binder.kitchen.binder import Binder
    from binder.paper.job import Job
    from binder.paper.list_type import ListType
    from binder.paper.ruling import Row


def cost_sheet(job: Job) -> Sheet:
    """The costs sheet of a shoot."""
    binder, shoot_id, style = job.binder, job.shoot, job.list_type(ON_THE_DESK)
    costs = shoot_costs(binder, shoot_id)
    under = (
        text(shoot_words(binder, shoot_id), style.plain),
        text(basis_sentence(binder.shoots[shoot_id].cap_basis), style.label),
    )
    if not costs:
        none = Section(before=(text(_("The shoot has no dishes yet: add the first."), style.plain),))
        return Sheet(_("Costs"), under, [none], style)
    sections = [Section(table=_dishes(binder, costs, style))]
    for cost in costs:
        sections += dish_sections(binder, cost, style)
    return Sheet(_("Costs"), under, sections, style)


def _dishes(binder: Binder, costs: tuple[DishCost, ...], style: ListType) -> Table:
    mark = number_style(binder).decimal_mark
    columns = (
        Column(_("no."), figure=True, head=True),
        Column(_("dish"), share=2.0, head=True),
        Column(_("portions"), figure=True),
        Column(_("cost"), figure=True, decimal_mark=mark),
        Column(_("cap"), figure=True, decimal_mark=mark),
        Column(_("headroom"), figure=True, decimal_mark=mark),
        Column("", bar=True),
        Column(_("state"), head=True),
    )
    most = max((figure for cost in costs for figure in (cost.per_portion, cost.cap) if figure), default=1.0)
    return table(
        columns, [_dish_row(binder, cost, most, style) for cost in costs], style, _("Dishes against their caps")
    )


def _dish_row(binder: Binder, cost: DishCost, most: float, style: ListType) -> Row:
    """A dish; its bar is drawn to the scale of the dearest, with a notch where the cap is."""
    shown, cap = cost_words(binder, cost)
    shape, word = cap_state(cost.verdict)
    notch = None if cost.cap is None else cost.cap / most
    bar = None if cost.per_portion is None else Bar(cost.per_portion / most, notch)
    return (
        cell(str(cost.number), style.strong),
        cell(cost.name, style.lead),
        cell(count_text(binder, cost.portions), style.plain),
        cell(shown, style.strong),
        cell(cap, style.plain),
        cell(headroom_text(binder, cost), style.plain),
        Cell(size=style.plain.size, bar=bar) if bar else cell("", style.plain),
        Cell((Run(word, style.strong),), shape, style.strong.size),
    )


def cost_words(binder: Binder, cost: DishCost) -> tuple[str, str]:
    """Cost and cap of a dish, each on one line; a cost that is not known in words, not as a dash."""
    shown, cap = (unbroken(one.replace("-", "−")) for one in cost_beside_cap(binder, cost))
    return (_("not known") if cost.per_portion is None else shown), cap


def headroom_text(binder: Binder, cost: DishCost) -> str:
    """Cap less cost with as many digits as the cost is shown with; a dash where it is not known."""
    if cost.headroom is None or cost.per_portion is None or cost.cap is None:
        return "–"
    return money(binder, cost.headroom, digits=honest_digits(cost.per_portion, cost.cap, binder.settings.currency))
