"""One thing to start on the set: a row as large as a hand, ticked with a tap or with the key it shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from binder.desktop.day_page.cautions import caution_spoken, in_full, in_short
from binder.desktop.set_view.set_type import share_of
from binder.desktop.theme import tokens_for
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtGui import QFont

    from binder.desktop.set_view.set_sight import Due
    from binder.desktop.theme import Tokens

_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
ROW_HEIGHT = 1.06
"""Heights of a line."""

_LEAST_FOR_CAUTION = 0.45
"""The part of a row's words that a caution may take, however long what is done is called."""

_CENTRE = int(Qt.AlignmentFlag.AlignCenter)


class DueRow(QAbstractButton):
    """Shows a Due. What should have begun stands on a solid ground, what is to come in an outline."""

    def __init__(self, hint: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.hint = hint
        self.due: Due | None = None
        self._time_room = 0.0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_due(self, due: Due | None) -> None:
        """Show something to start; nothing hides the row."""
        if due != self.due:
            self.due = due
            self.setAccessibleName(heard(due) if due is not None else "")
            self.setToolTip(in_full(due.cautions) if due is not None else "")
            self.update()
        self.setVisible(due is not None)

    def wear(self, font: QFont, *, time_room: float) -> None:
        """Take a font, and keep so many pixels for a time."""
        self._time_room = time_room
        self.setFont(font)
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(self.font())
        return QSize(round(metrics.horizontalAdvance("0") * 20), round(metrics.height() * ROW_HEIGHT))

    def paintEvent(self, event: QPaintEvent) -> None:
        due = self.due
        if due is None:
            return
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        metrics = QFontMetricsF(self.font())
        digit, box = metrics.horizontalAdvance("0"), QRectF(self.rect()).adjusted(1, 1, -1, -1)
        self._ground(painter, tokens, box)
        left = self._tick_box(painter, tokens, box, digit) + digit * 0.5
        left = (
            self._time(painter, tokens, QRectF(left, box.top(), self._time_room + digit, box.height()), due)
            + digit * 0.7
        )
        if due.number:
            painter.setFont(share_of(self.font(), strong=True))
            painter.setPen(tokens.colour("ink"))
            painter.drawText(QRectF(left, box.top(), digit * 2, box.height()), _LEFT, due.number)
            left += digit * (0.6 + len(due.number))
        self._words(painter, tokens, QRectF(left, box.top(), box.right() - left - digit * 0.4, box.height()), due)

    def _ground(self, painter: QPainter, tokens: Tokens, box: QRectF) -> None:
        painter.setPen(QPen(tokens.colour("accent"), 3) if self.hasFocus() else Qt.PenStyle.NoPen)
        painter.setBrush(tokens.colour("tint" if self.isDown() or self.underMouse() else "raised"))
        painter.drawRoundedRect(box, 6, 6)

    def _tick_box(self, painter: QPainter, tokens: Tokens, box: QRectF, digit: float) -> float:
        """The box to tick, with the key that ticks it. Gives where it ends."""
        side = box.height() * 0.62
        square = QRectF(box.left() + digit * 0.3, box.center().y() - side / 2, side, side)
        painter.setPen(QPen(tokens.colour("edge"), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(square, 4, 4)
        painter.setFont(share_of(self.font(), 0.5))
        painter.setPen(tokens.colour("quiet"))
        painter.drawText(square, _CENTRE, self.hint)
        return square.right()

    def _time(self, painter: QPainter, tokens: Tokens, box: QRectF, due: Due) -> float:
        inner = box.adjusted(0, box.height() * 0.1, 0, -box.height() * 0.1)
        if due.now:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("ink"))
            painter.drawRoundedRect(inner, 4, 4)
        painter.setFont(share_of(self.font(), strong=True))
        painter.setPen(tokens.colour("raised" if due.now else "ink"))
        painter.drawText(inner, _CENTRE, due.clock)
        return box.right()

    def _words(self, painter: QPainter, tokens: Tokens, box: QRectF, due: Due) -> None:
        metrics = QFontMetricsF(self.font())
        painter.setFont(self.font())
        most = box.width() * 0.3
        who = metrics.elidedText(due.who, Qt.TextElideMode.ElideRight, most)
        painter.setPen(tokens.colour("quiet"))
        painter.drawText(box, _RIGHT, who)
        room = box.width() - (metrics.horizontalAdvance(who) + metrics.horizontalAdvance("00") if who else 0)
        left_over = room - metrics.horizontalAdvance(f"{due.what}00")
        most = max(room * _LEAST_FOR_CAUTION, left_over)
        caution = metrics.elidedText(in_short(due.cautions), Qt.TextElideMode.ElideRight, most)
        kept = metrics.horizontalAdvance(f"{caution}0") if caution else 0
        what = metrics.elidedText(due.what, Qt.TextElideMode.ElideRight, room - kept)
        painter.setPen(tokens.colour("ink"))
        painter.drawText(box, _LEFT, what)
        painter.setPen(tokens.colour("warning"))
        painter.drawText(box.adjusted(metrics.horizontalAdvance(f"{what}0"), 0, 0, 0), _LEFT, caution)


def heard(due: Due) -> str:
    """A row as it is heard."""
    when = _("{time}, now").format(time=due.clock) if due.now else due.clock
    dish = _("dish {number}").format(number=due.number) if due.number else ""
    parts = (when, dish, due.what, due.who, caution_spoken(due.cautions))
    return _("Begin: {what}").format(what=", ".join(part for part in parts if part))
