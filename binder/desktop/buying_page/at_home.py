"""What is at home already and need not be bought. A food is typed whole: 500 g flour."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.dishes_page.line_typing import line_offers, line_understood
from binder.desktop.sheet.cell import NOTHING, Cell, Column, Mark, Row, Tone, key_of
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, Remedy, record_of
from binder.desktop.words.typed import UnreadableError
from binder.figures.buying_words import pack_size
from binder.figures.missing import Missing, Place
from binder.figures.portion_text import number_style
from binder.figures.weight import grams_as_bought
from binder.kitchen.amount_text import grams_text
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.edits.buying import add_pantry_item, remove_pantry_item, set_pantry_item
from binder.kitchen.edits.foods import adopt_food, typed_size
from binder.kitchen.edits.recipes import understood
from binder.kitchen.edits.records import remove
from binder.kitchen.line_text import UnknownFoodError
from binder.kitchen.price import Pack
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import CellName, Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import PantryItem
    from binder.kitchen.errors import BinderError

ADD_HOME = "add:home"


class AtHome(PlainSheet):
    """A row a food."""

    @property
    def name(self) -> str:
        return _("At home already")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("food", _("food"), characters=20, stretch=2),
            Column("amount", _("there is of it"), characters=14, stretch=1),
            Column("weighs", _("that is"), characters=12, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        items = sight.binder.pantry_items.where("shoot", sight.shoot)
        ordered = sorted(items, key=lambda item: sight.binder.foods[item.food].name.casefold())
        return [*(_row(sight.binder, item) for item in ordered), _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_HOME:
            return _typed_whole(sight, text)
        item = binder.pantry_items[record_of(row).id]
        if column != "amount":
            raise NotEditableError
        amount, unit = typed_size(binder, text)
        return set_pantry_item(binder, item, amount=amount, unit=unit)

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        return line_understood(sight.binder, text) if row == ADD_HOME else ""

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        return line_offers(sight.binder, text) if row == ADD_HOME else ()

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        if not isinstance(error, UnknownFoodError) or error.name not in text:
            return ()
        retyped = (text.replace(error.name, near, 1) for near in error.nearest)
        return [Remedy(one, text=one) for one in retyped]

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        items = [sight.binder.pantry_items[record_of(row).id] for row in rows if row != ADD_HOME]
        if len(items) < 2:  # noqa: PLR2004 - one food goes by its name
            return remove_pantry_item(sight.binder, items[0]) if items else None
        label = ngettext("Take {count} food out of the pantry", "Take {count} foods out of the pantry", len(items))
        return remove(label.format(count=len(items)), sight.binder, *items)


def _row(binder: Binder, item: PantryItem) -> Row:
    place = Place("pantry_items", item.id)
    food = binder.foods[item.food]
    amount = pack_size(binder, Pack(id=item.id, food=item.food, size=item.amount, unit=item.unit))
    grams = grams_as_bought(binder, food, item.amount, item.unit)
    if isinstance(grams, Missing):
        weighs = Cell(grams.says, mark=Mark.UNKNOWN, leads_to=grams.place)
    else:
        weighs = Cell(_("{grams} as purchased").format(grams=grams_text(grams, number_style(binder))), tone=Tone.QUIET)
    cells = (
        Cell(food.name, leads_to=Place("foods", food.id), tip=_("Open in the larder")),
        Cell(amount, edit=amount),
        weighs,
    )
    return Row(key_of(place), cells, place=place)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add what need not be bought, such as 500 g flour"))
    return Row(ADD_HOME, (cell, NOTHING, NOTHING), spans=((0, 3),), lines=1.8, rule=False, adds=True)


def _typed_whole(sight: Sight, text: str) -> Change:
    """A food with its amount, brought from the shipped larder where the binder lacks it."""
    binder, meant = sight.binder, understood(sight.binder, text)
    if meant.source.is_recipe or not meant.amount.high:
        raise UnreadableError(text, _("write how much of which food, such as 500 g flour."))
    brought = None if meant.source.in_binder else adopt_food(binder, meant.source.key)
    grown = apply(binder, brought) if brought is not None else binder
    shoot, food = grown.shoots[sight.shoot or ""], grown.foods[meant.source.key]
    added, _item = add_pantry_item(grown, shoot, food, amount=meant.amount.high, unit=meant.amount.unit or "each")
    return added if brought is None else joined(added.label, [brought, added])
