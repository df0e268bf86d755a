"""A believable binder for the window's tests: one kilogram of dried chickpeas in five dishes. All invented."""

from __future__ import annotations

from datetime import date, time

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.change import apply
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.edits.recipes import add_line
from binder.kitchen.food import Food, Measure, Section
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Heat, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot
from tests.desktop.chickpea_recipes import TypedStep, typed_recipes

_P, _S, _O, _G = Section.PRODUCE, Section.SPICES_AND_SEASONINGS, Section.OILS_AND_VINEGARS, Section.GRAINS_AND_PULSES

# name, section, density, trim yield, allergens, pack size, unit, cents
_FOODS: tuple[tuple[str, Section, float | None, float, str, float, str, int], ...] = (
    ("chickpeas, dried", _G, 0.8, 1.0, "", 1000, "g", 389),
    ("tahini", Section.TINS_AND_JARS, 1.0, 1.0, "sesame", 16, "oz", 749),
    ("lemon", _P, None, 0.45, "", 1, "each", 69),
    ("garlic", _P, None, 0.87, "", 1, "head", 75),
    ("onion", _P, 0.67, 0.9, "", 3, "lb", 329),
    ("flat-leaf parsley", _P, 0.25, 0.6, "", 1, "bunch", 149),
    ("cilantro", _P, 0.25, 0.6, "", 1, "bunch", 129),
    ("tomatoes, plum", _P, 0.75, 0.95, "", 1, "lb", 249),
    ("spinach", _P, 0.13, 0.88, "", 10, "oz", 349),
    ("carrot", _P, 0.55, 0.83, "", 2, "lb", 219),
    ("extra-virgin olive oil", _O, 0.91, 1.0, "", 500, "ml", 899),
    ("frying oil", _O, 0.92, 1.0, "", 48, "fl oz", 599),
    ("red wine vinegar", _O, 1.0, 1.0, "", 12, "fl oz", 349),
    ("cumin seed", _S, 0.42, 1.0, "", 2, "oz", 329),
    ("coriander seed", _S, 0.36, 1.0, "", 2, "oz", 299),
    ("smoked paprika", _S, 0.46, 1.0, "", 2, "oz", 449),
    ("salt", _S, 1.2, 1.0, "", 26, "oz", 129),
    ("black pepper", _S, 0.5, 1.0, "", 3, "oz", 499),
    ("baking soda", Section.BAKING, 0.92, 1.0, "", 16, "oz", 119),
    ("sugar", Section.BAKING, 0.85, 1.0, "", 4, "lb", 349),
    ("dark chocolate", Section.BAKING, 0.7, 1.0, "milk", 200, "g", 499),
    ("cream of tartar", Section.BAKING, 0.9, 1.0, "", 1.5, "oz", 389),
    ("flatbread", Section.BAKERY, None, 1.0, "wheat", 6, "each", 329),
    ("water", Section.DRINKS, 1.0, 1.0, "", 1, "l", 0),
    ("sea salt flakes", _S, 0.6, 1.0, "", 8, "oz", 549),
)
_MEASURES = (
    ("lemon", "each", 120),
    ("garlic", "head", 45),
    ("garlic", "clove", 5),
    ("onion", "each", 160),
    ("onion", "cup", 160),
    ("flat-leaf parsley", "bunch", 60),
    ("flat-leaf parsley", "cup", 60),
    ("cilantro", "bunch", 55),
    ("cilantro", "cup", 16),
    ("carrot", "each", 70),
    ("flatbread", "each", 90),
    ("spinach", "cup", 30),
)
_FORMS = (("chickpeas, soaked", 0.75), ("chickpeas, cooked", 0.7), ("chickpea cooking liquid", 1.01))

_CAPS = {"Smoky tomato stew": 200}


def key(name: str) -> str:
    """A food's or recipe's id in this binder."""
    return name.casefold().replace(",", "").replace(" ", "_").replace("-", "_")


def chickpea_day() -> Binder:
    """The whole binder."""
    binder = binder_of([*_settings(), *_foods(), *_forms(), *_recipes(), *_shoot()])
    for name, (_portions, steps) in typed_recipes().items():
        for number, typed in enumerate(steps):
            for line in typed.lines:
                binder = apply(binder, add_line(binder, binder.steps[f"{key(name)}_{number}"], line))
    return binder


def _settings() -> list[Record]:
    return [
        Settings(id=SETTINGS_ID, name="Chickpea day"),
        Store(id="corner", name="Corner grocer"),
        Store(id="hall", name="Market hall"),
    ]


def _foods() -> list[Record]:
    found: list[Record] = []
    for number, (name, section, density, trim, allergens, size, unit, cents) in enumerate(_FOODS):
        carried = (allergens,) if allergens else ()
        found += [
            Food(
                id=key(name),
                name=name,
                section=section,
                density=density,
                trim_yield=trim,
                allergens=carried,
                free=name == "water",
                source="test data",
            ),
            Pack(
                id=f"pack_{key(name)}",
                food=key(name),
                store=("corner", "hall")[number % 2],
                size=float(size),
                unit=unit,
            ),
            Quote(id=f"quote_{key(name)}", pack=f"pack_{key(name)}", price=cents, on=date(2026, 10, 12 + number % 9)),
        ]
    return found + [
        Measure(
            id=f"{key(food)}_{unit}",
            food=key(food),
            unit=unit if unit != "cup" else "us cup",
            grams=float(grams),
            source="test data",
        )
        for food, unit, grams in _MEASURES
    ]


def _forms() -> list[Record]:
    base = "chickpeas_dried"
    forms: list[Record] = [
        Food(id=key(name), name=name, section=_G, density=density, form_of=base, source="test data")
        for name, density in _FORMS
    ]
    return [
        *forms,
        Conversion(id="soak", takes=base, name="Soak overnight", lead_minutes=720.0),
        Outcome(id="soaked", conversion="soak", form="chickpeas_soaked", ratio=2.1),
        Addition(id="soak_water", conversion="soak", food="water", ratio=3.0),
        Conversion(id="cook", takes="chickpeas_soaked", name="Cook", lead_minutes=75.0),
        Outcome(id="cooked", conversion="cook", form="chickpeas_cooked", ratio=1.05),
        Outcome(id="liquid", conversion="cook", position=1, form="chickpea_cooking_liquid", ratio=0.8),
        Addition(id="cook_water", conversion="cook", food="water", ratio=1.5),
    ]


def _recipes() -> list[Record]:
    found: list[Record] = []
    for name, (portions, steps) in typed_recipes().items():
        found.append(Recipe(id=key(name), name=name, portions=portions))
        found += [_step(name, number, typed) for number, typed in enumerate(steps)]
    return found


def _step(name: str, number: int, typed: TypedStep) -> Step:
    return Step(
        id=f"{key(name)}_{number}",
        recipe=key(name),
        position=number,
        title=typed.title,
        text=typed.text,
        station=typed.station,
        hands_on_minutes=typed.hands_on,
        waiting_minutes=typed.waiting,
        heat=Heat(typed.heat) if typed.heat else None,
        celsius=typed.celsius,
        hazards=typed.hazards,
    )


def _shoot() -> list[Record]:
    shoot = Shoot(
        id="day",
        name="One kilogram of chickpeas",
        on=date(2026, 11, 6),
        call=time(7, 0),
        base="chickpeas_dried",
        base_amount=1.0,
        base_unit="kg",
        cap=175,
        budget=9000,
    )
    found: list[Record] = [shoot]
    for number, name in enumerate(typed_recipes()):
        dish = f"dish_{number + 1}"
        found += [
            Dish(
                id=dish,
                shoot="day",
                position=number,
                recipe=key(name),
                portions=4.0,
                cap=_CAPS.get(name),
                camera_minutes=12.0 + 3 * number,
            ),
            Build(id=f"{dish}_hero", dish=dish, kind=BuildKind.HERO),
            Build(
                id=f"{dish}_swap",
                dish=dish,
                position=1,
                kind=BuildKind.SWAP_OUT,
                up_to=f"{key(name)}_{0 if number % 2 else 1}",
                waits="fridge, shelf 2",
            ),
        ]
    return [*found, Build(id="dish_2_spare", dish="dish_2", position=2, kind=BuildKind.SPARE, portions=2.0)]
