"""What the household measures of one food weigh. A new one is typed whole: 1 cup chopped = 160 g."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_facts import food_shown, is_own
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import grams_parts
from binder.desktop.words.typed import UnreadableError, comma
from binder.figures.missing import Place
from binder.figures.weight import COUNTED
from binder.kitchen.amount import leading_amount, parse_amount
from binder.kitchen.edits.foods import add_measure, set_measure
from binder.kitchen.edits.records import remove
from binder.kitchen.larder import reference_larder
from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, is_system_unit, unit
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.food import Measure

ADD_MEASURE = "add:measure"
_SYSTEM = {Measures.US_CUSTOMARY: "us", Measures.METRIC: "metric", Measures.IMPERIAL: "imperial"}


class FoodMeasures(PlainSheet):
    """The subject is the key of a food's row."""

    @property
    def name(self) -> str:
        return _("What it weighs")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("unit", _("one"), characters=10, stretch=1),
            Column("preparation", _("prepared"), characters=12, stretch=1),
            Column("grams", _("weighs"), characters=8, align=Align.DECIMAL, decimals=1, unit_room="kg"),
            Column("source", _("source"), characters=12, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        food = food_shown(sight)
        if food is None:
            return []
        own = is_own(sight)
        held = sight.binder.measures.where("food", food.id) if own else reference_larder().measures.get(food.id, ())
        return [*(_row(sight.binder, one, own=own) for one in held), *([_adding()] if own else [])]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_MEASURE:
            return _typed_whole(sight, text)
        measure = binder.measures[record_of(row).id]
        if column == "grams":
            return set_measure(binder, measure, grams=typed_grams(binder, text))
        if column == "unit":
            return set_measure(binder, measure, unit=_absolute(binder, text.strip()))
        return set_measure(binder, measure, **{column: text.strip()})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        held = [sight.binder.measures[record_of(row).id] for row in rows if record_of(row).table == "measures"]
        label = ngettext("Remove a measure", "Remove {count} measures", len(held)).format(count=len(held))
        return remove(label, sight.binder, *held) if held else None


def _row(binder: Binder, measure: Measure, *, own: bool) -> Row:
    number, weight_unit = grams_parts(binder, measure.grams)
    place = Place("measures", measure.id)
    cells = (
        Cell(measure.unit, edit=measure.unit if own else None),
        Cell(measure.preparation, edit=measure.preparation if own else None, placeholder="–"),
        Cell(number, weight_unit, edit=f"{number} {weight_unit}" if own else None),
        Cell(
            measure.source, tone=Tone.QUIET, edit=measure.source if own else None, tip=measure.source, placeholder="–"
        ),
    )
    return Row(key_of(place) if own else f"shipped-measure:{measure.id}", cells, place=place if own else None)


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a weight, such as 1 cup chopped = 160 g"))
    return Row(ADD_MEASURE, (cell, NOTHING, NOTHING, NOTHING), spans=((0, 4),), rule=False, adds=True)


def _typed_whole(sight: Sight, text: str) -> Change:
    """`1 cup chopped = 160 g`, `2 cloves = 10 g`, `1 = 150 g`."""
    binder, food = sight.binder, sight.binder.foods[record_of(sight.subject or "").id]
    left, equals, right = text.partition("=")
    if not equals or not left.strip() or not right.strip():
        raise UnreadableError(text, _("write what it is and what it weighs: 1 cup chopped = 160 g."))
    amount, rest = leading_amount(left.strip(), decimal_comma=comma(binder))
    count, key = amount.high or 1.0, amount.unit
    if not key:
        key, _space, rest = rest.partition(" ")
    grams = typed_grams(binder, right) / count
    return add_measure(binder, food, unit=_absolute(binder, key or COUNTED), grams=grams, preparation=rest.strip())


def typed_grams(binder: Binder, text: str) -> float:
    """Grams of a weight as it is typed: `160 g`, `5 oz`; a bare number is grams."""
    measures = binder.settings.measures
    amount = parse_amount(text, measures, decimal_comma=comma(binder))
    given = unit(amount.unit or "g", measures)
    if given.dimension is not Dimension.WEIGHT:
        raise UnreadableError(text, _("write a weight, such as 160 g."))
    return (amount.high or 0.0) * given.factor


def _absolute(binder: Binder, key: str) -> str:
    """A cup or a spoon with the system it is of, so that it means the same when the binder's setting is changed."""
    return f"{_SYSTEM[binder.settings.measures]} {key}" if is_system_unit(key) else key
