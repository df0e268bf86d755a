"""The latest of a figure that may take a while: what was last worked out, and whether the binder has gone on since."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")


@dataclass
class Latest(Generic[T]):
    """A figure, None before the first; `stale` while the next is being worked out."""

    value: T | None = None
    stale: bool = False
