"""Differences of temperature, in the binder's own scale. A difference of 10 °C is one of 18 °F. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import own_scale, typed_number
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder

_F_PER_C = 1.8


def degrees_text(binder: Binder, celsius: float) -> str:
    """A difference as it is shown and typed: `10 °C`, `18 °F`."""
    scale = own_scale(binder)
    shown = celsius * _F_PER_C if scale == "F" else celsius
    return _("{number} °{scale}").format(number=number_text(binder, shown), scale=scale)


def typed_degrees(binder: Binder, text: str) -> float:
    """A difference in °C of `10`, `10 °C`, `18 F`; a bare number is in the binder's own scale."""
    plain = text.strip().replace("°", " ").replace("º", " ")
    scale = plain[-1:].upper() if plain[-1:].upper() in {"C", "F"} else own_scale(binder)
    number = typed_number(binder, plain.rstrip("cCfF").strip())
    return round(number / _F_PER_C, 6) if scale == "F" else number
