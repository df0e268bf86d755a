"""Figures in words never say less, or other, than they are."""

from __future__ import annotations

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.words.figure_text import (
    clock_edit,
    clock_text,
    date_text,
    headroom_text,
    minutes_text,
    money_parts,
    not_known,
    number_text,
    plain_money,
    short_name,
    small_money,
)
from binder.desktop.words.typed import typed_clock
from binder.figures.cost import DishCost, dish_cost
from binder.figures.missing import Missing, MissingKind, Place
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.food import Food
from binder.kitchen.money import parse_money
from binder.kitchen.settings import SETTINGS_ID, Settings


def in_locale(locale: str) -> Binder:
    return binder_of([Settings(id=SETTINGS_ID, name="b", locale=locale)])


EURO = binder_of([Settings(id=SETTINGS_ID, name="e", currency="EUR", locale="de_DE")])


@given(st.integers(0, 10**9))
def test_money_is_read_as_it_is_offered_for_editing(minor: int) -> None:
    for binder in (Binder(), EURO):
        shown = plain_money(binder, minor)
        assert parse_money(shown, binder.settings.currency, binder.settings.locale) == minor


@pytest.mark.parametrize("locale", ["en_US", "de_DE", "fr_FR", "ja_JP", "fi_FI", "ko_KR", "es_US"])
def test_every_minute_of_a_day_is_read_as_it_is_offered_for_editing(locale: str) -> None:
    binder = in_locale(locale)
    for minute in range(24 * 60):
        at = time(minute // 60, minute % 60)
        assert typed_clock(clock_edit(binder, at)) == at


@pytest.mark.parametrize("locale", ["en_US", "de_DE", "fr_FR", "ja_JP"])
def test_every_minute_of_a_day_is_read_as_it_is_shown(locale: str) -> None:
    """Also with the narrow no-break space before AM and PM, where a shown text is copied."""
    binder = in_locale(locale)
    for minute in range(24 * 60):
        at = time(minute // 60, minute % 60)
        assert typed_clock(clock_text(binder, at)) == at


def test_a_time_is_offered_for_editing_as_it_is_shown_where_that_is_read_back() -> None:
    assert clock_edit(in_locale("en_US"), time(15, 15)) == "3:15 PM"
    assert clock_edit(in_locale("ko_KR"), time(15, 15)) == "15:15"
    assert clock_edit(Binder(), None) == ""


def test_no_date_and_no_time_are_empty() -> None:
    assert (date_text(Binder(), None), clock_text(Binder(), None)) == ("", "")
    assert date_text(Binder(), date(2026, 12, 8)) == "Tue, Dec 8, 2026"
    assert clock_text(EURO, time(7, 5)) == "07:05"


def test_a_part_of_a_cent_is_not_shown_as_nothing() -> None:
    assert small_money(Binder(), 0.2) == "$0.002"
    assert small_money(Binder(), 0.0) == "$0.00"
    assert small_money(Binder(), 12.4) == "$0.12"


def test_the_currency_after_a_number_is_its_unit() -> None:
    assert money_parts("$3.49") == ("$3.49", "")
    assert money_parts("3,49\u00a0€") == ("3,49", "€")


def test_what_is_not_known_names_what_is_missing() -> None:
    lacks = [
        Missing(MissingKind.PRICE, f"No price for {food}: add one.", Place("foods", food))
        for food in ("tahini", "salt")
    ]
    assert not_known((lacks[0],)) == "not known: no price for tahini"
    assert not_known(tuple(lacks)) == "not known: no price for tahini and 1 more"


def test_a_headroom_smaller_than_a_cent_is_still_shown() -> None:
    cost = DishCost("d", 1, "stew", 4.0, 175.2, 175, (), (), ())
    assert headroom_text(Binder(), cost) == "$0.002 over"


def test_the_headroom_of_a_dish_is_cap_less_cost(chickpeas: Binder) -> None:
    cost = dish_cost(chickpeas, "dish_3")
    assert cost.headroom is not None
    assert headroom_text(chickpeas, cost) == f"${cost.headroom / 100:.2f} to spare"


@pytest.mark.parametrize(
    ("name", "short"),
    [
        ("chickpeas, cooked", "cooked"),
        ("chickpea cooking liquid", "cooking liquid"),
        ("aquafaba", "aquafaba"),
        ("chickpeas", "chickpeas"),
    ],
)
def test_a_form_is_named_without_its_base(name: str, short: str) -> None:
    assert short_name(Food(id="f", name=name), "chickpeas, dried") == short


def test_a_form_of_a_base_of_two_words_is_named_without_either() -> None:
    assert short_name(Food(id="f", name="chicken breast, on the skin"), "whole chicken") == "breast, on the skin"


def test_numbers_are_a_cooks() -> None:
    assert number_text(Binder(), 1.5) == "1½"
    assert number_text(Binder(), 0.0) == "0"
    assert number_text(EURO, 1.05) == "1,05"
    assert number_text(Binder(), None) == ""


def test_times() -> None:
    assert minutes_text(720) == "12 h"
    assert minutes_text(1530) == "1 day 1 h 30 min"
    assert minutes_text(0) == ""
