"""A few words side by side of which one is chosen: what a part of a page shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized

if TYPE_CHECKING:
    from collections.abc import Sequence


class Choice(QAbstractButton):
    """One word; the chosen one is underlined and strong."""

    def __init__(self, key: str, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = key
        self.setText(title)
        self.setAccessibleName(title)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.toggled.connect(self._take_tab_stop)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def _take_tab_stop(self, chosen: bool) -> None:  # noqa: FBT001 - a signal gives it so
        """Tab comes to the one chosen; arrows lead from it to the others."""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if chosen else Qt.FocusPolicy.ClickFocus)

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(sized(self.font(), 1.0, strong=True))
        return QSize(round(metrics.horizontalAdvance(self.text())) + space(self, 5), space(self, 7.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        if self.underMouse() and not self.isChecked():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("faint"))
            painter.drawRoundedRect(box, 4, 4)
        if self.isChecked():
            thick = max(2.0, space(self, 0.6))
            inset = space(self, 2.5)
            line = QRectF(inset, box.bottom() - thick, box.width() - 2 * inset, thick)
            painter.fillRect(line, tokens.colour("accent"))
        painter.setFont(sized(self.font(), 1.0, strong=self.isChecked()))
        painter.setPen(tokens.colour("ink" if self.isChecked() else "quiet"))
        painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), self.text())
        if self.hasFocus():
            painter.setPen(QPen(tokens.colour("accent"), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 4, 4)


class Choices(QWidget):
    """A row of words, one of them chosen."""

    chosen = Signal(str)

    def __init__(self, name: str, choices: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._choices: dict[str, Choice] = {}
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        for key, title in choices:
            choice = Choice(key, title, self)
            choice.clicked.connect(self._clicked)
            self._group.addButton(choice)
            self._choices[key] = choice
            layout.addWidget(choice)
        self.choose(choices[0][0])

    @property
    def current(self) -> str:
        """The key of the one chosen."""
        return next(key for key, choice in self._choices.items() if choice.isChecked())

    def choose(self, key: str) -> None:
        """Choose one."""
        self._choices[key].setChecked(True)

    def __getitem__(self, key: str) -> Choice:
        return self._choices[key]

    def _clicked(self) -> None:
        sender = self.sender()
        if isinstance(sender, Choice):
            self.chosen.emit(sender.key)
