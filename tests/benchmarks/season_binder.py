"""A made-up shoot of a size to measure with: so many dishes, each of so many lines."""

from __future__ import annotations

from dataclasses import replace

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot
from tests.kitchen_binder import small_records

FOODS = (
    ("cooked", "g", 120.0),
    ("tahini", "tbsp", 2.0),
    ("liquid", "ml", 50.0),
    ("onion", "", 1.0),
    ("oil", "tbsp", 1.5),
    ("flour", "cup", 0.75),
)


def season_binder(dishes: int = 12, lines: int = 180) -> Binder:
    """The small binder's foods in `dishes` dishes of `lines` lines in all, three steps and three builds each."""
    records: list[Record] = [record for record in small_records() if not isinstance(record, Dish | Build)]
    for number in range(dishes):
        records += _dish(number, lines // dishes)
    records = [replace(record, base_amount=10) if isinstance(record, Shoot) else record for record in records]
    return binder_of(records)


def _dish(number: int, lines: int) -> list[Record]:
    recipe = Recipe(id=f"r{number}", name=f"Dish number {number}", portions=4)
    steps = [
        Step(id=f"r{number}/{at}", recipe=recipe.id, position=at, station=f"station {at}", text="Stir.")
        for at in range(3)
    ]
    written = []
    for at in range(lines):
        food, unit, amount = FOODS[(number + at) % len(FOODS)]
        written.append(
            Line(
                id=f"r{number}/l{at}",
                step=steps[at % 3].id,
                position=at // 3,
                food=food,
                low=amount,
                high=amount,
                unit=unit,
            )
        )
    dish = Dish(id=f"d{number}", shoot="day", position=number, recipe=recipe.id, portions=4)
    builds = [
        Build(id=f"d{number}/hero", dish=dish.id),
        Build(id=f"d{number}/swap", dish=dish.id, position=1, kind=BuildKind.SWAP_OUT, up_to=steps[1].id),
        Build(id=f"d{number}/taste", dish=dish.id, position=2, kind=BuildKind.TASTING),
    ]
    return [recipe, *steps, *written, dish, *builds]
