"""What a row of a price list comes to, in words: put when it is read, as of fifty thousand rows few ever are."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from binder.figures.buying_words import pack_size
from binder.figures.date_text import date_text
from binder.kitchen.money import money_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date

    from binder.exchange.price_row import PriceRow
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack


class Entered(NamedTuple):
    """A row that was taken: the pack it is of, whether that is new, and the price known for it that day, if any."""

    read: PriceRow
    pack: Pack
    is_new: bool
    known: int | None


class PriceWords:
    """The words of a list's rows; sizes and prices recur, so each is written once."""

    def __init__(self, binder: Binder) -> None:
        self._binder = binder
        self._sizes: dict[tuple[float, str], str] = {}
        self._prices: dict[tuple[int, date], str] = {}

    def of(self, entered: Entered) -> str:
        """`Garlic, 500 g: $2.00 on Mar 14, 2026; a new pack`."""
        read, pack, is_new, known = entered
        said = _("{food}, {size}: {price}").format(
            food=read.food.name, size=self._size(pack), price=self._price(read.price, read.on)
        )
        if read.rounded:
            said = _("{pack}, rounded").format(pack=said)
        if is_new and read.store is not None and read.store.id not in self._binder.stores:
            return _("{pack}; a new pack at a new store, {store}").format(pack=said, store=read.store.name)
        if is_new:
            return _("{pack}; a new pack").format(pack=said)
        if known is None or known == read.price:
            return said
        return _("{pack}; it was {price}").format(pack=said, price=self._money(known))

    def _money(self, price: int) -> str:
        settings = self._binder.settings
        return money_text(price, settings.currency, settings.locale)

    def _size(self, pack: Pack) -> str:
        """The size of the pack, whatever it was written as in the list."""
        key = (pack.size, pack.unit)
        if key not in self._sizes:
            self._sizes[key] = pack_size(self._binder, pack)
        return self._sizes[key]

    def _price(self, price: int, on: date) -> str:
        """The price with its day."""
        key = (price, on)
        if key not in self._prices:
            says = _("{price} on {date}")
            self._prices[key] = says.format(price=self._money(price), date=date_text(self._binder, on))
        return self._prices[key]
