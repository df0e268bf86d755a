"""A sum written out: every row rounded so that the rows shown add up to the total shown, and the total does not lie."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base_cost import divided
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.money import honest_digits, minor_digits
from binder.kitchen.number import in_decimals
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder

MOST_ROWS = 40
"""As many lines as stand on one sheet beneath a heading and a verdict."""

_EXACT = Context(prec=400, rounding=ROUND_HALF_UP)
_MOST_DIGITS = 10


class Measure(StrEnum):
    """What a figure counts: minor currency units, minutes or grams."""

    MONEY = "money"
    MINUTES = "minutes"
    GRAMS = "grams"


@dataclass(frozen=True)
class Row:
    """One line of a sum: what it is of, how much as shown (minor units, minutes or grams), and that in words."""

    text: str
    amount: float
    shown: str


@dataclass(frozen=True)
class Scale:
    """To how many decimals a figure and all that stands beside it is shown."""

    measure: Measure
    digits: int

    def steps(self, binder: Binder, value: float) -> int:
        """A figure in whole steps of the last digit shown, halves rounded up."""
        return int(Decimal(repr(float(value))).scaleb(self._shift(binder)).quantize(Decimal(1), context=_EXACT))

    def value(self, binder: Binder, steps: int) -> float:
        """So many steps as minor units, minutes or grams."""
        return float(Decimal(steps).scaleb(-self._shift(binder)))

    def _shift(self, binder: Binder) -> int:
        return self.digits - (minor_digits(binder.settings.currency) if self.measure is Measure.MONEY else 0)

    def shown(self, binder: Binder, value: float) -> str:
        """A figure in words: `$1.746`, `25 min`, `812 g`."""
        if self.measure is Measure.MONEY:
            return money(binder, value, digits=self.digits)
        mark = number_style(binder).decimal_mark
        plain = in_decimals(abs(value), digits=self.digits, decimal_mark=mark)
        unit = _("{number} min") if self.measure is Measure.MINUTES else _("{number} g")
        return unit.format(number=f"−{plain}" if value < 0 else plain)


def honest_scale(binder: Binder, measure: Measure, value: float, against: float) -> Scale:
    """As many decimals as keep a figure on its own side of what it is held against."""
    if measure is Measure.MONEY:
        return Scale(measure, honest_digits(value, against, binder.settings.currency))
    least = 1 if measure is Measure.MINUTES else 0
    if math.isclose(value, against, rel_tol=1e-9, abs_tol=1e-9):
        return Scale(measure, least)
    every = (Scale(measure, digits) for digits in range(least, _MOST_DIGITS))
    differing = (one for one in every if one.steps(binder, value) != one.steps(binder, against))
    return next(differing, Scale(measure, _MOST_DIGITS))


def added_up(
    binder: Binder, rows: Sequence[tuple[str, float]], total: float, scale: Scale, *, most: int = MOST_ROWS
) -> tuple[Row, ...]:
    """The rows of a sum, `most` of them at most (the smallest together in one), which as shown add up to the total.

    What is less than the last digit shown is not shown as nothing.
    """
    kept = _joined(rows, most)
    steps = divided(scale.steps(binder, total), [max(0.0, amount) for _text, amount in kept])
    values = [scale.value(binder, one) for one in steps]
    least = _("under {least}").format(least=scale.shown(binder, scale.value(binder, 1)))
    return tuple(
        Row(text, value, least if amount > 0 and not value else scale.shown(binder, value))
        for (text, amount), value in zip(kept, values, strict=True)
    )


def _joined(rows: Sequence[tuple[str, float]], most: int) -> list[tuple[str, float]]:
    """The rows in their order, the smallest of too many put together at the end."""
    if len(rows) <= most:
        return list(rows)
    largest = sorted(range(len(rows)), key=lambda at: -rows[at][1])
    kept, others = sorted(largest[: most - 1]), largest[most - 1 :]
    text = ngettext("{count} other", "{count} others", len(others)).format(count=len(others))
    return [*(rows[at] for at in kept), (text, sum(rows[at][1] for at in others))]
