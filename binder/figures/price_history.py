"""What a pack cost over time, prices by the unit a food is sold by, and what a general rise would do: a what-if."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

from binder.figures.memory import PRICES, remembered_from
from binder.figures.missing import Missing
from binder.figures.money_words import money
from binder.figures.price import pack_grams
from binder.figures.weight import COUNTED, grams_as_bought, unit_of
from binder.kitchen.amount_text import plural
from binder.kitchen.edits.records import with_values
from binder.kitchen.money import LARGEST_PRICE, minor_digits
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, UnknownUnitError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack, Quote
    from binder.kitchen.units import Unit

_LARGE = {"mg": "kg", "g": "kg", "kg": "kg", "oz": "lb", "lb": "lb"}
"""The weight that foods are priced by where their packs are weighed in another of its system."""

_POURED = {"ml": "l", "cl": "l", "dl": "l", "l": "l"}

_SMALL = 10
"""Minor units; a price below it is shown with a decimal more."""


@dataclass(frozen=True)
class UnitPrice:
    """What one of a unit costs, minor units."""

    minor: float
    unit: str


@dataclass(frozen=True)
class PricePoint:
    """What was asked for a pack on a day, minor units, and for one of the unit its food is sold by (None: not known).

    `change` is the part by which the pack had risen since the price before, None for the first.
    """

    on: date
    price: int
    each: UnitPrice | None
    change: float | None
    quote: Quote


@remembered_from(PRICES)
def price_history(binder: Binder, pack_id: str) -> tuple[PricePoint, ...]:
    """What was asked for a pack, the oldest first."""
    pack = binder.packs[pack_id]
    quotes = sorted(binder.quotes.where("pack", pack_id), key=lambda quote: (quote.on, quote.id))
    before: list[Quote | None] = [None, *quotes]
    return tuple(
        PricePoint(quote.on, quote.price, unit_price(binder, pack, quote), _risen(earlier, quote), quote)
        for earlier, quote in zip(before, quotes, strict=False)
    )


def _risen(before: Quote | None, now: Quote) -> float | None:
    return None if before is None or not before.price else now.price / before.price - 1


def unit_price(binder: Binder, pack: Pack, quote: Quote) -> UnitPrice | None:
    """What one of the unit that a food is sold by costs in a pack; None where the pack cannot be weighed by it."""
    unit_text, food = sold_by(binder, pack.food), binder.foods[pack.food]
    grams, each = pack_grams(binder, pack), grams_as_bought(binder, food, 1.0, unit_text)
    if isinstance(grams, Missing) or isinstance(each, Missing):
        return None
    return UnitPrice(quote.price / grams * each, unit_text)


def unit_price_text(binder: Binder, price: UnitPrice) -> str:
    """`$11.49 a lb`, `$0.69 each`."""
    small = 0 < price.minor < _SMALL
    shown = money(binder, price.minor, digits=minor_digits(binder.settings.currency) + 1 if small else None)
    if price.unit == COUNTED:
        return _("{price} each").format(price=shown)
    return _("{price} a {unit}").format(price=shown, unit=plural(price.unit, 1))


@remembered_from(PRICES)
def sold_by(binder: Binder, food_id: str) -> str:
    """The unit that packs of a food are compared by: a weight where any is weighed, else a volume, else the piece.

    Kilograms and litres where the packs are metric, pounds and fluid ounces where they are US or imperial.
    """
    food, packs = binder.foods[food_id], binder.packs.where("food", food_id)
    found: dict[Dimension, str] = {}
    for pack in packs:
        try:
            packed = unit_of(binder, food, pack.unit)
        except UnknownUnitError:
            continue
        found.setdefault(packed.dimension, _compared_by(binder, packed))
    by_kind = (found.get(kind) for kind in (Dimension.WEIGHT, Dimension.VOLUME, Dimension.PIECE))
    return next((unit_text for unit_text in by_kind if unit_text), _weighed_by(binder))


def _compared_by(binder: Binder, packed: Unit) -> str:
    metric = binder.settings.measures is Measures.METRIC
    if packed.dimension is Dimension.WEIGHT:
        return _LARGE.get(packed.key, _weighed_by(binder))
    if packed.dimension is Dimension.VOLUME:
        return _POURED.get(packed.key, "l" if metric else "fl oz")
    return packed.key


def _weighed_by(binder: Binder) -> str:
    return "kg" if binder.settings.measures is Measures.METRIC else "lb"


def raised_by(binder: Binder, percent: float) -> Binder:
    """What if every price rose by so many per cent (fell, below zero): a value beside the book, which is not touched.

    Each price comes to a whole minor unit, halves rounded up; none falls below nothing.
    """
    factor = 1 + Decimal(repr(percent)) / 100
    raised = ((quote.id, _raised(quote, factor)) for quote in binder.quotes.values())
    return binder.with_tables({"quotes": binder.quotes.with_changes(raised)})


def _raised(quote: Quote, factor: Decimal) -> Quote:
    bundle = quote.bundle_price
    return with_values(
        quote,
        price=_times(quote.price, factor),
        bundle_price=None if bundle is None else _times(bundle, factor),
    )


def _times(minor: int, factor: Decimal) -> int:
    exact = max(Decimal(0), minor * factor)
    return LARGEST_PRICE if exact >= LARGEST_PRICE else int(exact.quantize(Decimal(1), ROUND_HALF_UP))
