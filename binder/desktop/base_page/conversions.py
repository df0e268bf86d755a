"""How the forms are made: each conversion with what it takes and gives, its times, its limits and its cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.base_page.conversion_cells import conversion_rows
from binder.desktop.base_page.conversion_typing import (
    edit_conversion,
    edit_part,
    food_remedies,
    typed_conversion,
    typed_part,
)
from binder.desktop.base_page.forms import base_of
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.figures.base_network import base_forms
from binder.kitchen.edits.records import move, remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.base_page.base_figures import LatestFigures
    from binder.desktop.sheet.sheet import CellName, Remedy, Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.conversion import Conversion
    from binder.kitchen.errors import BinderError
    from binder.kitchen.record import Record

ADD_CONVERSION = "add:conversion"
_PARTS = ("outcomes", "additions")


def conversions_of(binder: Binder, base: str) -> list[Conversion]:
    """The conversions of a base, those of the base itself first, then as they follow one another."""
    found: dict[str, Conversion] = {}
    waiting = [base]
    seen = set(waiting)
    while waiting:
        form = waiting.pop(0)
        for conversion in _longest_first(binder, form):
            found[conversion.id] = conversion
            given = [outcome.form for outcome in binder.outcomes.where("conversion", conversion.id)]
            waiting += [one for one in given if one not in seen]
            seen.update(given)
    for form in base_forms(binder, base):
        found |= {one.id: one for one in _longest_first(binder, form)}
    return list(found.values())


def _longest_first(binder: Binder, form: str) -> list[Conversion]:
    """The conversions of a form, what takes longest first: it is begun first."""
    return sorted(binder.conversions.where("takes", form), key=lambda one: (-one.lead_minutes, one.name.casefold()))


class Conversions(PlainSheet):
    """A block a conversion: its own row, how it is done, its limits, what it gives and what goes in with it."""

    def __init__(self, latest: LatestFigures) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("How the forms are made")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("conversion"), characters=11, stretch=3),
            Column("food", _("from one gram of"), characters=14, stretch=4),
            Column("ratio", _("yield"), characters=6, align=Align.RIGHT, tip=_("Grams for a gram taken")),
            Column("grams", _("in this shoot"), characters=7, align=Align.DECIMAL, unit_room="kg"),
            Column("hands_on", _("hands on"), characters=7, stretch=1),
            Column("lead", _("then waits"), characters=8, stretch=1),
            Column("starts", _("start by"), characters=16, stretch=2),
            Column(
                "split", _("cost goes"), characters=9, stretch=1, tip=_("How what goes in is laid on what comes out")
            ),
        )

    def rows(self, sight: Sight) -> list[Row]:
        base = base_of(sight)
        if base is None:
            return []
        shown = [
            row
            for conversion in conversions_of(sight.binder, base.id)
            for row in conversion_rows(sight.binder, conversion, self._latest)
        ]
        return [*shown, _adding(first=not shown)]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, base = sight.binder, base_of(sight)
        place = record_of(row)
        if row == ADD_CONVERSION and base is not None:
            return typed_conversion(base, text)
        if place.table == "part":
            return typed_part(binder, binder.conversions[place.id], text)
        if place.table in _PARTS:
            return edit_part(binder, binder.table(place.table)[place.id], column, text)
        return edit_conversion(binder, binder.conversions[place.id], place.table, column, text)

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        base, place = base_of(sight), record_of(cell.row)
        if place.table != "part" or base is None:
            return ()
        return food_remedies(sight.binder, base, sight.binder.conversions[place.id], text, error)

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        binder = sight.binder
        chosen = dict.fromkeys(_removed(binder, row) for row in rows)
        gone = [record for record in chosen if record is not None]
        if not gone:
            return None
        one = _("Remove {what}").format(what=_called(binder, gone[0]))
        label = ngettext("{one}", "Remove {count} parts of conversions", len(gone)).format(one=one, count=len(gone))
        return remove(label, binder, *gone)

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        place = record_of(row)
        if place.table not in _PARTS:
            return None
        part = sight.binder.table(place.table)[place.id]
        label = _("Move {what}").format(what=_called(sight.binder, part))
        return move(label, sight.binder, part, to=max(0, part.position + by))


def _removed(binder: Binder, row: str) -> Record | None:
    """What goes with a row: the part it shows, or the whole conversion."""
    place = record_of(row)
    if place.table in _PARTS:
        part: Record = binder.table(place.table)[place.id]
        return part
    return binder.conversions[place.id] if place.table == "conversions" else None


def _called(binder: Binder, record: Record) -> str:
    food = getattr(record, "form", None) or getattr(record, "food", None)
    return binder.foods[food].name if food else str(getattr(record, "name", ""))


def _adding(*, first: bool) -> Row:
    says = _("Add a conversion: what is done, such as Soak overnight")
    cell = Cell(edit="", placeholder=says)
    return Row("add:conversion", (cell, *(NOTHING,) * 7), spans=((0, 8),), rule=False, adds=True, gap=0 if first else 2)
