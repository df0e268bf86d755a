"""The head of the shoot."""

from __future__ import annotations

from datetime import date, time

import pytest

from binder.desktop.sheet.sheet import CellName, Sight
from binder.desktop.shoot_page.shoot_head import ShootHead
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even

HEAD, ROW = ShootHead(), "shoots:day"


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day")


def test_it_says_what_holds_for_the_day(day: Sight) -> None:
    shown = [cell.text for cell in HEAD.rows(day)[0].cells]
    assert shown == [
        "One kilogram of chickpeas",
        "Fri, Nov 6, 2026",
        "7:00\u202fAM",
        "chickpeas, dried",
        "1 kg",
        "$1.75",
        "$90.00",
    ]
    assert is_even(HEAD, day)


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("name", "Beans", "name", "Beans"),
        ("on", "2026-12-24", "on", date(2026, 12, 24)),
        ("call", "6:30", "call", time(6, 30)),
        ("cap", "2", "cap", 200),
        ("budget", "", "budget", None),
        ("amount", "2 lb", "base_amount", 2.0),
        ("base", "onions", "base", "onion"),
        ("base", "", "base", None),
    ],
)
def test_typing_edits_the_shoot(day: Sight, column: str, text: str, field: str, value: object) -> None:
    binder = after_typing(HEAD, day, ROW, column, text)
    assert getattr(binder.shoots["day"], field) == value


def test_the_amounts_unit_is_taken_too(day: Sight) -> None:
    assert after_typing(HEAD, day, ROW, "amount", "2 lb").shoots["day"].base_unit == "lb"


def test_what_is_shown_for_editing_is_understood_when_nothing_is_changed(day: Sight) -> None:
    for column in ("name", "on", "call", "base", "amount", "cap", "budget"):
        cell = cell_called(HEAD, day, ROW, column)
        assert cell.edit is not None
        assert HEAD.edit(day, ROW, column, cell.edit).empty, column


def test_a_base_of_the_shipped_larder_is_brought_along(day: Sight) -> None:
    binder = after_typing(HEAD, day, ROW, "base", "lentils")
    base = binder.shoots["day"].base
    assert base is not None
    assert base in binder.foods
    assert base not in day.binder.foods


def test_an_unknown_base_may_be_added(day: Sight) -> None:
    with pytest.raises(BinderError) as refused:
        HEAD.edit(day, ROW, "base", "moonberry")
    remedies = HEAD.remedies(day, CellName(ROW, "base"), "moonberry", refused.value)
    change = remedies[-1].change
    assert change is not None
    assert apply(day.binder, change).shoots["day"].base == "moonberry"
