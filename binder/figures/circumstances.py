"""The circumstances a claim is held against, and the binder as it would be in them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.memory import PLANS, remembered_from
from binder.figures.price_levels import PriceLevel, at_level, packs_at_level
from binder.kitchen.edits.records import with_values
from binder.kitchen.shoot import BuildKind, CapBasis
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Build


@dataclass(frozen=True)
class Circumstances:
    """At which prices; with or without tax, garnish, staples; as whole packs where the shoot counts those.

    `every_build` counts the builds for the camera, else each dish once; `waiting` the minutes in which nothing is done.
    """

    level: PriceLevel = PriceLevel.CHOSEN
    taxed: bool = True
    garnish: bool = True
    staples: bool = True
    packs: bool = True
    every_build: bool = True
    waiting: bool = True


IN_FULL = Circumstances()
"""Everything counted, at the prices chosen."""


class Condition(StrEnum):
    """What a claim may hold only on."""

    NOT_AT_HIGHEST = "not at the highest price"
    NOT_AT_LOWEST = "not at the lowest price"
    NO_TAX = "without tax"
    LOWEST = "at the lowest price"
    NO_GARNISH = "without the garnish"
    STAPLES_FREE = "staples free"
    SHARES = "shares of packs"
    ONCE = "each dish once"
    HANDS_ON = "hands-on time"


_RELAXED: dict[Condition, dict[str, object]] = {
    Condition.NO_TAX: {"taxed": False},
    Condition.LOWEST: {"level": PriceLevel.LOWEST},
    Condition.NO_GARNISH: {"garnish": False},
    Condition.STAPLES_FREE: {"staples": False},
    Condition.SHARES: {"packs": False},
    Condition.ONCE: {"every_build": False},
    Condition.HANDS_ON: {"waiting": False},
}


def on_conditions(conditions: Iterable[Condition]) -> Circumstances:
    """Everything counted but what the conditions leave out."""
    fields: dict[str, object] = {}
    for condition in conditions:
        fields |= _RELAXED[condition]
    return replace(IN_FULL, **fields)  # type: ignore[arg-type]


def condition_text(condition: Condition) -> str:
    """A condition as it ends a sentence."""
    return {
        Condition.NOT_AT_HIGHEST: _("at the prices chosen, not at the highest on record"),
        Condition.NOT_AT_LOWEST: _("at the prices chosen, not at today's lowest"),
        Condition.NO_TAX: _("without tax"),
        Condition.LOWEST: _("at today's lowest prices"),
        Condition.NO_GARNISH: _("without the garnish"),
        Condition.STAPLES_FREE: _("with the staples free"),
        Condition.SHARES: _("counting only what is used of each pack"),
        Condition.ONCE: _("with each dish made once"),
        Condition.HANDS_ON: _("counting hands-on time alone"),
    }[condition]


@remembered_from(PLANS | {"tax_rates"})
def in_circumstances(binder: Binder, shoot_id: str, circumstances: Circumstances, by_pack: bool = False) -> Binder:  # noqa: FBT001, FBT002 - remembered figures take their arguments by position
    """The binder as it would be; prices are pinned `by_pack` where packs are chosen among, else one by the food."""
    shoot = binder.shoots[shoot_id]
    whole = circumstances.packs and shoot.cap_basis is CapBasis.WHOLE_PACKS
    level = packs_at_level if by_pack else at_level
    tables = dict[str, object]()
    if not circumstances.garnish:
        tables["lines"] = binder.lines.with_changes((line.id, None) for line in binder.lines.values() if line.garnish)
    if not circumstances.staples:
        staples = (food for food in binder.foods.values() if food.staple)
        tables["foods"] = binder.foods.with_changes((food.id, with_values(food, free=True)) for food in staples)
    if not circumstances.every_build:
        tables["builds"] = binder.builds.with_changes(_once(binder, shoot_id))
    basis = CapBasis.WHOLE_PACKS if whole else CapBasis.USED
    if basis is not shoot.cap_basis:
        tables["shoots"] = binder.shoots.with_changes([(shoot_id, with_values(shoot, cap_basis=basis))])
    return level(binder.with_tables(tables) if tables else binder, circumstances.level)  # type: ignore[arg-type]


def _once(binder: Binder, shoot_id: str) -> Iterator[tuple[str, Build | None]]:
    """The builds of a shoot taken out but for one of each dish, which goes to the end for the dish's portions."""
    for dish in binder.dishes.where("shoot", shoot_id):
        builds = sorted(binder.builds.where("dish", dish.id), key=lambda build: build.kind is not BuildKind.HERO)
        for at, build in enumerate(builds):
            yield build.id, None if at else with_values(build, up_to=None, portions=None)
