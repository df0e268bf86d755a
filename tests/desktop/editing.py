"""How a person edits a cell: by keys, in the real table."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from binder.desktop.sheet.cell_editor import LineEditor, ParagraphEditor
from binder.desktop.sheet.sheet_view import SheetView


def column_of(view: SheetView, column: str) -> int:
    """The place of a column by its id."""
    return [one.id for one in view.sheet_model.columns].index(column)


def open_editor(view: SheetView, row: str, column: str) -> LineEditor | ParagraphEditor:
    """The editor of a cell, begun with F2."""
    assert view.select_key(row, column_of(view, column)), f"no row {row}"
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_F2)
    return editor_in(view)


def editor_in(view: SheetView) -> LineEditor | ParagraphEditor:
    """The editor that is open and has the keyboard."""
    shown = [one for one in _editors(view) if one.isVisible() and one.hasFocus()]
    assert len(shown) == 1, "no editor is open"
    return shown[0]


def _editors(view: SheetView) -> list[LineEditor | ParagraphEditor]:
    lines: list[LineEditor] = view.viewport().findChildren(LineEditor)
    paragraphs: list[ParagraphEditor] = view.viewport().findChildren(ParagraphEditor)
    return [*lines, *paragraphs]


def is_editing(view: SheetView) -> bool:
    """Whether an editor is open."""
    return any(one.isVisible() for one in _editors(view))


def type_over(view: SheetView, row: str, column: str, text: str, key: Qt.Key = Qt.Key.Key_Return) -> None:
    """Open a cell, type over what stands there, and end with a key."""
    editor = open_editor(view, row, column)
    editor.selectAll()
    QTest.keyClick(editor, Qt.Key.Key_Delete)
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, key)


def shown(view: SheetView, row: str, column: str) -> str:
    """What a cell shows."""
    at = view.sheet_model.row_numbered(row)
    assert at is not None, f"no row {row}"
    return str(view.sheet_model.index(at, column_of(view, column)).data())
