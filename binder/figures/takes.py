"""One more take: how many more builds what is left of the base and of everything bought would make.

Nothing already promised suffers: what the builds on the list need is set aside first.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.base import added_foods, base_balance, not_solved
from binder.figures.base_network import UnsolvedError, network_of
from binder.figures.demand import Batches, build_batches, builds_of, missing_needs, recipe_needs
from binder.figures.least_base import furthest, least_base, least_grams
from binder.figures.memory import PLANS, remembered, remembered_from
from binder.figures.missing import Missing
from binder.figures.price import buyable_packs
from binder.figures.shopping import cheapest_packs, needed_to_buy, shopping_list
from binder.kitchen.shoot import Build
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Dish

_SLACK = 1e-9
_WHOLE = 1e-6
"""What a solver may leave of a whole count."""

_ENOUGH = 1000
"""No one asks for more takes than this."""


@dataclass(frozen=True)
class Takes:
    """How many more builds are `possible` (None: not known), and by which food (its id) the next is `limited_by`.

    `next_costs` is minor units at the till for the first build that what is left does not give; None where it is not
    known. `missing` says why something is not.
    """

    dish: str
    first: str | None
    last: str | None
    possible: int | None
    limited_by: str | None
    next_costs: int | None
    missing: tuple[Missing, ...]


@remembered
def takes(binder: Binder, dish_id: str, first: str | None = None, last: str | None = None) -> Takes:
    """More builds of a dish from the step `first` (None: from the beginning) to the step `last` (None: to the end)."""
    dish = binder.dishes[dish_id]
    one_more, lacking = _one_more(binder, dish, first, last)
    if lacking:
        return Takes(dish_id, first, last, None, None, None, lacking)
    try:
        food, possible = _limit(binder, dish, one_more)
        return Takes(dish_id, first, last, possible, food, _till(binder, dish, one_more, possible + 1), ())
    except UnsolvedError:
        says = not_solved(binder, binder.shoots[dish.shoot].base or "")
        return Takes(dish_id, first, last, None, None, None, (says,))


def _one_more(
    binder: Binder, dish: Dish, first: str | None, last: str | None
) -> tuple[dict[str, float], tuple[Missing, ...]]:
    """Grams as purchased of each food in one more build, and what is missing of them or of the base."""
    build = Build(id="one more", dish=dish.id)
    count = build_batches(binder, dish, build)
    if isinstance(count, Missing):
        return {}, (count,)
    start = 0 if first is None else binder.steps[first].position
    batches = Batches(build, count, math.inf if last is None else binder.steps[last].position)
    needs = recipe_needs(binder, dish.recipe, batches, first=start)
    balance = base_balance(binder, dish.shoot)
    lacking = (*missing_needs(binder, dish.recipe, batches, first=start), *(balance.missing if balance else ()))
    return {food: grams for food, grams in needs.items() if grams > 0}, tuple(dict.fromkeys(lacking))


def _limit(binder: Binder, dish: Dish, one_more: Mapping[str, float]) -> tuple[str | None, int]:
    """The food that stops the next build and how many there can be before; None where nothing does.

    Of several that give out at once it is the base's form, for the others can be fetched.
    """
    limits = {
        food: _other_limit(binder, dish.shoot, food, grams)
        for food, grams in one_more.items()
        if _is_bought(binder, dish, food)
    }
    base = _base_limit(binder, dish, one_more)
    if base is not None:
        limits[base[0]] = min(base[1], limits.get(base[0], _ENOUGH))
    food = min(limits, key=lambda key: (limits[key], base is None or key != base[0]), default=None)
    possible = limits[food] if food is not None else _ENOUGH
    return _added_limit(binder, dish, one_more, possible) or (food, possible)


def _is_bought(binder: Binder, dish: Dish, food: str) -> bool:
    """Whether a food comes from the shop and costs something: neither free nor the base or a form of it."""
    balance = base_balance(binder, dish.shoot)
    forms = {form.form for form in balance.forms} if balance else set()
    return food not in forms and not binder.foods[food].free


@remembered_from(PLANS)
def bought_grams(binder: Binder, shoot_id: str) -> Mapping[str, float]:
    """Grams of each food that there will be once everything on the shopping list is bought."""
    return {item.food: item.needed + (item.left_over or 0.0) for item in shopping_list(binder, shoot_id).items}


def _other_limit(binder: Binder, shoot_id: str, food: str, grams: float) -> int:
    return math.floor(min(_ENOUGH, _left(binder, shoot_id, food) / grams + _SLACK))


def _left(binder: Binder, shoot_id: str, food: str) -> float:
    """Grams of a food that will be bought and that nothing on the list needs."""
    left = bought_grams(binder, shoot_id).get(food, 0.0) - needed_to_buy(binder, shoot_id).get(food, 0.0)
    return max(0.0, left)


def _added_limit(binder: Binder, dish: Dish, one_more: Mapping[str, float], most: int) -> tuple[str, int] | None:
    """The food that conversions add and that stops a build before the `most` that all else allows, and how many."""

    def short(count: int) -> str | None:
        for food, grams in _more_added(binder, dish, one_more, count).items():
            left = _left(binder, dish.shoot, food)
            if grams + one_more.get(food, 0.0) * count > left * (1 + _SLACK) + _SLACK:
                return food
        return None

    if most == 0 or short(most) is None:
        return None
    fitting, too_many = 0, most
    while too_many - fitting > 1:
        middle = (fitting + too_many) // 2
        fitting, too_many = (middle, too_many) if short(middle) is None else (fitting, middle)
    return short(too_many) or "", fitting


def _more_added(binder: Binder, dish: Dish, one_more: Mapping[str, float], count: int) -> dict[str, float]:
    """Grams of bought foods that conversions add for `count` more builds, beyond what they add for those planned."""
    balance = base_balance(binder, dish.shoot)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or network is None or isinstance(network, Missing):
        return {}
    wanted = {form.form: form.used + one_more.get(form.form, 0.0) * count for form in balance.forms}
    added = added_foods(binder, network, least_base(network, wanted))
    paid = (food for food in added if not binder.foods[food].free)
    return {food: max(0.0, added[food] - balance.added.get(food, 0.0)) for food in paid}


def _base_limit(binder: Binder, dish: Dish, one_more: Mapping[str, float]) -> tuple[str, int] | None:
    """The form that stops the next build and how many there can be before; None where the dish takes no base."""
    balance = base_balance(binder, dish.shoot)
    if balance is None or balance.there_is is None or not any(form.form in one_more for form in balance.forms):
        return None
    network = network_of(binder, balance.base)
    if isinstance(network, Missing):
        return None
    wanted = {form.form: form.used for form in balance.forms}

    more = {form: one_more[form] for form in wanted if form in one_more}
    room = balance.there_is * (1 + _SLACK)
    count = math.floor(furthest(network, wanted, more, base=room, most=float(_ENOUGH)) + _WHOLE)
    asks = {
        form: least_grams(network, {**wanted, form: wanted[form] + grams * (count + 1)}, batches=False)
        for form, grams in more.items()
    }
    return max(asks, key=lambda form: asks[form]), count


def _till(binder: Binder, dish: Dish, one_more: Mapping[str, float], count: int) -> int | None:
    """Minor units of what `count` more builds need from the till beyond the list; None where a price is missing."""
    needs, bought = needed_to_buy(binder, dish.shoot), bought_grams(binder, dish.shoot)
    more = {food: grams * count for food, grams in one_more.items() if _is_bought(binder, dish, food)}
    for food, grams in _more_added(binder, dish, one_more, count).items():
        more[food] = more.get(food, 0.0) + grams
    more |= _more_base(binder, dish, one_more, count)
    total = 0
    for food, grams in more.items():
        short = needs.get(food, 0.0) + grams - bought.get(food, 0.0)
        packs = buyable_packs(binder, food)
        if short > _SLACK * max(1.0, grams):
            if not packs:
                return None
            total += sum(pack.price for pack in cheapest_packs(packs, short))
    return total


def _more_base(binder: Binder, dish: Dish, one_more: Mapping[str, float], count: int) -> dict[str, float]:
    """Grams of base that `count` more builds take beyond what there is."""
    balance = base_balance(binder, dish.shoot)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or balance.there_is is None or network is None or isinstance(network, Missing):
        return {}
    wanted = {form.form: form.used + one_more.get(form.form, 0.0) * count for form in balance.forms}
    return {balance.base: max(0.0, least_grams(network, wanted) - balance.there_is)}


def why_no_more(binder: Binder, dish_id: str, last: str | None = None) -> str:
    """Why one more build of a dish up to a step cannot be planned, in a sentence; empty where it can.

    Only the base can stand in the way: there is so much of it, while all else is bought for the builds on the list.
    """
    dish = binder.dishes[dish_id]
    one_more, lacking = _one_more(binder, dish, None, last)
    try:
        base = None if lacking else _base_limit(binder, dish, one_more)
    except UnsolvedError:
        return ""
    if base is None or base[1] >= 1:
        return ""
    says = _("There is not enough {food} left for one more of dish {number}. Have more of it, or leave out a build.")
    return says.format(food=binder.foods[base[0]].name, number=dish.position + 1)


def stages(binder: Binder, dish_id: str) -> tuple[Takes, ...]:
    """For each step of a dish, how many more builds could be made up to it."""
    steps = binder.steps.where("recipe", binder.dishes[dish_id].recipe)
    return tuple(takes(binder, dish_id, None, step.id) for step in steps)


def promised(binder: Binder, dish_id: str) -> int:
    """How many builds of a dish are already on the list."""
    return len(builds_of(binder, dish_id))
