"""The sheets there are, as a list to choose from. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Column, Row
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.missing import Place
from binder.kitchen.wording import _
from binder.paper.print_set import SheetKind, sheet_title, usual_paper

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight

SHEETS = "sheets"
"""Stands for the table in the places of this list; no table of the binder is called so."""


class SheetList(PlainSheet):
    """A row a kind of sheet."""

    @property
    def name(self) -> str:
        return _("Sheets")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (Column("title", _("sheet"), characters=18, stretch=1),)

    def rows(self, sight: Sight) -> list[Row]:
        return [
            Row(
                kind.value,
                (Cell(sheet_title(kind), tip=usual_paper(sight.binder, kind).name),),
                place=Place(SHEETS, kind.value),
                lines=1.7,
            )
            for kind in SheetKind
        ]
