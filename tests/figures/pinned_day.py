"""A dish of a few steps, each pinned to its minute, so that what follows from the plan can be reckoned by hand."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from typing import Any

from binder.figures.day_plan import DayPlan, day_plan
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.day import Pin
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from binder.kitchen.shoot import Build, Dish, Shoot

DAY = date(2026, 12, 3)
MILK = Food(id="milk", name="milk", temperature_control=True)

StepAt = tuple[str, dict[str, Any]]
"""When a step begins (`09:30`), and its fields; `foods` are the ids of foods it takes."""


def pinned_day(
    steps: Sequence[StepAt], *others: Record, close: str = "12:00", foods: Sequence[Food] = (MILK,)
) -> Binder:
    """One dish with a hero; its first step takes milk where none says what it takes."""
    records: list[Record] = [
        Settings(id=SETTINGS_ID, name="Pinned", measures=Measures.METRIC, locale="en_GB"),
        Shoot(id="day", name="Pinned", on=DAY, call=time(8, 0)),
        *foods,
        Recipe(id="r", name="Custard", portions=1),
        Dish(id="d", shoot="day", recipe="r", portions=1),
        Build(id="hero", dish="d"),
        Pin(id="close", shoot="day", dish="d", on=DAY, at=_time(close)),
    ]
    for at, (begins, fields) in enumerate(steps):
        taken = fields.pop("foods", ("milk",) if at == 0 else ())
        key = f"s{at + 1}"
        records.append(Step(id=key, recipe="r", position=at, **{"title": key, "hands_on_minutes": 5.0, **fields}))
        records.append(Pin(id=f"pin {key}", shoot="day", dish="d", build="hero", step=key, on=DAY, at=_time(begins)))
        records += [Line(id=f"{key}/{food}", step=key, food=food, low=100, high=100, unit="g") for food in taken]
    replaced = {(type(one), one.id): one for one in [*records, *others]}
    return binder_of(replaced.values())


def _time(text: str) -> time:
    return time.fromisoformat(text)


def at(text: str) -> datetime:
    """A time of the day of the shoot."""
    return datetime.combine(DAY, _time(text))


def planned_day(binder: Binder) -> DayPlan:
    plan = day_plan(binder, "day")
    assert plan is not None
    return plan


def minutes(first: str, second: str) -> int:
    return (at(second) - at(first)) // timedelta(minutes=1)
