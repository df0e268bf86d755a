"""The day as large as the screen: what is filmed, what must start, the next swap-out, timers and safety clocks."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSizeF, Qt, QTimer
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QLayout, QSizePolicy, QVBoxLayout, QWidget

from binder.desktop.day_page.bars import Bars, bars_of
from binder.desktop.day_page.planning import planning_of
from binder.desktop.set_view import ticking
from binder.desktop.set_view.due_list import DueList
from binder.desktop.set_view.due_row import ROW_HEIGHT, DueRow
from binder.desktop.set_view.late_control import LateControl
from binder.desktop.set_view.ringing import Ringing
from binder.desktop.set_view.set_line import SetLine
from binder.desktop.set_view.set_panel import SetPanel
from binder.desktop.set_view.set_sight import AHEAD, SetSight, set_sight
from binder.desktop.set_view.set_type import METRES, SetType, dots_per_inch, set_type, share_of
from binder.desktop.set_view.set_words import camera_lines, safety_panel, swap_out_panel, timer_panel
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import sized
from binder.desktop.words.clock_room import widest_time
from binder.figures.date_text import time_text
from binder.figures.safety_clocks import SafetyClock, safety_clocks
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from PySide6.QtGui import QCloseEvent, QFont, QHideEvent, QResizeEvent, QShowEvent

    from binder.desktop.desk import Desk
    from binder.figures.day_plan import DayPlan
    from binder.kitchen.shoot import Shoot

_SECOND = 1000
_FEWEST_ROWS = 3
_DIGITS_ACROSS = 40
"""What a row needs beside its time: a dish, what, with what caution, and who."""


class SetWindow(QWidget):
    """Follows the plan and the clock while it is shown. Everything in it is done with one key or one tap."""

    def __init__(self, desk: Desk, parent: QWidget | None = None, *, dots: float | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle(_("On the set"))
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._desk, self._dots = desk, dots
        self.metres = METRES
        self.planning = planning_of(desk)
        self.sound: Callable[[], None] = QApplication.beep
        self.sight: SetSight | None = None
        self.bars: Bars = {}
        self._clocks: tuple[SafetyClock, ...] = ()
        self._plan: DayPlan | None = None
        self._ringing: Ringing | None = None
        self.clock = SetLine(self)
        self.clock.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.dish, self.step = SetLine(self), SetLine(self, tone="quiet")
        self.coming = DueRow("N", self)
        self.starts, self.says = SetLine(self, tone="quiet"), SetLine(self, tone="warning")
        self.due = DueList(self)
        self.swap_out, self.timers, self.safety = SetPanel(self), SetPanel(self), SetPanel(self)
        self.late = LateControl(self)
        self._lay_out()
        self._listen()
        self._tick = QTimer(self)
        self._tick.setObjectName("the clock on the set")
        self._tick.setInterval(_SECOND)
        self._tick.timeout.connect(self.show_now)

    def _lay_out(self) -> None:
        head, camera = QHBoxLayout(), QVBoxLayout()
        camera.setSpacing(0)
        camera.addWidget(self.dish)
        camera.addWidget(self.step)
        head.addWidget(self.clock)
        head.addLayout(camera, 1)
        panels = QHBoxLayout()
        for panel in (self.swap_out, self.timers, self.safety):
            panels.addWidget(panel, 1)
        self._column = QVBoxLayout(self)
        self._column.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        self._column.addLayout(head)
        self._column.addWidget(self.coming)
        self._column.addWidget(self.starts)
        self._column.addWidget(self.due, 1)
        self._column.addWidget(self.says)
        self._column.addLayout(panels)
        self._column.addWidget(self.late)
        self._head, self._panels = head, panels

    def _listen(self) -> None:
        self.coming.clicked.connect(self.film_next)
        self.due.ticked.connect(self.begin)
        self.swap_out.clicked.connect(self.swap_out_is_ready)
        self.timers.clicked.connect(self.hear)
        self.late.plan_asked.connect(self.planning.run_late)
        self.late.on_time_asked.connect(self.planning.be_on_time_again)
        self.late.undo_asked.connect(self.undo)
        self.late.full_screen_asked.connect(self.toggle_full_screen)
        self.late.close_asked.connect(self.close)
        self.planning.changed.connect(self._follow)
        self._desk.changed.connect(self._follow)

    # What is shown

    def wear(self) -> None:
        """Take fonts that are read from three metres, or from as far as the screen is large enough for."""
        dots = self._dots or dots_per_inch(self.screen())
        self.late.wear(sized(self.font(), 1.4))
        fonts = set_type(self.font(), dots)
        needed = self._room_for(fonts)
        share = min(1.0, self.width() / needed.width(), self.height() / needed.height())
        self.metres = METRES * share
        if share < 1:
            fonts = set_type(self.font(), dots, metres=self.metres)
        self.late.say_metres(self.metres if share < 1 else None)
        self._put_on(fonts)

    def _room_for(self, fonts: SetType) -> QSizeF:
        """What everything needs at these fonts, in pixels: its lines, and the fewest rows of what must start."""
        text, heading = QFontMetricsF(fonts.text).height(), QFontMetricsF(fonts.heading).height()
        head = max(QFontMetricsF(fonts.clock).height(), QFontMetricsF(fonts.dish).height() + text)
        rows = (_FEWEST_ROWS + 1) * ROW_HEIGHT
        gaps = 5 * _gap(fonts) + self.late.heightForWidth(self.width())
        height = head + (rows + 2) * text + 2 * heading + gaps
        across = QFontMetricsF(fonts.text).horizontalAdvance("0") * _DIGITS_ACROSS + self._time_room(fonts.text)
        return QSizeF(across, height)

    def _time_room(self, font: QFont) -> float:
        """The pixels that any time of day needs in a row."""
        return widest_time(self._desk.binder, QFontMetricsF(share_of(font, strong=True)))

    def _put_on(self, fonts: SetType) -> None:
        self.clock.wear(fonts.clock)
        self.clock.setFixedWidth(math.ceil(widest_time(self._desk.binder, QFontMetricsF(fonts.clock))) + 2)
        self.dish.wear(fonts.dish)
        self.step.wear(fonts.text)
        room = self._time_room(fonts.text)
        self.coming.wear(fonts.text, time_room=room)
        self.starts.wear(fonts.heading)
        self.says.wear(fonts.heading)
        self.due.wear(fonts.text, fonts.heading, time_room=room)
        for panel in (self.swap_out, self.timers, self.safety):
            panel.wear(fonts)
        gap = _gap(fonts)
        self._column.setContentsMargins(gap * 2, gap, gap * 2, gap)
        self._column.setSpacing(gap // 2)
        self._head.setSpacing(gap * 3)
        self._panels.setSpacing(gap)

    def _follow(self) -> None:
        """The plan or the binder is another."""
        shoot = self._desk.shoot
        if not self.isVisible() or shoot is None:
            return
        plan = self.planning.plan
        self.bars = bars_of(self._desk.binder, plan) if plan is not None else {}
        if plan is not self._plan:
            self._plan = plan
            self._clocks = safety_clocks(self._desk.binder, shoot.id, plan) if plan is not None else ()
        self.late.show_state(busy=self.planning.searching, is_late=self.planning.can_be_on_time_again)
        self.show_now()

    def show_now(self) -> None:
        """Show the moment it is."""
        shoot = self._desk.shoot
        if shoot is None:
            return
        now = self._now(shoot)
        self.clock.say(time_text(self._desk.binder, now.time()))
        if self._plan is None:
            self.dish.say(shoot.name)
            self.step.say(_("The day is being planned") if self.planning.busy else _("There is no plan for this day"))
            self.coming.show_due(None)
            return
        self.sight = set_sight(self._desk.binder, self._plan, self.bars, now)
        self._show(self.sight)
        self._ring(self.sight)

    def _now(self, shoot: Shoot) -> datetime:
        return self.planning.clock(shoot.zone)

    def _show(self, sight: SetSight) -> None:
        dish, step = camera_lines(self._desk.binder, sight)
        self.dish.say(dish)
        self.step.say(step)
        self.coming.show_due(sight.next_filmed)
        self.starts.say(_("To start in the next {minutes} minutes").format(minutes=AHEAD))
        self.due.show_due(sight.due, sight.later)
        self.swap_out.say(swap_out_panel(self._desk.binder, sight.swap_out))
        self.safety.say(safety_panel(self._desk.binder, self._clocks, sight.now))
        self.says.say(self._trouble())
        self.says.setVisible(bool(self.says.text))

    def _trouble(self) -> str:
        """What running late breaks, or that there is no plan any more."""
        answer = self.planning.answer
        said = [*(one.says for one in answer.broken), *answer.says] if answer is not None else []
        if self.planning.trouble is not None:
            said = [_("There is no plan for the rest of the day: see the page of the day.")]
        more = len(said) - 1
        return said[0] if more == 0 else _("{says} And {count} more.").format(says=said[0], count=more) if said else ""

    def _ring(self, sight: SetSight) -> None:
        if self._ringing is None:
            self._ringing = Ringing(sight.now)
        ringing = self._ringing.now(sight.timers, sight.now)
        self.timers.say(timer_panel(sight.timers, ringing, sight.now))
        if self._ringing.is_to_sound(ringing, sight.now):
            self.sound()

    # What is done

    def begin(self, key: str) -> None:
        """Tick an activity: it has begun."""
        shoot, bar = self._desk.shoot, self.bars.get(key)
        if shoot is not None and bar is not None:
            self._desk.make(ticking.begin(self._desk.binder, shoot, bar, self._now(shoot)))

    def film_next(self) -> None:
        """The camera is on the next."""
        if self.sight is not None and self.sight.next_filmed is not None:
            self.begin(self.sight.next_filmed.key)

    def swap_out_is_ready(self) -> None:
        """The next swap-out stands ready."""
        swap = self.sight.swap_out if self.sight is not None else None
        if swap is not None:
            self._desk.make(ticking.is_ready(self._desk.binder, self._desk.binder.builds[swap.build]))

    def hear(self) -> None:
        """The timers that ring have been heard."""
        if self.sight is not None and self._ringing is not None:
            self._ringing.hear(self._ringing.now(self.sight.timers, self.sight.now))
            self.show_now()

    def undo(self) -> None:
        """Take the last tick back."""
        self._desk.bridge.undo()

    def toggle_full_screen(self) -> None:
        """The whole screen, or a window again."""
        self.showNormal() if self.isFullScreen() else self.showFullScreen()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        done = self._keys().get(Qt.Key(event.key()))
        if Qt.Key.Key_1 <= event.key() <= Qt.Key.Key_9 and not self._is_with_control(event):
            self.due.press(event.key() - Qt.Key.Key_0)
        elif event.key() == Qt.Key.Key_Z and self._is_with_control(event):
            self.undo()
        elif done is not None and not self._is_with_control(event):
            done()
        else:
            super().keyPressEvent(event)

    @staticmethod
    def _is_with_control(event: QKeyEvent) -> bool:
        return bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)

    def _keys(self) -> dict[Qt.Key, Callable[[], object]]:
        return {
            Qt.Key.Key_N: self.film_next,
            Qt.Key.Key_S: self.swap_out_is_ready,
            Qt.Key.Key_T: self.hear,
            Qt.Key.Key_Plus: self.late.more,
            Qt.Key.Key_Equal: self.late.more,
            Qt.Key.Key_Minus: self.late.less,
            Qt.Key.Key_L: self.late.ask,
            Qt.Key.Key_F11: self.toggle_full_screen,
            Qt.Key.Key_Escape: self.close,
        }

    # Coming and going

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.wear()
        self.planning.attend(self, present=True)
        self._tick.start()
        self._follow()

    def hideEvent(self, event: QHideEvent) -> None:
        self._tick.stop()
        self.planning.attend(self, present=False)
        super().hideEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        self._tick.stop()
        super().closeEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.wear()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self)
        painter.fillRect(self.rect(), tokens.colour("raised"))
        y = self.coming.geometry().bottom() + self._column.spacing()
        if self.coming.isVisible():
            painter.fillRect(QRectF(0, y, self.width(), 2), tokens.colour("line"))


def _gap(fonts: SetType) -> int:
    """The air between two parts, in pixels."""
    return max(4, fonts.heading.pixelSize() // 3)
