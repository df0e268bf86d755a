"""A shoot: one base ingredient, dishes in running order, and each dish built more than once for the camera."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import (
    Count,
    Days,
    Key,
    LongText,
    Minor,
    Minutes,
    Name,
    Number,
    Part,
    Position,
    Positive,
    Reference,
    ShortText,
)


class BuildKind(StrEnum):
    """What a build is for."""

    HERO = "hero"
    SWAP_OUT = "swap-out"
    SPARE = "spare"
    BEAUTY = "beauty"
    TASTING = "tasting"


class CapBasis(StrEnum):
    """What a portion is taken to cost when it is held against its cap."""

    USED = "used cost"
    STAPLES_FREE = "used cost, staples free"
    WHOLE_PACKS = "whole packs over portions"


class BuildState(StrEnum):
    """How far a build has come on the day."""

    PLANNED = "planned"
    UNDER_WAY = "under way"
    READY = "ready"
    USED = "used"
    SPOILED = "spoiled"


@dataclass(frozen=True, kw_only=True)
class Shoot(Record):
    """One shooting day of one episode. `base_amount` in `base_unit` is how much of the base ingredient there is.

    `wait_limit` is the longest wait, in minutes, that the camera stays with; `spares` how many spare builds each dish
    is to have. `call` is by the clock on the wall in `zone`.

    `cap` is the cost cap a portion in minor currency units, for every dish without its own; `budget` is for the whole
    shoot, and `contingency` the part of it kept back. `waste_value` is the part of its price that perishable food
    left over in an opened pack counts as thrown away; `quote_days` how old a price may grow before it is asked for
    again; `prices_taxed` whether the prices on the shelf include the tax.

    On the day the camera takes `reset_minutes` between dishes, and dishes may change places where `may_reorder`; on the
    days before, people work from `prep_from` to `prep_until`. `hot_set`: it is above 32 °C there, so that food out of
    the cold lasts an hour.
    """

    name: Name
    on: date | None = None
    call: time | None = None
    zone: ShortText = ""
    base: Annotated[Key, Reference("foods")] | None = None
    base_amount: Count = 0.0
    base_unit: ShortText = "g"
    cap: Minor | None = None
    budget: Minor | None = None
    wait_limit: Minutes = 4.0
    spares: Annotated[int, Number(0, 20)] = 0
    cap_basis: CapBasis = CapBasis.USED
    most_stores: Annotated[int, Number(1, 50)] | None = None
    waste_value: Part = 0.0
    contingency: Part = 0.0
    quote_days: Days = 60
    prices_taxed: bool = True
    wrap: time | None = None
    reset_minutes: Minutes = 5.0
    may_reorder: bool = False
    prep_from: time = time(8, 0)
    prep_until: time = time(20, 0)
    hot_set: bool = False
    notes: LongText = ""


@dataclass(frozen=True, kw_only=True)
class Dish(Record):
    """A recipe's place in a shoot: its running number is its position plus one.

    `cap` is minor currency units a portion (None: the shoot's); `camera_minutes` is how long the camera is on it.
    """

    shoot: Annotated[Key, Reference("shoots", owner=True)]
    position: Position = 0
    recipe: Annotated[Key, Reference("recipes")]
    name: ShortText = ""
    portions: Positive
    cap: Minor | None = None
    camera_minutes: Minutes | None = None
    notes: LongText = ""


@dataclass(frozen=True, kw_only=True)
class Build(Record):
    """One making of a dish, up to and with the step `up_to` (None: to the end), for `portions` (None: the dish's own).

    `waits` says where it waits for the camera.
    """

    dish: Annotated[Key, Reference("dishes", owner=True)]
    position: Position = 0
    kind: BuildKind = BuildKind.HERO
    up_to: Annotated[Key, Reference("steps")] | None = None
    portions: Positive | None = None
    state: BuildState = BuildState.PLANNED
    waits: ShortText = ""
