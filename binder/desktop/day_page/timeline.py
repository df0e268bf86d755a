"""The plan as a timeline: rows that scroll under a clock that stays, activities to walk to, to pin and to drag."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QFocusEvent,
    QFontMetricsF,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QApplication, QFrame, QToolTip, QWidget

from binder.desktop.day_page.axis import Axis, axis_of, fitting_scale
from binder.desktop.day_page.timeline_head import TimelineHead
from binder.desktop.day_page.timeline_painting import Look, TimelineBrush
from binder.desktop.day_page.timeline_places import Measures, PlacedPiece, Places, places_of
from binder.desktop.day_page.timeline_steps import Way, next_piece
from binder.desktop.day_page.why import heard, why_text
from binder.desktop.spacing import characters, space
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import small
from binder.figures.day_activities import step_of
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.day_page.bars import Bar
    from binder.desktop.day_page.day_picture import DayPicture

_STALE = 0.45
"""How much ink a plan keeps while the next is being worked out."""

ZOOM_STEP = 1.25
MOST_PER_MINUTE = 0.9
"""Widths of a digit a minute takes at the closest look."""

SNAP = 5
"""Minutes that a dragged activity snaps to, and that a key moves it by."""

_WAYS = {
    Qt.Key.Key_Left: Way.LEFT,
    Qt.Key.Key_Right: Way.RIGHT,
    Qt.Key.Key_Up: Way.UP,
    Qt.Key.Key_Down: Way.DOWN,
    Qt.Key.Key_Home: Way.FIRST,
    Qt.Key.Key_End: Way.LAST,
}


class Timeline(QAbstractScrollArea):
    """Draws a DayPicture. Arrows walk among activities; Enter pins; Ctrl with an arrow moves by 5 minutes."""

    current_changed = Signal()
    """Another activity is the current one."""
    pin_asked = Signal(str, object)
    """An activity, and the minute it is to begin at; None to let it go where it fits."""
    step_asked = Signal(str)
    """An activity whose recipe is to be shown."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("The plan as a timeline"))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setMouseTracking(True)
        self._picture: DayPicture | None = None
        self._axis, self._places = Axis(()), Places((), (), (), (), (), (), 0.0)
        self._head = TimelineHead(self)
        self._zoom = 1.0
        self._current: tuple[str, int] | None = None
        self._under_mouse: PlacedPiece | None = None
        self._pressed: tuple[PlacedPiece, QPointF] | None = None
        self._dragged_to: int | None = None

    # What is shown

    def show_picture(self, picture: DayPicture | None) -> None:
        """Show a plan; the current activity stays the current one."""
        before = self.current
        self._picture = picture
        self._lay_out()
        if before is not None:
            self.choose(before.key, lane=self._current[1] if self._current else 0)
        self.viewport().update()

    @property
    def places(self) -> Places:
        """Where everything lies."""
        return self._places

    @property
    def axis(self) -> Axis:
        """The time axis."""
        return self._axis

    def _lay_out(self) -> None:
        by, picture = self._measures(), self._picture
        spans = picture.spans if picture is not None else ()
        fold, least = characters(self.font(), 6), characters(self.font(), 11)
        fit = fitting_scale(spans, width=self._room(), fold=fold, least=least)
        per_minute = min(fit * self._zoom, max(fit, characters(self.font(), 1) * MOST_PER_MINUTE))
        self._axis = axis_of(spans, per_minute=per_minute, fold=fold, least=least)
        self._places = places_of(picture.groups if picture is not None else (), self._axis, by)
        self._head.lay_out(picture, self._axis)
        self._under_mouse = None
        self._set_scroll_bars()

    def _measures(self) -> Measures:
        metrics = QFontMetricsF(small(self.font()))
        return Measures(
            line=metrics.height(),
            bar=float(space(self, 3)),
            air=float(space(self, 1.5)),
            elide=lambda text, room: metrics.elidedText(text, Qt.TextElideMode.ElideRight, room),
        )

    @property
    def label_width(self) -> int:
        """How wide the titles of the rows are."""
        return min(characters(self.font(), 24), self.viewport().width() // 4)

    @property
    def head_height(self) -> int:
        """How high the clock over the rows is."""
        return self._head.height

    @property
    def bar_foot(self) -> float:
        """How far under the top of its lane a bar stands."""
        by = self._measures()
        return by.line + by.bar

    def _room(self) -> int:
        return max(1, self.viewport().width() - self.label_width - space(self, 2))

    def _set_scroll_bars(self) -> None:
        view = self.viewport().size()
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setPageStep(self._room())
        across.setRange(0, max(0, round(self._axis.width) - self._room()))
        across.setSingleStep(space(self, 8))
        below = view.height() - self._head.height
        down.setPageStep(max(1, below))
        down.setRange(0, max(0, round(self._places.height) - below))
        down.setSingleStep(space(self, 8))

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """The titles and the clock stay, so everything is painted anew."""
        self.viewport().update()

    # Zoom

    def zoom(self, factor: float, *, at: float | None = None) -> None:
        """Look closer (over 1) or from farther away; the minute at the place `at`, or the current one, stays there."""
        if self._picture is None:
            return
        place = self._room() / 2 if at is None else at - self.label_width
        minute = self._axis.minute(place + self.horizontalScrollBar().value())
        if at is None and self.current is not None:
            minute = self.current.start
            place = self._axis.x(minute) - self.horizontalScrollBar().value()
        before = self._axis.width
        self._zoom = max(1.0, self._zoom * factor)
        self._lay_out()
        if factor > 1 and self._axis.width <= before:
            self._zoom = max(1.0, self._zoom / factor)
        self.horizontalScrollBar().setValue(round(self._axis.x(minute) - place))
        self.viewport().update()

    def fit(self) -> None:
        """Show the whole plan."""
        self._zoom = 1.0
        self._lay_out()
        self.viewport().update()

    # The current activity

    @property
    def current(self) -> Bar | None:
        """The current activity."""
        one = self.current_piece
        return one.piece.bar if one is not None else None

    @property
    def current_piece(self) -> PlacedPiece | None:
        """The piece of the current activity that was come to."""
        if self._current is None:
            return None
        key, lane = self._current
        same = [one for one in self._places.pieces if one.piece.bar.key == key]
        return next((one for one in same if one.lane == lane), same[0] if same else None)

    def choose(self, key: str, *, lane: int | None = None) -> bool:
        """Make an activity the current one and bring it into sight; False where it is not shown."""
        same = [one for one in self._places.pieces if one.piece.bar.key == key]
        one = next((one for one in same if one.lane == lane), same[0] if same else None)
        if one is None:
            self._current = None
            self.current_changed.emit()
            return False
        self._choose_piece(one)
        return True

    def _choose_piece(self, one: PlacedPiece) -> None:
        other = self._current is None or self._current[0] != one.piece.bar.key
        self._current = (one.piece.bar.key, one.lane)
        self._bring_into_sight(one)
        self.viewport().update()
        self.current_changed.emit()
        if other and self._picture is not None:
            says = heard(self._picture, one.piece.bar)
            self.setAccessibleDescription(says)
            if self.hasFocus():
                QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, says))

    def _bring_into_sight(self, one: PlacedPiece) -> None:
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        margin = space(self, 6)
        if one.left - margin < across.value():
            across.setValue(round(one.left - margin))
        elif min(one.right, one.left + self._room() / 2) + margin > across.value() + self._room():
            across.setValue(round(one.left + margin - self._room() / 2))
        height = self._places.lanes[one.lane].height
        below = self.viewport().height() - self._head.height
        if one.top < down.value():
            down.setValue(round(one.top - margin))
        elif one.top + height > down.value() + below:
            down.setValue(round(one.top + height + margin - below))

    # Keys

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard always has an activity to start from."""
        super().focusInEvent(event)
        if self._current is None and self._places.pieces:
            self._choose_piece(self._places.pieces[0])
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._pressed_key(Qt.Key(event.key()), event.modifiers()):
            super().keyPressEvent(event)

    def _pressed_key(self, key: Qt.Key, modifiers: Qt.KeyboardModifier) -> bool:
        plain = modifiers & ~(Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier)
        if key in {Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus} and not plain:
            self.zoom(1 / ZOOM_STEP if key == Qt.Key.Key_Minus else ZOOM_STEP)
        elif key == Qt.Key.Key_0 and not plain:
            self.fit()
        elif key == Qt.Key.Key_Escape and self._dragged_to is not None:
            self._let_go()
        elif plain == Qt.KeyboardModifier.ControlModifier and key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            self.shift(SNAP if key == Qt.Key.Key_Right else -SNAP)
        elif key in _WAYS and not plain:
            one = next_piece(self._places, self.current_piece, _WAYS[key])
            if one is not None:
                self._choose_piece(one)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.toggle_pin()
        else:
            return False
        return True

    def toggle_pin(self) -> None:
        """Pin the current activity where it is, or let it go."""
        bar = self.current
        if bar is not None:
            self.pin_asked.emit(bar.key, None if bar.pinned else bar.start)

    def shift(self, minutes: int) -> None:
        """Pin the current activity so many minutes later, or earlier."""
        bar = self.current
        if bar is not None:
            self.pin_asked.emit(bar.key, bar.start + minutes)

    # Mouse

    def _inside(self, point: QPoint | QPointF) -> QPointF:
        """A point of the viewport among what scrolls."""
        return QPointF(
            point.x() - self.label_width + self.horizontalScrollBar().value(),
            point.y() - self._head.height + self.verticalScrollBar().value(),
        )

    def piece_at(self, point: QPoint | QPointF) -> PlacedPiece | None:
        """The piece at a point of the viewport; none under the titles or the clock."""
        if point.x() < self.label_width or point.y() < self._head.height:
            return None
        inside = self._inside(point)
        return self._places.at(inside.x(), inside.y())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        one = self.piece_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and one is not None:
            self._choose_piece(one)
            self._pressed = (one, event.position())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        one = self.piece_at(event.position())
        if one is not None:
            self.step_asked.emit(one.piece.bar.key)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pressed is not None and event.buttons() & Qt.MouseButton.LeftButton:
            self.drag_to(event.position())
            return
        one = self.piece_at(event.position())
        if one is not self._under_mouse:
            self._under_mouse = one
            shape = Qt.CursorShape.ArrowCursor if one is None else Qt.CursorShape.OpenHandCursor
            self.viewport().setCursor(shape)
            self.viewport().update()

    def drag_to(self, point: QPointF) -> None:
        """Drag the activity that was pressed to a point of the viewport."""
        if self._pressed is None:
            return
        one, begun = self._pressed
        if self._dragged_to is None and abs(point.x() - begun.x()) < QApplication.startDragDistance():
            return
        by = self._axis.minute(self._inside(point).x()) - self._axis.minute(self._inside(begun).x())
        self._dragged_to = round((one.piece.bar.start + by) / SNAP) * SNAP
        self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
        self.viewport().update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        pressed, target = self._pressed, self._dragged_to
        self._let_go()
        if pressed is not None and target is not None and target != pressed[0].piece.bar.start:
            self.pin_asked.emit(pressed[0].piece.bar.key, target)

    def _let_go(self) -> None:
        self._pressed, self._dragged_to = None, None
        self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        self.viewport().update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(ZOOM_STEP if event.angleDelta().y() > 0 else 1 / ZOOM_STEP, at=event.position().x())
            event.accept()
        else:
            super().wheelEvent(event)

    def viewportEvent(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            one = self.piece_at(event.pos())
            if one is not None and self._picture is not None:
                QToolTip.showText(event.globalPos(), why_text(self._picture, one.piece.bar), self)
            else:
                QToolTip.hideText()
            return True
        if event.type() == QEvent.Type.Leave and self._under_mouse is not None:
            self._under_mouse = None
            self.viewport().update()
        return super().viewportEvent(event)

    # Painting

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens, painter = tokens_for(self.palette()), QPainter(self.viewport())
        by = self._measures()
        width, height = self.viewport().width(), self.viewport().height()
        painter.fillRect(0, 0, width, height, tokens.colour("raised"))
        if self._picture is None:
            return
        down, across = self.verticalScrollBar().value(), self.horizontalScrollBar().value()
        brush = TimelineBrush(
            painter, tokens, self.font(), by.line, by.bar, by.air, (across - 20.0, across + width + 20.0)
        )
        painter.save()
        painter.setClipRect(QRectF(self.label_width, self._head.height, width, height))
        painter.translate(self.label_width - across, self._head.height - down)
        self._paint_rows(brush, QRectF(across, down, width, height))
        painter.restore()
        self._paint_titles(brush, down)
        self._head.paint(painter, tokens, label_width=self.label_width, across=across)

    def _paint_rows(self, brush: TimelineBrush, seen: QRectF) -> None:
        assert self._picture is not None  # noqa: S101 - asked by the caller
        picture, places = self._picture, self._places
        bottom = max(places.height, seen.bottom())
        brush.folds(self._axis, bottom)
        for dish in places.dishes:
            brush.dish_column(dish, bottom)
        for start, end in picture.stops:
            brush.stop_of_work((self._axis.x(start), self._axis.x(end)), bottom)
        brush.ticks(self._head.ticks_in(seen.left(), seen.right()), bottom)
        brush.painter.setPen(brush.tokens.colour("line"))
        for y in places.rules:
            brush.painter.drawLine(QPointF(seen.left(), y), QPointF(seen.right(), y))
        brush.painter.setOpacity(_STALE if picture.stale else 1.0)
        for dish in places.dishes:
            brush.dish(dish)
        for level in places.levels:
            brush.level(level)
        self._paint_pieces(brush, seen)
        brush.painter.setOpacity(1.0)
        if picture.now is not None:
            brush.painter.setPen(brush.tokens.colour("ink"))
            x = self._axis.x(picture.now)
            brush.painter.drawLine(QPointF(x, 0), QPointF(x, bottom))

    def _paint_pieces(self, brush: TimelineBrush, seen: QRectF) -> None:
        chosen = self.current_piece
        for one in self._places.pieces:
            if self._is_seen(one, seen):
                bar = one.piece.bar
                is_chosen = chosen is not None and bar.key == chosen.piece.bar.key
                brush.piece(one, Look(is_chosen and (one is chosen or not self.hasFocus()), one is self._under_mouse))
        if chosen is not None:
            for before in self._before(chosen):
                brush.thread(before, chosen)
        if self._pressed is not None and self._dragged_to is not None and self._picture is not None:
            one = self._pressed[0]
            by = self._axis.x(self._dragged_to) - self._axis.x(one.piece.bar.start)
            brush.ghost(one, by, self._picture.clock(self._dragged_to))

    def _is_seen(self, one: PlacedPiece, seen: QRectF) -> bool:
        lane = self._places.lanes[one.lane]
        right = max(one.right, one.fit[1] if one.fit else 0.0) + seen.width() / 4
        if one.left > seen.right() or right < seen.left():
            return False
        return lane.top + lane.height >= seen.top() and lane.top <= seen.bottom()

    def _before(self, chosen: PlacedPiece) -> list[PlacedPiece]:
        """What the chosen activity waits for, each where its wait is drawn."""
        keys = {step_of(key) for key in chosen.piece.bar.waits_for}
        found: dict[str, PlacedPiece] = {}
        for one in self._places.pieces:
            key = one.piece.bar.key
            if key in keys and (key not in found or one.right > found[key].right):
                found[key] = one
        return list(found.values())

    def _paint_titles(self, brush: TimelineBrush, down: int) -> None:
        painter, width = brush.painter, self.label_width
        painter.save()
        painter.setClipRect(QRectF(0, self._head.height, width, self.viewport().height()))
        painter.fillRect(QRectF(0, 0, width, self.viewport().height()), brush.tokens.colour("raised"))
        painter.translate(0, self._head.height - down)
        for lane in self._places.lanes:
            brush.lane_title(lane, width)
        for heading in self._places.headings:
            brush.heading(heading, width)
        painter.setPen(brush.tokens.colour("line"))
        for y in self._places.rules:
            painter.drawLine(QPointF(0, y), QPointF(width, y))
        painter.drawLine(QPointF(width - 0.5, 0), QPointF(width - 0.5, max(self._places.height, _FAR)))
        painter.restore()

    # Sizes

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay_out()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._lay_out()


_FAR = 100_000.0
