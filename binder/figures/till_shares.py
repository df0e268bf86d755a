"""Who bears what is paid at the till for a food: dishes by what they use of it, tasting, and what is left over."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_cost import base_content, divided
from binder.figures.base_network import network_of
from binder.figures.demand import build_needs, builds_of
from binder.figures.form_cost import bought_for
from binder.figures.memory import PLANS, remembered_from
from binder.figures.missing import Missing
from binder.figures.shopping import at_home, needed_to_buy
from binder.kitchen.shoot import BuildKind

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder


class BearerKind(StrEnum):
    """What a part of a price is for."""

    DISH = "dish"
    TASTING = "tasting"
    LEFT_OVER = "left over in packs"
    BASE_REST = "rest of the base"


@dataclass(frozen=True)
class Bearer:
    """A dish, the crew's tasting, what is left in opened packs, or what is left of the base and its forms."""

    kind: BearerKind
    dish: str = ""


TASTING = Bearer(BearerKind.TASTING)
LEFT_OVER = Bearer(BearerKind.LEFT_OVER)
BASE_REST = Bearer(BearerKind.BASE_REST)


@remembered_from(PLANS)
def bearers(binder: Binder, shoot_id: str) -> tuple[Bearer, ...]:
    """All that may bear a part of what is paid, in running order."""
    dishes = (Bearer(BearerKind.DISH, dish.id) for dish in binder.dishes.where("shoot", shoot_id))
    return (*dishes, TASTING, LEFT_OVER, BASE_REST)


def borne(binder: Binder, shoot_id: str, food: str, paid: int, grams: float) -> Mapping[Bearer, int]:
    """What is paid for `grams` of a food, minor units, divided to the last one over those who use it.

    What is at home is used first, and what is then still needed comes from what is paid for; the rest is left over.
    Where it is not known how much was bought (0), those who use it bear it all.
    """
    uses = food_uses(binder, shoot_id).get(food, {})
    used = sum(uses.values())
    needed = max(0.0, needed_to_buy(binder, shoot_id).get(food, 0.0) - at_home(binder, shoot_id).get(food, 0.0))
    taken = min(needed, grams) if used > 0 else 0.0
    parts = {bearer: taken * part / used for bearer, part in uses.items()} if used > 0 else {}
    parts[LEFT_OVER] = max(0.0, grams - taken)
    if sum(parts.values()) <= 0:
        parts = dict(uses) if used > 0 else {LEFT_OVER: 1.0}
    return dict(zip(parts, divided(paid, list(parts.values())), strict=True))


@remembered_from(PLANS)
def food_uses(binder: Binder, shoot_id: str) -> Mapping[str, Mapping[Bearer, float]]:
    """Grams of each bought food that dishes, tasting and the rest of the base carry the cost of."""
    found: dict[str, dict[Bearer, float]] = {}
    balance = base_balance(binder, shoot_id)
    forms = {form.form for form in balance.forms} if balance else set()
    taken = _taken(binder, shoot_id)
    for bearer, needs in taken.items():
        for food, grams in needs.items():
            if food not in forms:
                _add(found, food, bearer, grams)
    for food, uses in _base_uses(binder, shoot_id, taken).items():
        for bearer, grams in uses.items():
            _add(found, food, bearer, grams)
    return found


def _add(found: dict[str, dict[Bearer, float]], food: str, bearer: Bearer, grams: float) -> None:
    uses = found.setdefault(food, {})
    uses[bearer] = uses.get(bearer, 0.0) + grams


def _taken(binder: Binder, shoot_id: str) -> dict[Bearer, dict[str, float]]:
    """Grams as purchased of each food and form, by dish, and together for the builds that are for tasting."""
    taken: dict[Bearer, dict[str, float]] = {}
    for dish in binder.dishes.where("shoot", shoot_id):
        needs = build_needs(binder, dish.id)
        for build in builds_of(binder, dish.id):
            bearer = TASTING if build.kind is BuildKind.TASTING else Bearer(BearerKind.DISH, dish.id)
            for food, grams in needs.get(build.id, {}).items():
                amounts = taken.setdefault(bearer, {})
                amounts[food] = amounts.get(food, 0.0) + grams
    return taken


def _base_uses(
    binder: Binder, shoot_id: str, taken: Mapping[Bearer, Mapping[str, float]]
) -> dict[str, dict[Bearer, float]]:
    """Grams of the base, and of what its conversions add, by who uses the forms made of it; what no one uses rests."""
    balance = base_balance(binder, shoot_id)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or network is None or isinstance(network, Missing):
        return {}
    content = base_content(binder, network, balance)
    left = {form.form: form.left for form in balance.forms if form.form != balance.base}
    by_bearer: dict[Bearer, Mapping[str, float]] = {**taken, BASE_REST: left}
    uses: dict[str, dict[Bearer, float]] = {}
    for bearer, forms in by_bearer.items():
        for form, grams in forms.items():
            if form in left or form == balance.base:
                _add(uses, balance.base, bearer, grams * _of_base(content, form))
                for food, ratio in _added_to(binder, form, balance.base).items():
                    _add(uses, food, bearer, grams * ratio)
    _add(uses, balance.base, BASE_REST, max(0.0, balance.left or 0.0))
    return _scaled_to(uses, balance.added)


def _of_base(content: Mapping[str, float] | Missing, form: str) -> float:
    """Grams of base in a gram of a form; where that cannot be said, every form counts alike."""
    return 1.0 if isinstance(content, Missing) else content.get(form, 0.0)


def _added_to(binder: Binder, form: str, base: str) -> Mapping[str, float]:
    """Grams of what conversions add to a gram of a form."""
    parts = bought_for(binder, form)
    return {} if isinstance(parts, Missing) else {food: grams for food, grams in parts.items() if food != base}


def _scaled_to(uses: dict[str, dict[Bearer, float]], added: Mapping[str, float]) -> dict[str, dict[Bearer, float]]:
    """The uses of what conversions add, made to add up to what the plan adds of it."""
    for food, total in added.items():
        carried = uses.setdefault(food, {BASE_REST: 1.0})
        whole = sum(carried.values())
        uses[food] = {bearer: grams * total / whole for bearer, grams in carried.items()} if whole > 0 else {}
    return uses
