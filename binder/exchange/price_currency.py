"""Which currency a price is written in, so that no euro is taken for a dollar."""

from __future__ import annotations

import functools
import re
from typing import TYPE_CHECKING

from binder.kitchen.money import UnreadablePriceError, parse_money

if TYPE_CHECKING:
    from collections.abc import Iterator

_SIGNS = "$¢£¤¥֏؋৲৳฿៛₠-⃀﷼﹩＄￠￡￥￦"
"""The characters that Unicode has for currencies (category Sc)."""

_LETTERED = ("kr", "kr.", "zł", "Kč", "Ft", "lei", "Fr", "Fr.", "Rs", "Rs.", "Rp", "руб.", "лв")
"""Currencies that are written in small letters (CLDR, from memory)."""

_SHOWN = re.compile(rf"(?<![A-Za-z])(?P<code>[A-Z]{{3}})(?![A-Za-z])|(?P<sign>[A-Z]{{0,3}}[{_SIGNS}])")


def currency_shown(text: str) -> str:
    """The first sign or ISO 4217 code of a currency in a text; empty where there is none."""
    return next(currencies_shown(text), "")


def currencies_shown(text: str) -> Iterator[str]:
    """Every sign and code of a currency in a text."""
    yield from (found[0] for found in _SHOWN.finditer(text) if found["sign"] or is_currency_code(found["code"]))
    yield from (word for word in text.split() if word in _LETTERED)


_CENTS = frozenset({"cent", "cents", "ct", "cts", "penny", "pence", "p", "c"})
"""What the small coins of a currency are called; prices are in whole ones."""


def money_named(note: str) -> str:
    """What a heading's note says of money: `EUR`, `€`, `euros`, `cents`; empty where it is about something else."""
    words = note.casefold().split()
    if currency_shown(note):
        return currency_shown(note)
    named = any(word in _CENTS or word in _names() or word.removesuffix("s") in _names() for word in words)
    return note if named else ""


@functools.cache
def _names() -> frozenset[str]:
    """What currencies are called in English, each without its country: `dollar`, `euro` (CLDR, by Babel)."""
    from babel.core import Locale

    return frozenset(name.casefold().split()[-1] for name in Locale("en").currencies.values() if "(" not in name)


def _is_called(mark: str, currency: str) -> bool:
    """Whether a word is the English name of a currency: `Dollars` or `US dollar` of USD."""
    from babel.core import Locale

    name = str(Locale("en").currencies.get(currency, "")).casefold()
    folded = mark.casefold()
    return bool(name) and {folded, folded.removesuffix("s")} & {name, name.split()[-1]} != set()


def is_currency_code(code: str) -> bool:
    """Whether ISO 4217 lists a code (as Babel's CLDR data has it)."""
    from babel.core import get_global

    return code in get_global("all_currencies")


@functools.lru_cache(maxsize=1024)
def is_own_currency(shown: str, currency: str, locale: str) -> bool:
    """Whether a sign or code means the binder's own currency, as money is read everywhere else."""
    mark = shown.strip()
    if mark.upper() == currency or _is_called(mark, currency):
        return True
    if any(sign.isdigit() for sign in mark) or not (currency_shown(mark) or any(sign.isalpha() for sign in mark)):
        return False
    try:
        return parse_money(f"{mark}1", currency, locale) > 0
    except UnreadablePriceError:
        return False


def other_currency(text: str, currency: str, locale: str) -> str:
    """The first sign or code in a text of a currency that is not the binder's own; empty where there is none."""
    return next((shown for shown in currencies_shown(text) if not is_own_currency(shown, currency, locale)), "")
