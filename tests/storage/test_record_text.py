"""A record's text says all of it and nothing else: seal and journal live by that."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.binder import RECORD_TYPES, Binder, every_record
from binder.kitchen.change import Edit
from binder.kitchen.edits.records import with_values
from binder.kitchen.food import Food
from binder.kitchen.plain import record_of
from binder.kitchen.price import Quote
from binder.kitchen.record import Record, fields_of
from binder.kitchen.shapes import Reference
from binder.storage.record_text import EditText, names_in_text, text_of, texts_of
from tests.storage.samples import stew_day
from tests.strategies import binders, values

QUOTE = Quote(id="bag/1", pack="bag", price=349, on=date(2026, 3, 1))


def read_back(record_type: type[Record], text: str) -> Record:
    return record_of(record_type, dict(zip(names_in_text(record_type), json.loads(text), strict=True)))


@given(binders(most=1))
def test_a_record_comes_back_from_its_text(binder: Binder) -> None:
    for record in every_record(binder):
        assert read_back(type(record), text_of(record)) == record


@given(st.data())
def test_another_value_in_any_field_is_another_text(data: st.DataObject) -> None:
    record = data.draw(st.sampled_from(every_record(stew_day())))
    free = [one for one in fields_of(type(record)) if one.name != "id" and not isinstance(one.shape, Reference)]
    field = data.draw(st.sampled_from(free))
    other: Record = replace(record, **{field.name: data.draw(values(field))})
    assert (text_of(other) == text_of(record)) == (other == record)


def test_values_stand_in_the_order_of_the_names_of_their_fields() -> None:
    assert names_in_text(Quote) == tuple(sorted(names_in_text(Quote)))
    said = dict(zip(names_in_text(Quote), json.loads(text_of(QUOTE)), strict=True))
    assert said | {"id": "bag/1", "pack": "bag", "price": 349, "on": "2026-03-01"} == said
    assert said.keys() == {field.name for field in fields_of(Quote)}


def test_every_kind_of_record_has_a_text() -> None:
    for record_type in RECORD_TYPES.values():
        assert set(names_in_text(record_type)) == {field.name for field in fields_of(record_type)}


def test_letters_of_all_scripts_stand_as_they_are() -> None:
    food = Food(id="chickpeas", name="Kichererbsen – “حمص”", other_names=("حمص", "a\nb"))
    assert "Kichererbsen – “حمص”" in text_of(food)
    assert read_back(Food, text_of(food)) == food


def test_an_edit_has_a_text_for_each_side_that_is_there() -> None:
    dearer = with_values(QUOTE, price=399)
    texts = texts_of(
        [Edit(before=None, after=QUOTE), Edit(before=QUOTE, after=dearer), Edit(before=dearer, after=None)]
    )
    assert texts == (
        EditText("quotes", None, text_of(QUOTE)),
        EditText("quotes", text_of(QUOTE), text_of(dearer)),
        EditText("quotes", text_of(dearer), None),
    )
