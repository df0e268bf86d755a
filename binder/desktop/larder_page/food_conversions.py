"""How one food is turned into its forms, or comes of them: what goes in, what comes out, and how long it takes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_facts import food_shown, is_own
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Tone, key_of
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import minutes_text, number_text
from binder.desktop.words.typed import typed_minutes, typed_number
from binder.figures.missing import Place
from binder.kitchen.edits.records import set_fields
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.conversion import Addition, Conversion, Outcome


class FoodConversions(PlainSheet):
    """The subject is the key of a food's row."""

    @property
    def name(self) -> str:
        return _("Forms")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("how"), characters=14, stretch=2),
            Column("from", _("from one gram of"), characters=14, stretch=2),
            Column("ratio", _("grams"), characters=6, align=Align.DECIMAL, decimals=2),
            Column("form", _("of"), characters=14, stretch=2),
            Column("lead", _("takes"), characters=9),
        )

    def rows(self, sight: Sight) -> list[Row]:
        food = food_shown(sight)
        if food is None or not is_own(sight):
            return []
        binder = sight.binder
        given = [binder.conversions[outcome.conversion] for outcome in binder.outcomes.where("form", food.id)]
        shown = dict.fromkeys([*given, *binder.conversions.where("takes", food.id)])
        return [row for conversion in shown for row in _conversion_rows(binder, conversion)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, place = sight.binder, record_of(row)
        if place.table == "conversions":
            conversion = binder.conversions[place.id]
            value = {"lead_minutes": typed_minutes(binder, text)} if column == "lead" else {"name": text.strip()}
            return set_fields(_("Edit {conversion}").format(conversion=conversion.name), conversion, **value)
        part: Outcome | Addition = (
            binder.outcomes[place.id] if place.table == "outcomes" else binder.additions[place.id]
        )
        label = _("Edit {conversion}").format(conversion=binder.conversions[part.conversion].name)
        return set_fields(label, part, ratio=typed_number(binder, text))


def _conversion_rows(binder: Binder, conversion: Conversion) -> list[Row]:
    lead = minutes_text(conversion.lead_minutes)
    place = Place("conversions", conversion.id)
    head = (
        Cell(conversion.name, edit=conversion.name),
        Cell(binder.foods[conversion.takes].name),
        NOTHING,
        NOTHING,
        Cell(lead, edit=lead, placeholder="–"),
    )
    outcomes = binder.outcomes.where("conversion", conversion.id)
    additions = binder.additions.where("conversion", conversion.id)
    return [
        Row(key_of(place), head, place=place, rule=False),
        *(_part(binder, "outcomes", one.id, _("gives"), one.ratio, one.form) for one in outcomes),
        *(_part(binder, "additions", one.id, _("with"), one.ratio, one.food) for one in additions),
    ]


def _part(binder: Binder, table: str, key: str, word: str, ratio: float, food: str) -> Row:
    number = number_text(binder, ratio)
    place = Place(table, key)
    cells = (
        NOTHING,
        Cell(word, tone=Tone.QUIET),
        Cell(f"{ratio:.2f}" if ratio % 1 else number, edit=number),
        Cell(binder.foods[food].name),
        NOTHING,
    )
    return Row(key_of(place), cells, place=place, lines=1.4)
