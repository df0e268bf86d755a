"""What a food costs: the quote chosen for it, and its price per gram as purchased."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.memory import PRICES, remembered_from
from binder.figures.missing import Missing, MissingKind, Place, is_known
from binder.figures.weight import grams_as_bought
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack, Quote


@dataclass(frozen=True)
class PricedPack:
    """A pack with the quote chosen for it, and its grams as purchased."""

    pack: Pack
    quote: Quote
    grams: float

    @property
    def price(self) -> int:
        """Minor currency units for the whole pack."""
        return self.quote.price

    @property
    def per_gram(self) -> float:
        """Minor currency units a gram as purchased."""
        return self.quote.price / self.grams


def pack_grams(binder: Binder, pack: Pack) -> float | Missing:
    """Grams as purchased in one pack."""
    return grams_as_bought(binder, binder.foods[pack.food], pack.size, pack.unit)


def quote_of_pack(binder: Binder, pack: Pack) -> Quote | None:
    """The pack's pinned quote, or else its newest."""
    quotes = binder.quotes.where("pack", pack.id)
    if len(quotes) == 1:
        return quotes[0]
    return max(quotes, key=lambda quote: (quote.pinned, quote.on, quote.id), default=None)


@remembered_from(PRICES)
def priced_packs(binder: Binder, food_id: str) -> tuple[PricedPack, ...]:
    """The packs of a food that have a price and a weight, the cheapest per gram first."""
    found = []
    for pack in binder.packs.where("food", food_id):
        if not pack.on_sale:
            continue
        quote, grams = quote_of_pack(binder, pack), pack_grams(binder, pack)
        if quote is not None and is_known(grams):
            found.append(PricedPack(pack, quote, grams))
    return tuple(sorted(found, key=lambda priced: (priced.per_gram, priced.pack.id)))


@remembered_from(PRICES)
def chosen_pack(binder: Binder, food_id: str) -> PricedPack | Missing:
    """The pack whose price a recipe's share is worked out from: the pinned quote's, or else the newest quote's.

    Of two as new it is the cheaper a gram. Missing where no pack has a price, or none that has one can be weighed.
    """
    priced = priced_packs(binder, food_id)
    if priced:
        return max(priced, key=lambda one: (one.quote.pinned, one.quote.on, -one.per_gram))
    unweighed = [
        grams
        for pack in binder.packs.where("food", food_id)
        if quote_of_pack(binder, pack) and not is_known(grams := pack_grams(binder, pack))
    ]
    if unweighed:
        return unweighed[0]  # type: ignore[return-value]
    says = _("No price for {food}: add one.").format(food=binder.foods[food_id].name)
    return Missing(MissingKind.PRICE, says, Place("foods", food_id))


def buyable_packs(binder: Binder, food_id: str) -> tuple[PricedPack, ...]:
    """The packs a shopping list may choose from: all that are priced, or the pinned one alone."""
    priced = priced_packs(binder, food_id)
    return tuple(one for one in priced if one.quote.pinned) or priced
