"""The facts of one food, each with where it comes from."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.desktop.base_page.forms import days_text, typed_days
from binder.desktop.larder_page.food_list import SHIPPED
from binder.desktop.sheet.cell import Cell, Column, Row, Tone
from binder.desktop.sheet.sheet import CellName, PlainSheet, record_of
from binder.desktop.words.figure_text import number_text
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    typed_choice,
    typed_optional_number,
    typed_part,
    typed_words,
    words_for,
    yes_or_no,
)
from binder.figures.memory import remembered_from
from binder.kitchen.edits.foods import set_food
from binder.kitchen.food import Food, Keeping, Section
from binder.kitchen.larder import reference_larder
from binder.kitchen.reference import allergens, doneness_table
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change


def food_shown(sight: Sight) -> Food | None:
    """The food that a part of the page is about: one of the binder, or `shipped:key` of the larder."""
    place = record_of(sight.subject or "")
    if place.table == SHIPPED:
        return reference_larder().foods.get(place.id)
    return sight.binder.foods.get(place.id)


def is_own(sight: Sight) -> bool:
    """Whether the food shown is the binder's, and so can be edited."""
    return record_of(sight.subject or "").table != SHIPPED


class FoodFacts(PlainSheet):
    """The subject is the key of a food's row."""

    @property
    def name(self) -> str:
        return _("Facts of the food")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("fact", "", characters=21),
            Column("value", "", characters=16, stretch=2),
            Column("source", "", characters=10, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        food = food_shown(sight)
        return [] if food is None else _rows(sight.binder, food, own=is_own(sight))

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, food = sight.binder, sight.binder.foods[record_of(sight.subject or "").id]
        if column == "source":
            return set_food(food, **{_SOURCE_OF[row]: text.strip()})
        values: dict[str, Reading] = {
            "other_names": lambda: typed_words(text),
            "section": lambda: typed_choice(text, words_for(Section)),
            "keeping": lambda: typed_choice(text, words_for(Keeping)),
            "keeps_days": lambda: typed_days(binder, text),
            "order_days": lambda: typed_days(binder, text),
            "form_of": lambda: _typed_base(binder, food, text),
            "good_from_days": lambda: typed_days(binder, text),
            "temperature_control": lambda: typed_choice(text, yes_or_no()),
            "allergens": lambda: _typed_allergens(text),
            "doneness": lambda: _typed_doneness(text),
            "density": lambda: typed_optional_number(binder, text.removesuffix("g/ml")),
            "trim_yield": lambda: typed_part(binder, text),
            "staple": lambda: typed_choice(text, yes_or_no()),
            "free": lambda: typed_choice(text, yes_or_no()),
            "notes": text.strip,
        }
        return set_food(food, **{row: values[row]()})


_SOURCE_OF = {"density": "source", "trim_yield": "yield_source"}


def cell_of_fact(field: str) -> CellName:
    """Where a fact of a food is typed."""
    row = next((fact for fact, source in _SOURCE_OF.items() if source == field), None)
    return CellName(field, "value") if row is None else CellName(row, "source")


def _rows(binder: Binder, food: Food, *, own: bool) -> list[Row]:
    cells = {**_of_store(binder, food), **_of_safety(food), **_of_weight(binder, food)}
    return [_row(key, label, cell, food, own=own) for key, (label, cell) in cells.items()]


def _of_store(binder: Binder, food: Food) -> dict[str, tuple[str, Cell]]:
    """Where it stands, how it keeps, and what it is a form of: what only a form has is shown for one."""
    sections, keepings = tuple(words_for(Section)), tuple(words_for(Keeping))
    base = binder.foods.get(food.form_of or "")
    keeps = _("keeps, once made") if food.form_of else _("keeps, unopened")
    cells = {
        "other_names": (_("also called"), Cell(", ".join(food.other_names), placeholder="–")),
        "section": (_("in the store under"), Cell(_(food.section.value), choices=sections)),
        "keeping": (_("kept"), Cell(_(food.keeping.value), choices=keepings)),
        "keeps_days": (keeps, _days(binder, food.keeps_days)),
        "order_days": (
            _("ordered ahead by"),
            _days(binder, food.order_days, tip=_("Days before it is fetched, where a butcher or fishmonger asks so")),
        ),
        "form_of": (
            _("a form of"),
            Cell(base.name if base else "", choices=_bases(binder, food), placeholder=_("no other food")),
        ),
    }
    if food.form_of:
        tip = _("Days after it is made: before that it is not fit to use yet")
        cells["good_from_days"] = (_("fit to use from"), _days(binder, food.good_from_days, tip=tip))
    return cells


def _of_safety(food: Food) -> dict[str, tuple[str, Cell]]:
    known = allergens()
    carried = ", ".join(known[code].name if code in known else code for code in food.allergens)
    names = tuple(one.name for one in known.values())
    return {
        "temperature_control": (_("watch the cold chain"), _switch(on=food.temperature_control)),
        "allergens": (
            _("allergens"),
            Cell(carried, choices=names, placeholder=_("none named"), tip=_("Parted by commas")),
        ),
        "doneness": (_("cooked as"), Cell(_category(food.doneness), choices=_categories(), placeholder="–")),
    }


def _of_weight(binder: Binder, food: Food) -> dict[str, tuple[str, Cell]]:
    return {
        "density": (
            _("density"),
            Cell(number_text(binder, food.density, digits=3), "g/ml" if food.density else "", placeholder="–"),
        ),
        "trim_yield": (_("usable after trimming"), Cell(number_text(binder, food.trim_yield * 100, digits=1), "%")),
        "staple": (_("pantry staple"), _switch(on=food.staple)),
        "free": (_("free of charge"), _switch(on=food.free)),
        "notes": (_("notes"), Cell(food.notes, placeholder="–")),
    }


def _days(binder: Binder, days: int | None, *, tip: str = "") -> Cell:
    return Cell(days_text(binder, days), placeholder="–", tip=tip)


def _bases(binder: Binder, food: Food) -> tuple[str, ...]:
    """Foods that may be what another is a form of, those that have forms first."""
    return tuple(name for key, name in _bases_of_any(binder) if key != food.id)


@remembered_from(frozenset({"foods"}))
def _bases_of_any(binder: Binder) -> tuple[tuple[str, str], ...]:
    """Foods that are a form of no other, by id and name: prices change often, and foods rarely."""
    bases = [one for one in binder.foods.values() if one.form_of is None]
    has_forms = {one.form_of for one in binder.foods.values()}
    in_order = sorted(bases, key=lambda one: (one.id not in has_forms, one.name.casefold()))
    return tuple((one.id, one.name) for one in in_order)


def _typed_base(binder: Binder, food: Food, text: str) -> str | None:
    wanted = text.strip().casefold()
    if not wanted:
        return None
    named = [one for one in binder.foods.values() if one.name.casefold() == wanted and one.id != food.id]
    if not named or _is_made_from(binder, named[0], food):
        raise UnreadableError(text, _("choose another food of this binder, and none that is made from this one."))
    return named[0].id


def _is_made_from(binder: Binder, form: Food, food: Food) -> bool:
    """Whether a food is a form of another, or of a form of it."""
    seen: set[str] = set()
    above = form.form_of
    while above is not None and above not in seen:
        if above == food.id:
            return True
        seen.add(above)
        above = binder.foods[above].form_of
    return False


def _row(key: str, label: str, cell: Cell, food: Food, *, own: bool) -> Row:
    source = getattr(food, _SOURCE_OF[key]) if key in _SOURCE_OF else ""
    said = Cell(source, tone=Tone.QUIET, edit=source if own and key in _SOURCE_OF else None, tip=source)
    value = replace(cell, edit=f"{cell.text} {cell.unit}".strip() if own else None, label="")
    spans = () if key in _SOURCE_OF else ((1, 2),)
    return Row(key, (Cell(label, tone=Tone.QUIET), value, said), spans=spans, lines=1.5)


def _switch(*, on: bool) -> Cell:
    return Cell(_("yes") if on else _("no"), choices=tuple(yes_or_no()))


def _categories() -> tuple[str, ...]:
    return tuple(dict.fromkeys(rule.category_name for rule in doneness_table().values()))


def _category(code: str) -> str:
    return next((rule.category_name for rule in doneness_table().values() if rule.category == code), code)


def _typed_doneness(text: str) -> str:
    if not text.strip() or text.strip() == "–":
        return ""
    return typed_choice(text, {rule.category_name: rule.category for rule in doneness_table().values()})


def _typed_allergens(text: str) -> tuple[str, ...]:
    known = allergens()
    by_name = {one.name.casefold(): code for code, one in known.items()} | {code.casefold(): code for code in known}
    found = []
    for word in typed_words(text):
        if word.casefold() not in by_name:
            names = listed([one.name for one in known.values()], joined_by=_("or"))
            raise UnreadableError(word, _("choose {choices}.").format(choices=names))
        found.append(by_name[word.casefold()])
    return tuple(dict.fromkeys(found))
