"""The words on the set: timers to the second, the camera's state, panels with what presses them."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from binder.desktop.set_view.set_sight import Due, NextSwapOut, OnCamera, SetSight, Timer
from binder.desktop.set_view.set_words import camera_lines, left_text, safety_panel, swap_out_panel, timer_panel
from binder.desktop.sheet.cell import Mark
from binder.figures.safety_clocks import SafetyClock
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.reference import cautions, time_limits
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import BuildKind, BuildState

GERMAN = binder_of([Settings(id=SETTINGS_ID, name="g", locale="de_DE")])
NOON = datetime(2026, 11, 6, 12)  # noqa: DTZ001
NEXT = Due("k", NOON + timedelta(minutes=8), "12:08", "2", "Fry", "Ode", -8)


def sight(filmed: OnCamera | None = None, coming: Due | None = None) -> SetSight:
    return SetSight(NOON, filmed, coming, (), None, None, (), NOON)


@pytest.mark.parametrize(
    ("left", "text"),
    [
        (timedelta(minutes=12, seconds=30), "12:30"),
        (timedelta(seconds=9), "0:09"),
        (timedelta(seconds=0.4), "0:01"),
        (timedelta(0), "0:00"),
        (timedelta(seconds=-5), "0:00"),
        (timedelta(hours=1, minutes=5), "1:05:00"),
    ],
)
def test_a_timer_shows_whole_seconds_and_zero_only_when_it_is_over(left: timedelta, text: str) -> None:
    assert left_text(left) == text


def test_the_camera_says_what_it_is_on_or_until_when_it_waits() -> None:
    filmed = OnCamera("2 Herb fritters", "Fry", NOON + timedelta(minutes=4), over=False)
    assert camera_lines(GERMAN, sight(filmed)) == ("2 Herb fritters", "Fry  ·  to 12:04")
    over = OnCamera("2 Herb fritters", "Fry", NOON - timedelta(minutes=4), over=True)
    assert camera_lines(GERMAN, sight(over)) == ("2 Herb fritters", "Fry  ·  was to end 11:56")
    assert camera_lines(GERMAN, sight(coming=NEXT)) == ("The camera waits", "until 12:08")
    assert camera_lines(GERMAN, sight()) == ("That is a wrap", "")


def test_times_are_as_the_locale_writes_them() -> None:
    filmed = OnCamera("2 Herb fritters", "Fry", NOON + timedelta(minutes=4), over=False)
    assert camera_lines(Binder(), sight(filmed))[1] == "Fry  ·  to 12:04\u202fPM"
    panel = swap_out_panel(Binder(), NextSwapOut("b", "2 Herb fritters", NOON, BuildState.READY, "ready"))
    assert panel.lines[0].text == "12:00\u202fPM  2 Herb fritters"


def test_a_swap_out_that_is_ready_has_nothing_to_press() -> None:
    swap = NextSwapOut("b", "2 Herb fritters", NOON, BuildState.UNDER_WAY, "at 11:40 Shape")
    panel = swap_out_panel(GERMAN, swap)
    assert panel.hint == "S"
    assert [line.text for line in panel.lines] == ["12:00  2 Herb fritters", "at 11:40 Shape"]
    assert panel.lines[1].mark is Mark.UNKNOWN
    ready = swap_out_panel(GERMAN, NextSwapOut("b", "2 Herb fritters", NOON, BuildState.READY, "ready"))
    assert (ready.hint, ready.lines[1].mark) == ("", Mark.WITHIN)
    assert swap_out_panel(GERMAN, None).hint == ""


def test_timers_that_ring_come_first_and_stand_on_ink() -> None:
    rings, runs = Timer("a", "4 Bake", NOON), Timer("b", "3 Simmer", NOON + timedelta(minutes=5))
    panel = timer_panel((rings, runs), (rings,), NOON)
    assert [(line.text, line.solid) for line in panel.lines] == [("0:00  4 Bake", True), ("5:00  3 Simmer", False)]
    assert panel.hint == "T"
    quiet = timer_panel((runs,), (), NOON)
    assert quiet.hint == ""
    many = tuple(Timer(str(at), "Simmer", NOON + timedelta(minutes=at + 1)) for at in range(5))
    assert timer_panel(many, (), NOON).heading == "Timers, 5"


def test_the_clock_of_what_is_out_of_the_cold_is_held_against_its_limit(chickpeas: Binder) -> None:
    limit = time_limits()["two_hour"]

    def clock(name: str, since: int, until: int, total: int) -> SafetyClock:
        span = (NOON - timedelta(minutes=since), NOON + timedelta(minutes=until), total)
        return SafetyClock(name, name, None, None, ("f",), (span,), total, limit, None)

    cold = clock("5 Mousse", -60, 90, 30)
    panel = safety_panel(chickpeas, (clock("2 Fritters", 10, 20, 30), clock("3 Stew", 125, 10, 135), cold), NOON)
    assert panel.heading == "Out of the cold, of 2:00"
    assert [(line.text, line.mark) for line in panel.lines] == [
        ("2:05  3 Stew", Mark.OVER),
        ("0:10  2 Fritters", Mark.NONE),
    ]
    assert safety_panel(chickpeas, (cold,), NOON).lines[0].text == "–"


def test_a_build_out_of_the_cold_is_called_by_number_and_kind(chickpeas: Binder) -> None:
    build = next(one for one in chickpeas.builds.values() if one.kind is BuildKind.SWAP_OUT)
    span = (NOON - timedelta(minutes=5), NOON + timedelta(minutes=5), 10)
    limit = time_limits()["two_hour"]
    clock = SafetyClock("t", "a long name", build.dish, build.id, ("f",), (span,), 10, limit, None)
    number = chickpeas.dishes[build.dish].position + 1
    assert safety_panel(chickpeas, (clock,), NOON).lines[0].text.startswith(f"0:05  {number} swap-out")


def test_what_is_filmed_carries_its_caution() -> None:
    hot = (cautions()["hot_oil"],)
    filmed = OnCamera("2 Herb fritters", "Fry", NOON + timedelta(minutes=4), over=False, cautions=hot)
    assert camera_lines(GERMAN, sight(filmed))[1] == "Fry  ·  to 12:04  ·  △ Hot oil"
