"""What the number format of a workbook's cell says: that its number is a day, or money of some currency.

The numbers of the formats that every workbook has are those of ECMA-376 part 1, 18.8.30 (from memory).
"""

from __future__ import annotations

import functools
import re

from binder.exchange.price_currency import currency_shown

_BUILT_IN_DATES = frozenset({*range(14, 23), *range(27, 37), *range(45, 48), *range(50, 59)})
_LITERAL = re.compile(r'"[^"]*"|\\.|[_*].')
_BRACKETED = re.compile(r"\[(?P<inside>[^\]]*)\]")
_DATE_SIGNS = re.compile(r"[dmyhs]", re.IGNORECASE)
_ELAPSED = re.compile(r"\[[hms]+\]", re.IGNORECASE)


@functools.lru_cache(maxsize=1024)
def is_date_format(number: int, code: str) -> bool:
    """Whether cells of a format hold days or times: by its code, or by its number where it has none."""
    if not code:
        return number in _BUILT_IN_DATES
    shown = _LITERAL.sub("", code).split(";")[0]
    bare = _BRACKETED.sub("", shown)
    return bool(_ELAPSED.search(shown) or (bare.casefold() != "general" and _DATE_SIGNS.search(bare)))


@functools.lru_cache(maxsize=1024)
def format_currency(code: str) -> str:
    """The currency a format shows beside its number, as a sign or a code: `€` for `[$€-407] #,##0.00`."""
    told = re.search(r"\[\$(?P<sign>[^\]-]+)", code)
    if told:
        return told["sign"].strip()
    literals = " ".join(quoted or escaped for quoted, escaped in re.findall(r'"([^"]*)"|\\(.)', code))
    return currency_shown(f"{literals} {_BRACKETED.sub('', _LITERAL.sub(' ', code))}")
