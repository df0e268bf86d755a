"""The timeline: walked by keys, zoomed, dragged to pin; captions keep apart, and what is current is said."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.appearance import Wardrobe
from binder.desktop.day_page.day_picture import DayPicture
from binder.desktop.day_page.timeline import SNAP, Timeline
from binder.desktop.day_page.timeline_places import PlacedPiece
from binder.desktop.theme import Appearance
from binder.desktop.typeface import small


@pytest.fixture
def timeline(qtbot: QtBot, wardrobe: Wardrobe, picture: DayPicture) -> Timeline:
    made = Timeline()
    qtbot.addWidget(made)
    made.resize(1200, 700)
    made.show_picture(picture)
    made.show()
    qtbot.waitExposed(made)
    made.setFocus()
    return made


def current(timeline: Timeline) -> str:
    bar = timeline.current
    assert bar is not None
    return bar.key


def point_of(timeline: Timeline, one: PlacedPiece) -> QPoint:
    """A point of the viewport on a piece."""
    x = (one.left + one.right) / 2 + timeline.label_width - timeline.horizontalScrollBar().value()
    y = one.top + 10 + timeline.head_height - timeline.verticalScrollBar().value()
    return QPoint(round(x), round(y))


def on_camera(timeline: Timeline) -> list[PlacedPiece]:
    return [one for one in timeline.places.pieces if one.lane == 0]


def test_the_keyboard_begins_with_the_first_on_camera(timeline: Timeline) -> None:
    assert current(timeline) == on_camera(timeline)[0].piece.bar.key


def test_right_and_left_walk_a_lane_and_stay_at_its_ends(timeline: Timeline) -> None:
    keys = [one.piece.bar.key for one in on_camera(timeline)]
    for key in keys[1:]:
        QTest.keyClick(timeline, Qt.Key.Key_Right)
        assert current(timeline) == key
    QTest.keyClick(timeline, Qt.Key.Key_Right)
    assert current(timeline) == keys[-1]
    QTest.keyClick(timeline, Qt.Key.Key_Home)
    assert current(timeline) == keys[0]
    QTest.keyClick(timeline, Qt.Key.Key_End)
    assert current(timeline) == keys[-1]
    QTest.keyClick(timeline, Qt.Key.Key_Left)
    assert current(timeline) == keys[-2]


def test_down_and_up_reach_every_lane(timeline: Timeline) -> None:
    lanes: set[int] = set()
    for _press in range(len(timeline.places.lanes)):
        piece = timeline.current_piece
        assert piece is not None
        lanes.add(piece.lane)
        QTest.keyClick(timeline, Qt.Key.Key_Down)
    assert lanes == {one.lane for one in timeline.places.pieces}
    for _press in range(len(timeline.places.lanes)):
        QTest.keyClick(timeline, Qt.Key.Key_Up)
    assert timeline.current_piece is not None
    assert timeline.current_piece.lane == 0


def test_enter_pins_and_ctrl_with_an_arrow_moves(timeline: Timeline) -> None:
    asked: list[tuple[str, object]] = []
    timeline.pin_asked.connect(lambda key, minute: asked.append((key, minute)))
    bar = timeline.current
    assert bar is not None
    QTest.keyClick(timeline, Qt.Key.Key_Return)
    QTest.keyClick(timeline, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(timeline, Qt.Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert asked == [(bar.key, bar.start), (bar.key, bar.start + SNAP), (bar.key, bar.start - SNAP)]
    assert current(timeline) == bar.key


def test_dragging_asks_for_a_pin_at_full_fives(timeline: Timeline, qtbot: QtBot) -> None:
    one = on_camera(timeline)[0]
    begin = point_of(timeline, one)
    target = QPoint(
        round(begin.x() + timeline.axis.x(one.piece.bar.start + 62) - timeline.axis.x(one.piece.bar.start)), begin.y()
    )
    with qtbot.waitSignal(timeline.pin_asked) as caught:
        QTest.mousePress(timeline.viewport(), Qt.MouseButton.LeftButton, pos=begin)
        QTest.mouseMove(timeline.viewport(), QPoint((begin.x() + target.x()) // 2, begin.y()))
        QTest.mouseMove(timeline.viewport(), target)
        timeline.drag_to(QPointF(target))
        QTest.mouseRelease(timeline.viewport(), Qt.MouseButton.LeftButton, pos=target)
    key, minute = caught.args
    assert key == one.piece.bar.key
    assert minute % SNAP == 0
    assert abs(minute - one.piece.bar.start - 62) <= SNAP


def test_escape_lets_go_of_what_is_dragged(timeline: Timeline) -> None:
    asked: list[object] = []
    timeline.pin_asked.connect(lambda key, minute: asked.append(minute))
    begin = point_of(timeline, on_camera(timeline)[0])
    QTest.mousePress(timeline.viewport(), Qt.MouseButton.LeftButton, pos=begin)
    timeline.drag_to(QPointF(begin.x() + 80.0, begin.y()))
    QTest.keyClick(timeline, Qt.Key.Key_Escape)
    QTest.mouseRelease(timeline.viewport(), Qt.MouseButton.LeftButton, pos=begin)
    assert not asked


def test_a_click_without_a_drag_only_chooses(timeline: Timeline) -> None:
    asked: list[object] = []
    timeline.pin_asked.connect(lambda key, minute: asked.append(minute))
    one = on_camera(timeline)[3]
    QTest.mouseClick(timeline.viewport(), Qt.MouseButton.LeftButton, pos=point_of(timeline, one))
    assert current(timeline) == one.piece.bar.key
    assert not asked


def test_keys_zoom_and_the_current_one_stays_in_sight(timeline: Timeline) -> None:
    QTest.keyClick(timeline, Qt.Key.Key_End)
    fitted = timeline.axis.width
    for _press in range(8):
        QTest.keyClick(timeline, Qt.Key.Key_Plus)
    assert timeline.axis.width > 3 * fitted
    piece = timeline.current_piece
    assert piece is not None
    assert timeline.viewport().rect().contains(point_of(timeline, piece))
    QTest.keyClick(timeline, Qt.Key.Key_0)
    assert timeline.axis.width == fitted
    QTest.keyClick(timeline, Qt.Key.Key_Minus)
    assert timeline.axis.width == fitted


@pytest.mark.parametrize("zooms", [0, 3, 7])
def test_captions_never_overlap_what_follows(timeline: Timeline, zooms: int) -> None:
    for _press in range(zooms):
        QTest.keyClick(timeline, Qt.Key.Key_Plus)
    metrics = QFontMetricsF(small(timeline.font()))
    for lane in range(len(timeline.places.lanes)):
        pieces = [one for one in timeline.places.pieces if one.lane == lane]
        for one, other in pairwise(pieces):
            assert one.left + metrics.horizontalAdvance(one.caption) <= other.left
    for dish, after in pairwise(timeline.places.dishes):
        assert dish.extent[0] + metrics.horizontalAdvance(dish.text) <= after.extent[0]
    assert any(one.caption for one in timeline.places.pieces)


def test_the_current_activity_can_be_heard(timeline: Timeline) -> None:
    bar = timeline.current
    assert bar is not None
    assert bar.activity.name in timeline.accessibleDescription()
    QTest.keyClick(timeline, Qt.Key.Key_Down)
    assert timeline.current is not None
    assert timeline.current.activity.name in timeline.accessibleDescription()


@pytest.mark.parametrize("appearance", [Appearance.LIGHT, Appearance.DARK])
def test_hands_waits_and_folds_are_drawn_apart(timeline: Timeline, wardrobe: Wardrobe, appearance: Appearance) -> None:
    """A solid bar is one colour, a wait is at least two: shape, not only tone."""
    wardrobe.choose(appearance)
    for _press in range(6):
        QTest.keyClick(timeline, Qt.Key.Key_Plus)
    image = timeline.viewport().grab().toImage()
    across = timeline.horizontalScrollBar().value()
    seen = range(across + 2, across + timeline.viewport().width() - timeline.label_width)

    def colours(one: PlacedPiece, extent: tuple[float, float]) -> set[int]:
        foot = round(one.top + timeline.head_height + timeline.bar_foot) - 3
        inside = range(round(extent[0]) + 3, round(extent[1]) - 3)
        return {image.pixel(x - across + timeline.label_width, foot) for x in inside if x in seen}

    pieces = [one for one in timeline.places.pieces if one.top + 80 < timeline.viewport().height()]
    hands = [colours(one, one.hands) for one in pieces if one.hands and one is not timeline.current_piece]
    waits = [colours(one, one.wait) for one in pieces if one.wait]
    assert any(hands)
    assert any(waits)
    assert all(len(found) <= 1 for found in hands)
    assert any(len(found) > 1 for found in waits)


def test_no_plan_is_an_empty_timeline(timeline: Timeline) -> None:
    timeline.show_picture(None)
    assert timeline.current is None
    assert not timeline.places.pieces
    QTest.keyClick(timeline, Qt.Key.Key_Right)
    QTest.keyClick(timeline, Qt.Key.Key_Return)
    QTest.keyClick(timeline, Qt.Key.Key_Plus)
    timeline.viewport().grab()
