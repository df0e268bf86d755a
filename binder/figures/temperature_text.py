"""Temperatures in both scales, as the binder's measures write them: Fahrenheit first in US customary, else Celsius."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from binder.kitchen.settings import Measures

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.reference import Doneness


def fahrenheit(celsius: float) -> float:
    """Degrees Fahrenheit, exactly: C x 9/5 + 32."""
    return celsius * 9 / 5 + 32


def temperature_text(binder: Binder, celsius: float) -> str:
    """A temperature in both scales, whole degrees, the binder's own first."""
    both = f"{_whole(celsius)} °C", f"{_whole(fahrenheit(celsius))} °F"
    return f"{both[1]} / {both[0]}" if binder.settings.measures is Measures.US_CUSTOMARY else f"{both[0]} / {both[1]}"


def temperature_short(binder: Binder, celsius: float) -> str:
    """A temperature in the binder's own scale only."""
    if binder.settings.measures is Measures.US_CUSTOMARY:
        return f"{_whole(fahrenheit(celsius))} °F"
    return f"{_whole(celsius)} °C"


def doneness_text(binder: Binder, rule: Doneness) -> str:
    """A safe temperature as its rule prints it, with how long it is held, or the sign that stands for it."""
    if rule.celsius is None or rule.fahrenheit is None:
        return rule.sign
    both = f"{_whole(rule.celsius)} °C", f"{_whole(rule.fahrenheit)} °F"
    shown = " / ".join(reversed(both) if binder.settings.measures is Measures.US_CUSTOMARY else both)
    return f"{shown}, {rule.hold}" if rule.hold else shown


def _whole(degrees: float) -> str:
    return str(math.floor(degrees + 0.5)).replace("-", "−")
