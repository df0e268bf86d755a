"""Times, dates, heat and choices as people type them."""

from __future__ import annotations

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.words.figure_text import minutes_text, part_text
from binder.desktop.words.typed import (
    exact_temperature,
    typed_choice,
    typed_clock,
    typed_date,
    typed_heat,
    typed_minutes,
    typed_money,
    typed_part,
    typed_whole,
    typed_words,
    words_for,
)
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.errors import BinderError
from binder.kitchen.recipe import Heat
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings

AMERICAN = Binder()
METRIC = binder_of([Settings(id=SETTINGS_ID, name="m", measures=Measures.METRIC, locale="de_DE", currency="EUR")])


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("", 0),
        ("20", 20),
        ("20 min", 20),
        ("1 h 30", 90),
        ("1h30", 90),
        ("1½ h", 90),
        ("2 days", 2880),
        ("1 day, 2 h", 1560),
        ("90 minutes", 90),
        ("12 hrs", 720),
    ],
)
def test_a_time_span_in_the_ways_people_write_it(text: str, minutes: float) -> None:
    assert typed_minutes(AMERICAN, text) == minutes


@pytest.mark.parametrize("text", ["soon", "-5", "1 h 30 35", "ten", "5 x", "1e9 d"])
def test_what_is_no_time_span_is_refused(text: str) -> None:
    with pytest.raises(BinderError):
        typed_minutes(AMERICAN, text)


@given(st.integers(1, 60 * 24 * 30))
def test_a_time_span_is_read_as_it_is_written(minutes: int) -> None:
    assert typed_minutes(AMERICAN, minutes_text(float(minutes))) == minutes


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("7", time(7)),
        ("7:30", time(7, 30)),
        ("07.30", time(7, 30)),
        ("3:15 pm", time(15, 15)),
        ("12 am", time(0)),
        ("", None),
    ],
)
def test_a_time_of_day(text: str, at: time | None) -> None:
    assert typed_clock(text) == at


@pytest.mark.parametrize("text", ["25:00", "7:61", "noonish"])
def test_what_is_no_time_of_day_is_refused(text: str) -> None:
    with pytest.raises(BinderError):
        typed_clock(text)


def test_a_date_as_everyone_or_as_the_locale_writes_it() -> None:
    day = date(2026, 11, 6)
    assert typed_date(AMERICAN, "2026-11-06") == day
    assert typed_date(AMERICAN, "11/6/26") == day
    assert typed_date(METRIC, "6.11.2026") == day
    assert typed_date(METRIC, " ") is None


@pytest.mark.parametrize("text", ["2026-13-01", "someday", "2026-02-30"])
def test_what_is_no_date_is_refused(text: str) -> None:
    with pytest.raises(BinderError):
        typed_date(AMERICAN, text)


def test_money_is_read_in_the_binders_own_way() -> None:
    assert typed_money(AMERICAN, "$1.75") == 175
    assert typed_money(METRIC, "1,75") == 175
    assert typed_money(METRIC, "") is None


@pytest.mark.parametrize(
    ("binder", "text", "heat", "celsius"),
    [
        (AMERICAN, "oven 400", Heat.OVEN, 204.4444),
        (AMERICAN, "oven 200 °C", Heat.OVEN, 200),
        (METRIC, "oven 200", Heat.OVEN, 200),
        (METRIC, "core 165 F", Heat.CORE, 73.8889),
        (METRIC, "chill", Heat.CHILL, None),
        (METRIC, "chill -18", Heat.CHILL, -18),
        (METRIC, "oi 175", Heat.OIL, 175),
        (METRIC, "", None, None),
    ],
)
def test_heat_is_a_word_and_degrees(binder: Binder, text: str, heat: Heat | None, celsius: float | None) -> None:
    assert typed_heat(binder, text) == (heat, celsius)


@pytest.mark.parametrize("text", ["200", "grill 200", "o 200", "oven hot"])
def test_what_is_no_heat_is_refused(text: str) -> None:
    with pytest.raises(BinderError):
        typed_heat(METRIC, text)


@given(st.floats(-200, 1000).map(lambda degrees: round(degrees, 4)))
def test_a_temperature_is_read_as_it_is_offered_for_editing(celsius: float) -> None:
    for binder in (AMERICAN, METRIC):
        again = typed_heat(binder, f"oven {exact_temperature(binder, celsius)}")[1]
        assert again == pytest.approx(celsius, abs=2e-3)


def test_a_choice_by_its_beginning_unless_two_begin_so() -> None:
    assert typed_choice("cor", words_for(Heat)) is Heat.CORE
    with pytest.raises(BinderError, match="oven"):
        typed_choice("o", words_for(Heat))


def test_words_are_parted_by_commas() -> None:
    assert typed_words(" blender,  fine sieve;; ") == ("blender", "fine sieve")


@pytest.mark.parametrize(("text", "part"), [("15", 0.15), ("15 %", 0.15), ("0.15", 0.15), ("", 0.0), ("1 %", 0.01)])
def test_a_part_is_read_in_per_cent_or_as_a_part_of_one(text: str, part: float) -> None:
    assert typed_part(AMERICAN, text) == pytest.approx(part)


@given(st.integers(0, 10_000).map(lambda hundredths: hundredths / 10_000))
def test_a_part_is_read_as_it_is_written(part: float) -> None:
    for binder in (AMERICAN, METRIC):
        assert typed_part(binder, part_text(binder, part)) == pytest.approx(part)


def test_a_whole_number_has_no_rest() -> None:
    assert typed_whole(AMERICAN, "3") == 3
    with pytest.raises(BinderError, match="whole number"):
        typed_whole(AMERICAN, "2.5")
