"""A pack typed in one go: `1 lb for 3.49 at Corner grocer`, and what else people write for it. Plain Python."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.words.figure_text import plain_money
from binder.desktop.words.typed import UnreadableError
from binder.kitchen.edits.foods import typed_price, typed_size
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder

_STORED = re.compile(r"^(?P<pack>.+?)(?:\s+at\s+(?P<store>.+))?$", re.IGNORECASE)
_FOR = re.compile(r"^(?P<size>.+?)\s+for\s+(?P<price>.+)$", re.IGNORECASE)
_MONEY = r"[^\w\s.,=:]{0,3}\s?\d[\d.,]*\s?[^\w\s.,=:]?"
_BESIDE = re.compile(rf"^(?P<size>.*[^\W\d_)][).]?)\s*[,=:]?\s+(?P<price>{_MONEY})$")
_NUMBER_ALONE = re.compile(rf"^{_MONEY}$")
_EXAMPLE_PRICE = 349


@dataclass(frozen=True)
class TypedPack:
    """Size and unit, and where they are typed the price in minor units and the name of the store."""

    size: float
    unit: str
    price: int | None
    store: str


def typed_pack(binder: Binder, text: str) -> TypedPack:
    """A pack as it is typed whole. Raises UnreadableError, or the error of the size or price that is none."""
    found = _STORED.match(" ".join(text.split()))
    if found is None:
        raise _asked_for_both(binder, text)
    size_text, price_text = _parted(found["pack"])
    if not price_text and _NUMBER_ALONE.match(size_text):
        raise _asked_for_both(binder, text)
    if price_text and _is_size(binder, price_text) and _NUMBER_ALONE.match(size_text):
        size_text, price_text = price_text, size_text
    size, unit = typed_size(binder, size_text)
    return TypedPack(size, unit, typed_price(binder, price_text) if price_text else None, found["store"] or "")


def _parted(pack: str) -> tuple[str, str]:
    """`1 lb for 3.49` or `1 lb 3.49` as size and price; no price where none is typed."""
    found = _FOR.match(pack) or _BESIDE.match(pack)
    return (found["size"], found["price"].strip()) if found else (pack, "")


def _is_size(binder: Binder, text: str) -> bool:
    """Whether a text is an amount with its unit, as `1 lb` is and `3.49` is not."""
    try:
        return typed_size(binder, text)[1] != "each"
    except BinderError:
        return False


def _asked_for_both(binder: Binder, text: str) -> UnreadableError:
    """A number alone may be a size or a price."""
    says = _("say how much is in the pack and what it costs, as 1 lb for {price}.")
    return UnreadableError(text, says.format(price=plain_money(binder, _EXAMPLE_PRICE)))
