"""Packs in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.portion_text import number_style
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack


def pack_label(binder: Binder, pack: Pack) -> str:
    """What a pack is called, or else its size: `1 lb`."""
    return pack.label or amount_text(Amount(pack.size, pack.size, pack.unit), number_style(binder))


def store_name(binder: Binder, pack: Pack) -> str | None:
    """The store that sells it; None where any does."""
    return binder.stores[pack.store].name if pack.store else None
