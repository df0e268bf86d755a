"""Money, parts of money and packs as sentences name them, with as many digits as it takes not to lie."""

from __future__ import annotations

import functools
import math
import re
from decimal import ROUND_HALF_UP, Context, Decimal, localcontext
from typing import TYPE_CHECKING

from binder.figures.portion_text import number_style
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.locale import known_locale
from binder.kitchen.money import honest_digits, money_text

if TYPE_CHECKING:
    from babel.core import Locale

    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack

_MOST_DIGITS = 6


def money(binder: Binder, minor: float, *, digits: int | None = None) -> str:
    """Minor units as the binder's locale writes money, with `digits` decimals (None: the currency's own)."""
    return money_text(minor, binder.settings.currency, binder.settings.locale, digits=digits)


def money_beside(binder: Binder, minor: float, against: float) -> str:
    """Minor units beside a figure they are compared with: 1.752 is never shown as the 1.75 it is above."""
    return money(binder, minor, digits=honest_digits(minor, against, binder.settings.currency))


def percent_text(binder: Binder, part: float) -> str:
    """A part of 1 as the locale writes per cent, a decimal below ten and more where it takes them to be seen.

    What is whole is written whole.
    """
    from babel.numbers import format_percent

    locale = known_locale(binder.settings.locale)
    pattern = _pattern(locale, _digits(abs(part) * 100))
    with localcontext(Context(prec=60, rounding=ROUND_HALF_UP)):
        return format_percent(Decimal(repr(float(part))), format=pattern, locale=locale)


def rate_text(binder: Binder, rate: float) -> str:
    """A rate of tax as the locale writes per cent, with all the digits it was set with: 8.25% is not rounded."""
    from babel.numbers import format_percent

    locale = known_locale(binder.settings.locale)
    percent = round(Decimal(repr(float(rate))) * 100, _MOST_DIGITS).normalize()
    decimals = max(0, -int(percent.as_tuple().exponent))
    return format_percent(percent / 100, format=_pattern(locale, decimals), locale=locale)


def _digits(percent: float) -> int:
    """None from ten per cent up and for whole ones, else one, or as many as show the first figure that counts."""
    whole = math.isclose(percent, round(percent), rel_tol=1e-12)
    if percent >= 10 or whole or percent < 10**-_MOST_DIGITS:  # noqa: PLR2004
        return 0
    return max(1, -math.floor(math.log10(percent)))


@functools.cache
def _pattern(locale: Locale, digits: int) -> str:
    plain: str = locale.percent_formats[None].pattern
    return re.sub("0(?=[^0]*$)", "0" + ("." + "0" * digits if digits else ""), plain)


def pack_words(binder: Binder, pack: Pack) -> str:
    """A pack by its label, or else by its size."""
    return pack.label or amount_text(Amount(pack.size, pack.size, pack.unit), number_style(binder))
