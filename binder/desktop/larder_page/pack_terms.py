"""The terms a pack is sold on, as small cells: by weight or not at all, its deposit, its offer, who said its price."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Size
from binder.desktop.words.figure_text import number_text, plain_money
from binder.desktop.words.typed import UnreadableError, typed_money
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text
from binder.kitchen.edits.buying import remove_bundle, set_bundle, set_counter, set_on_sale
from binder.kitchen.edits.foods import set_pack, typed_price, typed_size
from binder.kitchen.edits.records import set_fields
from binder.kitchen.units import unit
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.price import Pack, Quote

_OFFER = re.compile(r"^(?P<packs>\d{1,4})\s*(?:for|×|x|@)\s*(?P<price>.+)$", re.IGNORECASE)
_LEAST = re.compile(r"^(?P<way>.*?)(?:\s+from\s+(?P<least>.+))?$", re.IGNORECASE)


def sold_cell(binder: Binder, pack: Pack) -> Cell:
    """In packs, by weight from so much up, or not on sale."""
    text = _sold_text(binder, pack)
    tip = _("In packs; by weight, from 200 g up; or not on sale")
    return _small(text, _("sold"), choices=(*_ways(), _("not on sale")), tip=tip)


def _ways() -> dict[str, bool]:
    return {_("in packs"): False, _("by weight"): True}


def _sold_text(binder: Binder, pack: Pack) -> str:
    if not pack.on_sale:
        return _("not on sale")
    if pack.by_weight and pack.least:
        least = amount_text(Amount(pack.least, pack.least, pack.unit), number_style(binder))
        return _("by weight from {least}").format(least=least)
    return next(word for word, by_weight in _ways().items() if by_weight is pack.by_weight)


def set_sold(binder: Binder, pack: Pack, text: str) -> Change:
    """The change that typing how a pack is sold is."""
    plain = text.strip().casefold()
    if plain and _("not on sale").startswith(plain):
        return set_on_sale(binder, pack, on_sale=False)
    found = _LEAST.match(" ".join(text.split()))
    way = (found["way"] if found else "").casefold()
    named = [by_weight for word, by_weight in _ways().items() if way and word.startswith(way)]
    if len(named) != 1 or (found and found["least"] and not named[0]):
        raise UnreadableError(text, _("write in packs, by weight, by weight from 200 g, or not on sale."))
    least = _in_units_of(binder, pack, found["least"]) if found and found["least"] else 0.0
    if pack.on_sale:
        return set_counter(binder, pack, by_weight=named[0], least=least)
    if (named[0], least) == (pack.by_weight, pack.least):
        return set_on_sale(binder, pack, on_sale=True)
    return set_pack(binder, pack, by_weight=named[0], least=least, on_sale=True)


def _in_units_of(binder: Binder, pack: Pack, text: str) -> float:
    """An amount as typed in the unit of a pack; a bare number is in that unit already."""
    size, typed = typed_size(binder, text)
    if typed in {"each", pack.unit}:
        return size
    given, own = (unit(one, binder.settings.measures) for one in (typed, pack.unit))
    if given.dimension is not own.dimension:
        raise UnreadableError(text, _("write it in {unit}, as the pack is.").format(unit=pack.unit))
    return size * given.factor / own.factor


def deposit_cell(binder: Binder, pack: Pack) -> Cell:
    """What comes back with the empty."""
    text = money(binder, pack.deposit) if pack.deposit else ""
    edit = plain_money(binder, pack.deposit) if pack.deposit else ""
    return _small(text, _("deposit"), edit=edit, tip=_("Comes back with the empty"))


def set_deposit(binder: Binder, pack: Pack, text: str) -> Change:
    """The change that typing a deposit is."""
    return set_pack(binder, pack, deposit=typed_money(binder, text) or 0)


def offer_cell(binder: Binder, quote: Quote) -> Cell:
    """So many packs for one price together."""
    text, edit = "", ""
    if quote.bundle_packs is not None and quote.bundle_price is not None:
        says = _("{count} for {price}")
        text = says.format(count=quote.bundle_packs, price=money(binder, quote.bundle_price))
        edit = says.format(count=quote.bundle_packs, price=plain_money(binder, quote.bundle_price))
    tip = _("Several packs for one price: {count} for {price}")
    example = tip.format(count=3, price=number_text(binder, 4.5))
    return _small(text, _("offer"), edit=edit, tip=example)


def is_offer(text: str) -> bool:
    """Whether what is typed as a price is an offer on several packs."""
    return _OFFER.match(text.strip()) is not None


def set_offer(binder: Binder, quote: Quote, text: str) -> Change:
    """The change that typing an offer is; an empty text takes it away."""
    if not text.strip():
        return remove_bundle(binder, quote)
    found = _OFFER.match(text.strip())
    if found is None:
        raise UnreadableError(text, _("write how many packs and their price together: 3 for 4.50."))
    return set_bundle(binder, quote, packs=int(found["packs"]), price=typed_price(binder, found["price"]))


def source_cell(quote: Quote) -> Cell:
    """Who or what said the price."""
    return _small(quote.source, _("source"), tip=quote.source or _("Who or what said this price"))


def set_source(binder: Binder, quote: Quote, text: str) -> Change:
    """The change that typing the source of a price is."""
    food = binder.foods[binder.packs[quote.pack].food]
    return set_fields(_("Edit a price of {food}").format(food=food.name), quote, source=text.strip())


def _small(text: str, label: str, *, tip: str, edit: str | None = None, choices: tuple[str, ...] = ()) -> Cell:
    begins = text if edit is None else edit
    return Cell(text, edit=begins, label=label, placeholder="–", choices=choices, size=Size.SMALL, tip=tip)
