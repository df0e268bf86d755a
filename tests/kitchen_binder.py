"""A small binder of our own for tests: flatbread with a spread, from one bag of beans, in a shoot of two dishes."""

from __future__ import annotations

from datetime import date, time

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food, Measure, Section
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot


def small_records() -> list[Record]:
    """The records of the small binder. Invented, but for round numbers that can be checked by hand."""
    return [
        Settings(id=SETTINGS_ID, name="Bean day"),
        *_foods(),
        *_prices(),
        *_forms(),
        *_recipes(),
        *_shoot(),
    ]


def small_binder(*others: Record) -> Binder:
    """The small binder, with other records put in place of, or beside, its own."""
    records = {(type(record), record.id): record for record in [*small_records(), *others]}
    return binder_of(records.values())


def _foods() -> list[Record]:
    return [
        Food(id="beans", name="beans, dried", section=Section.GRAINS_AND_PULSES),
        Food(id="soaked", name="soaked beans", form_of="beans"),
        Food(id="cooked", name="cooked beans", form_of="beans", temperature_control=True),
        Food(id="liquid", name="bean liquid", form_of="beans", density=1.0),
        Food(id="onion", name="onion", trim_yield=0.9),
        Food(id="oil", name="olive oil", section=Section.OILS_AND_VINEGARS, density=0.9, staple=True),
        Food(id="tahini", name="tahini", section=Section.TINS_AND_JARS, allergens=("sesame",)),
        Food(id="flour", name="flour", section=Section.BAKING, allergens=("wheat",)),
        Food(id="salt", name="salt", section=Section.SPICES_AND_SEASONINGS, staple=True),
        Food(id="water", name="water", density=1.0, free=True),
        Measure(id="onion/each", food="onion", unit="each", grams=110),
        Measure(id="onion/cup/chopped", food="onion", unit="us cup", preparation="chopped", grams=160),
        Measure(id="tahini/tbsp", food="tahini", unit="us tbsp", grams=15),
        Measure(id="flour/cup", food="flour", unit="us cup", grams=125),
    ]


def _prices() -> list[Record]:
    prices = [
        ("beans", 1000, "g", 400),
        ("onion", 2, "lb", 180),
        ("oil", 500, "ml", 900),
        ("tahini", 300, "g", 600),
        ("flour", 1000, "g", 150),
        ("salt", 500, "g", 100),
    ]
    packs: list[Record] = [Store(id="corner", name="Corner Larder")]
    for food, size, unit, price in prices:
        packs.append(Pack(id=f"pack-{food}", food=food, store="corner", label=f"{size} {unit}", size=size, unit=unit))
        packs.append(Quote(id=f"quote-{food}", pack=f"pack-{food}", price=price, on=date(2026, 11, 2)))
    return packs


def _forms() -> list[Record]:
    return [
        Conversion(id="soak", takes="beans", name="Soak", lead_minutes=720),
        Outcome(id="soak/soaked", conversion="soak", form="soaked", ratio=2.0),
        Addition(id="soak/water", conversion="soak", food="water", ratio=3.0),
        Conversion(id="cook", takes="soaked", name="Cook", lead_minutes=90),
        Outcome(id="cook/cooked", conversion="cook", form="cooked", ratio=1.05),
        Outcome(id="cook/liquid", conversion="cook", position=1, form="liquid", ratio=0.8),
        Addition(id="cook/salt", conversion="cook", food="salt", ratio=0.01),
    ]


def _recipes() -> list[Record]:
    return [
        Recipe(id="spread", name="Bean spread", portions=4, grams=500),
        Step(id="spread/1", recipe="spread", title="Blend", station="blender", hazards=("sharp_blade",)),
        Step(id="spread/2", recipe="spread", position=1, title="Dress", station="front"),
        Line(id="spread/1/1", step="spread/1", food="cooked", low=300, high=300, unit="g"),
        Line(id="spread/1/2", step="spread/1", position=1, food="tahini", low=4, high=4, unit="tbsp"),
        Line(id="spread/1/3", step="spread/1", position=2, food="liquid", low=60, high=80, unit="ml"),
        Line(id="spread/2/1", step="spread/2", food="oil", low=2, high=2, unit="tbsp", garnish=True),
        Line(id="spread/2/2", step="spread/2", position=1, food="salt", to_taste=True),
        Recipe(id="bread", name="Onion flatbread", portions=2),
        Step(
            id="bread/1", recipe="bread", title="Fry", station="stove", heat=Heat.OIL, celsius=175, hazards=("hot_oil",)
        ),
        Step(id="bread/2", recipe="bread", position=1, title="Fill", station="front"),
        Line(id="bread/1/1", step="bread/1", food="flour", low=2, high=2, unit="cup"),
        Line(
            id="bread/1/2",
            step="bread/1",
            position=1,
            food="onion",
            low=1.5,
            high=1.5,
            unit="cup",
            preparation="chopped",
        ),
        Line(id="bread/2/1", step="bread/2", made="spread", low=250, high=250, unit="g"),
    ]


def _shoot() -> list[Record]:
    return [
        Shoot(
            id="day",
            name="Bean day",
            on=date(2026, 12, 3),
            call=time(8, 0),
            base="beans",
            base_amount=1,
            base_unit="kg",
            cap=200,
            budget=5000,
        ),
        Dish(id="dish-spread", shoot="day", recipe="spread", portions=4),
        Dish(id="dish-bread", shoot="day", position=1, recipe="bread", portions=2, cap=150),
        Build(id="spread-hero", dish="dish-spread"),
        Build(id="spread-swap", dish="dish-spread", position=1, kind=BuildKind.SWAP_OUT, up_to="spread/1"),
        Build(id="bread-hero", dish="dish-bread"),
        Build(id="bread-swap", dish="dish-bread", position=1, kind=BuildKind.SWAP_OUT, up_to="bread/1"),
    ]
