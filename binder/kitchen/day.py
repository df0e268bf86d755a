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
class PinTarget:
    """What a pin is on, by ids: see Pin."""

    dish: str | None = None
    build: str | None = None
    step: str | None = None
    conversion: str | None = None


@dataclass(frozen=True, kw_only=True)
class Pin(Record):
    """Something that begins at a moment someone has set, or that began then and is `done`.

    It is a conversion; a step of a build; a step alone, of a recipe made ahead; or of a dish alone its closing words.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    dish: Annotated[Key, Reference("dishes", goes_too=True)] | None = None
    build: Annotated[Key, Reference("builds", goes_too=True)] | None = None
    step: Annotated[Key, Reference("steps", goes_too=True)] | None = None
    conversion: Annotated[Key, Reference("conversions", goes_too=True)] | None = None
    on: date
    at: time
    done: bool = False

    @property
    def target(self) -> PinTarget:
        """What it is on."""
        return PinTarget(dish=self.dish, build=self.build, step=self.step, conversion=self.conversion)
