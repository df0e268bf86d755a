"""The mise list by station: what is set out for each build, and in all. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.figure_text import clock_text, date_text
from binder.figures.mise import MiseItem, mise_list
from binder.figures.missing import Place
from binder.kitchen.edits.records import set_fields
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.portion_text import SetOut
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change

_WIDTH = 6


class MiseSheet(PlainSheet):
    """A heading a station, and a row for each line of each dish made there. Preparations are edited here too."""

    @property
    def name(self) -> str:
        return _("Mise list")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("for", _("for"), characters=18, stretch=2),
            Column("food", _("food"), characters=18, stretch=2),
            Column("preparation", _("prepared"), characters=14, stretch=2),
            Column("each", _("each build"), characters=22, stretch=3),
            Column("weight", _("in all"), characters=9, align=Align.DECIMAL, decimals=2, unit_room="kg"),
            Column("measure", _("or"), characters=14, stretch=1),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        rows: list[Row] = []
        station, dish = "", ""
        for number, item in enumerate(mise_list(sight.binder, sight.shoot)):
            if item.station != station:
                station, dish = item.station, ""
                rows.append(_heading(sight.binder, item, first=not rows))
            shown = f"{item.number or ''} {item.for_what}".strip()
            to_taste = sight.binder.lines[item.line].high is None
            rows.append(_row(item, number, "" if shown == dish else shown, to_taste=to_taste))
            dish = shown
        return rows

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if column != "preparation":
            raise NotEditableError
        line = sight.binder.lines[_line_of(row)]
        return set_fields(_("Edit a preparation"), line, preparation=text.strip())


def _line_of(row: str) -> str:
    return record_of(row).id.rsplit("/", 1)[0]


def _heading(binder: Binder, item: MiseItem, *, first: bool) -> Row:
    ready = ""
    if item.ready_by is not None:
        when = f"{clock_text(item.ready_by.time())}, {date_text(binder, item.ready_by.date(), 'EEE d MMM')}"
        ready = _("ready by {when}").format(when=when)
    cells = (Cell(item.station, size=Size.STRONG), NOTHING, NOTHING, Cell(ready, tone=Tone.QUIET), NOTHING, NOTHING)
    return Row(f"station:{item.station}", cells, spans=((0, 3),), gap=0 if first else 3, lines=1.5)


def _row(item: MiseItem, number: int, dish: str, *, to_taste: bool) -> Row:
    place = Place("lines", item.line)
    weight, _space, unit = item.total.weight.rpartition(" ")
    ranged = "–" in item.total.weight
    cells = (
        Cell(dish, tone=Tone.QUIET),
        Cell(item.food, leads_to=place, tip=_("Open in the recipe")),
        Cell(item.preparation, edit=item.preparation, placeholder="–"),
        Cell(_each(item, to_taste=to_taste)),
        Cell(item.total.weight) if ranged else Cell(weight, unit),
        Cell(item.total.measure, tone=Tone.QUIET if item.total.weight else Tone.INK),
    )
    return Row(f"mise:{item.line}/{item.dish or number}", cells, place=place, lines=1.55)


def _each(item: MiseItem, *, to_taste: bool) -> str:
    """`3 × 180 g`, or each build with its own amount: `hero 180 g, spare 90 g`."""
    amounts = [_amount(build.amount) for build in item.builds]
    if to_taste:
        return amounts[0]
    if len(set(amounts)) == 1:
        return amounts[0] if item.count == 1 else f"{item.count} × {amounts[0]}"
    return ", ".join(f"{_(build.kind)} {amount}" for build, amount in zip(item.builds, amounts, strict=True))


def _amount(amount: SetOut) -> str:
    return amount.weight or amount.measure
