"""The budget as a table: food by dish, trips, the producer's own lines, tax and contingency. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.money_page.budget_rows import budget_rows
from binder.desktop.money_page.budget_typing import typed_budget_cell, typed_line, understood_line
from binder.desktop.sheet.cell import Align, Column
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.typed import typed_choice, yes_or_no
from binder.kitchen.edits.money import move_budget_line, remove_budget_line
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.money_page.money_figures import LatestBudget
    from binder.desktop.sheet.cell import Row
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.budget import BudgetLine
    from binder.kitchen.change import Change

ADD_BUDGET_LINE = "add:budget line"


class BudgetSheet(PlainSheet):
    """Groups with their sums; the lines of the producer's own are typed in place, dragged and removed."""

    def __init__(self, latest: LatestBudget) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Budget")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("name", _("what"), characters=24, stretch=4),
            Column("heading", _("heading"), characters=11, stretch=2),
            Column("quantity", _("quantity"), characters=7, align=Align.RIGHT),
            Column("rate", _("rate"), characters=8, align=Align.RIGHT),
            Column("planned", _("planned"), characters=10, align=Align.RIGHT),
            Column("committed", _("committed"), characters=9, align=Align.RIGHT, tip=_("Ordered, or ticked")),
            Column("actual", _("paid"), characters=9, align=Align.RIGHT, tip=_("By receipts")),
            Column("over", _("over or under"), characters=16, align=Align.RIGHT, tip=_("Beside what was planned")),
            Column("taxed", _("taxed"), characters=5),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot, budget = sight.binder.shoots.get(sight.shoot or ""), self._latest.value
        if shoot is None or budget is None:
            return []
        return budget_rows(sight.binder, shoot, budget, stale=self._latest.stale, adding=ADD_BUDGET_LINE)

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_BUDGET_LINE and sight.shoot is not None:
            return typed_line(binder, binder.shoots[sight.shoot], text)
        line = _line_of(sight, row)
        if line is None:
            raise NotEditableError
        taxed = typed_choice(text, yes_or_no()) if column == "taxed" else None
        return typed_budget_cell(binder, line, column, text, taxed=taxed)

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        return understood_line(sight.binder, text) if row == ADD_BUDGET_LINE else ""

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        lines = [line for row in rows if (line := _line_of(sight, row)) is not None]
        if len(lines) == 1:
            return remove_budget_line(sight.binder, lines[0])
        label = ngettext("Remove {count} budget line", "Remove {count} budget lines", len(lines))
        return remove(label.format(count=len(lines)), sight.binder, *lines) if lines else None

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        line = _line_of(sight, row)
        if line is None:
            return None
        others = [other.id for other in sight.binder.budget_lines.where("shoot", line.shoot) if other.id != line.id]
        target = record_of(before).id if before else ""
        return move_budget_line(sight.binder, line, to=others.index(target) if target in others else len(others))

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        line = _line_of(sight, row)
        return None if line is None else move_budget_line(sight.binder, line, to=max(0, line.position + by))


def _line_of(sight: Sight, row: str) -> BudgetLine | None:
    place = record_of(row)
    return sight.binder.budget_lines.get(place.id) if place.table == "budget_lines" else None
