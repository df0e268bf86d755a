"""What a field of a record may hold: one declaration serves validation, SQL columns and the JSON Schema.

A field is declared as `Annotated[type, shape]`; the aliases below are the shapes that recur.
"""

from __future__ import annotations

import math
import unicodedata
from dataclasses import dataclass
from typing import Annotated

_KEPT_CONTROLS = {"\n", "\t"}


@dataclass(frozen=True)
class Text:
    """Text of at most `most` characters; `least` 1 means it must not be empty."""

    most: int
    least: int = 0

    def fits(self, value: str) -> bool:
        """Whether the text is neither too short nor too long."""
        return self.least <= len(value) <= self.most


SMALLEST_AMOUNT = 1e-6
"""What must be above zero is at least a millionth, so that what is divided by it can still be reckoned with."""


@dataclass(frozen=True)
class Number:
    """A finite number from `least` to `most`; where `open_below`, above `least` by SMALLEST_AMOUNT or more."""

    least: float
    most: float
    open_below: bool = False

    def fits(self, value: float) -> bool:
        """Whether `value` is finite and in range."""
        least = self.least + SMALLEST_AMOUNT if self.open_below else self.least
        return math.isfinite(value) and least <= value <= self.most


@dataclass(frozen=True)
class Words:
    """A list of short texts."""

    most_each: int = 200
    most: int = 200

    def fits(self, value: tuple[str, ...]) -> bool:
        """Whether every word is short and there are not too many."""
        return len(value) <= self.most and all(0 < len(word) <= self.most_each for word in value)


@dataclass(frozen=True)
class Reference:
    """The id of a record in `table`. `owner`: this record is a part of that one, and goes when it goes.

    `goes_too`: it is no part of that one, but is about nothing once that is gone, and then goes too.
    """

    table: str
    owner: bool = False
    goes_too: bool = False


def tidy(text: str) -> str:
    """Text as it is kept: Unicode NFC, CR LF as LF, without control characters or lone surrogates."""
    kept = text.replace("\r\n", "\n").replace("\r", "\n")
    if not kept.isprintable():  # taken out before composing: a control may part a letter from its accent
        kept = "".join(c for c in kept if c in _KEPT_CONTROLS or unicodedata.category(c) not in {"Cc", "Cs"})
    return unicodedata.normalize("NFC", kept)


LARGEST_AMOUNT = 1e7
"""No kitchen amount, in any unit, is larger than this: ten million of anything is a slip of the keyboard."""

Key = Annotated[str, Text(most=200, least=1)]
Name = Annotated[str, Text(most=300, least=1)]
ShortText = Annotated[str, Text(most=300)]
LongText = Annotated[str, Text(most=20_000)]
Count = Annotated[float, Number(0, LARGEST_AMOUNT)]
Positive = Annotated[float, Number(0, LARGEST_AMOUNT, open_below=True)]
Share = Annotated[float, Number(0, 1, open_below=True)]
Part = Annotated[float, Number(0, 1)]
Ratio = Annotated[float, Number(0, 100, open_below=True)]
Minutes = Annotated[float, Number(0, 60 * 24 * 366)]
Days = Annotated[int, Number(0, 36_600)]
Celsius = Annotated[float, Number(-200, 1000)]
Minor = Annotated[int, Number(0, 10**13)]
Position = Annotated[int, Number(0, 10**6)]
WordList = Annotated[tuple[str, ...], Words()]
