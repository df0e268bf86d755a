"""What a figure lacks, and where that is mended. A figure that lacks something is not known, and never counts as 0."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeGuard


class MissingKind(StrEnum):
    """Kinds of things a figure may lack."""

    PRICE = "price missing"
    CONVERSION = "cannot convert"
    YIELD = "yield missing"
    FORM = "form cannot be made"
    AMOUNT = "amount missing"
    DAY = "wrong day"


@dataclass(frozen=True, slots=True)
class Place:
    """A record that a sentence is about, and that a click leads to."""

    table: str
    id: str


@dataclass(frozen=True, slots=True)
class Missing:
    """One thing that is lacking, in a sentence that says how to mend it."""

    kind: MissingKind
    says: str
    place: Place


def is_known(value: float | Missing) -> TypeGuard[float]:
    """Whether a figure is a number."""
    return not isinstance(value, Missing)
