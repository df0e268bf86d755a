"""What the base ingredient cost, laid on the dishes that use it and on what is left of it, to the minor unit."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_network import Network, network_of
from binder.figures.form_cost import cost_carried
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing
from binder.figures.price import chosen_pack

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.figures.base import BaseBalance
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class BaseCost:
    """The base's cost in minor units: in all, by dish, and of what is left in each form, the base itself among them.

    Dishes and what is left add up to the whole.
    """

    total: int
    dishes: Mapping[str, int]
    left: Mapping[str, int]


@remembered_from(PLANS)
def base_cost(binder: Binder, shoot_id: str) -> BaseCost | Missing | None:
    """What the base costs, by dish and by what is left of it: all that there is, or that is used where it is short.

    None where the shoot has no base or how far it goes is not known; Missing where it has no price.
    """
    balance = base_balance(binder, shoot_id)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or balance.there_is is None or network is None or isinstance(network, Missing):
        return None
    priced, content = chosen_pack(binder, balance.base), base_content(binder, network, balance)
    if isinstance(priced, Missing) or isinstance(content, Missing):
        return priced if isinstance(priced, Missing) else content if isinstance(content, Missing) else None
    left = {form.form: form.left * content.get(form.form, 0.0) for form in balance.forms}
    left[balance.base] = max(0.0, balance.left or 0.0)
    dishes = {
        dish: sum(grams * content.get(form, 0.0) for form, grams in needs.items())
        for dish, needs in balance.by_dish.items()
    }
    parts = [*dishes.values(), *left.values()]
    total = math.floor(priced.per_gram * sum(parts) + 0.5)
    split = divided(total, parts)
    return BaseCost(total, dict(zip(dishes, split, strict=False)), dict(zip(left, split[len(dishes) :], strict=True)))


def base_content(binder: Binder, network: Network, balance: BaseBalance) -> Mapping[str, float] | Missing:
    """Grams of base that a gram of each form carries the cost of, as the plan runs; of two ways to a form, the mean."""
    runs = {run.conversion: run.grams for run in balance.runs}
    made = {form.form: form.made for form in balance.forms}
    carried: dict[str, float] = {network.base: 1.0}
    for process in reversed(network.processes):
        shares = cost_carried(binder, binder.conversions[process.key])
        if isinstance(shares, Missing):
            return shares
        grams = runs.get(process.key, 0.0)
        went_in = sum(share * carried.get(part, 0.0) for part, share in process.inputs)
        for form, ratio in process.gives if grams > 0 else ():
            weight = ratio * grams / made[form]
            carried[form] = carried.get(form, 0.0) + weight * shares[form] * went_in
    return carried


def divided(total: int, parts: Sequence[float]) -> list[int]:
    """A whole number divided as `parts` are, exactly: the largest remainders get what rounding down leaves.

    In fractions, as a float is not exact any more from 2**53 minor units on, and a sum has no such end.
    """
    whole = sum(map(Fraction, parts))
    if whole <= 0:
        return [0] * len(parts)
    exact = [total * Fraction(part) / whole for part in parts]
    floors = [math.floor(one) for one in exact]
    by_remainder = sorted(range(len(parts)), key=lambda at: (floors[at] - exact[at], at))
    for at in by_remainder[: total - sum(floors)]:
        floors[at] += 1
    return floors
