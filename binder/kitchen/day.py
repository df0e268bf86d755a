"""The shooting day: who is there, what the kitchen has, what happens at a fixed time, and what someone has pinned."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import Key, Minutes, Name, Number, Position, Reference, ShortText, WordList


class ApplianceKind(StrEnum):
    """What an appliance is, and so which steps use it."""

    OVEN = "oven"
    BURNERS = "burners"
    FRYER = "fryer"
    FRIDGE = "fridge"
    FREEZER = "freezer"
    TOOL = "tool"


@dataclass(frozen=True, kw_only=True)
class Person(Record):
    """Someone with two hands, from `arrives` to `leaves` on the day (None: from call to wrap)."""

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    name: Name
    role: ShortText = ""
    skills: WordList = ()
    on_camera: bool = False
    arrives: time | None = None
    leaves: time | None = None


@dataclass(frozen=True, kw_only=True)
class Appliance(Record):
    """An oven with so many shelves, a hob with so many burners, a tool: `places` things at once.

    An oven takes `change_minutes` to another temperature and serves two that differ by `tolerance` °C at most; a tool
    is washed for `change_minutes` between two dishes. A tool is used by the steps whose equipment names it.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    name: Name
    kind: ApplianceKind = ApplianceKind.TOOL
    places: Annotated[int, Number(1, 1000)] = 1
    change_minutes: Minutes = 0.0
    tolerance: Annotated[float, Number(0, 100)] = 10.0


@dataclass(frozen=True, kw_only=True)
class FixedEvent(Record):
    """Something at a fixed time: lunch, a guest, a fire test. `stops_work`: nobody works and nothing is filmed then."""

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    name: Name
    at: time
    minutes: Minutes = 0.0
    stops_work: bool = True


@dataclass(frozen=True, kw_only=True)
class Pin(Record):
    """A step of a build (or, without one, a dish's filming) that begins at a moment someone has set."""

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    dish: Annotated[Key, Reference("dishes")]
    build: Annotated[Key, Reference("builds")] | None = None
    step: Annotated[Key, Reference("steps")] | None = None
    on: date
    at: time
    done: bool = False
