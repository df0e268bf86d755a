"""Which files are price lists, by their names; what is in them tells the rest."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

PRICE_LIST_SUFFIXES = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".ods")
"""The last two cannot be read, which is said with what to save them as."""


def is_price_list(path: Path) -> bool:
    """Whether a file is called like a price list."""
    return path.suffix.lower() in PRICE_LIST_SUFFIXES
