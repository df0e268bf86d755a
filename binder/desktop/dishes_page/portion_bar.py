"""The cost of a portion as one stacked bar against the cap: which line, or which food, takes how much. Plain Python."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.dishes_page.recipe_list import dish_of_recipe
from binder.desktop.sheet.cell import Mark
from binder.desktop.words.figure_text import headroom_text, mark_of, not_known, small_money
from binder.figures.cap_basis import basis_text, portion_by_food
from binder.figures.checks import cost_beside_cap
from binder.figures.cost import Verdict, dish_cost, recipe_lines_cost
from binder.figures.missing import Missing
from binder.figures.money_words import money
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.cost import DishCost, LineCost
    from binder.kitchen.shoot import Dish

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
    """The bar of a recipe, against the cap of the dish it is in the shoot looked at and on what that is held on."""
    lines = recipe_lines_cost(sight.binder, recipe)
    if isinstance(lines, Missing):
        return PortionBar((), None, not_known((lines,)), Mark.UNKNOWN)
    dish = dish_of_recipe(sight, recipe)
    cost = dish_cost(sight.binder, dish.id) if dish else None
    parts = sorted(_parts(sight, dish, lines), key=lambda part: -part.minor)
    total = sum(part.minor for part in parts)
    cap = cost.cap if cost else None
    whole = max(total, float(cap or 0)) * _ROOM or 1.0
    says, mark = _sentence(sight, cost, lines, total)
    segments = tuple(_segment(sight, part, total, whole) for part in parts)
    return PortionBar(segments, None if cap is None else cap / whole, says, mark)


@dataclass(frozen=True)
class _Part:
    """What takes a part of the cost, in minor units a portion."""

    name: str
    minor: float


def _parts(sight: Sight, dish: Dish | None, lines: tuple[LineCost, ...]) -> list[_Part]:
    """The lines at used cost; on another basis the foods bought, which no longer follow from the lines alone."""
    if dish is None or sight.binder.shoots[dish.shoot].cap_basis is CapBasis.USED:
        return [_Part(line.name, line.cost) for line in lines if line.cost]
    found = portion_by_food(sight.binder, dish)
    known = found if isinstance(found, Mapping) else {}
    return [_Part(sight.binder.foods[food].name, minor) for food, minor in known.items() if minor]


def _segment(sight: Sight, part: _Part, total: float, whole: float) -> Segment:
    says = _("{name}: {money}, {percent} %")
    percent = round(part.minor / total * 100) if total else 0
    shown = small_money(sight.binder, part.minor)
    return Segment(part.name, part.minor / whole, says.format(name=part.name, money=shown, percent=percent))


def _sentence(sight: Sight, cost: DishCost | None, lines: tuple[LineCost, ...], total: float) -> tuple[str, Mark]:
    basis = basis_text(cost.basis if cost else CapBasis.USED)
    missing = cost.missing if cost else tuple(dict.fromkeys(lack for line in lines for lack in line.missing))
    if missing:
        says = _("A portion ({basis}) is {reason}. What is known comes to {money}.")
        reason, known = not_known(missing), money(sight.binder, total)
        return says.format(basis=basis, reason=reason, money=known), Mark.UNKNOWN
    if cost is None:
        says = _("A portion costs {money} ({basis}). Not in this shoot, so no cap.")
        return says.format(basis=basis, money=money(sight.binder, total)), Mark.NONE
    shown, cap = cost_beside_cap(sight.binder, cost)
    if cost.verdict is Verdict.NO_CAP:
        return _("A portion costs {money} ({basis}), no cap.").format(basis=basis, money=shown), Mark.NONE
    state = _("over") if cost.verdict is Verdict.OVER else _("within")
    says = _("A portion costs {money} ({basis}), {state} the cap of {cap}: {headroom}.")
    room = headroom_text(sight.binder, cost)
    return says.format(basis=basis, money=shown, state=state, cap=cap, headroom=room), mark_of(cost.verdict)
