"""The packs of one food and what was asked for them when. A new one is typed whole: 1 lb for 3.49 at Corner grocer."""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_facts import food_shown, is_own
from binder.desktop.larder_page.food_list import price_of
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import date_text, money, pack_size, plain_money
from binder.desktop.words.typed import UnreadableError, typed_choice, typed_date
from binder.figures.missing import Missing, Place
from binder.figures.price import PricedPack, chosen_pack, pack_grams, quote_of_pack
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

ADD_PACK = "add:pack"
_WHOLE = re.compile(r"^(?P<size>.+?)(?:\s+for\s+(?P<price>.+?))?(?:\s+at\s+(?P<store>.+))?$", re.IGNORECASE)
_DATED = re.compile(r"^(?P<price>.+?)\s+(?:on\s+(?P<on>.+)|(?P<today>today))$", re.IGNORECASE)


class FoodPacks(PlainSheet):
    """The subject is the key of a food's row. Under each pack stand its other prices, the newest first."""

    @property
    def name(self) -> str:
        return _("Packs and prices")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("size", _("pack"), characters=10, stretch=1),
            Column("label", _("label"), characters=10, stretch=1),
            Column("store", _("store"), characters=12, stretch=2),
            Column(
                "price",
                _("price"),
                characters=8,
                align=Align.RIGHT,
                tip=_("A new price: 3.79 today, or 3.79 on a date"),
            ),
            Column("on", _("as of"), characters=12),
            Column("per_unit", _("comes to"), characters=10, align=Align.RIGHT),
            Column("pinned", _("chosen"), characters=7, tip=_("Pin a price to choose it before all newer ones")),
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
        if column in {"price", "on", "pinned"}:
            return _edit_price(binder, pack, column, text)
        if column == "size":
            size, unit = typed_size(binder, text)
            return set_pack(binder, pack, size=size, unit=unit)
        return _set_store(binder, pack, text) if column == "store" else _set_label(binder, pack, text)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        binder = sight.binder
        packs = [binder.packs[record_of(row).id] for row in rows if record_of(row).table == "packs"]
        gone = {pack.id for pack in packs}
        quotes = [binder.quotes[record_of(row).id] for row in rows if record_of(row).table == "quotes"]
        parts = [*packs, *(quote for quote in quotes if quote.pack not in gone)]
        one = _("Remove a pack") if packs else _("Remove a price")
        label = ngettext("{one}", "Remove {count} packs and prices", len(parts)).format(one=one, count=len(parts))
        return remove(label, binder, *parts) if parts else None


def _pack_rows(binder: Binder, pack: Pack) -> list[Row]:
    chosen = quote_of_pack(binder, pack)
    size = pack_size(binder, pack)
    stores = tuple(store.name for store in binder.stores.values())
    store = binder.stores[pack.store].name if pack.store else ""
    cells = (
        Cell(size, edit=size),
        Cell(pack.label, edit=pack.label, placeholder="–"),
        Cell(store, edit=store, placeholder=_("any store"), choices=stores),
        *_price_cells(binder, pack, chosen),
    )
    place = Place("packs", pack.id)
    older = [quote for quote in binder.quotes.where("pack", pack.id) if chosen is not None and quote.id != chosen.id]
    rest = [_quote_row(binder, pack, quote) for quote in sorted(older, key=lambda quote: quote.on, reverse=True)]
    return [Row(key_of(place), cells, place=place), *rest]


def _price_cells(binder: Binder, pack: Pack, quote: Quote | None) -> tuple[Cell, Cell, Cell, Cell]:
    if quote is None:
        nothing = Cell(edit="", placeholder=_("add one"))
        return nothing, Cell(edit="", placeholder="–"), Cell(_("no price"), mark=Mark.UNKNOWN), NOTHING
    grams = pack_grams(binder, pack)
    if isinstance(grams, Missing):
        comes_to = Cell(_("cannot weigh"), mark=Mark.UNKNOWN, tip=grams.says)
    else:
        comes_to = Cell(price_of(binder, PricedPack(pack, quote, grams)), tone=Tone.QUIET)
    return (*_quote_cells(binder, quote), comes_to, _chosen_cell(binder, pack, quote))


def _quote_cells(binder: Binder, quote: Quote) -> tuple[Cell, Cell]:
    on = date_text(binder, quote.on, "d MMM yyyy")
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
    cells = (NOTHING, NOTHING, NOTHING, *_quote_cells(binder, quote), NOTHING, _chosen_cell(binder, pack, quote))
    return Row(key_of(place), cells, place=place, lines=1.4)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a pack, such as 1 lb for 3.49 at Corner grocer"))
    return Row(ADD_PACK, (cell, *(NOTHING,) * 6), spans=((0, 7),), rule=False, adds=True)


def _edit_price(binder: Binder, pack: Pack, column: str, text: str) -> Change:
    """A price typed on a pack: of its chosen quote, or with a date a new one."""
    quote = quote_of_pack(binder, pack)
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
        return set_price(binder, quote, typed_price(binder, text))
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
    found = _WHOLE.match(text.strip())
    if found is None:
        raise UnreadableError(text, _("write a size and a price: 1 lb for 3.49."))
    size, unit = typed_size(binder, found["size"])
    made, store = _store(binder, found["store"] or "")
    changes = [made] if made else []
    grown = apply(binder, made) if made else binder
    added, pack = add_pack(grown, food, size=size, unit=unit, store=store)
    changes.append(added)
    if found["price"]:
        price = typed_price(binder, found["price"])
        changes.append(add_quote(apply(grown, added), pack, price=price, on=date.today()))  # noqa: DTZ011
    return joined(added.label, changes)
