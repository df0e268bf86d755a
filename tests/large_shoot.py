"""A made-up shoot at the far end of what one day can hold: 15 forms by two ways, 40 dishes, 200 builds."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import Addition, Conversion, CostSplit, Outcome
from binder.kitchen.food import Food, Section
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot

BASE = "groats"
FORMS = (
    "soaked groats",
    "sprouted groats",
    "steamed groats",
    "steaming liquid",
    "dried steamed groats",
    "cracked groats",
    "coarse meal from the second sieve",
    "fine meal",
    "bran",
    "toasted bran",
    "groat milk",
    "groat pulp, pressed and crumbled",
    "groat cheese",
    "whey of groat milk",
    "puffed groats",
)
_WAYS = (
    ("soak", BASE, {0: 2.0}, 720.0, None, None),
    ("sprout", "f0", {1: 1.1}, 2880.0, None, None),
    ("steam", "f0", {2: 1.05, 3: 0.8}, 75.0, None, None),
    ("dry", "f2", {4: 0.45}, 600.0, None, None),
    ("crack", BASE, {5: 0.7, 8: 0.2}, 0.0, 200.0, None),
    ("sieve", "f5", {6: 0.6, 7: 0.35}, 0.0, None, None),
    ("toast", "f8", {9: 0.92}, 15.0, None, None),
    ("press", "f0", {10: 1.6, 11: 0.5}, 20.0, 300.0, None),
    ("set", "f10", {12: 0.3, 13: 0.65}, 480.0, None, 500.0),
    ("puff", "f4", {14: 0.97}, 5.0, None, None),
)
_SECOND_WAYS = (
    ("mill", BASE, {7: 0.9, 8: 0.08}, 0.0, None, 250.0),
    ("puff at once", "f1", {14: 0.5}, 5.0, None, None),
    ("boil down", "f3", {13: 0.4}, 60.0, None, None),
)


@dataclass(frozen=True)
class Size:
    """How large a shoot to make."""

    dishes: int = 40
    builds: int = 5
    forms_a_dish: int = 3
    kilograms: float = 400.0
    two_ways: bool = True
    batches: bool = True


def large_shoot(size: Size | None = None) -> Binder:
    """The shoot `day`; each dish takes so many of the forms, in each of its builds."""
    size = size or Size()
    shoot = Shoot(
        id="day",
        name="The whole sack",
        on=date(2026, 12, 3),
        call=time(8, 0),
        base=BASE,
        base_amount=size.kilograms,
        base_unit="kg",
        cap=250,
        spares=1,
    )
    records: list[Record] = [Settings(id=SETTINGS_ID, name="The whole sack"), *_foods(), *_ways(size), shoot]
    for number in range(size.dishes):
        records += _dish(number, size)
    return binder_of(records)


def _foods() -> list[Record]:
    section = Section.GRAINS_AND_PULSES
    return [
        Food(id=BASE, name="groats, whole", section=section),
        *(Food(id=f"f{at}", name=name, section=section, form_of=BASE) for at, name in enumerate(FORMS)),
        Food(id="water", name="water", density=1.0, free=True),
        Food(id="salt", name="salt"),
        Pack(id="sack", food=BASE, size=25, unit="kg"),
        Quote(id="sack/1", pack="sack", price=4250, on=date(2026, 11, 2)),
        Pack(id="salt/1", food="salt", size=1, unit="kg"),
        Quote(id="salt/1/1", pack="salt/1", price=110, on=date(2026, 11, 2)),
    ]


def _ways(size: Size) -> list[Record]:
    records: list[Record] = []
    for name, takes, gives, lead, least, batch in (*_WAYS, *(_SECOND_WAYS if size.two_ways else ())):
        records.append(
            Conversion(
                id=name,
                takes=takes,
                name=name.capitalize(),
                lead_minutes=lead,
                hands_on_minutes=10.0,
                least_grams=least if size.batches else None,
                batch_grams=batch if size.batches else None,
                split=CostSplit.BY_WEIGHT if name != "press" else CostSplit.MAIN,
            )
        )
        records += [
            Outcome(id=f"{name}/{form}", conversion=name, position=place, form=f"f{form}", ratio=ratio)
            for place, (form, ratio) in enumerate(gives.items())
        ]
    records.append(Addition(id="soak/water", conversion="soak", food="water", ratio=3.0))
    records.append(Addition(id="steam/salt", conversion="steam", food="salt", ratio=0.01))
    return records


_KINDS = (BuildKind.HERO, BuildKind.SWAP_OUT, BuildKind.SPARE, BuildKind.BEAUTY, BuildKind.TASTING)


def _dish(number: int, size: Size) -> list[Record]:
    recipe = Recipe(id=f"r{number}", name=f"Plate of the whole grain, number {number + 1}", portions=4)
    steps = [
        Step(id=f"r{number}/{at}", recipe=recipe.id, position=at, title=f"Step {at + 1}", waiting_minutes=10.0 * at)
        for at in range(3)
    ]
    lines = [
        Line(
            id=f"r{number}/l{at}",
            step=steps[at % 3].id,
            position=at // 3,
            food=f"f{(number * 2 + at * 5) % len(FORMS)}",
            low=120.0 + 7 * number,
            high=120.0 + 7 * number,
            unit="g",
        )
        for at in range(size.forms_a_dish)
    ]
    salt = Line(id=f"r{number}/salt", step=steps[2].id, position=9, food="salt", low=4, high=4, unit="g")
    dish = Dish(id=f"d{number}", shoot="day", position=number, recipe=recipe.id, portions=4)
    builds = [
        Build(
            id=f"d{number}/b{at}",
            dish=dish.id,
            position=at,
            kind=_KINDS[at % len(_KINDS)],
            up_to=steps[1].id if at % len(_KINDS) == 1 else None,
        )
        for at in range(size.builds)
    ]
    return [recipe, *steps, *lines, salt, dish, *builds]
