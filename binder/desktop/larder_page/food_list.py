"""The foods of the binder with the price chosen for each; while one is looked for, those of the shipped larder too."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import date_text, money_parts, store_name
from binder.figures.date_text import DateForm
from binder.figures.form_cost import conversion_to
from binder.figures.memory import remembered_from, remembered_of
from binder.figures.missing import Missing, Place
from binder.figures.money_words import money
from binder.figures.price import PricedPack, chosen_pack
from binder.kitchen.edits.foods import add_food, adopt_food, remove_food, set_food
from binder.kitchen.edits.records import remove
from binder.kitchen.larder import reference_larder
from binder.kitchen.settings import Measures
from binder.kitchen.units import unit
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.food import Food

ADD_FOOD = "add:food"
SHIPPED = "shipped"
"""Rows of foods that the binder has not taken from the shipped larder; no table of the binder is called so."""


class FoodList(PlainSheet):
    """The subject is what is looked for; empty for all foods of the binder."""

    @property
    def name(self) -> str:
        return _("Foods")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("food"), characters=14, stretch=1),
            Column("price", _("price chosen"), characters=11, align=Align.DECIMAL, decimals=2, unit_room="€/kg"),
            Column("on", _("as of"), characters=8),
        )

    def rows(self, sight: Sight) -> list[Row]:
        words = (sight.subject or "").casefold().split()
        own = [food for food in _by_name(sight.binder.foods.values()) if not words or _has(food, words)]
        made = food_rows(sight.binder)
        rows = [made[food.id] for food in own]
        shipped = _shipped_rows(sight.binder, words) if words else []
        return [*rows, *([_heading(), *shipped] if shipped else []), _adding(sight.subject or "")]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if row == ADD_FOOD:
            known = next((key for key, food in reference_larder().foods.items() if food.name == text.strip()), None)
            taken = known is not None and known not in sight.binder.foods
            return adopt_food(sight.binder, known or "") if taken else add_food(sight.binder, text.strip())[0]
        return set_food(sight.binder.foods[record_of(row).id], name=text.strip())

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        words = text.casefold().split()
        if row != ADD_FOOD or not words:
            return ()
        return [food.name for food in _by_name(_shipped(sight.binder)) if _has(food, words)][:8]

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        foods = [sight.binder.foods[record_of(row).id] for row in rows if record_of(row).table == "foods"]
        if len(foods) < 2:  # noqa: PLR2004 - one food goes by its name
            return remove_food(sight.binder, foods[0]) if foods else None
        label = ngettext("Remove {count} food", "Remove {count} foods", len(foods)).format(count=len(foods))
        return remove(label, sight.binder, *foods)


def _by_name(foods: Iterable[Food]) -> list[Food]:
    return sorted(foods, key=lambda food: food.name.casefold())


def _has(food: Food, words: Sequence[str]) -> bool:
    said = " ".join((food.name, *food.other_names, food.section)).casefold()
    return all(word in said for word in words)


def _shipped(binder: Binder) -> list[Food]:
    return [food for key, food in reference_larder().foods.items() if key not in binder.foods]


def _row_parts(binder: Binder, food_id: str) -> tuple[object, ...]:
    """What the row of a food is made of; one of thousands is then made anew for a price, and not all."""
    packs = binder.packs.where("food", food_id)
    return (
        binder.foods[food_id],
        binder.outcomes.where("form", food_id),
        binder.measures.where("food", food_id),
        packs,
        *(binder.quotes.where("pack", pack.id) for pack in packs),
    )


@remembered_of(_row_parts, frozenset({"settings", "stores"}))
def food_row(binder: Binder, food_id: str) -> Row:
    """The row of a food, kept until its price, or what it comes from, may be another."""
    food = binder.foods[food_id]
    price, on = _price_cells(binder, food)
    cells = (Cell(food.name, edit=food.name, folds=True, tip=_(food.section.value)), price, on)
    return Row(key_of(Place("foods", food.id)), cells, place=Place("foods", food.id))


@remembered_from(frozenset({"settings", "stores", "foods", "outcomes", "measures", "packs", "quotes"}))
def food_rows(binder: Binder) -> Mapping[str, Row]:
    """The rows of all foods by their ids; where there are thousands, whoever makes a large change has them ready."""
    return {food: food_row(binder, food) for food in binder.foods}


def _price_cells(binder: Binder, food: Food) -> tuple[Cell, Cell]:
    if food.free:
        return Cell(_("free"), tone=Tone.QUIET), NOTHING
    if conversion_to(binder, food.id) is not None:
        return Cell(_("a form"), tone=Tone.QUIET), NOTHING
    chosen = chosen_pack(binder, food.id)
    if isinstance(chosen, Missing):
        return Cell(_("no price"), mark=Mark.UNKNOWN, tip=chosen.says), NOTHING
    number, currency = money_parts(price_per_unit(binder, chosen.per_gram))
    tip = _("{store}, {date}").format(
        store=store_name(binder, chosen.pack.store), date=date_text(binder, chosen.quote.on)
    )
    on = date_text(binder, chosen.quote.on, DateForm.SHORT)
    return Cell(number, f"{currency}/{weighed_by(binder)}", tip=tip), Cell(on, tone=Tone.QUIET, tip=tip)


def weighed_by(binder: Binder) -> str:
    """The unit that prices are compared by: the pound in US customary measures, else the kilogram."""
    return "lb" if binder.settings.measures is Measures.US_CUSTOMARY else "kg"


def price_per_unit(binder: Binder, per_gram: float) -> str:
    """A price a gram as money a pound or a kilogram."""
    return money(binder, per_gram * unit(weighed_by(binder), binder.settings.measures).factor)


def price_of(binder: Binder, priced: PricedPack) -> str:
    """A pack's price as money a pound or a kilogram, with that unit."""
    return f"{price_per_unit(binder, priced.per_gram)}/{weighed_by(binder)}"


def _heading() -> Row:
    cell = Cell(_("In the shipped larder, not in this binder yet"), tone=Tone.QUIET, size=Size.SMALL)
    return Row("heading:shipped", (cell, NOTHING, NOTHING), spans=((0, 3),), gap=3)


def _shipped_rows(binder: Binder, words: Sequence[str]) -> list[Row]:
    rows = []
    for food in _by_name(food for food in _shipped(binder) if _has(food, words)):
        place = Place(SHIPPED, food.id)
        add = Cell(_("add"), leads_to=place, tip=_("Add {food} to this binder").format(food=food.name))
        name = Cell(food.name, tone=Tone.QUIET, tip=_(food.section.value))
        rows.append(Row(key_of(place), (name, add, NOTHING), place=place))
    return rows


def _adding(wanted: str) -> Row:
    cell = Cell(edit=wanted, placeholder=_("Add a food"))
    return Row(ADD_FOOD, (cell, NOTHING, NOTHING), lines=1.8, rule=False, adds=True)
