"""A made-up long day: twelve dishes, thirty builds, some 250 activities; four people, one oven, four burners."""

from __future__ import annotations

from datetime import date, time

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import Conversion, Outcome
from binder.kitchen.day import Appliance, ApplianceKind, FixedEvent, Person
from binder.kitchen.food import Food
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot

DISHES = 12
ON = date(2027, 3, 10)


def long_day() -> Binder:
    """The shoot `day`: every third dish is baked, every third fried, every third chilled for hours."""
    shoot = Shoot(
        id="day",
        name="The long day",
        on=ON,
        call=time(8, 0),
        zone="Europe/Berlin",
        base="barley",
        base_amount=20,
        base_unit="kg",
    )
    records: list[Record] = [Settings(id=SETTINGS_ID, name="The long day"), shoot, *_base(), *_crew(), *_kitchen()]
    for number in range(DISHES):
        records += _dish(number)
    return binder_of(records)


def _base() -> list[Record]:
    return [
        Food(id="barley", name="barley"),
        Food(id="soaked", name="soaked barley", form_of="barley", temperature_control=True, keeps_days=2),
        Food(id="boiled", name="boiled barley", form_of="barley", temperature_control=True, keeps_days=3),
        Conversion(id="soak", takes="barley", name="Soak", hands_on_minutes=10, lead_minutes=600),
        Outcome(id="soak/1", conversion="soak", form="soaked", ratio=1.8),
        Conversion(id="boil", takes="soaked", name="Boil", hands_on_minutes=15, lead_minutes=60),
        Outcome(id="boil/1", conversion="boil", form="boiled", ratio=1.1),
    ]


def _crew() -> list[Record]:
    return [
        Person(id="host", shoot="day", name="Ode", on_camera=True),
        Person(id="early", shoot="day", position=1, name="Wren", arrives=time(6, 0), skills=("fry",)),
        Person(id="second", shoot="day", position=2, name="Tarn", skills=("fry",)),
        Person(id="third", shoot="day", position=3, name="Ash", arrives=time(7, 0)),
    ]


def _kitchen() -> list[Record]:
    return [
        Appliance(id="oven", shoot="day", name="oven", kind=ApplianceKind.OVEN, places=2, change_minutes=15),
        Appliance(id="hob", shoot="day", position=1, name="hob", kind=ApplianceKind.BURNERS, places=4),
        Appliance(id="fridge", shoot="day", position=2, name="fridge", kind=ApplianceKind.FRIDGE, places=12),
        Appliance(id="blender", shoot="day", position=3, name="blender", change_minutes=5),
        FixedEvent(id="lunch", shoot="day", name="Lunch", at=time(13, 0), minutes=45),
    ]


_STEPS: dict[int, tuple[dict[str, object], ...]] = {
    0: (
        {"title": "Cut", "hands_on_minutes": 8},
        {"title": "Blend", "hands_on_minutes": 5, "equipment": ("blender",)},
        {"title": "Fill", "hands_on_minutes": 6, "hold_minutes": 120.0},
        {"title": "Bake", "hands_on_minutes": 3, "waiting_minutes": 35, "heat": Heat.OVEN, "celsius": 190.0},
        {"title": "Rest", "hands_on_minutes": 1, "waiting_minutes": 10, "on_camera": False, "hold_minutes": 45.0},
        {"title": "Glaze", "hands_on_minutes": 4, "hold_minutes": 30.0},
        {"title": "Cut open", "hands_on_minutes": 3, "hold_minutes": 20.0},
        {"title": "Serve", "hands_on_minutes": 2, "hold_minutes": 15.0},
    ),
    1: (
        {"title": "Chop", "hands_on_minutes": 6},
        {"title": "Mix", "hands_on_minutes": 5},
        {"title": "Chill", "hands_on_minutes": 1, "waiting_minutes": 30, "heat": Heat.CHILL, "celsius": 4.0},
        {"title": "Shape", "hands_on_minutes": 7, "hold_minutes": 60.0},
        {"title": "Sauce", "hands_on_minutes": 6, "equipment": ("blender",), "on_camera": False},
        {"title": "Fry", "hands_on_minutes": 10, "heat": Heat.OIL, "hold_minutes": 10.0, "skill": "fry"},
        {"title": "Drain", "hands_on_minutes": 2, "hold_minutes": 8.0},
        {"title": "Serve", "hands_on_minutes": 2, "hold_minutes": 8.0},
    ),
    2: (
        {"title": "Whisk", "hands_on_minutes": 5},
        {"title": "Heat", "hands_on_minutes": 8, "heat": Heat.PAN, "hold_minutes": 20.0},
        {"title": "Strain", "hands_on_minutes": 3, "on_camera": False},
        {"title": "Pour", "hands_on_minutes": 4},
        {"title": "Set", "hands_on_minutes": 1, "waiting_minutes": 180, "heat": Heat.CHILL, "on_camera": False,
         "hold_minutes": 1440.0},
        {"title": "Turn out", "hands_on_minutes": 3, "hold_minutes": 30.0},
        {"title": "Dress", "hands_on_minutes": 4, "hold_minutes": 20.0},
        {"title": "Serve", "hands_on_minutes": 2, "hold_minutes": 15.0},
    ),
}  # fmt: skip
"""Baked, fried, set."""


def _dish(number: int) -> list[Record]:
    recipe = Recipe(id=f"r{number}", name=f"Barley plate {number + 1}", portions=4)
    wanted = _STEPS[number % 3]
    steps = [
        Step(id=f"r{number}/{at}", recipe=recipe.id, position=at, **_warmer(fields, number))  # type: ignore[arg-type]
        for at, fields in enumerate(wanted)
    ]
    line = Line(id=f"r{number}/l", step=steps[1].id, food="boiled", low=300, high=300, unit="g")
    dish = Dish(id=f"d{number}", shoot="day", position=number, recipe=recipe.id, portions=4, camera_minutes=25)
    swap = {0: 4, 1: 3, 2: 4}[number % 3]
    builds = [
        Build(id=f"d{number}/hero", dish=dish.id),
        Build(id=f"d{number}/swap", dish=dish.id, position=1, kind=BuildKind.SWAP_OUT, up_to=steps[swap].id),
    ]
    if number % 2:
        builds.append(Build(id=f"d{number}/taste", dish=dish.id, position=2, kind=BuildKind.TASTING))
    return [recipe, *steps, line, dish, *builds]


def _warmer(fields: dict[str, object], number: int) -> dict[str, object]:
    """Bakes at two heats, so that the one oven must change between them."""
    return {**fields, "celsius": 230.0} if fields.get("title") == "Bake" and number % 2 else fields
