"""The rows of the list: a trip, a section, a line to buy or bought, and under what is bought its day and a note."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.desktop.buying_page.ticking import ends_line, grams_left, other_packs, purchase_of
from binder.desktop.buying_page.trip_days import own_trip
from binder.desktop.pictures.tick_box import TickBox
from binder.desktop.sheet.cell import NOTHING, Cell, Mark, Row, Size, Tone
from binder.desktop.words.figure_text import date_text, grams_parts, not_known, number_text, plain_money, store_name
from binder.figures.buying_words import not_had, offer_words, pack_text
from binder.figures.date_text import DateForm
from binder.figures.missing import Missing, MissingKind, Place
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.price import pack_grams, quote_of_pack
from binder.figures.receipts import asked_for
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.buying_page.buying_figures import ListLine
    from binder.figures.shopping import PackCount, ShoppingItem, ShoppingList
    from binder.figures.trips import TripPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Purchase
    from binder.kitchen.price import Pack

WIDTH = 10
_SHORT = 0.05
"""Grams; a need that is missed by less is met: the list shows tenths."""

_BESIDE = 26
"""Letters of a name, or of a pack and what is said of it, that a line of the narrowest window holds; more go below."""

TICKS, BOUGHT = "ticks", "bought"
"""What the tick of a row leads to, and the rows that say when something was bought."""


def trip_key(plan: TripPlan) -> str:
    """The key of the row of a trip."""
    return f"trip:{plan.store or ''}/{plan.on.isoformat() if plan.on else ''}"


def trip_row(binder: Binder, shoot: str, plan: TripPlan, *, first: bool) -> Row:
    """A day and a store, with what is fetched there in all."""
    own = own_trip(binder, shoot, plan)
    day = date_text(binder, plan.on)
    edit = (plan.on.isoformat() if plan.on else "") if plan.store else None
    tip = _("A day of your own") if own else _("The latest day that fits; type another to go then")
    cells = (
        NOTHING,
        Cell(day, edit=edit, size=Size.STRONG, placeholder=_("any day"), tip=tip),
        NOTHING,
        NOTHING,
        Cell(store_name(binder, plan.store), size=Size.STRONG),
        NOTHING,
        NOTHING,
        Cell(money(binder, plan.price), size=Size.STRONG),
        NOTHING,
        NOTHING,
    )
    place = Place("trips", own.id) if own else None
    return Row(trip_key(plan), cells, place=place, spans=((1, 3), (4, 3)), gap=0 if first else 4, lines=1.7)


def section_row(key: str, section: str) -> Row:
    """A section of the store."""
    cell = Cell(_(section), size=Size.SMALL, tone=Tone.QUIET)
    return Row(key, (NOTHING, cell, *(NOTHING,) * (WIDTH - 2)), spans=((1, 3),), lines=1.5, gap=1)


def line_rows(binder: Binder, shoot: str, line: ListLine, *, first: bool) -> list[Row]:
    """A pack to take, and where it is bought, when."""
    purchase = purchase_of(binder, shoot, line)
    if line.taken is None or line.taken.priced.pack.id not in binder.packs:
        return [_unknown(binder, line)]
    row = _pack_row(binder, shoot, line, purchase, first=first)
    if purchase is None or (ends_line(purchase) and not first):
        return [row]
    return [replace(row, rule=False), _bought_row(binder, purchase)]


def ended_rows(binder: Binder, line: ListLine, purchase: Purchase) -> list[Row]:
    """A food whose line is ended: another was taken instead of it, or it was not to be had."""
    food, needed = _food_cells(binder, line.item, quiet=True)
    return _bought_rows(binder, line.key, (food, needed), purchase, line.item.food)


def beside_rows(binder: Binder, purchase: Purchase) -> list[Row]:
    """Something bought that the list does not ask for, or no longer."""
    food = binder.foods[purchase.food]
    cells = (Cell(food.name, leads_to=Place("foods", food.id), tip=_("Open in the larder")), NOTHING)
    return _bought_rows(binder, f"beside:{purchase.id}", cells, purchase, food.id)


def _bought_rows(binder: Binder, key: str, named: tuple[Cell, Cell], purchase: Purchase, food: str) -> list[Row]:
    cells = (
        _tick(key, purchase),
        *named,
        _count_cell(binder, binder.packs.get(purchase.pack or ""), purchase.count),
        _taken_cell(binder, purchase),
        NOTHING,
        NOTHING,
        _taken_cost(binder, purchase),
        _paid_cell(binder, purchase),
        NOTHING,
    )
    row = Row(key, cells, place=Place("foods", food), rule=False)
    return [row, _bought_row(binder, purchase)]


def _taken_cost(binder: Binder, purchase: Purchase) -> Cell:
    """What the book asks for what was taken; where it has no price for it, what was planned."""
    planned = purchase.planned
    tip = "" if planned is None else _("planned: {money}").format(money=money(binder, planned))
    if not purchase.count:
        return Cell("–", tone=Tone.QUIET, tip=tip, spoken=tip)
    pack = binder.packs.get(purchase.pack or "")
    quote = quote_of_pack(binder, pack) if pack else None
    asked = planned if pack is None or quote is None else asked_for(binder, pack, quote, purchase.count)
    return Cell(money(binder, asked), tone=Tone.QUIET, tip=tip) if asked is not None else NOTHING


def _taken_cell(binder: Binder, purchase: Purchase) -> Cell:
    if not purchase.count:
        return Cell(not_had(), mark=Mark.SHORT)
    pack = binder.packs.get(purchase.pack or "")
    size = pack_text(binder, pack) if pack else ""
    if purchase.instead is None or purchase.instead == purchase.food:
        store = store_name(binder, pack.store) if pack else ""
        return Cell(size, unit=store, tone=Tone.QUIET if purchase.instead is None else Tone.INK)
    other = binder.foods[purchase.instead].name
    says = _("{food} instead").format(food=other)
    return Cell(f"{says}, {size}" if size else says, mark=Mark.NOTE)


def _food_cells(binder: Binder, item: ShoppingItem, *, quiet: bool = False) -> tuple[Cell, Cell]:
    number, unit = grams_parts(binder, item.needed)
    tip = _("Open in the larder")
    if item.at_home:
        style = number_style(binder)
        tip = _("{grams} of it at home already").format(grams=grams_text(item.at_home, style))
    place, tone = Place("foods", item.food), Tone.QUIET if quiet else Tone.INK
    name = Cell(item.name, leads_to=place, tip=tip, tone=tone, folds=len(item.name) > _BESIDE)
    return name, Cell(number, unit, tip=tip if item.at_home else "")


def _tick(key: str, purchase: Purchase | None) -> Cell:
    place = Place(TICKS, key)
    if purchase is None:
        return Cell(picture=TickBox(), leads_to=place, spoken=_("to buy"), tip=_("Tick what is bought"))
    had = bool(purchase.count)
    spoken = _("bought") if had else not_had()
    return Cell(picture=TickBox(had, not had), leads_to=place, spoken=spoken, tip=_("Let it be open again"))


def _pack_row(binder: Binder, shoot: str, line: ListLine, purchase: Purchase | None, *, first: bool) -> Row:
    taken, item = line.taken, line.item
    assert taken is not None  # noqa: S101 - asked before
    pack, quote = taken.priced.pack, taken.priced.quote
    food, needed = _food_cells(binder, item, quiet=purchase is not None) if first else (NOTHING, NOTHING)
    left = grams_left(binder, shoot, item)
    count = purchase.count if purchase is not None and not ends_line(purchase) else None
    quiet = Tone.INK if purchase is None else Tone.QUIET
    cells = (
        _tick(line.key, purchase),
        food,
        needed,
        _count_cell(binder, pack, float(taken.count) if count is None and not pack.by_weight else count, taken.grams),
        _pack_cell(binder, line, offer_words(binder, taken, count), _short_words(binder, left) if first else ""),
        Cell(money(binder, quote.price), edit=plain_money(binder, quote.price), tip=quote.source),
        Cell(date_text(binder, quote.on, DateForm.SHORT), tone=Tone.QUIET, tip=date_text(binder, quote.on)),
        Cell(money(binder, _comes_to(binder, taken, count)), tone=quiet),
        _paid_cell(binder, purchase),
        _left_cell(binder, left, quiet) if first else NOTHING,
    )
    return Row(line.key, cells, place=Place("packs", pack.id))


def _left_cell(binder: Binder, left: float, tone: Tone) -> Cell:
    """What will be left over as things were bought."""
    number, unit = grams_parts(binder, left) if left > 0 else ("", "")
    return Cell(number, unit, tone=tone) if number else Cell("–", tone=Tone.QUIET, spoken=_("nothing left over"))


def _short_words(binder: Binder, left: float) -> str:
    """`257 g short`, where less was bought than is needed."""
    return _("{grams} short").format(grams=grams_text(-left, number_style(binder))) if left < -_SHORT else ""


def _comes_to(binder: Binder, taken: PackCount, count: float | None) -> int:
    """Minor units of what the list takes, or of as many as were bought."""
    if count is None or count == taken.count:
        return taken.price
    return asked_for(binder, taken.priced.pack, taken.priced.quote, count)


def _count_cell(binder: Binder, pack: Pack | None, count: float | None, grams: float | None = None) -> Cell:
    """How many packs; at the counter the weight."""
    if pack is not None and pack.by_weight:
        whole = pack_grams(binder, pack)
        weighs = grams if count is None else None if isinstance(whole, Missing) else whole * count
        if weighs is not None:
            number, unit = grams_parts(binder, weighs)
            return Cell(number, unit, edit=f"{number} {unit}")
    text = number_text(binder, count or 0.0)
    return Cell(text, "×", edit=text)


def _pack_cell(binder: Binder, line: ListLine, offer: str, short: str) -> Cell:
    """The pack, why so many of it cost what they do, and what they lack where too few were bought."""
    assert line.taken is not None  # noqa: S101 - asked before
    text, said = pack_text(binder, line.taken.priced.pack), " · ".join(part for part in (offer, short) if part)
    tip, mark = _("Another pack, another food, or: not to be had"), Mark.SHORT if short else Mark.NONE
    cell = Cell(text, edit="", choices=(*other_packs(binder, line), not_had()), tip=tip, mark=mark)
    if len(text) + len(said) <= _BESIDE:
        return replace(cell, unit=said)
    return replace(cell, under=said, folds=True, spoken=f"{text} {said}" if said else "")


def _paid_cell(binder: Binder, purchase: Purchase | None) -> Cell:
    paid = purchase.paid if purchase is not None else None
    if purchase is not None and not purchase.count:
        return NOTHING
    return Cell(money(binder, paid) if paid is not None else "", edit=plain_money(binder, paid), placeholder="–")


def _bought_row(binder: Binder, purchase: Purchase) -> Row:
    """The day it was bought, and a note."""
    place = Place("purchases", purchase.id)
    on = purchase.on.isoformat() if purchase.on else ""
    cells = (
        NOTHING,
        Cell(
            date_text(binder, purchase.on, DateForm.WEEKDAY), edit=on, label=_("on"), placeholder="–", size=Size.SMALL
        ),
        NOTHING,
        NOTHING,
        Cell(purchase.note, edit=purchase.note, label=_("note"), placeholder="–", size=Size.SMALL),
        *(NOTHING,) * 5,
    )
    return Row(f"{BOUGHT}:{purchase.id}", cells, place=place, spans=((1, 3), (4, 6)), lines=1.3)


def reason_rows(bought: ShoppingList) -> list[Row]:
    """What keeps everything from being bought, said once and not of each food: the shoot goes to too few stores."""
    reasons = [lack for lack in bought.missing if _is_of_all(lack)]
    return [
        Row(
            f"reason:{number}",
            (NOTHING, Cell(lack.says, mark=Mark.UNKNOWN, leads_to=lack.place), *(NOTHING,) * (WIDTH - 2)),
            spans=((1, WIDTH - 1),),
            wraps=True,
        )
        for number, lack in enumerate(reasons)
    ]


def _is_of_all(lack: Missing) -> bool:
    return lack.kind is MissingKind.PRICE and lack.place.table == "shoots"


def _unknown(binder: Binder, line: ListLine) -> Row:
    """A food without a pack that could be taken."""
    item = line.item
    food, needed = _food_cells(binder, item)
    says = item.missing.says if item.missing else _("No price.")
    place = item.missing.place if item.missing else Place("foods", item.food)
    text = not_known((item.missing,) if item.missing else ())
    if item.missing is not None and _is_of_all(item.missing):
        text = _("not known: too few stores")
    cell = Cell(text, mark=Mark.UNKNOWN, leads_to=place, tip=says)
    cells = (_tick(line.key, None), food, needed, NOTHING, cell, *(NOTHING,) * 3, _paid_cell(binder, None), NOTHING)
    return Row(line.key, cells, place=Place("foods", item.food), spans=((4, 4),))
