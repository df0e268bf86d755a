"""What to buy by section of the store: needed, packs, price, left over, and the sum at the till. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet
from binder.desktop.words.figure_text import (
    date_text,
    grams_parts,
    money,
    not_known,
    pack_size,
    plain_money,
    store_name,
)
from binder.figures.missing import Place
from binder.figures.shopping import PackCount, ShoppingItem, ShoppingList, shopping_list
from binder.figures.spend import shoot_spend
from binder.kitchen.edits.foods import set_price, typed_price
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.price import Pack

_WIDTH = 9


class BuyingSheet(PlainSheet):
    """A heading a section, a row a pack to take, and the sum at the foot. The price of a pack is edited here too."""

    @property
    def name(self) -> str:
        return _("Shopping list")

    @property
    def columns(self) -> tuple[Column, ...]:
        weight = {"align": Align.DECIMAL, "decimals": 2, "unit_room": "kg"}
        return (
            Column("food", _("food"), characters=20, stretch=3),
            Column("needed", _("needed"), characters=8, **weight),  # type: ignore[arg-type]
            Column("count", _("take"), characters=5, align=Align.RIGHT),
            Column("pack", _("pack"), characters=14, stretch=2),
            Column("store", _("store"), characters=13, stretch=2),
            Column("price", _("a pack"), characters=8, align=Align.RIGHT),
            Column("on", _("as of"), characters=7),
            Column("spend", _("comes to"), characters=9, align=Align.RIGHT),
            Column("left_over", _("left over"), characters=8, **weight),  # type: ignore[arg-type]
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        bought = shopping_list(sight.binder, sight.shoot)
        rows: list[Row] = []
        section = ""
        for item in bought.items:
            if item.section != section:
                section = item.section
                rows.append(_heading(section, first=not rows))
            rows += _item_rows(sight.binder, item)
        return [*rows, _total(sight, bought)] if rows else []

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if column != "price" or sight.shoot is None:
            raise NotEditableError
        for item in shopping_list(sight.binder, sight.shoot).items:
            for taken in item.packs:
                if row == _key(item, taken.priced.pack):
                    return set_price(sight.binder, taken.priced.quote, typed_price(sight.binder, text))
        raise NotEditableError


def _heading(section: str, *, first: bool) -> Row:
    cell = Cell(_(section), size=Size.STRONG)
    return Row(f"section:{section}", (cell, *(NOTHING,) * (_WIDTH - 1)), gap=0 if first else 3, lines=1.5)


def _key(item: ShoppingItem, pack: Pack) -> str:
    return f"buy:{item.food}/{pack.id}"


def _item_rows(binder: Binder, item: ShoppingItem) -> list[Row]:
    if not item.packs:
        return [_unknown(binder, item)]
    return [_pack_row(binder, item, taken, first=number == 0) for number, taken in enumerate(item.packs)]


def _unknown(binder: Binder, item: ShoppingItem) -> Row:
    food, needed = _food_cells(binder, item)
    says = item.missing.says if item.missing else _("No price.")
    place = item.missing.place if item.missing else Place("foods", item.food)
    cell = Cell(not_known((item.missing,) if item.missing else ()), mark=Mark.UNKNOWN, leads_to=place, tip=says)
    cells = (food, needed, NOTHING, cell, *(NOTHING,) * (_WIDTH - 4))
    return Row(f"buy:{item.food}/", cells, place=Place("foods", item.food), spans=((3, _WIDTH - 3),))


def _food_cells(binder: Binder, item: ShoppingItem) -> tuple[Cell, Cell]:
    number, unit = grams_parts(binder, item.needed)
    return Cell(item.name, leads_to=Place("foods", item.food), tip=_("Open in the larder")), Cell(number, unit)


def _pack_row(binder: Binder, item: ShoppingItem, taken: PackCount, *, first: bool) -> Row:
    pack, quote = taken.priced.pack, taken.priced.quote
    food, needed = _food_cells(binder, item) if first else (NOTHING, NOTHING)
    left = grams_parts(binder, item.left_over) if first and item.left_over else ("", "")
    cells = (
        food,
        needed,
        Cell(str(taken.count), "×"),
        Cell(_pack_text(binder, pack)),
        Cell(store_name(binder, pack.store), tone=Tone.INK if pack.store else Tone.QUIET),
        Cell(money(binder, quote.price), edit=plain_money(binder, quote.price), tip=quote.source),
        Cell(date_text(binder, quote.on, "d MMM"), tone=Tone.QUIET, tip=date_text(binder, quote.on)),
        Cell(money(binder, taken.price)),
        Cell(*left) if left[0] else Cell("–", tone=Tone.QUIET) if first else NOTHING,
    )
    return Row(_key(item, pack), cells, place=Place("packs", pack.id))


def _pack_text(binder: Binder, pack: Pack) -> str:
    """A pack's size and label; the label alone where it says the size."""
    size = pack_size(binder, pack)
    if not pack.label or size.casefold() in pack.label.casefold():
        return pack.label or size
    return f"{size}, {pack.label}"


def _total(sight: Sight, bought: ShoppingList) -> Row:
    spend = shoot_spend(sight.binder, sight.shoot or "")
    shown = money(sight.binder, bought.known_spend)
    known = bought.spend is not None
    over = spend.budget is not None and spend.known > spend.budget
    mark = (
        Mark.OVER
        if over
        else Mark.WITHIN
        if known and spend.budget is not None
        else Mark.NONE
        if known
        else Mark.UNKNOWN
    )
    budget = _(" of a budget of {money}").format(money=money(sight.binder, spend.budget)) if spend.budget else ""
    rest = "" if known else _(", and what has no price")
    says = _("At the till, whole packs{budget}{rest}").format(budget=budget, rest=rest)
    cells = (Cell(says, size=Size.STRONG), *(NOTHING,) * 6, Cell(shown, mark=mark, size=Size.STRONG), NOTHING)
    return Row("total", cells, spans=((0, 7),), gap=3, lines=1.8, rule=False)
