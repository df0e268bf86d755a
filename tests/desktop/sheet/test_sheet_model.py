"""The item model follows its presenter, repaints what differs, and keeps Qt's rules for models."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import pytest
from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester
from pytestqt.qtbot import QtBot

from binder.desktop.sheet.cell import Cell, Column, Row
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, Sight
from binder.desktop.sheet.sheet_model import SheetModel
from binder.kitchen.binder import Binder
from binder.kitchen.change import Change
from binder.kitchen.edits.records import set_fields
from binder.kitchen.errors import BinderError


@dataclass
class Letters(PlainSheet):
    """Shows the letters of a text, one a row; the second column is edited."""

    letters: str = "abc"
    marks: dict[str, str] = field(default_factory=dict)
    name: str = "Letters"
    columns: tuple[Column, ...] = (Column("letter", "letter"), Column("mark", "mark"))

    def rows(self, sight: Sight) -> list[Row]:
        return [Row(letter, (Cell(letter), Cell(self.marks.get(letter, ""), edit=""))) for letter in self.letters]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        if column != "mark":
            raise NotEditableError
        return set_fields("Edit", sight.binder.settings, name=text)

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        return set_fields("Move", sight.binder.settings, name=f"{row} before {before}")


class Made:
    """Takes changes."""

    def __init__(self) -> None:
        self.changes: list[Change] = []

    def __call__(self, change: Change) -> bool:
        self.changes.append(change)
        return True


def shown(letters: str, made: Made | None = None) -> SheetModel:
    model = SheetModel(Letters(letters), made or Made())
    model.show_sight(Sight(Binder()))
    return model


def texts(model: SheetModel) -> str:
    return "".join(str(model.index(row, 0).data()) for row in range(model.rowCount()))


@pytest.mark.parametrize("letters", ["", "a", "abcdefghijklmnopqrstuvwxyz"])
def test_keeps_the_rules_of_models(qtbot: QtBot, letters: str) -> None:
    model = shown(letters)
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal)
    for after in ("abc", "cab", "b", "", "xbyz"):
        model.sheet.letters = after  # type: ignore[attr-defined]
        model.show_sight(Sight(Binder()))
        assert texts(model) == after
    tester.deleteLater()


def test_an_edit_repaints_only_the_cells_that_differ(qtbot: QtBot) -> None:
    model = shown("abcd")
    repainted: list[tuple[int, int, int, int]] = []

    def note(first: QModelIndex, last: QModelIndex) -> None:
        repainted.append((first.row(), first.column(), last.row(), last.column()))

    model.dataChanged.connect(note)
    with qtbot.assertNotEmitted(model.modelReset):
        model.sheet.marks["c"] = "!"  # type: ignore[attr-defined]
        model.show_sight(Sight(Binder()))
    assert repainted == [(2, 1, 2, 1)]


def test_a_row_stays_the_same_row_wherever_it_goes(qtbot: QtBot) -> None:
    model = shown("abcd")
    kept = QPersistentModelIndex(model.index(0, 0))
    model.sheet.letters = "xdcba"  # type: ignore[attr-defined]
    model.show_sight(Sight(Binder()))
    assert kept.data() == "a"
    assert kept.row() == 4


def test_typing_makes_a_change(qtbot: QtBot) -> None:
    made = Made()
    model = shown("ab", made)
    assert model.setData(model.index(1, 1), "Market day")
    assert [change.label for change in made.changes] == ["Edit"]


def test_what_cannot_be_is_refused_before_anything_is_made(qtbot: QtBot) -> None:
    made = Made()
    model = shown("ab", made)
    with pytest.raises(BinderError):
        model.change_for(model.index(0, 1), "x" * 400)
    assert not made.changes


def test_only_cells_with_a_text_to_edit_are_editable(qtbot: QtBot) -> None:
    model = shown("ab")
    assert not model.flags(model.index(0, 0)) & Qt.ItemFlag.ItemIsEditable
    assert model.flags(model.index(0, 1)) & Qt.ItemFlag.ItemIsEditable


@pytest.mark.parametrize(("target", "before"), [(0, "a"), (2, "c"), (3, None)])
def test_a_row_is_dropped_before_the_row_it_is_dropped_on(qtbot: QtBot, target: int, before: str | None) -> None:
    made = Made()
    model = shown("abc", made)
    dragged: Sequence[QModelIndex] = [model.index(1, 0)]
    model.dropMimeData(model.mimeData(dragged), Qt.DropAction.MoveAction, target, 0, QModelIndex())
    assert [edit.after.name for change in made.changes for edit in change.edits] == [f"b before {before}"]  # type: ignore[union-attr]


def told_roles(model: SheetModel, **letters: str) -> list[list[int]]:
    """The roles that are told of when letters have other marks."""
    told: list[list[int]] = []

    def note(_first: QModelIndex, _last: QModelIndex, roles: list[int]) -> None:
        told.append(roles)

    model.dataChanged.connect(note)
    model.sheet.marks.update(letters)  # type: ignore[attr-defined]
    model.show_sight(Sight(Binder()))
    model.dataChanged.disconnect(note)
    return told


def test_a_row_as_high_as_before_is_not_measured_anew(qtbot: QtBot) -> None:
    model = shown("abcd")
    (roles,) = told_roles(model, b="!")
    assert Qt.ItemDataRole.DisplayRole in roles
    assert Qt.ItemDataRole.SizeHintRole not in roles


@pytest.mark.parametrize("count", [3, 60, 1500])
def test_however_many_rows_are_others_all_are_told_of(qtbot: QtBot, count: int) -> None:
    letters = "".join(map(chr, range(0x4E00, 0x4E00 + count)))
    model, seen = shown(letters), set[int]()
    model.dataChanged.connect(lambda first, last: seen.update(range(first.row(), last.row() + 1)))
    for mark in ("!", "?"):
        seen.clear()
        told_roles(model, **dict.fromkeys(letters, mark))
        assert seen == set(range(count))
        assert {str(model.index(row, 1).data()) for row in range(count)} == {mark}
