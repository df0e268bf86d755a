"""Ids of new records."""

from __future__ import annotations

import re
import secrets
import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Container


def new_id(kind: str) -> str:
    """An id no one else makes, also not someone on another machine: `line-4f0c2a9d31be`."""
    return f"{kind}-{secrets.token_hex(6)}"


def readable_id(name: str, taken: Container[str]) -> str:
    """An id after a name, for records a person may meet in a JSON document: `harissa_paste`, `harissa_paste_2`."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().casefold()
    stem = re.sub(r"[^a-z0-9]+", "_", plain).strip("_")[:60] or new_id("food")
    candidates = (stem, *(f"{stem}_{number}" for number in range(2, 1000)))
    return next((key for key in candidates if key not in taken), new_id(stem))
