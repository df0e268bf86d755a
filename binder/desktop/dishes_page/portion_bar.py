"""The cost of a portion as one stacked bar against the cap: which line takes how much. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.dishes_page.recipe_list import dish_of_recipe
from binder.desktop.sheet.cell import Mark
from binder.desktop.words.figure_text import headroom_text, mark_of, money, not_known, small_money
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import Verdict, dish_cost, recipe_lines_cost
from binder.figures.missing import Missing
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.cost import LineCost

_ROOM = 1.04
"""The longer of cost and cap leaves a little free at the end."""


@dataclass(frozen=True)
class Segment:
    """One line's part of the bar: its share of the whole width, and what it says."""

    name: str
    width: float
    says: str


@dataclass(frozen=True)
class PortionBar:
    """Segments from the left, the costliest first; the cap's place (0 to 1) or None; and the sentence beneath."""

    segments: tuple[Segment, ...]
    cap: float | None
    says: str
    mark: Mark = Mark.NONE


def portion_bar(sight: Sight, recipe: str) -> PortionBar:
    """The bar of a recipe, against the cap of the dish it is in the shoot looked at."""
    lines = recipe_lines_cost(sight.binder, recipe)
    if isinstance(lines, Missing):
        return PortionBar((), None, not_known((lines,)), Mark.UNKNOWN)
    dish = dish_of_recipe(sight, recipe)
    cost = dish_cost(sight.binder, dish.id) if dish else None
    known = sorted((line for line in lines if line.cost), key=lambda line: -(line.cost or 0.0))
    total = sum(line.cost or 0.0 for line in known)
    cap = cost.cap if cost else None
    whole = max(total, float(cap or 0)) * _ROOM or 1.0
    says, mark = _sentence(sight, lines, total, recipe)
    return PortionBar(
        tuple(_segment(sight, line, whole) for line in known), None if cap is None else cap / whole, says, mark
    )


def _segment(sight: Sight, line: LineCost, whole: float) -> Segment:
    cost = line.cost or 0.0
    share = f", {round(line.share * 100)} %" if line.share is not None else ""
    return Segment(line.name, cost / whole, f"{line.name}: {small_money(sight.binder, cost)}{share}")


def _sentence(sight: Sight, lines: tuple[LineCost, ...], total: float, recipe: str) -> tuple[str, Mark]:
    missing = tuple(dict.fromkeys(lack for line in lines for lack in line.missing))
    if missing:
        known = money(sight.binder, total)
        says = _("Used cost a portion {reason}. What is known comes to {money}.")
        return says.format(reason=not_known(missing), money=known), Mark.UNKNOWN
    dish = dish_of_recipe(sight, recipe)
    if dish is None:
        says = _("Used cost a portion {money}. Not in this shoot, so no cap.")
        return says.format(money=money(sight.binder, total)), Mark.NONE
    cost = dish_cost(sight.binder, dish.id)
    shown, cap = cost_beside_cap(sight.binder, cost)
    if cost.verdict is Verdict.NO_CAP:
        return _("Used cost a portion {money}, no cap.").format(money=shown), Mark.NONE
    state = _("over") if cost.verdict is Verdict.OVER else _("within")
    says = _("Used cost a portion {money}, {state} the cap of {cap}: {headroom}.")
    room = headroom_text(sight.binder, cost)
    return says.format(money=shown, state=state, cap=cap, headroom=room), mark_of(cost.verdict)
