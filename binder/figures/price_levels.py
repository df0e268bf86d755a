"""The binder as it would be at the lowest and at the highest prices: values beside the one that is edited."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.memory import PRICES, remembered_from
from binder.figures.missing import Missing
from binder.figures.price import chosen_pack, pack_grams, quote_of_pack
from binder.kitchen.edits.records import with_values

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack, Quote
    from binder.kitchen.table import Table


class PriceLevel(StrEnum):
    """Which of the prices on record a figure is worked out at."""

    LOWEST = "lowest"
    CHOSEN = "chosen"
    HIGHEST = "highest"


def at_level(binder: Binder, level: PriceLevel) -> Binder:
    """The binder with one quote a food pinned, for figures that take the share of a pack.

    Lowest: the cheapest a gram of what packs on sale are asked for now, or what is chosen where that is cheaper still.
    Highest: the dearest a gram on record for a pack on sale, however old.
    """
    return binder if level is PriceLevel.CHOSEN else binder.with_tables({"quotes": _one_a_food(binder, level)})


def packs_at_level(binder: Binder, level: PriceLevel) -> Binder:
    """The binder with one quote a pack pinned, for figures at the till, where packs are chosen among.

    Lowest: what each pack is asked for now. Highest: the most that was ever asked for it; a pack pinned stays the only
    one of its food.
    """
    return binder if level is PriceLevel.CHOSEN else binder.with_tables({"quotes": _one_a_pack(binder, level)})


@remembered_from(PRICES)
def _one_a_food(binder: Binder, level: PriceLevel) -> Table[Quote]:
    chosen = (_food_quote(binder, food, level) for food in {pack.food for pack in binder.packs.values()})
    return _pinned(binder, (quote for quote in chosen if quote is not None))


def _food_quote(binder: Binder, food: str, level: PriceLevel) -> Quote | None:
    rated = [(quote.price / grams, quote.id, quote) for quote, grams in _weighed(binder, food, level)]
    pick = min if level is PriceLevel.LOWEST else max
    return pick(rated, key=lambda one: one[:2], default=(0.0, "", None))[2]


def _weighed(binder: Binder, food: str, level: PriceLevel) -> Iterator[tuple[Quote, float]]:
    """The quotes of a food that a level may take, with the grams of their pack."""
    chosen = chosen_pack(binder, food)
    if not isinstance(chosen, Missing):
        yield chosen.quote, chosen.grams
    for pack in _on_sale(binder, food):
        grams = pack_grams(binder, pack)
        if not isinstance(grams, Missing):
            yield from ((quote, grams) for quote in _quotes(binder, pack, level))


def _quotes(binder: Binder, pack: Pack, level: PriceLevel) -> Iterable[Quote]:
    """What is asked for a pack now, or whatever was ever asked for it."""
    quotes = binder.quotes.where("pack", pack.id)
    return quotes if level is PriceLevel.HIGHEST else sorted(quotes, key=lambda quote: (quote.on, quote.id))[-1:]


def _on_sale(binder: Binder, food: str) -> list[Pack]:
    return [pack for pack in binder.packs.where("food", food) if pack.on_sale]


@remembered_from(PRICES)
def _one_a_pack(binder: Binder, level: PriceLevel) -> Table[Quote]:
    found = (_pack_quote(binder, pack, level) for pack in _bought_from(binder, level))
    return _pinned(binder, (quote for quote in found if quote is not None))


def _bought_from(binder: Binder, level: PriceLevel) -> Iterator[Pack]:
    """The packs that may be bought: all on sale, or at the highest prices only those pinned where some are."""
    for food in {pack.food for pack in binder.packs.values()}:
        packs = _on_sale(binder, food)
        pinned = [pack for pack in packs if (quote := quote_of_pack(binder, pack)) is not None and quote.pinned]
        yield from pinned if pinned and level is PriceLevel.HIGHEST else packs


def _pack_quote(binder: Binder, pack: Pack, level: PriceLevel) -> Quote | None:
    chosen = quote_of_pack(binder, pack)
    quotes = [*_quotes(binder, pack, level), *([chosen] if chosen else [])]
    pick = min if level is PriceLevel.LOWEST else max
    return pick(quotes, key=lambda quote: (quote.price, quote.id), default=None)


def _pinned(binder: Binder, chosen: Iterable[Quote]) -> Table[Quote]:
    """The quotes with those chosen pinned, and no others."""
    keys = {quote.id for quote in chosen}
    return binder.quotes.with_changes(
        (quote.id, with_values(quote, pinned=quote.id in keys))
        for quote in binder.quotes.values()
        if quote.pinned != (quote.id in keys)
    )
