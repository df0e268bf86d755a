"""A glance never says yes to what a closer look would change or refuse, and says it to what is put in every day."""

from __future__ import annotations

import math
from datetime import date, datetime, time
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.food import Food, Section
from binder.kitchen.kept_form import glance_for
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Heat, Step
from binder.kitchen.record import Field, field_of, fields_of, kept_value
from binder.kitchen.shapes import Reference, Text

EVERY_KIND_OF_FIELD = {
    (field.kind, field.shape, field.optional): field for kind in RECORD_TYPES.values() for field in fields_of(kind)
}


class Shouted(str):
    __slots__ = ()


anything = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.integers(-2, 2),
    st.floats(),
    st.text(max_size=320),
    st.text(st.characters(codec="ascii"), max_size=320),
    st.dates(),
    st.times(),
    st.sampled_from([*Section, *Heat, "fish", Shouted("fish"), datetime(2026, 3, 14), time(7, 30), 9e-7, 1e-6, 1e7]),  # noqa: DTZ001 - a value that no field takes
    st.lists(st.text(max_size=3), max_size=2),
    st.lists(st.text(max_size=3), max_size=2).map(tuple),
)


@given(st.sampled_from(list(EVERY_KIND_OF_FIELD.values())), anything)
@example(field_of(Pack, "least"), -0.0)
@example(field_of(Food, "density"), -0.0)
@example(field_of(Food, "density"), 1.0)
@example(field_of(Pack, "size"), math.nan)
@example(field_of(Pack, "size"), math.inf)
@example(field_of(Quote, "price"), True)
@example(field_of(Food, "name"), "cafe\u0301")
@example(field_of(Food, "name"), "a\x7fb")
@example(field_of(Food, "name"), "")
@example(field_of(Pack, "food"), "")
def test_yes_means_that_the_value_is_kept_as_it_is(field: Field, value: Any) -> None:  # noqa: ANN401
    """The same value of the same type, and -0.0 is not 0.0; whether it is the same object is nobody's matter."""
    if glance_for(field.kind, field.shape)(value):
        kept = kept_value(field, value)
        assert (kept, type(kept), repr(kept)) == (value, type(value), repr(value))


@pytest.mark.parametrize(
    ("field", "value"),
    [
        (field_of(Food, "name"), "Chickpeas, dried"),
        (field_of(Pack, "food"), "chickpeas"),
        (field_of(Pack, "size"), 500.0),
        (field_of(Pack, "least"), 0.0),
        (field_of(Pack, "on_sale"), False),
        (field_of(Quote, "price"), 349),
        (field_of(Quote, "on"), date(2026, 3, 14)),
        (field_of(Food, "section"), Section.FISH),
        (field_of(Food, "other_names"), ()),
    ],
)
def test_what_is_put_in_every_day_needs_no_closer_look(field: Field, value: object) -> None:
    assert glance_for(field.kind, field.shape)(value)


def test_a_text_may_be_as_long_as_its_shape_says() -> None:
    short = glance_for(str, Text(most=3))
    assert [short(text) for text in ("", "abc", "abcd")] == [True, True, False]
    assert glance_for(str, Reference("foods"))("x" * 5000)


def test_of_what_is_rare_nothing_is_known_at_a_glance() -> None:
    assert not glance_for(time, None)(time(7, 30))
    assert field_of(Step, "heat").kind is Heat
