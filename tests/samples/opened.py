"""The sample binders as tests open them."""

from __future__ import annotations

import functools
from dataclasses import replace
from typing import TYPE_CHECKING

from binder.exchange.json_document import read_json
from binder.figures.checks import Severity, shoot_checks
from binder.figures.cost import DishCost, shoot_costs
from binder.figures.day_plan import DayPlan, day_plan
from binder.figures.shopping import ShoppingList, shopping_list
from binder.kitchen.binder import TABLE_OF
from binder.kitchen.buying import Purchase
from binder.kitchen.change import apply, changed
from binder.kitchen.paths import samples_folder

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.record import Record

SAMPLES = ("chickpeas", "four_birds")


@functools.cache
def sample(name: str) -> Binder:
    """A sample, read once."""
    return read_json(samples_folder() / f"{name}.json")


def shoot_of(binder: Binder) -> str:
    """The id of a sample's one shoot."""
    (shoot,) = binder.shoots
    return shoot


def cost_of(binder: Binder, number: int) -> DishCost:
    """The cost of the dish with a running number."""
    return next(cost for cost in shoot_costs(binder, shoot_of(binder)) if cost.number == number)


def stops(binder: Binder) -> list[tuple[str, str]]:
    """Kind and place of each check that stops the shoot."""
    found = shoot_checks(binder, shoot_of(binder))
    return [(check.kind, check.where) for check in found if check.severity is Severity.STOP]


def with_records(binder: Binder, *records: Record) -> Binder:
    """The binder with records in the place of its own of the same table and id."""
    before = [found for record in records if (found := binder.find(TABLE_OF[type(record)], record.id)) is not None]
    return apply(binder, changed("Try", before=before, after=records))


def with_less_base(binder: Binder, grams: float) -> Binder:
    """The binder with so many grams of its base taken away. The samples say in kilograms how much there is."""
    shoot = binder.shoots[shoot_of(binder)]
    assert shoot.base_unit == "kg"
    return with_records(binder, replace(shoot, base_amount=shoot.base_amount - grams / 1000))


def till_receipt(bought: ShoppingList) -> dict[str, tuple[float, list[tuple[float, int]]]]:
    """For each food the grams needed, and of each pack taken how many (at the counter the grams) and what they cost."""
    return {
        item.food: (
            item.needed,
            [(pack.grams if pack.priced.pack.by_weight else pack.count, pack.price) for pack in item.packs],
        )
        for item in bought.items
    }


@functools.cache
def planned(name: str) -> DayPlan:
    """The day of a sample, planned once, with as long as a slow machine may need."""
    binder = sample(name)
    plan = day_plan(binder, shoot_of(binder), seconds=30)
    assert plan is not None
    return plan


def all_bought(binder: Binder, shoot: str, paid: Mapping[str, int]) -> Binder:
    """The binder with the whole list ticked as it stands; `paid` says in cents what was not paid as listed."""
    ticks = [
        Purchase(
            id=f"tick {pack.priced.pack.id}",
            shoot=shoot,
            food=item.food,
            pack=pack.priced.pack.id,
            count=pack.grams / pack.priced.grams,
            planned=pack.price,
            paid=paid.get(item.food, pack.price),
        )
        for item in shopping_list(binder, shoot).items
        for pack in item.packs
    ]
    return apply(binder, changed("Tick the list", after=ticks))
