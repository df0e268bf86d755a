"""The binder's packs, stores and the producer's wishes as the numbers that the pack program takes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.pack_offers import Bundle, Offer, Terms
from binder.figures.price import priced_packs
from binder.kitchen.food import Food, Keeping

if TYPE_CHECKING:
    from binder.figures.price import PricedPack
    from binder.kitchen.binder import Binder

_SOON_GONE = 14
"""Days; what keeps no longer is thrown away after the shoot rather than kept. Common practice, no source."""


def offer_of(priced: PricedPack) -> Offer:
    """A priced pack as an offer."""
    pack, quote = priced.pack, priced.quote
    bundle = None
    if quote.bundle_packs is not None and quote.bundle_price is not None:
        bundle = Bundle(quote.bundle_packs, quote.bundle_price)
    return Offer(
        key=pack.id,
        food=pack.food,
        store=pack.store or "",
        grams=priced.grams,
        price=quote.price,
        bundle=bundle,
        by_weight=pack.by_weight,
        least=pack.least / pack.size * priced.grams,
    )


def buying_terms(binder: Binder, shoot_id: str) -> Terms:
    """At most how many stores, and what going to each costs or is worth avoiding."""
    stores = binder.stores.values()
    return Terms(
        most_stores=binder.shoots[shoot_id].most_stores,
        trip_costs={store.id: store.trip_cost for store in stores if store.trip_cost},
        avoided={store.id: store.avoided for store in stores if store.avoided},
    )


def is_perishable(food: Food) -> bool:
    """Whether what is left of an opened pack is thrown away rather than kept."""
    return food.keeping is Keeping.CHILLED or (food.keeps_days is not None and food.keeps_days <= _SOON_GONE)


def waste_rate(binder: Binder, shoot_id: str, food_id: str) -> float:
    """Minor units that a gram left over of a food counts as thrown away: the shoot's part of its best price a gram."""
    part = binder.shoots[shoot_id].waste_value
    packs = priced_packs(binder, food_id)
    return part * packs[0].per_gram if part and packs and is_perishable(binder.foods[food_id]) else 0.0
