"""An empty page: one sentence about what belongs here, and the one button that begins it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from binder.desktop.spacing import characters, space


class EmptyPage(QWidget):
    """Stands in for what is not there yet."""

    begun = Signal()

    def __init__(self, sentence: str, button: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sentence = QLabel(sentence, self)
        self._sentence.setWordWrap(True)
        self._sentence.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self._sentence.setFixedWidth(characters(self.font(), 56))
        self.button = QPushButton(button, self)
        self.button.setObjectName("begin")
        self.button.setProperty("leading", True)
        self.button.clicked.connect(self.begun)
        layout = QVBoxLayout(self)
        layout.setSpacing(space(self, 4))
        layout.addStretch(2)
        layout.addLayout(_in_the_middle(self._sentence))
        layout.addWidget(self.button, 0, Qt.AlignmentFlag.AlignHCenter)
        layout.addStretch(3)

    @property
    def sentence(self) -> str:
        """What it says."""
        return self._sentence.text()


def _in_the_middle(label: QLabel) -> QHBoxLayout:
    """Aligned by itself a label would be as high as its text is in one line, and the rest of it cut off."""
    layout = QHBoxLayout()
    layout.addStretch(1)
    layout.addWidget(label)
    layout.addStretch(1)
    return layout


class FilledOrEmpty(QStackedWidget):
    """Shows content where there is some, else the empty page that stands in for it."""

    def __init__(self, content: QWidget, empty: EmptyPage, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.addWidget(content)
        self.addWidget(empty)

    def show_filled(self, *, filled: bool) -> None:
        """Show the content or what stands in for it."""
        self.setCurrentIndex(0 if filled else 1)
