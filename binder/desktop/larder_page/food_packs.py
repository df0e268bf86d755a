"""The packs of one food and what was asked for them when. A new one is typed whole: 1 lb for 3.49 at Corner grocer."""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_facts import food_shown, is_own
from binder.desktop.larder_page.food_list import price_of
from binder.desktop.larder_page.pack_history import history_rows
from binder.desktop.larder_page.pack_terms import (
    deposit_cell,
    is_offer,
    offer_cell,
    set_deposit,
    set_offer,
    set_sold,
    set_source,
    sold_cell,
    source_cell,
)
from binder.desktop.larder_page.typed_pack import typed_pack
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, key_of
from binder.desktop.sheet.sheet import CellName, PlainSheet, record_of
from binder.desktop.words.figure_text import date_text, plain_money
from binder.desktop.words.typed import UnreadableError, typed_choice, typed_date
from binder.figures.buying_words import pack_size
from binder.figures.date_text import DateForm
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money
from binder.figures.price import PricedPack, chosen_pack, pack_grams, quote_of_pack
from binder.figures.price_history import unit_price, unit_price_text
from binder.kitchen.change import Change, apply, changed, joined
from binder.kitchen.edits.foods import (
    add_pack,
    add_quote,
    add_store,
    pin_quote,
    set_pack,
    set_price,
    typed_price,
    typed_size,
)
from binder.kitchen.edits.records import remove, set_fields, with_values
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack, Quote

ADD_PACK, TERMS = "add:pack", "terms"
_DATED = re.compile(r"^(?P<price>.+?)\s+(?:on\s+(?P<on>.+)|(?P<today>today))$", re.IGNORECASE)


class FoodPacks(PlainSheet):
    """The subject is the key of a food's row.

    Under each pack stand the terms it is sold on, and its other prices, the newest first.
    """

    @property
    def name(self) -> str:
        return _("Packs and prices")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("size", _("pack"), characters=8, stretch=1),
            Column("label", _("label"), characters=7, stretch=1),
            Column("store", _("store"), characters=12, stretch=2),
            Column(
                "price",
                _("price"),
                characters=7.5,
                align=Align.RIGHT,
                tip=_("A new price: 3.79 today, or 3.79 on a date; an offer: 3 for 4.50"),
            ),
            Column("on", _("as of"), characters=12),
            Column("per_unit", _("comes to"), characters=10, stretch=1, align=Align.RIGHT),
            Column("pinned", _("chosen"), characters=6.5, tip=_("Pin a price to choose it before all newer ones")),
        )

    def rows(self, sight: Sight) -> list[Row]:
        food = food_shown(sight)
        if food is None or not is_own(sight):
            return []
        rows = [row for pack in sight.binder.packs.where("food", food.id) for row in _pack_rows(sight.binder, pack)]
        return [*rows, _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, place = sight.binder, record_of(row)
        if row == ADD_PACK:
            return _typed_whole(sight, text)
        if place.table == "quotes":
            return _edit_quote(binder, binder.quotes[place.id], column, text)
        pack = binder.packs[place.id]
        if place.table == TERMS:
            return _edit_terms(binder, pack, column, text)
        return _edit_pack(binder, pack, column, text)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        binder = sight.binder
        named = dict.fromkeys(record_of(row).id for row in rows if record_of(row).table in {"packs", TERMS})
        packs = [binder.packs[key] for key in named]
        gone = {pack.id for pack in packs}
        quotes = [binder.quotes[record_of(row).id] for row in rows if record_of(row).table == "quotes"]
        parts = [*packs, *(quote for quote in quotes if quote.pack not in gone)]
        one = _("Remove a pack") if packs else _("Remove a price")
        label = ngettext("{one}", "Remove {count} packs and prices", len(parts)).format(one=one, count=len(parts))
        return remove(label, binder, *parts) if parts else None


def cell_of_pack(pack: str, field: str) -> CellName:
    """Where a field of a pack, or of the price chosen of it, is typed."""
    if field in _AMONG_TERMS:
        return CellName(f"{TERMS}:{pack}", _AMONG_TERMS[field])
    return CellName(f"packs:{pack}", {"unit": "size"}.get(field, field))


def cell_of_quote(quote: str, field: str) -> CellName:
    """Where a field of a price is typed that is not the one chosen."""
    columns = {"bundle_packs": "size", "bundle_price": "size", "source": "store"}
    return CellName(f"quotes:{quote}", columns.get(field, field))


_AMONG_TERMS = {
    **dict.fromkeys(("by_weight", "least", "on_sale"), "size"),
    "deposit": "store",
    **dict.fromkeys(("bundle_packs", "bundle_price"), "price"),
    "source": "per_unit",
}
"""The columns, in the row of terms, of the fields that stand there."""


def _pack_rows(binder: Binder, pack: Pack) -> list[Row]:
    chosen = quote_of_pack(binder, pack)
    size = pack_size(binder, pack)
    stores = tuple(store.name for store in binder.stores.values())
    store = binder.stores[pack.store].name if pack.store else ""
    cells = (
        Cell(size, edit=size),
        Cell(pack.label, edit=pack.label, placeholder="–", folds=True),
        Cell(store, edit=store, placeholder=_("any store"), choices=stores, folds=True),
        *_price_cells(binder, pack, chosen),
    )
    place = Place("packs", pack.id)
    older = [quote for quote in binder.quotes.where("pack", pack.id) if chosen is not None and quote.id != chosen.id]
    rest = [_quote_row(binder, pack, quote) for quote in sorted(older, key=lambda quote: quote.on, reverse=True)]
    head = [Row(key_of(place), cells, place=place, rule=False), _terms_row(binder, pack, chosen, place)]
    return [*head, *history_rows(binder, pack), *rest]


def _terms_row(binder: Binder, pack: Pack, chosen: Quote | None, place: Place) -> Row:
    """What holds for the pack, and for the price that is chosen of it."""
    of_quote = (NOTHING,) * 4
    if chosen is not None:
        of_quote = (offer_cell(binder, chosen), NOTHING, source_cell(chosen), NOTHING)
    cells = (sold_cell(binder, pack), NOTHING, deposit_cell(binder, pack), *of_quote)
    return Row(f"{TERMS}:{pack.id}", cells, place=place, spans=((0, 2), (3, 2), (5, 2)), lines=1.3)


def _edit_pack(binder: Binder, pack: Pack, column: str, text: str) -> Change:
    if column in {"price", "on", "pinned"}:
        return _edit_price(binder, pack, column, text)
    if column == "size":
        size, unit = typed_size(binder, text)
        return set_pack(binder, pack, size=size, unit=unit)
    return _set_store(binder, pack, text) if column == "store" else _set_label(binder, pack, text)


def _edit_terms(binder: Binder, pack: Pack, column: str, text: str) -> Change:
    if column == "size":
        return set_sold(binder, pack, text)
    if column == "store":
        return set_deposit(binder, pack, text)
    quote = quote_of_pack(binder, pack)
    if quote is None:
        raise UnreadableError(text, _("add a price first."))
    return set_offer(binder, quote, text) if column == "price" else set_source(binder, quote, text)


def _price_cells(binder: Binder, pack: Pack, quote: Quote | None) -> tuple[Cell, Cell, Cell, Cell]:
    if quote is None:
        nothing = Cell(edit="", placeholder=_("add one"))
        return nothing, Cell(edit="", placeholder="–"), Cell(_("no price"), mark=Mark.UNKNOWN), NOTHING
    grams = pack_grams(binder, pack)
    if isinstance(grams, Missing):
        comes_to = Cell(_("cannot weigh"), mark=Mark.UNKNOWN, tip=grams.says)
    else:
        each = unit_price(binder, pack, quote)
        comes_to = Cell(unit_price_text(binder, each) if each else price_of(binder, PricedPack(pack, quote, grams)))
    return (*_quote_cells(binder, quote), comes_to, _chosen_cell(binder, pack, quote))


def _quote_cells(binder: Binder, quote: Quote) -> tuple[Cell, Cell]:
    on = date_text(binder, quote.on, DateForm.DATE)
    price = Cell(money(binder, quote.price), edit=plain_money(binder, quote.price), tip=quote.source)
    return price, Cell(on, edit=quote.on.isoformat())


def _chosen_cell(binder: Binder, pack: Pack, quote: Quote) -> Cell:
    chosen = chosen_pack(binder, pack.food)
    counts = not isinstance(chosen, Missing) and chosen.quote.id == quote.id
    text = _("pinned") if quote.pinned else _("yes") if counts else ""
    return Cell(
        text,
        edit=text,
        choices=(_("pinned"), _("not pinned")),
        mark=Mark.WITHIN if counts else Mark.NONE,
        placeholder=" ",
    )


def _quote_row(binder: Binder, pack: Pack, quote: Quote) -> Row:
    place = Place("quotes", quote.id)
    of_quote = (offer_cell(binder, quote), NOTHING, source_cell(quote))
    cells = (*of_quote, *_quote_cells(binder, quote), NOTHING, _chosen_cell(binder, pack, quote))
    return Row(key_of(place), cells, place=place, spans=((0, 2),), lines=1.4)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a pack, such as 1 lb for 3.49 at Corner grocer"))
    return Row(ADD_PACK, (cell, *(NOTHING,) * 6), spans=((0, 7),), rule=False, adds=True)


def _edit_price(binder: Binder, pack: Pack, column: str, text: str) -> Change:
    """A price typed on a pack: of its chosen quote, or with a date a new one."""
    quote = quote_of_pack(binder, pack)
    if column == "price" and quote is not None and is_offer(text):
        return set_offer(binder, quote, text)
    if column == "price":
        dated = _DATED.match(text.strip())
        if dated or quote is None:
            day = typed_date(binder, dated["on"]) if dated and dated["on"] else None
            price = typed_price(binder, dated["price"] if dated else text)
            return add_quote(binder, pack, price=price, on=day or date.today())  # noqa: DTZ011 - the shop's own day
        return set_price(binder, quote, typed_price(binder, text))
    if quote is None:
        raise UnreadableError(text, _("add a price first."))
    return _edit_quote(binder, quote, column, text)


def _edit_quote(binder: Binder, quote: Quote, column: str, text: str) -> Change:
    if column == "price":
        return set_offer(binder, quote, text) if is_offer(text) else set_price(binder, quote, typed_price(binder, text))
    if column in {"size", "store"}:
        return set_offer(binder, quote, text) if column == "size" else set_source(binder, quote, text)
    if column == "on":
        day = typed_date(binder, text)
        if day is None:
            raise UnreadableError(text, _("a price has a date, such as 2026-11-06."))
        food = binder.foods[binder.packs[quote.pack].food]
        return set_fields(_("Set the date of a price of {food}").format(food=food.name), quote, on=day)
    pinned = bool(text.strip()) and typed_choice(
        text, {_("pinned"): True, _("not pinned"): False, _("yes"): quote.pinned}
    )
    return pin_quote(binder, quote, pinned=pinned)


def _set_label(binder: Binder, pack: Pack, text: str) -> Change:
    label = _("Edit a pack of {food}").format(food=binder.foods[pack.food].name)
    return changed(label, before=[pack], after=[with_values(pack, label=text.strip())])


def _set_store(binder: Binder, pack: Pack, text: str) -> Change:
    """A store by its name; one that is new is made with the same change."""
    made, store = _store(binder, text)
    chosen = set_pack(apply(binder, made) if made else binder, pack, store=store)
    return joined(chosen.label, [made, chosen]) if made else chosen


def _store(binder: Binder, text: str) -> tuple[Change | None, str | None]:
    name = text.strip()
    if not name:
        return None, None
    known = next((store.id for store in binder.stores.values() if store.name.casefold() == name.casefold()), None)
    if known is not None:
        return None, known
    made, store = add_store(binder, name)
    return made, store.id


def _typed_whole(sight: Sight, text: str) -> Change:
    binder, food = sight.binder, sight.binder.foods[record_of(sight.subject or "").id]
    typed = typed_pack(binder, text)
    made, store = _store(binder, typed.store)
    changes = [made] if made else []
    grown = apply(binder, made) if made else binder
    added, pack = add_pack(grown, food, size=typed.size, unit=typed.unit, store=store)
    changes.append(added)
    if typed.price is not None:
        changes.append(add_quote(apply(grown, added), pack, price=typed.price, on=date.today()))  # noqa: DTZ011
    return joined(added.label, changes)
