"""A record as plain values is the record."""

from __future__ import annotations

import json
from datetime import UTC, date, time

import pytest
from hypothesis import HealthCheck, given, settings

from binder.kitchen.binder import Binder, every_record
from binder.kitchen.food import Food
from binder.kitchen.plain import plain_record, plain_value, record_of
from binder.kitchen.recipe import Heat
from binder.kitchen.record import UnfitValueError
from binder.kitchen.shoot import Shoot
from tests.strategies import binders


@given(binders())
@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
def test_every_record_survives_json(binder: Binder) -> None:
    for record in every_record(binder):
        plain = json.loads(json.dumps(plain_record(record), allow_nan=False))
        assert record_of(type(record), plain) == record


@pytest.mark.parametrize(
    ("value", "plain"),
    [
        (2.0, "2"),
        (0.1, "0.1"),
        (date(987, 1, 2), '"0987-01-02"'),
        (time(7, 30), '"07:30"'),
        (time(7, 30, 5), '"07:30:05"'),
        (Heat.OVEN, '"oven"'),
        (("a", "b"), '["a", "b"]'),
        (True, "true"),
        (None, "null"),
    ],
)
def test_values_are_written_as_people_write_them(value: object, plain: str) -> None:
    assert json.dumps(plain_value(value)) == plain


@pytest.mark.parametrize("call", ["7:30", "07:30Z", "07:30+01:00", "24:00", "noon", 730])
def test_a_time_is_of_the_day_and_without_a_zone(call: object) -> None:
    with pytest.raises(UnfitValueError):
        record_of(Shoot, {"id": "day", "name": "Day", "call": call})


def test_a_time_with_a_zone_makes_no_record() -> None:
    with pytest.raises(UnfitValueError, match="call cannot be"):
        Shoot(id="day", name="Day", call=time(7, 30, tzinfo=UTC))


@pytest.mark.parametrize("on", ["2026-3-14", "20260314", "2026-02-29", "2026-03-14T00:00", 20260314])
def test_a_date_is_written_in_one_way(on: object) -> None:
    with pytest.raises(UnfitValueError):
        record_of(Shoot, {"id": "day", "name": "Day", "on": on})


def test_a_name_that_no_field_has_is_a_mistake() -> None:
    with pytest.raises(TypeError):
        record_of(Food, {"id": "x", "name": "X", "colour": "red"})
