"""The editors of cells: one line of text, or a paragraph. Neither knows what the text means."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QLineEdit, QPlainTextEdit, QWidget

from binder.desktop.sheet.editor_note import EditorNote

if TYPE_CHECKING:
    from PySide6.QtGui import QFont


class Kept:
    """What an editor began with, so that it is known whether anything was typed."""

    _begun_with: str | None = None

    @property
    def begun(self) -> bool:
        """Whether a text has been put in to begin with."""
        return self._begun_with is not None

    @property
    def changed(self) -> bool:
        """Whether what stands there is another text."""
        return self.value() != (self._begun_with or "")

    def value(self) -> str:
        """The text typed."""
        raise NotImplementedError

    def taken(self) -> None:
        """What stands there has been taken, and is not taken again."""
        self._begun_with = self.value()


class LineEditor(QLineEdit, Kept):
    """Edits a cell of one line."""

    typed = Signal()

    def __init__(self, parent: QWidget, font: QFont, name: str) -> None:
        super().__init__(parent)
        self.setFont(font)
        self.setAccessibleName(name)
        self.setTextMargins(0, 0, 0, 0)
        self.note = EditorNote(self)
        self.textEdited.connect(self._report)

    def _report(self) -> None:
        self.typed.emit()

    def begin(self, text: str) -> None:
        """Start with a text, all of it marked."""
        self._begun_with = text
        self.setText(text)
        self.selectAll()

    def value(self) -> str:
        return self.text()


class ParagraphEditor(QPlainTextEdit, Kept):
    """Edits a cell that holds a paragraph."""

    typed = Signal()

    def __init__(self, parent: QWidget, font: QFont, name: str) -> None:
        super().__init__(parent)
        self.setFont(font)
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTabChangesFocus(True)
        self.note = EditorNote(self)

    def begin(self, text: str) -> None:
        """Start with a text, the cursor at its end."""
        self._begun_with = text
        self.setPlainText(text)
        self.moveCursor(self.textCursor().MoveOperation.End)
        self.textChanged.connect(self.typed)

    def value(self) -> str:
        return self.toPlainText()


Editor = LineEditor | ParagraphEditor
