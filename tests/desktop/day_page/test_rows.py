"""Rows: the camera on top, everything once by dish, people and appliances with what they hold."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from binder.desktop.day_page.bars import Bars, bars_of
from binder.desktop.day_page.rows import Group, Rows, groups_of
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder


@pytest.fixture
def bars(chickpeas: Binder, plan: DayPlan) -> Bars:
    return bars_of(chickpeas, plan)


def pieces_in(groups: tuple[Group, ...]) -> list[str]:
    return [piece.bar.key for group in groups for lane in group.lanes for piece in lane.pieces]


@pytest.mark.parametrize("rows", list(Rows))
def test_the_camera_is_on_top_with_all_it_sees(chickpeas: Binder, plan: DayPlan, bars: Bars, rows: Rows) -> None:
    groups = groups_of(chickpeas, bars, plan.asked.kitchen, rows)
    assert groups[0].key == "camera"
    assert len(groups[0].lanes) == 1
    assert {piece.bar.key for piece in groups[0].lanes[0].pieces} == {key for key, bar in bars.items() if bar.filmed}
    assert [dish.text[:1] for dish in groups[0].dishes] == ["1", "2", "3", "4", "5"]


@pytest.mark.parametrize("rows", list(Rows))
def test_no_piece_stands_over_another(chickpeas: Binder, plan: DayPlan, bars: Bars, rows: Rows) -> None:
    for group in groups_of(chickpeas, bars, plan.asked.kitchen, rows):
        for lane in group.lanes:
            for one, other in pairwise(lane.pieces):
                assert one.end <= other.start


def test_by_dish_every_activity_is_there_once_besides_the_camera(chickpeas: Binder, plan: DayPlan, bars: Bars) -> None:
    groups = groups_of(chickpeas, bars, plan.asked.kitchen, Rows.DISHES)
    assert sorted(pieces_in(groups[1:])) == sorted(bars)


def test_by_dish_the_close_stands_with_the_build_filmed_last(chickpeas: Binder, plan: DayPlan, bars: Bars) -> None:
    groups = groups_of(chickpeas, bars, plan.asked.kitchen, Rows.DISHES)
    for group in groups:
        for lane in group.lanes:
            closes = [piece for piece in lane.pieces if piece.bar.key.endswith("/talk")]
            if group.key != "camera":
                assert not closes or len(lane.pieces) > 1


def test_every_person_has_a_row_and_does_one_thing_at_a_time(chickpeas: Binder, plan: DayPlan, bars: Bars) -> None:
    groups = groups_of(chickpeas, bars, plan.asked.kitchen, Rows.RESOURCES)
    people = [group for group in groups if group.key.startswith("person ")]
    assert len(people) == len(plan.asked.kitchen.people)
    worked = {piece.bar.key for group in people for lane in group.lanes for piece in lane.pieces}
    assert worked == {key for key, bar in bars.items() if bar.people}


def test_an_oven_says_what_it_is_at(chickpeas: Binder, plan: DayPlan, bars: Bars) -> None:
    key = next(key for key, bar in bars.items() if bar.activity.step)
    hot = {**bars, key: replace(bars[key], uses=("assumed oven",), degrees=200)}
    groups = groups_of(chickpeas, hot, plan.asked.kitchen, Rows.RESOURCES)
    oven = next(group for group in groups if group.key == "assumed oven")
    assert "392 °F" in [level.text for level in oven.levels]


def test_near_temperatures_at_once_are_one_level(chickpeas: Binder, plan: DayPlan, bars: Bars) -> None:
    first, second = [key for key, bar in bars.items() if bar.activity.build][:2]
    start = bars[first].start
    hot = {
        first: replace(bars[first], start=start, end=start + 30, uses=("assumed oven",), degrees=170),
        second: replace(bars[second], start=start + 10, end=start + 40, uses=("assumed oven",), degrees=180),
    }
    groups = groups_of(chickpeas, hot, plan.asked.kitchen, Rows.RESOURCES)
    oven = next(group for group in groups if group.key == "assumed oven")
    assert [level.text for level in oven.levels] == ["338 °F – 356 °F"]
    assert oven.levels[0].minutes == (start, start + 40)
