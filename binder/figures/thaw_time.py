"""How long what is frozen takes to thaw in the refrigerator, by its weight."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.food import Keeping
from binder.kitchen.reference import TimeLimit, time_limits

if TYPE_CHECKING:
    from binder.kitchen.food import Food

_POUND = 453.59237
"""Grams. NIST Handbook 44, Appendix C."""

_LARGE_POUNDS, _LARGE_UP_TO = 4, 5
"""USDA FSIS, Turkey Basics: 24 hours in the refrigerator for every 4 pounds, up to 5 in the same time."""


@dataclass(frozen=True)
class ThawTime:
    """Minutes in the refrigerator, or `in_water` in cold water; `limit` is the rule that says the former."""

    minutes: float
    in_water: float
    limit: TimeLimit


def thaw_time(food: Food, grams: float) -> ThawTime | None:
    """How long so much of a food takes; None for what does not thaw before it is used.

    Frozen food that needs temperature control thaws; peas go into the pan as they are.
    """
    if food.keeping is not Keeping.FROZEN or not food.temperature_control or grams <= 0:
        return None
    limits, pounds = time_limits(), grams / _POUND
    limit = limits["thaw_small_refrigerator" if pounds <= 1 else "thaw_refrigerator_large"]
    days = 1 if pounds <= _LARGE_UP_TO else math.ceil(pounds / _LARGE_POUNDS)
    in_water = math.ceil(pounds) * (limits["thaw_cold_water"].minutes or 0)
    return ThawTime(days * (limit.minutes or 0), in_water, limit)
