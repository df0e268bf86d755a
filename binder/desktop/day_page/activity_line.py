"""Under the timeline: what the current activity is and why it is then, and what can be done with it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from binder.desktop.day_page.cautions import cautions_of, in_full, in_short
from binder.desktop.day_page.why import reasons, title_of, when_text
from binder.desktop.heading_label import HeadingLabel
from binder.desktop.spacing import space
from binder.desktop.theme import tokens_for
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.day_page.bars import Bar
    from binder.desktop.day_page.day_picture import DayPicture


class ActivityLine(QWidget):
    """Says of one activity what hovering over it says too."""

    pin_asked = Signal()
    """Pin it where it is, or let it go."""
    shift_asked = Signal(int)
    """Pin it so many minutes later, or earlier."""
    step_asked = Signal()
    """Show the step in its recipe."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = HeadingLabel("", 0, self)
        self._when = QLabel(self)
        self._caution = QLabel(self)
        self._why = QLabel(self)
        self._why.setProperty("quiet", True)
        self._why.setWordWrap(True)
        for label in (self._when, self._caution, self._why):
            label.setTextFormat(Qt.TextFormat.PlainText)
        self._why.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._why.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.pin = self._button(_("Pin it here"), self._ask_pin, _("Enter on the timeline does the same"))
        self.earlier = self._button(_("5 min earlier"), self._ask_earlier, _("Ctrl+Left on the timeline"))
        self.later = self._button(_("5 min later"), self._ask_later, _("Ctrl+Right on the timeline"))
        self.step = self._button(_("Open the step"), self.step_asked.emit, _("In its recipe"))
        self._lay_out()
        self.show_activity(None, None)

    def _button(self, title: str, pressed: object, tip: str) -> QPushButton:
        button = QPushButton(title, self)
        button.setToolTip(tip)
        button.clicked.connect(pressed)
        return button

    def _lay_out(self) -> None:
        buttons = QHBoxLayout()
        buttons.setSpacing(space(self, 1.5))
        for button in (self.pin, self.earlier, self.later, self.step):
            buttons.addWidget(button)
        under = QHBoxLayout()
        under.setSpacing(space(self, 3))
        under.addWidget(self._caution, 0, Qt.AlignmentFlag.AlignTop)
        under.addWidget(self._why, 1)
        layout = QGridLayout(self)
        layout.setContentsMargins(space(self, 2), space(self, 2), space(self, 2), space(self, 1))
        layout.setHorizontalSpacing(space(self, 3))
        layout.setVerticalSpacing(space(self, 0.5))
        layout.addWidget(self._title, 0, 0)
        layout.addWidget(self._when, 0, 1)
        layout.addLayout(buttons, 0, 2, 2, 1, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignRight)
        layout.addLayout(under, 1, 0, 1, 2)
        layout.setColumnStretch(1, 1)
        self._why.setFixedHeight(2 * self.fontMetrics().lineSpacing())

    def show_activity(self, picture: DayPicture | None, bar: Bar | None) -> None:
        """Say what an activity is; nothing where none is chosen."""
        there = picture is not None and bar is not None
        for button in (self.pin, self.earlier, self.later):
            button.setEnabled(there)
        self.step.setEnabled(there and bar is not None and bar.activity.step is not None)
        if picture is None or bar is None:
            self._title.setText("")
            self._when.setText("")
            self._caution.hide()
            self._why.setText(_("Choose an activity on the timeline: it says here why it is then."))
            return
        self._title.setText(title_of(picture.binder, bar))
        self._when.setText(when_text(picture, bar))
        hazards = cautions_of(picture.binder, bar.activity)
        self._caution.setText(in_short(hazards))
        self._caution.setVisible(bool(hazards))
        self._caution.setToolTip(in_full(hazards))
        why = "; ".join(reasons(picture, bar))
        self._why.setText(why[:1].upper() + why[1:] + "." if why else "")
        self.pin.setText(_("Let it go") if bar.pinned else _("Pin it here"))

    @property
    def says(self) -> str:
        """All of it, as words."""
        return "\n".join(
            label.text() for label in (self._title, self._when, self._caution, self._why) if label.isVisibleTo(self)
        )

    def _ask_pin(self) -> None:
        self.pin_asked.emit()

    def _ask_earlier(self) -> None:
        self.shift_asked.emit(-5)

    def _ask_later(self) -> None:
        self.shift_asked.emit(5)

    def minimumSizeHint(self) -> QSize:
        return QSize(0, super().minimumSizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRectF(0, 0, self.width(), 1), tokens_for(self.palette()).colour("line"))
