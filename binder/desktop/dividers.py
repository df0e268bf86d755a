"""The dividers of the binder: a column of words, each leading to a page, ticked where something needs you."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy, QVBoxLayout, QWidget

from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


class Divider(QAbstractButton):
    """One tab; the chosen one is of one piece with the page."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(title)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self._stops, self._warns = 0, 0
        self._name()

    def need(self, stops: int, warns: int) -> None:
        """Say how many checks wait here that stop the shoot, and how many that want a look."""
        if (stops, warns) != (self._stops, self._warns):
            self._stops, self._warns = stops, warns
            self._name()
            self.update()

    def _name(self) -> None:
        waiting = self._stops + self._warns
        says = ngettext("{count} check needs you", "{count} checks need you", waiting).format(count=waiting)
        self.setAccessibleName(f"{self.text()}, {says}" if waiting else self.text())
        self.setToolTip(says if waiting else "")

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(sized(self.font(), 1.0, strong=True))
        return QSize(round(metrics.horizontalAdvance(self.text())) + space(self, 10), space(self, 9.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        if self.isChecked() or self.underMouse():
            tab = box.adjusted(0.5, 1.5, 6, -1.5)
            painter.setPen(QPen(tokens.colour("line"), 1) if self.isChecked() else Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("raised" if self.isChecked() else "faint"))
            painter.drawRoundedRect(tab, 4, 4)
        if self.isChecked():
            painter.fillRect(
                QRectF(0, box.height() * 0.24, space(self, 0.75), box.height() * 0.52), tokens.colour("accent")
            )
        self._tick(painter, box)
        painter.setFont(sized(self.font(), 1.0, strong=self.isChecked()))
        painter.setPen(tokens.colour("ink" if self.isChecked() else "quiet"))
        painter.drawText(box.adjusted(space(self, 4), 0, 0, 0), int(Qt.AlignmentFlag.AlignVCenter), self.text())
        if self.hasFocus():
            painter.setPen(QPen(tokens.colour("accent"), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(3.5, 4.5, -3.5, -4.5), 4, 4)

    def _tick(self, painter: QPainter, box: QRectF) -> None:
        """A solid tick for what stops the shoot, a broken one for what wants a look."""
        if not self._stops and not self._warns:
            return
        tokens, width = tokens_for(self.palette()), max(2.0, space(self, 0.6))
        tick = QRectF(box.right() - space(self, 3), box.center().y() - space(self, 2), width, space(self, 4))
        if self._stops:
            painter.fillRect(tick, tokens.colour("stop"))
            return
        half = tick.height() * 0.4
        painter.fillRect(QRectF(tick.left(), tick.top(), width, half), tokens.colour("warning"))
        painter.fillRect(QRectF(tick.left(), tick.bottom() - half, width, half), tokens.colour("warning"))


class Dividers(QWidget):
    """The column of dividers, one of them chosen."""

    chosen = Signal(str)

    def __init__(self, pages: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("Pages"))
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._dividers: dict[str, Divider] = {}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(space(self, 3), space(self, 2), 0, 0)
        layout.setSpacing(space(self, 0.5))
        for key, title in pages:
            divider = Divider(title, self)
            divider.setObjectName(key)
            divider.clicked.connect(self._clicked)
            self._group.addButton(divider)
            self._dividers[key] = divider
            layout.addWidget(divider)
        layout.addStretch(1)

    def choose(self, key: str) -> None:
        """Mark a divider as the chosen one."""
        self._dividers[key].setChecked(True)

    def need(self, waiting: Mapping[str, tuple[int, int]]) -> None:
        """Say for each page how many checks stop the shoot there and how many want a look."""
        for key, divider in self._dividers.items():
            divider.need(*waiting.get(key, (0, 0)))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The edge of the page, which the chosen divider covers."""
        box = QRectF(self.rect())
        QPainter(self).fillRect(QRectF(box.right() - 1, 0, 1, box.height()), tokens_for(self.palette()).colour("line"))

    def _clicked(self) -> None:
        self.chosen.emit(self.sender().objectName())
