"""Money: minor currency units inside, the locale's own writing outside; the one place that reads and writes it."""

from __future__ import annotations

import functools
import math
import re
import unicodedata
from decimal import ROUND_HALF_UP, Context, Decimal, localcontext

from binder.kitchen.errors import BinderError
from binder.kitchen.locale import known_locale
from binder.kitchen.wording import _

LARGEST_PRICE = 10**13
"""Minor units; beyond it a price is a slip of the keyboard."""

_EXACT = Context(prec=400, rounding=ROUND_HALF_UP)
"""Room for every digit of any float, so that what is rounded is rounded once."""


class UnreadablePriceError(BinderError):
    """Text that is no price."""

    def __init__(self, text: str, why: str) -> None:
        super().__init__(_("“{text}” is not a price: {why}").format(text=text[:60], why=why))


class UnknownCurrencyError(BinderError):
    """A currency code that ISO 4217 (as Babel's CLDR data has it) does not list."""

    def __init__(self, code: str) -> None:
        super().__init__(
            _("“{code}” is not a currency. Use a code of ISO 4217, such as USD or EUR.").format(code=code[:20])
        )


@functools.cache
def minor_digits(currency: str) -> int:
    """Decimals of a currency: 2 for USD, 0 for JPY, 3 for KWD (ISO 4217, from Babel's CLDR data)."""
    from babel.core import get_global
    from babel.numbers import get_currency_precision

    if currency not in get_global("all_currencies"):
        raise UnknownCurrencyError(currency)
    return int(get_currency_precision(currency))


@functools.cache
def _marks(locale: str) -> tuple[str, str]:
    """The decimal and the grouping mark of a locale; a point and a comma where it is not known."""
    from babel.numbers import get_decimal_symbol, get_group_symbol

    known = known_locale(locale)
    return get_decimal_symbol(known), get_group_symbol(known)


def uses_decimal_comma(locale: str) -> bool:
    """Whether the locale writes 0,5 for a half."""
    return _marks(locale)[0] == ","


def money_text(minor: float, currency: str, locale: str, *, digits: int | None = None) -> str:
    """An amount of minor units as the locale writes money, halves rounded up, with `digits` decimals (None: its own).

    Raises UnknownCurrencyError.
    """
    # Nothing is not below nothing: -0.0 is written as 0.0.
    return _written(minor + 0.0, currency, locale, minor_digits(currency) if digits is None else digits)


@functools.lru_cache(maxsize=1 << 15)
def _written(minor: float, currency: str, locale: str, shown: int) -> str:
    """Money as text; a page shows hundreds of amounts, most of them those it showed before."""
    from babel.numbers import format_currency, get_currency_symbol

    amount, known = _rounded(minor, currency, shown), known_locale(locale)
    pattern = _pattern(known, shown, get_currency_symbol(currency, locale=known))
    with localcontext(_EXACT):
        return format_currency(amount, currency, format=pattern, locale=known, currency_digits=False)


def _rounded(minor: float, currency: str, digits: int) -> Decimal:
    """Minor units in whole ones of the currency, to so many decimals."""
    whole = Decimal(repr(float(minor))).scaleb(-minor_digits(currency))
    return whole.quantize(Decimal(1).scaleb(-digits), context=_EXACT)


@functools.cache
def _pattern(locale: object, digits: int, sign: str) -> str:
    """The locale's currency pattern with that many decimals, and a space where letters would touch digits.

    The space: Unicode Technical Standard 35, part 3, currency spacing, with the values of its root locale.
    """
    pattern: str = locale.currency_formats["standard"].pattern  # type: ignore[attr-defined]
    if not _is_symbol(sign[-1:]):
        pattern = re.sub(r"¤(?=[#0])", "¤\u00a0", pattern)
    if not _is_symbol(sign[:1]):
        pattern = re.sub(r"(?<=[#0])¤", "\u00a0¤", pattern)
    return re.sub(r"0(?:\.0+)?", "0" + ("." + "0" * digits if digits else ""), pattern)


def _is_symbol(character: str) -> bool:
    """Whether a character is one such as $ or €, which stands close to digits; so does what is not there."""
    return not character or unicodedata.category(character).startswith("S")


_MOST_MORE_DIGITS = 10
"""Decimals beyond the currency's own; figures alike in so many are alike in what `isclose` looks at."""


def honest_digits(minor: float, against: float, currency: str) -> int:
    """Decimals that keep a figure on its own side of what it is compared with: 1.752 beside 1.75 is not shown as 1.75.

    The currency's own where the two are one but for the last bits of a float.
    """
    places = minor_digits(currency)
    if math.isclose(minor, against, rel_tol=1e-9, abs_tol=1e-9):
        return places
    every = range(places, places + _MOST_MORE_DIGITS)
    differing = (digits for digits in every if _rounded(minor, currency, digits) != _rounded(against, currency, digits))
    return next(differing, every.stop)


def parse_money(text: str, currency: str, locale: str) -> int:
    """Minor units of a price as people type it: `$3.49`, `3,49 €`, `1.234,50`, `1'234.50`.

    Raises UnreadablePriceError.
    """
    plain = _without_currency(text, currency, locale)
    if not re.fullmatch(r"[0-9.,'’ \u00a0\u202f]*[0-9][0-9.,'’ \u00a0\u202f]*", plain):
        raise UnreadablePriceError(text, _("write a number such as {price}.").format(price=_example(currency, locale)))
    value = Decimal(_plain_decimal(plain, locale, text))
    minor = (
        value.scaleb(minor_digits(currency)).quantize(Decimal(1), ROUND_HALF_UP)
        if value < LARGEST_PRICE
        else Decimal(LARGEST_PRICE)
    )
    if minor >= LARGEST_PRICE:
        raise UnreadablePriceError(text, _("it is more than anything costs. Write a smaller one."))
    return int(minor)


def _example(currency: str, locale: str) -> str:
    """A price with as many decimals as the currency has: `3.49`, `3,490`, `349`."""
    digits = minor_digits(currency)
    return f"3{_marks(locale)[0]}{'490'[:digits]}" if digits else "349"


def _without_currency(text: str, currency: str, locale: str) -> str:
    plain = text.strip()
    for mark in _currency_marks(currency, locale):
        plain = plain.removeprefix(mark).removesuffix(mark).strip()
    if plain.startswith(("-", "−")):
        raise UnreadablePriceError(text, _("a price is not below zero."))
    return plain


@functools.cache
def _currency_marks(currency: str, locale: str) -> tuple[str, ...]:
    """The code and the signs of a currency, as the locale and as its own countries write it."""
    from babel.core import UnknownLocaleError
    from babel.numbers import get_currency_symbol

    marks = {currency: None}
    for where in (locale, "en_US", "en_CA"):
        try:
            sign = get_currency_symbol(currency, locale=where)
        except (UnknownLocaleError, ValueError):
            continue
        marks |= {sign: None, "$": None} if sign.endswith("$") else {sign: None}
    return tuple(sorted(marks, key=len, reverse=True))


_IN_GROUPS = re.compile(r"^\d{1,3}(?:[.,]\d{2,3})*[.,]\d{3}$")
"""Groups of three, or of two as India writes them, the last of three."""


_PARTED = re.compile(r"\d['’ \u00a0\u202f]+\d")
_PARTED_IN_GROUPS = re.compile(r"^\d{1,3}(?:['’ \u00a0\u202f]\d{2,3})*['’ \u00a0\u202f]\d{3}(?:[.,]\d*)?$")
"""Digits parted by a blank or an apostrophe, as France and Switzerland group them; `3 49` is no thousand."""


def _plain_decimal(plain: str, locale: str, text: str) -> str:
    """`plain` with a point for its decimal mark and no grouping."""
    if _PARTED.search(plain) and not _PARTED_IN_GROUPS.match(plain):
        raise UnreadablePriceError(text, _("what parts its digits is neither a point nor a comma. Take it out."))
    bare = re.sub(r"['’ \u00a0\u202f]", "", plain)
    last = max(bare.rfind("."), bare.rfind(","))
    if last < 0:
        return bare
    mark, rest = bare[last], bare[last + 1 :]
    both = "." in bare and "," in bare
    decimal_mark = _marks(locale)[0]
    thousands = mark != decimal_mark and len(rest) == 3 and not bare.startswith("0")  # noqa: PLR2004
    grouping = bare.count(mark) > 1 or (not both and thousands)
    whole = re.sub(r"[.,]", "", bare[:last])
    grouped = bare if grouping else bare[:last]
    if (both and bare.count(mark) > 1) or (re.search("[.,]", grouped) and not _IN_GROUPS.match(grouped)):
        raise UnreadablePriceError(text, _("its points and commas cannot be told apart."))
    return whole + rest if grouping else f"{whole or '0'}.{rest or '0'}"
