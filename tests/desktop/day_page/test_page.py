"""The page of the day: what it says of the plan, pins as changes that undo, links to where things are said."""

from __future__ import annotations

from datetime import time

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from binder.desktop.day_page.page import BEFORE, CREW, PLAN, DayPage
from binder.desktop.day_page.planning import planning_of
from binder.desktop.day_page.planning_work import Answer
from binder.desktop.day_page.trouble import Trouble, WayOut
from binder.desktop.main_window import MainWindow
from binder.figures.day_question import day_question
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.edits.day import add_event, set_call
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_work
from tests.desktop.editing import type_over


def settle(page: DayPage, qtbot: QtBot) -> None:
    """Wait until the plan has followed."""
    qtbot.waitUntil(lambda: not page.planning.busy)


def test_it_says_how_good_the_plan_is_and_what_is_assumed(page: DayPage) -> None:
    assert page.planning.plan is not None
    assert page.line.sentence.text() == page.planning.plan.says()
    assert [link.text() for link in page.line.assumed] == list(page.planning.plan.assumed)


def test_each_assumption_leads_to_where_it_is_said(page: DayPage, day_window: MainWindow) -> None:
    crew, kitchen = page.line.assumed[:2]
    crew.click()
    assert page.parts.current == CREW
    assert page.table("people").hasFocus()
    kitchen.click()
    assert page.table("appliances").hasFocus()
    steps = [link for link in page.line.assumed if "step" in link.text()]
    if steps:
        steps[0].click()
        assert day_window.shown == "dishes"


def test_a_pin_is_a_change_that_undo_takes_back(page: DayPage, day_window: MainWindow, qtbot: QtBot) -> None:
    page.focus_first()
    bar = page.plan.timeline.current
    assert bar is not None
    QTest.keyClick(page.plan.timeline, Qt.Key.Key_Return)
    pins = day_window.desk.binder.pins.where("shoot", "day")
    assert [pin.target for pin in pins] == [bar.target]
    settle(page, qtbot)
    assert page.plan.timeline.current is not None
    assert page.plan.timeline.current.pinned
    assert "pinned to" in page.plan.activity.says.lower()
    QTest.keyClick(page.plan.timeline, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    moved = day_window.desk.binder.pins.where("shoot", "day")[0]
    assert moved.at == page.plan.latest.value.wall(bar.start + 5).time()  # type: ignore[union-attr]
    day_window.actions_.run("undo")
    day_window.actions_.run("undo")
    assert not day_window.desk.binder.pins.where("shoot", "day")
    settle(page, qtbot)
    assert page.plan.timeline.current is not None
    assert page.plan.timeline.current.key == bar.key
    assert not page.plan.timeline.current.pinned


def test_a_pinned_activity_is_let_go_by_its_button(page: DayPage, day_window: MainWindow) -> None:
    page.focus_first()
    page.plan.activity.later.click()
    assert len(day_window.desk.binder.pins) == 1
    assert page.plan.activity.pin.text() == "Let it go"
    page.plan.activity.pin.click()
    assert len(day_window.desk.binder.pins) == 0


def test_the_three_ways_to_see_the_plan_show_the_same_activities(page: DayPage) -> None:
    for key in ("resources", "dishes"):
        page.plan.rows[key].click()
        shown = {one.piece.bar.key for one in page.plan.timeline.places.pieces}
        assert shown == set(page.plan.latest.value.bars)  # type: ignore[union-attr]
    page.plan.rows["list"].click()
    model = page.plan.list.sheet_model
    listed = {model.row_at(at).key for at in range(model.rowCount())}
    assert {f"bar:{key}" for key in page.plan.latest.value.bars} <= listed  # type: ignore[union-attr]
    assert not page.plan.zooms.isEnabled()


def test_a_time_typed_in_the_list_pins_and_an_empty_one_lets_go(page: DayPage, day_window: MainWindow) -> None:
    page.plan.rows["list"].click()
    bar = next(bar for bar in page.plan.latest.value.bars.values() if bar.filmed)  # type: ignore[union-attr]
    type_over(page.plan.list, f"bar:{bar.key}", "start", "13:40")
    pins = day_window.desk.binder.pins.where("shoot", "day")
    assert [(pin.target, pin.at) for pin in pins] == [(bar.target, time(13, 40))]
    type_over(page.plan.list, f"bar:{bar.key}", "start", "")
    assert not day_window.desk.binder.pins.where("shoot", "day")


def test_where_there_is_no_plan_each_way_out_is_a_button_that_undo_takes_back(
    page: DayPage, day_window: MainWindow, qtbot: QtBot
) -> None:
    earlier = set_call(day_window.desk.binder.shoots["day"], time(6, 30))
    page.planning.work = lambda asked, hearing: Answer(None, day_question(asked.binder, asked.shoot))
    page.planning.explain = lambda asked, answer, tell, going_on: Trouble(
        ("Lunch and the wrap clash.",), (WayOut("Call earlier", earlier),)
    )
    shoot = day_window.desk.binder.shoots["day"]
    day_window.desk.make(add_event(day_window.desk.binder, shoot, "Lunch", time(12, 0), minutes=45)[0])
    qtbot.waitUntil(lambda: bool(page.line.ways))
    assert page.line.sentence.text() == "There is no plan for this day."
    assert page.line.more.text() == "Lunch and the wrap clash."
    assert page.plan.latest.stale
    page.planning.work = straight_work()
    page.line.ways[0].click()
    assert day_window.desk.binder.shoots["day"].call == time(6, 30)
    settle(page, qtbot)
    assert not page.line.ways
    assert page.planning.plan is not None
    assert page.line.sentence.text() == page.planning.plan.says()
    day_window.actions_.run("undo")
    assert day_window.desk.binder.shoots["day"].call == time(7, 0)


@pytest.mark.parametrize(
    ("kind", "table"), [("person", "people"), ("appliance", "appliances"), ("event", "fixed_events")]
)
def test_new_ones_are_begun_where_they_are_typed(page: DayPage, day_window: MainWindow, kind: str, table: str) -> None:
    day_window.begin("day", kind)
    assert page.parts.current == CREW
    assert page.table(table).state() == page.table(table).State.EditingState


def test_places_of_the_day_are_found_on_the_page(page: DayPage, day_window: MainWindow) -> None:
    shoot = day_window.desk.binder.shoots["day"]
    change, event = add_event(day_window.desk.binder, shoot, "Guest", time(14, 0))
    day_window.desk.make(change)
    page.show_part(PLAN)
    assert page.go_to(Place("fixed_events", event.id))
    assert page.table("fixed_events").current_row() is not None
    assert not page.go_to(Place("recipes", "r"))
    page.show_part(BEFORE)
    assert not page.go_to(Place("shoots", "day"))


def test_a_shoot_without_a_date_is_told_so(page: DayPage, day_window: MainWindow, qtbot: QtBot) -> None:
    day_window.desk.make(set_shoot(day_window.desk.binder.shoots["day"], on=None))
    settle(page, qtbot)
    assert "which is not set" in page.line.sentence.text()
    assert not page.plan.timeline.places.pieces
    page.line.assumed[0].click()
    assert day_window.shown == "shoot"


def test_a_binder_without_a_shoot_has_an_empty_page(window_on: MakeWindow) -> None:
    window = window_on(Binder())
    window.show_page("day")
    page = window.page("day")
    assert isinstance(page, DayPage)
    assert not planning_of(window.desk).busy
    assert page.begin("person") is False


def test_double_click_and_button_open_the_step(page: DayPage, day_window: MainWindow) -> None:
    bar = next(bar for bar in page.plan.latest.value.bars.values() if bar.activity.build)  # type: ignore[union-attr]
    page.plan.timeline.choose(bar.key)
    page.plan.activity.step.click()
    assert day_window.shown == "dishes"
