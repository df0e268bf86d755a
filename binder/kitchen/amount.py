"""Amounts as a recipe gives them: a number or a range, with a unit; and how they are read from what a cook types."""

from __future__ import annotations

import re
from dataclasses import dataclass

from binder.kitchen.errors import BinderError
from binder.kitchen.number import FRACTION_SIGNS, NUMBER_PATTERN, parse_number
from binder.kitchen.settings import Measures
from binder.kitchen.units import canonical_unit, is_unit_word, unit
from binder.kitchen.wording import _


@dataclass(frozen=True)
class Amount:
    """`low` to `high` of a unit: equal for a plain amount, both None for one to taste. `unit` is empty for a count."""

    low: float | None
    high: float | None
    unit: str = ""

    @property
    def given(self) -> bool:
        """Whether there is a number at all."""
        return self.high is not None

    @property
    def is_range(self) -> bool:
        """Whether the two ends differ."""
        return self.low != self.high

    def times(self, factor: float) -> Amount:
        """The amount, both its ends, times a factor."""
        if self.low is None or self.high is None:
            return self
        return Amount(self.low * factor, self.high * factor, self.unit)


NO_AMOUNT = Amount(None, None)
"""The amount of a line to taste."""


class UnreadableAmountError(BinderError):
    """Text that begins with no amount a kitchen uses, or with one that cannot be."""

    def __init__(self, text: str, why: str) -> None:
        super().__init__(_("“{text}” is not an amount: {why}").format(text=text[:60], why=why))


_RANGE = re.compile(
    rf"^(?P<low>{NUMBER_PATTERN})(?:\s*(?:-|–|—|‒|\bto\b|\bor\b)\s*(?P<high>{NUMBER_PATTERN}))?(?P<rest>.*)$",
    re.DOTALL | re.IGNORECASE,
)
_NEGATIVE = re.compile(r"^[-−–]\s*\d")
_HALF = re.compile(r"^(?:a\s+)?half(?:\s+(?:an?|of\s+an?))?\s+(?P<rest>.+)$", re.DOTALL | re.IGNORECASE)
_ARTICLE = re.compile(r"^(?:an?|one)\s+(?P<rest>.+)$", re.DOTALL | re.IGNORECASE)
_PACKED = re.compile(
    rf"^(?:[x×]\s*)?\(?(?P<size>{NUMBER_PATTERN})[\s-]*(?P<unit>fl\.?\s?oz|[a-zA-Z]+)\.?\)?[\s-]+(?P<word>[a-zA-Z]+)\b(?P<rest>.*)$",
    re.DOTALL,
)
_UNIT_WORDS = re.compile(
    r"^\s*(?P<words>[^\W\d_#][^\W\d_]*\.?(?:\s+[^\W\d_]+\.?)?(?:\s+[^\W\d_]+\.?)?|#)(?P<rest>.*)$", re.DOTALL
)
_MOST_UNIT_WORDS = 3


def parse_amount(
    text: str, measures: Measures, *, pieces: frozenset[str] = frozenset(), decimal_comma: bool = False
) -> Amount:
    """The amount that `text` is, wholly. Raises UnreadableAmountError, UnreadableNumberError or UnknownUnitError."""
    amount, rest = leading_amount(text, pieces=pieces, decimal_comma=decimal_comma)
    if not amount.given:
        raise UnreadableAmountError(text, _("begin with a number, such as 2, 1½ or 0.5."))
    if rest:
        amount = Amount(amount.low, amount.high, unit(f"{amount.unit} {rest}".strip(), measures, pieces=pieces).key)
    return amount


def leading_amount(
    text: str, *, pieces: frozenset[str] = frozenset(), decimal_comma: bool = False
) -> tuple[Amount, str]:
    """The amount a text begins with, and the rest of it. NO_AMOUNT and the whole text where it begins with none."""
    plain = " ".join(text.split())
    if _NEGATIVE.match(plain):
        raise UnreadableAmountError(plain, _("it is below zero. Write how much goes in."))
    spoken = _spoken(plain, pieces)
    if spoken is not None:
        return spoken
    found = _RANGE.match(plain)
    if found is None:
        return NO_AMOUNT, plain
    low = parse_number(found["low"], decimal_comma=decimal_comma)
    high = low if found["high"] is None else parse_number(found["high"], decimal_comma=decimal_comma)
    if low > high:
        raise UnreadableAmountError(plain, _("the range runs from the larger to the smaller. Turn it round."))
    key, rest = _leading_unit(found["rest"], pieces)
    return Amount(low, high, key), rest


def _spoken(plain: str, pieces: frozenset[str]) -> tuple[Amount, str] | None:
    """`a pinch of`, `half a lemon`: an amount in words, or None."""
    half, article = _HALF.match(plain), _ARTICLE.match(plain)
    if half:
        key, rest = _leading_unit(half["rest"], pieces)
        return Amount(0.5, 0.5, key), rest
    if article:
        key, rest = _leading_unit(article["rest"], pieces)
        if key:
            return Amount(1.0, 1.0, key), rest
    return None


def _leading_unit(text: str, pieces: frozenset[str]) -> tuple[str, str]:
    """The unit a text begins with (empty where none) and the rest without an `of`."""
    packed = _PACKED.match(text.strip())
    if packed and is_unit_word(packed["word"]) and is_unit_word(packed["unit"]):
        key = canonical_unit(f"({packed['size']} {packed['unit']}) {packed['word']}")
        if key:
            return key, _without_of(packed["rest"])
    found = _UNIT_WORDS.match(text)
    if found is None:
        return "", text.strip()
    words = found["words"].split()
    for count in range(len(words), 0, -1):
        key = _unit_key(" ".join(words[:count]), pieces)
        if key:
            return key, _without_of(" ".join(words[count:]) + found["rest"])
    return "", text.strip()


def _unit_key(words: str, pieces: frozenset[str]) -> str:
    key = canonical_unit(words)
    if key:
        return key
    folded = words.casefold()
    return next((piece for piece in (folded, folded.removesuffix("s")) if piece in pieces), "")


def _without_of(rest: str) -> str:
    stripped = rest.strip()
    return stripped[3:].lstrip() if stripped.casefold().startswith("of ") else stripped


def begins_like_an_amount(text: str) -> bool:
    """Whether a text begins with a digit or a fraction."""
    return bool(text) and (text[0].isdigit() or text[0] in FRACTION_SIGNS)
