"""The terms of a shoot: each typed in place, read back as it is shown."""

from __future__ import annotations

from dataclasses import replace
from datetime import time

import pytest

from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.desktop.shoot_page.shoot_head import ShootHead
from binder.desktop.shoot_page.shoot_terms import TERMS, ShootTerms, terms_in_short
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.record import fields_of
from binder.kitchen.shoot import CapBasis, Shoot
from tests.desktop.sheets import after_typing, cell_called, is_even
from tests.kitchen_binder import small_binder

SHEET = ShootTerms()


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day")


@pytest.mark.parametrize(
    ("term", "text", "value"),
    [
        ("cap_basis", "whole", CapBasis.WHOLE_PACKS),
        ("cap_basis", "used cost", CapBasis.USED),
        ("cap_basis", "used cost, st", CapBasis.STAPLES_FREE),
        ("contingency", "12.5", 0.125),
        ("contingency", "12.5 %", 0.125),
        ("contingency", "0.1", 0.1),
        ("contingency", "", 0.0),
        ("most_stores", "2", 2),
        ("most_stores", "", None),
        ("waste_value", "50 %", 0.5),
        ("quote_days", "30 days", 30),
        ("prices_taxed", "n", False),
        ("spares", "2", 2),
        ("spares", "", 0),
        ("wait_limit", "6", 6.0),
        ("reset_minutes", "1 h", 60.0),
        ("may_reorder", "yes", True),
        ("wrap", "18:30", time(18, 30)),
        ("wrap", "", None),
        ("prep_from", "7", time(7)),
        ("prep_until", "9 pm", time(21)),
        ("hot_set", "yes", True),
        ("zone", "Europe/Berlin", "Europe/Berlin"),
        ("zone", "berlin", "Europe/Berlin"),
        ("zone", "", ""),
        ("notes", " The roof door is locked. ", "The roof door is locked."),
    ],
)
def test_each_term_is_typed_in_place(day: Sight, term: str, text: str, value: object) -> None:
    assert getattr(after_typing(SHEET, day, term, "value", text).shoots["day"], term) == value


@pytest.mark.parametrize(
    ("term", "text"),
    [
        ("cap_basis", "dear"),
        ("contingency", "150 %"),
        ("most_stores", "0"),
        ("most_stores", "1.5"),
        ("waste_value", "-1"),
        ("quote_days", ""),
        ("quote_days", "2.5"),
        ("spares", "21"),
        ("wait_limit", "soon"),
        ("prep_from", ""),
        ("hot_set", "rather"),
        ("zone", "Moon/Sea of rain"),
        ("zone", "america/in"),
    ],
)
def test_what_cannot_be_is_refused(day: Sight, term: str, text: str) -> None:
    with pytest.raises(BinderError):
        SHEET.edit(day, term, "value", text)


def test_what_is_offered_for_editing_is_understood_when_nothing_is_changed() -> None:
    unusual = replace(
        small_binder().shoots["day"],
        cap_basis=CapBasis.STAPLES_FREE,
        contingency=0.0725,
        most_stores=3,
        waste_value=1.0,
        wait_limit=90.0,
        wrap=time(17, 45),
        zone="America/Chicago",
        notes="one\ntwo",
    )
    sight = Sight(small_binder(unusual), "day")
    assert is_even(SHEET, sight)
    for term in TERMS:
        edit = cell_called(SHEET, sight, term, "value").edit
        assert edit is not None
        assert SHEET.edit(sight, term, "value", edit).empty, term


def test_every_fact_of_a_shoot_is_typed_in_its_head_or_among_its_terms(day: Sight) -> None:
    head = {column.id for column in ShootHead().columns} | {"base_amount", "base_unit"}
    known = {field.name for field in fields_of(Shoot)} - {"id"}
    assert known - head - set(TERMS) == set()


def test_each_term_says_what_it_means(day: Sight) -> None:
    for term in TERMS[:-1]:
        assert cell_called(SHEET, day, term, "means").text, term
    with pytest.raises(NotEditableError):
        SHEET.edit(day, "heading:cap_basis", "value", "x")


def test_zones_are_offered_as_they_are_typed(day: Sight) -> None:
    assert "Europe/Berlin" in SHEET.offers(day, "zone", "value", "ber")
    assert not SHEET.offers(day, "zone", "value", "")
    assert not SHEET.offers(day, "zone", "value", "Europe/Berlin")
    assert not SHEET.offers(day, "notes", "value", "ber")


def test_the_terms_in_short_name_the_basis(day: Sight) -> None:
    assert terms_in_short(day.binder, day.binder.shoots["day"]) == "caps on used cost, prices up to 60 days old"
    other = replace(day.binder.shoots["day"], cap_basis=CapBasis.WHOLE_PACKS, spares=2, wrap=time(18))
    assert terms_in_short(day.binder, other) == (
        "caps on whole packs over portions, wrap by 6:00\u202fPM, 2 spares of each dish, prices up to 60 days old"
    )


def test_no_shoot_no_terms() -> None:
    assert SHEET.rows(Sight(Binder())) == []
