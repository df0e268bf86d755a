"""Prices that will be too old when they are needed, and the day that each price in use was asked on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.bought_uses import bought_by_food
from binder.figures.date_text import date_text
from binder.figures.memory import PLANS, remembered_from
from binder.figures.money_words import money, pack_words
from binder.figures.price import PricedPack, chosen_pack
from binder.figures.receipts import food_receipts
from binder.figures.shopping import shopping_list
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import date

    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class PriceInUse:
    """A price that the list or a dish counts on, and how many days old it is on the day it is reckoned from."""

    priced: PricedPack
    days: int
    too_old: bool

    @property
    def on(self) -> date:
        """The day it was asked on."""
        return self.priced.quote.on


def priced_for(binder: Binder, shoot_id: str) -> date | None:
    """The day that ages of prices are reckoned from: the shoot's, or else that of the newest price in the book."""
    newest = max((quote.on for quote in binder.quotes.values()), default=None)
    return binder.shoots[shoot_id].on or newest


@remembered_from(PLANS)
def prices_in_use(binder: Binder, shoot_id: str) -> tuple[PriceInUse, ...]:
    """Every price that the shopping list or the cost of a dish counts on, the oldest first."""
    day, limit = priced_for(binder, shoot_id), binder.shoots[shoot_id].quote_days
    found: dict[str, PricedPack] = {}
    for item in shopping_list(binder, shoot_id).items:
        found |= {one.priced.quote.id: one.priced for one in item.packs}
    for dish in binder.dishes.where("shoot", shoot_id):
        for food in bought_by_food(binder, dish.recipe):
            priced = chosen_pack(binder, food) if isinstance(food, str) else None
            if isinstance(priced, PricedPack):
                found[priced.quote.id] = priced
    ages = [(one, (day - one.quote.on).days if day else 0) for one in found.values()]
    in_use = [PriceInUse(one, days, days > limit) for one, days in ages]
    return tuple(sorted(in_use, key=lambda one: (-one.days, binder.foods[one.priced.pack.food].name.casefold())))


def old_prices(binder: Binder, shoot_id: str) -> tuple[PriceInUse, ...]:
    """The prices in use that are older than the shoot allows, of foods that have no receipt yet."""
    settled = {receipt.food for receipt in food_receipts(binder, shoot_id) if not receipt.waits}
    prices = prices_in_use(binder, shoot_id)
    return tuple(one for one in prices if one.too_old and one.priced.pack.food not in settled)


def old_price_text(binder: Binder, old: PriceInUse) -> str:
    """What is old, how old, and what to do about it."""
    says = _("{food}: {price} for {pack} was asked on {day}, {days} days before it is needed. Ask again.")
    return says.format(
        food=binder.foods[old.priced.pack.food].name,
        price=money(binder, old.priced.price),
        pack=pack_words(binder, old.priced.pack),
        day=date_text(binder, old.on),
        days=old.days,
    )


def as_of_text(binder: Binder, prices: Sequence[PriceInUse], quote_days: int) -> str:
    """Of which days prices are, and how many of them will be older than so many days when they are needed."""
    days = sorted(one.on for one in prices)
    first, last = (date_text(binder, day) for day in (days[0], days[-1]))
    says = _("Prices as of {day}.").format(day=last)
    if first != last:
        says = _("Prices as of {first} to {last}.").format(first=first, last=last)
    old = sum(one.too_old for one in prices)
    limit = ngettext("{count} day", "{count} days", quote_days).format(count=quote_days)
    if not old:
        return _("{says} None will be older than {limit}.").format(says=says, limit=limit)
    count = ngettext("{count} will be older than {limit}:", "{count} will be older than {limit}:", old)
    return f"{says} {count.format(count=old, limit=limit)}"


def asked_text(binder: Binder, one: PriceInUse) -> str:
    """A price and the day it was asked on: `tahini: $7.49, asked on Nov 16, 2026`."""
    return _("{food}: {price}, asked on {day}").format(
        food=binder.foods[one.priced.pack.food].name,
        price=money(binder, one.priced.price),
        day=date_text(binder, one.on),
    )
