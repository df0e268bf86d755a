"""The time axis: every minute has its place, nights are folded, marks of the clock keep apart."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.day_page.axis import FOLD_FROM, Axis, Dial, Span, axis_of, fitting_scale, spans_of, ticks_of

ORIGIN = datetime(2026, 12, 6)  # noqa: DTZ001 - the wall clock

works = st.lists(
    st.tuples(st.integers(0, 5000), st.integers(0, 240)).map(lambda one: (one[0], one[0] + one[1])),
    min_size=1,
    max_size=40,
)


def in_words(at: time) -> str:
    return f"{at:%H:%M}"


def wall(minute: float) -> datetime:
    return ORIGIN + timedelta(minutes=minute)


def an_axis(spans: tuple[Span, ...], width: float = 1000.0) -> Axis:
    scale = fitting_scale(spans, width=width, fold=40.0, least=60.0)
    return axis_of(spans, per_minute=scale, fold=40.0, least=60.0)


@given(works)
def test_no_work_is_folded_and_longer_rest_is(work: list[tuple[int, int]]) -> None:
    spans = spans_of(work)
    for start, end in work:
        assert any(not span.folded and span.start <= start and end <= span.end for span in spans)
    for before, after in pairwise(spans):
        assert before.end == after.start
        assert before.folded != after.folded
    for span in spans:
        assert not span.folded or span.end - span.start >= FOLD_FROM - 40


@given(works)
def test_every_place_is_a_minute_and_back(work: list[tuple[int, int]]) -> None:
    axis = an_axis(spans_of(work))
    for stretch in axis.stretches:
        for minute in (stretch.span.start, stretch.span.end, (stretch.span.start + stretch.span.end) // 2):
            assert abs(axis.minute(axis.x(minute)) - minute) <= 1 / min(1.0, stretch.per_minute) + 1
    places = [axis.x(minute) for minute in range(axis.start, axis.end, 7)]
    assert places == sorted(places)


def test_the_day_is_never_folded() -> None:
    spans = spans_of([(600, 610), (1000, 1010)], day=(600, 1010))
    assert spans == (Span(590, 1020),)


@given(works, st.floats(300, 2000))
def test_the_whole_axis_fits_where_it_can(work: list[tuple[int, int]], width: float) -> None:
    spans = spans_of(work)
    folds = sum(span.folded for span in spans)
    least = 40.0 * folds + 60.0 * (len(spans) - folds)
    assert an_axis(spans, width).width <= max(width, least) + 1e-6
    if width >= least:
        assert abs(an_axis(spans, width).width - width) < 1e-6


@given(works)
def test_marks_of_the_clock_keep_apart(work: list[tuple[int, int]]) -> None:
    axis = an_axis(spans_of(work))
    ticks = ticks_of(axis, wall, Dial(in_words, hours_apart=50.0, minutes_apart=50.0))
    assert ticks
    for stretch in axis.stretches:
        inside = [tick.x for tick in ticks if stretch.left <= tick.x < stretch.right]
        for one, other in pairwise(inside):
            assert other - one >= 50.0 - 1e-6


def test_marks_stand_at_full_hours_by_the_clock_on_the_wall() -> None:
    axis = axis_of((Span(470, 610),), per_minute=1.0, fold=40, least=60)
    dial = Dial(in_words, hours_apart=55, minutes_apart=55)
    assert [tick.text for tick in ticks_of(axis, wall, dial)] == ["08:00", "09:00"]


def test_full_hours_may_stand_closer_than_parts_of_an_hour() -> None:
    axis = axis_of((Span(470, 640),), per_minute=1.0, fold=40, least=60)
    short_hours = Dial(in_words, hours_apart=30, minutes_apart=61)
    assert [tick.text for tick in ticks_of(axis, wall, short_hours)] == ["08:00", "09:00", "10:00"]
    short_minutes = Dial(in_words, hours_apart=30, minutes_apart=30)
    assert [tick.text for tick in ticks_of(axis, wall, short_minutes)][:3] == ["08:00", "08:30", "09:00"]


def test_an_empty_axis_has_no_width() -> None:
    assert Axis(()).width == 0.0
    assert Axis(()).x(5) == 0.0
    assert Axis(()).minute(5) == 0
    assert spans_of([]) == ()


def test_a_stretch_too_short_for_a_full_mark_has_one_at_its_start() -> None:
    axis = axis_of((Span(15, 45),), per_minute=2.0, fold=40.0, least=10.0)
    dial = Dial(in_words, hours_apart=50.0, minutes_apart=50.0)
    assert [(tick.x, tick.text) for tick in ticks_of(axis, wall, dial)] == [(0.0, in_words(wall(15).time()))]
