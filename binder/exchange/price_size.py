"""How much is in a pack, as price lists write it: `500 g`, `6 x 330 ml`, `1 lb 8 oz`, `2 dozen`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.exchange.table_cell import RefusedRowError
from binder.kitchen.amount import parse_amount
from binder.kitchen.number import NUMBER_PATTERN
from binder.kitchen.units import UnknownUnitError, canonical_unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.settings import Measures

_DOZEN = 12
_OUNCES = 16
"""Ounces in a pound (NIST Handbook 44, appendix C; from memory)."""

_PACKS = re.compile(r"^(?P<count>\d{1,4})\s*[x×]\s*(?P<each>[\d½¼¾⅓⅔].*)$", re.IGNORECASE)
_DOZENS = re.compile(rf"^(?:(?P<count>{NUMBER_PATTERN})|an?|one)?\s*(?:dozens?|doz|dz)\.?$", re.IGNORECASE)
_COUNTED = re.compile(rf"^(?P<count>{NUMBER_PATTERN})\s*(?:ct|count)\.?$", re.IGNORECASE)
_POUNDS = re.compile(
    rf"^(?P<pounds>{NUMBER_PATTERN})\s*(?:lbs?|pounds?)\.?[\s,]*(?P<ounces>{NUMBER_PATTERN})\s*(?:oz|ozs|ounces?)\.?$",
    re.IGNORECASE,
)
_OVER = re.compile(r"^(?:\d+[ -])?(?P<over>\d+)\s*[/⁄]\s*#?(?P<under>\d+)")
_IN_GROUPS = re.compile(r"^\d{1,3}(?: \d{3})+(?![\d/⁄])")
_BARE = re.compile(rf"^{NUMBER_PATTERN}$")
_SPOON_OR_TONNE = re.compile(r"\d\s*[tT]\.?$")
_THOUSANDTHS = re.compile(r"^(?P<whole>[1-9]\d{0,2})[.,](?P<rest>\d{3})(?!\d)")
_COOKS_PARTS = {2, 3, 4, 8, 16}


@dataclass(frozen=True)
class SizeReader:
    """Reads sizes of packs in a binder's measures; `pieces` are words of the food's own. `exact`: no decimal comma."""

    measures: Measures
    pieces: frozenset[str] = frozenset()
    decimal_comma: bool = False
    exact: bool = False

    def read(self, said: str) -> tuple[float, str]:
        """How much of which unit. Raises RefusedRowError, or the error of the amount that it is none."""
        plain = " ".join(said.split())
        packs = _PACKS.match(plain)
        if packs:
            size, unit = self.read(packs["each"])
            return _above_zero(int(packs["count"]) * size, said), unit
        _require_one_meaning(plain)
        size, unit = self._in_words(plain) or self._amount(plain)
        if not self.exact and unit in {"g", "ml"}:
            _require_no_thousandths(plain, size, unit)
        return _above_zero(size, said), unit

    def _in_words(self, plain: str) -> tuple[float, str] | None:
        """`2 dozen`, `12 ct`, `1 lb 8 oz`, or a unit alone, which is one of it; None for any other."""
        pounds, dozens, counted = _POUNDS.match(plain), _DOZENS.match(plain), _COUNTED.match(plain)
        if pounds:
            return self._number(pounds["pounds"]) * _OUNCES + self._number(pounds["ounces"]), "oz"
        if dozens:
            return self._number(dozens["count"] or "1") * _DOZEN, "each"
        if counted:
            return self._number(counted["count"]), "each"
        if canonical_unit(plain) or plain.casefold() in self.pieces:
            return self._amount(f"1 {plain}")
        return None

    def _number(self, text: str) -> float:
        return self._amount(f"{text} each")[0]

    def _amount(self, plain: str) -> tuple[float, str]:
        try:
            amount = parse_amount(plain, self.measures, pieces=self.pieces, decimal_comma=self.decimal_comma)
        except UnknownUnitError as unknown:
            says = _("{unknown} Write its pack size as 500 g, 6 x 330 ml or 12 each.")
            raise RefusedRowError(says.format(unknown=unknown.says)) from unknown
        if amount.is_range or amount.high is None:
            raise _none_in_it(plain)
        return amount.high, amount.unit or "each"


def _above_zero(size: float, said: str) -> float:
    if not size:
        raise _none_in_it(said)
    return size


def _none_in_it(said: str) -> RefusedRowError:
    says = _("a pack cannot hold {size}. Write one size, above zero.")
    return RefusedRowError(says.format(size=said[:60]))


def _require_one_meaning(plain: str) -> None:
    """Raise RefusedRowError where a size may be understood in two ways, one of them many times the other."""
    over = _OVER.match(plain)
    if over and (int(over["under"]) not in _COOKS_PARTS or int(over["over"]) >= int(over["under"])):
        says = _("its pack size, {size}, may be a part or so many packs. Write packs as 12 x 1 lb.")
    elif _IN_GROUPS.match(plain):
        says = _("its pack size, {size}, has a blank in its number. Write 1500 g, or 2 x 500 g.")
    elif _SPOON_OR_TONNE.search(plain):
        says = _("its pack size, {size}, may be spoons or tonnes. Write tsp, tbsp or kg.")
    elif _BARE.match(plain) and plain.strip("0.,"):
        says = _("its pack size, {size}, has no unit. Write {size} g, or {size} each.")
    else:
        return
    raise RefusedRowError(says.format(size=plain[:60]))


def _require_no_thousandths(plain: str, size: float, unit: str) -> None:
    """Nobody packs thousandths of a gram: `1.500 g` is a thousand and more that another country wrote."""
    found = _THOUSANDTHS.match(plain)
    if found and size < 1000:  # noqa: PLR2004 - it was not read as thousands
        says = _("its pack size, {size}, may be {thousands} {unit} or a thousandth of it. Write it without the mark.")
        raise RefusedRowError(says.format(size=plain[:60], thousands=found["whole"] + found["rest"], unit=unit))
