"""An answer for programs: one JSON document on standard output, the same bytes for the same binder.

- Money is a decimal string in major units. Money that is asked or paid (a price, a cap, spend) has exactly the
  currency's own digits: "3.49". Money that is worked out (a cost, headroom) has at least these and up to nine more,
  rounded half up and without trailing zeros beyond the currency's own: "0.8175". With nine more, a cost over its cap
  (judged with a slack of a billionth) is the greater of the two as a string too.
- Weights are grams, to a millionth. What is not known is null, with the reasons in a list `missing` beside it.
"""

from __future__ import annotations

import json
import math
import sys
from decimal import ROUND_HALF_UP, Context, Decimal
from typing import TYPE_CHECKING

from binder.kitchen.money import minor_digits

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot

Answer = dict[str, object]

_DIGITS_WORKED_OUT = 9
_WIDE = Context(prec=1200)
"""Wide enough for every digit of any finite float."""


def answer_of(binder: Binder, shoot: Shoot, **figures: object) -> Answer:
    """What every answer begins with, and after it its own figures."""
    return {"binder": binder.settings.name, "shoot": shoot.name, "currency": binder.settings.currency, **figures}


def print_answer(answer: Answer) -> None:
    """Write an answer to standard output."""
    sys.stdout.write(json.dumps(answer, ensure_ascii=False, indent=2, allow_nan=False) + "\n")


def paid(minor: int | None, currency: str) -> str | None:
    """Minor units that are asked or paid, with the currency's own digits."""
    if minor is None:
        return None
    digits = minor_digits(currency)
    return f"{Decimal(minor).scaleb(-digits, _WIDE):.{digits}f}"


def worked_out(minor: float | None, currency: str) -> str | None:
    """Minor units that a figure came to, unrounded as far as it matters."""
    if minor is None or not math.isfinite(minor):
        return None
    digits = minor_digits(currency)
    finest = Decimal(1).scaleb(-digits - _DIGITS_WORKED_OUT)
    value = Decimal(minor).scaleb(-digits, _WIDE).quantize(finest, ROUND_HALF_UP, _WIDE)
    whole, _point, decimals = f"{_WIDE.plus(value):f}".partition(".")
    kept = decimals.rstrip("0").ljust(digits, "0")
    return f"{whole}.{kept}" if kept else whole


def weighed(grams: float | None) -> float | None:
    """Grams to a millionth."""
    return None if grams is None or not math.isfinite(grams) else round(grams, 6) + 0.0
