"""Used cost: the share of each pack that goes into a portion, line by line, against the dish's cap."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.cap_basis import in_whole_packs, without_staples
from binder.figures.form_cost import bought_for, cost_per_gram, is_free
from binder.figures.memory import COSTS, FORMS, remembered_from, remembered_of
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.price import chosen_pack
from binder.figures.recipe_use import Use, recipe_parts, recipe_uses, scaled
from binder.kitchen.edits.recipes import line_name
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.shoot import CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish

_EQUAL = 1e-9
"""Relative slack of a comparison: a cost of exactly the cap is within it, whatever the last bit of a float says."""


class Verdict(StrEnum):
    """How a dish stands to its cap."""

    WITHIN = "within"
    OVER = "over"
    UNKNOWN = "unknown"
    NO_CAP = "no cap"


@dataclass(frozen=True, slots=True)
class LineCost:
    """One line of a dish for one portion: grams, minor units and share of the portion's cost, None where not known.

    `edible` and `purchased` are grams. `not_counted` names foods to taste without an amount; `counted` is false where
    there is nothing else on the line.
    """

    line: str
    step: str
    name: str
    edible: float | None
    purchased: float | None
    cost: float | None
    share: float | None
    counted: bool
    missing: tuple[Missing, ...]
    not_counted: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DishCost:
    """What a portion of a dish costs in minor currency units (None: not known), and how that stands to its cap.

    `per_portion` is on the shoot's `basis`, as the cap is; `used` is the used cost, which the lines add up to.
    """

    dish: str
    number: int
    name: str
    portions: float
    per_portion: float | None
    cap: int | None
    lines: tuple[LineCost, ...]
    missing: tuple[Missing, ...]
    not_counted: tuple[str, ...]
    basis: CapBasis = CapBasis.USED
    used: float | None = None

    @property
    def headroom(self) -> float | None:
        """Cap less cost, minor units a portion; None where either is not known."""
        return None if self.cap is None or self.per_portion is None else self.cap - self.per_portion

    @property
    def verdict(self) -> Verdict:
        """Within or over the cap, compared unrounded; unknown where a cost is missing."""
        if self.per_portion is None:
            return Verdict.UNKNOWN
        if self.cap is None:
            return Verdict.NO_CAP
        return Verdict.WITHIN if self.per_portion <= self.cap * (1 + _EQUAL) else Verdict.OVER


def cap_of(binder: Binder, dish: Dish) -> int | None:
    """The dish's own cap, or else the shoot's, in minor units a portion."""
    return dish.cap if dish.cap is not None else binder.shoots[dish.shoot].cap


@remembered_of(recipe_parts, FORMS)
def recipe_lines_cost(binder: Binder, recipe_id: str) -> tuple[LineCost, ...] | Missing:
    """The lines of a recipe costed for one portion; Missing where it has none, or does not say how many it yields."""
    recipe = binder.recipes[recipe_id]
    if recipe.portions is None:
        says = _("{recipe} does not say how many portions it yields: add it.").format(recipe=recipe.name)
        return Missing(MissingKind.YIELD, says, Place("recipes", recipe_id))
    by_line: dict[str, list[Use]] = {}
    for use in recipe_uses(binder, recipe_id):
        by_line.setdefault(use.line, []).append(use)
    if not by_line:
        says = _("{recipe} has nothing in it yet: add its lines.").format(recipe=recipe.name)
        return Missing(MissingKind.AMOUNT, says, Place("recipes", recipe_id))
    costs = {line: _costs_of(binder, uses, 1 / recipe.portions) for line, uses in by_line.items()}
    known = total_of(cost for of_line in costs.values() for cost in of_line)
    return tuple(
        _line_cost(binder, line, uses, costs[line], known, 1 / recipe.portions) for line, uses in by_line.items()
    )


def _costs_of(binder: Binder, uses: list[Use], part: float) -> list[float | Missing]:
    """Minor units of each counted use of a line, for `part` of a batch."""
    return [scaled(_use_cost(binder, use), part) for use in uses if use.counted]


def _line_cost(
    binder: Binder, line_id: str, uses: list[Use], costs: list[float | Missing], total: float | None, part: float
) -> LineCost:
    counted = [use for use in uses if use.counted] if len(costs) < len(uses) else uses
    cost = total_of(costs) if costs else None
    line = binder.lines[line_id]
    return LineCost(
        line=line_id,
        step=line.step,
        name=line_name(binder, line),
        edible=_part_of(part, (use.edible for use in counted)) if costs else None,
        purchased=_part_of(part, (use.purchased for use in counted)) if costs else None,
        cost=cost,
        share=cost / total if cost is not None and total else None,
        counted=bool(costs),
        missing=tuple(one for one in costs if isinstance(one, Missing)) if cost is None else (),
        not_counted=tuple(binder.foods[use.food].name for use in uses if not use.counted)
        if counted is not uses
        else (),
    )


def _part_of(part: float, values: Iterable[float | Missing]) -> float | None:
    total = total_of(values)
    return None if total is None else total * part


def total_of(values: Iterable[float | Missing]) -> float | None:
    """The sum of figures, None where one is missing."""
    total = 0.0
    for value in values:
        if isinstance(value, Missing):
            return None
        total += value
    return total


def _use_cost(binder: Binder, use: Use) -> float | Missing:
    if is_free(binder, use.food):
        return 0.0
    if isinstance(use.purchased, Missing):
        return use.purchased
    rate = cost_per_gram(binder, use.food)
    return rate if isinstance(rate, Missing) else rate * use.purchased


@remembered_from(COSTS)
def dish_cost(binder: Binder, dish_id: str) -> DishCost:
    """What a portion of a dish costs on the shoot's basis and how it stands to its cap."""
    dish = binder.dishes[dish_id]
    lines = recipe_lines_cost(binder, dish.recipe)
    costed = () if isinstance(lines, Missing) else lines
    missing = (lines,) if isinstance(lines, Missing) else _missing_of(lines)
    used = None if missing else sum(line.cost or 0.0 for line in costed)
    basis = binder.shoots[dish.shoot].cap_basis
    held = used if basis is CapBasis.USED else _on_basis(binder, dish, basis)
    lacking = missing if basis is CapBasis.USED else held if isinstance(held, tuple) else ()
    return DishCost(
        dish=dish_id,
        number=dish.position + 1,
        name=dish_name(binder, dish),
        portions=dish.portions,
        per_portion=None if isinstance(held, tuple) else held,
        cap=cap_of(binder, dish),
        lines=costed,
        missing=lacking,
        not_counted=tuple(dict.fromkeys(name for line in costed for name in line.not_counted)),
        basis=basis,
        used=used,
    )


def _missing_of(lines: Iterable[LineCost]) -> tuple[Missing, ...]:
    return tuple(dict.fromkeys(lack for line in lines for lack in line.missing))


def _on_basis(binder: Binder, dish: Dish, basis: CapBasis) -> float | tuple[Missing, ...]:
    portions = binder.recipes[dish.recipe].portions
    lines = recipe_lines_cost(binder, dish.recipe)
    if portions is None or isinstance(lines, Missing):
        return (lines,) if isinstance(lines, Missing) else ()
    if basis is CapBasis.STAPLES_FREE:
        return without_staples(binder, dish.recipe, portions)
    return in_whole_packs(binder, dish, portions)


@remembered_from(COSTS)
def shoot_costs(binder: Binder, shoot_id: str) -> tuple[DishCost, ...]:
    """The costs of all dishes of a shoot in running order."""
    return tuple(dish_cost(binder, dish.id) for dish in binder.dishes.where("shoot", shoot_id))


@dataclass(frozen=True, slots=True)
class BreakEven:
    """What a food costs now and what it would have to cost for the dish just to meet its cap, in minor units a pack.

    `price_at_cap` is None where no price would do. `cost_in_portion` is minor units; `on` is the day of `price_now`.
    """

    food: str
    name: str
    pack_label: str
    price_now: int
    on: date
    price_at_cap: float | None
    cost_in_portion: float


@remembered_from(COSTS)
def break_even_prices(binder: Binder, dish_id: str) -> tuple[BreakEven, ...]:
    """For each bought food of a dish the price at which the dish would just meet its cap, the costliest food first.

    None are given for whole packs over portions, where a dearer pack may be left for another.
    """
    costs = dish_cost(binder, dish_id)
    if costs.per_portion is None or costs.cap is None or costs.basis is CapBasis.WHOLE_PACKS:
        return ()
    by_food = cost_by_bought_food(binder, dish_id)
    found = []
    for food, cost in by_food.items():
        priced = chosen_pack(binder, food)
        free = costs.basis is CapBasis.STAPLES_FREE and binder.foods[food].staple
        if isinstance(priced, Missing) or cost <= 0 or free:
            continue
        room = costs.cap - (costs.per_portion - cost)
        at_cap = priced.price * room / cost if room >= 0 else None
        found.append(
            BreakEven(
                food=food,
                name=binder.foods[food].name,
                pack_label=priced.pack.label,
                price_now=priced.price,
                on=priced.quote.on,
                price_at_cap=at_cap,
                cost_in_portion=cost,
            )
        )
    return tuple(sorted(found, key=lambda one: (-one.cost_in_portion, one.food)))


@remembered_from(COSTS)
def cost_by_bought_food(binder: Binder, dish_id: str) -> Mapping[str, float]:
    """Minor units a portion for each food that is bought for a dish, known costs only."""
    dish = binder.dishes[dish_id]
    portions = binder.recipes[dish.recipe].portions
    gathered: dict[str, float] = {}
    for use in recipe_uses(binder, dish.recipe) if portions else ():
        parts = bought_for(binder, use.food)
        if isinstance(use.purchased, Missing) or isinstance(parts, Missing):
            continue
        for bought, grams in parts.items():
            priced = chosen_pack(binder, bought)
            if not binder.foods[bought].free and not isinstance(priced, Missing):
                gathered[bought] = gathered.get(bought, 0.0) + use.purchased * grams * priced.per_gram / (portions or 1)
    return gathered
