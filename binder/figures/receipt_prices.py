"""The price book brought up to date from a shoot's receipts, in one change."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.figures.old_prices import priced_for
from binder.figures.receipts import asked_for
from binder.kitchen.change import Change, changed
from binder.kitchen.edits.identity import new_id
from binder.kitchen.money import LARGEST_PRICE
from binder.kitchen.price import Quote
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack

_LONGEST = 300
"""Characters of a source."""


def prices_from_receipts(binder: Binder, shoot_id: str) -> Change:
    """Put what was paid for each pack into the price book, for the day it was bought on; empty where it is all there.

    Several receipts of one pack on one day give their mean. An offer on several packs that a receipt confirms stays.
    So little of a pack that all of it would cost more than anything does gives no price.
    """
    name = binder.shoots[shoot_id].name
    source = _("receipt of {shoot}").format(shoot=name)[:_LONGEST]
    quotes = [_quote(binder, receipt, source) for receipt in _receipts(binder, shoot_id)]
    before = [binder.quotes[quote.id] for quote in quotes if quote.id in binder.quotes]
    return changed(_("Take prices from the receipts of {shoot}").format(shoot=name), before=before, after=quotes)


@dataclass(frozen=True)
class _Receipt:
    """So many of a pack on a day, and what was paid for them in minor units."""

    pack: Pack
    on: date
    paid: int
    count: float


def _receipts(binder: Binder, shoot_id: str) -> Iterator[_Receipt]:
    totals: dict[tuple[str, date], tuple[int, float]] = {}
    otherwise = priced_for(binder, shoot_id)
    for one in binder.purchases.where("shoot", shoot_id):
        day = one.on or otherwise
        if one.pack is not None and one.paid is not None and one.count > 0 and day is not None:
            paid, count = totals.get((one.pack, day), (0, 0.0))
            totals[(one.pack, day)] = (paid + one.paid, count + one.count)
    for (pack, day), (paid, count) in totals.items():
        if paid <= LARGEST_PRICE * count:
            yield _Receipt(binder.packs[pack], day, paid, count)


def _quote(binder: Binder, receipt: _Receipt, source: str) -> Quote:
    """What a receipt says of a pack: the price asked before where it bears that out, else what one of them came to."""
    pack, quotes = receipt.pack, binder.quotes.where("pack", receipt.pack.id)
    until = [quote for quote in quotes if quote.on <= receipt.on]
    before = max(until, key=lambda quote: (quote.on, quote.id), default=None)
    same_day = before if before is not None and before.on == receipt.on else None
    if before is not None and asked_for(binder, pack, before, receipt.count) == receipt.paid:
        return before if same_day else replace(before, id=new_id("quote"), on=receipt.on, pinned=False, source=source)
    price = math.floor(receipt.paid / receipt.count + 0.5)
    if same_day is not None:
        return replace(same_day, price=price, bundle_packs=None, bundle_price=None, source=source)
    return Quote(id=new_id("quote"), pack=pack.id, price=price, on=receipt.on, source=source)
