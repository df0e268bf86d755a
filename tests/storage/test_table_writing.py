"""Edits reach the tables in whatever order they stand, all of them; a row out of step is noticed."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest
import sqlalchemy as sa
from hypothesis import given, settings
from hypothesis import strategies as st
from sqlalchemy.exc import IntegrityError

from binder.kitchen.binder import Binder, every_record
from binder.kitchen.change import Change, Edit, apply, changed
from binder.kitchen.edits.records import remove, with_values
from binder.kitchen.food import Food
from binder.kitchen.price import Pack
from binder.storage.connection import close, connect_in_memory, reading, writing
from binder.storage.contents import Contents, read_contents, write_contents
from binder.storage.schema import METADATA
from binder.storage.table_writing import StrangeRowError, insert_records, write_edits
from tests.storage.samples import new_food, priced, stew_day
from tests.strategies import binders, changes


def holding(binder: Binder) -> sa.Connection:
    connection = connect_in_memory()
    with writing(connection):
        METADATA.create_all(connection)
        write_contents(connection, Contents(binder))
    return connection


@pytest.fixture
def stew() -> Iterator[sa.Connection]:
    connection = holding(stew_day())
    yield connection
    close(connection)


def held(connection: sa.Connection) -> Binder:
    with reading(connection):
        return read_contents(connection).binder


def write(connection: sa.Connection, *edits: Edit) -> None:
    with writing(connection):
        write_edits(connection, edits)


@settings(max_examples=40)  # each makes all tables anew
@given(st.data())
def test_what_is_written_is_what_the_change_makes(data: st.DataObject) -> None:
    binder = data.draw(binders(most=1))
    change = data.draw(changes(binder))
    connection = holding(binder)
    try:
        write(connection, *change.edits)
        assert held(connection) == apply(binder, change)
        write(connection, *change.inverse().edits)
        assert held(connection) == binder
    finally:
        close(connection)


@settings(max_examples=20)
@given(st.randoms(use_true_random=False))
def test_a_whole_binder_is_written_and_taken_out_in_any_order(random: Random) -> None:
    """Foreign keys are looked at when all is there."""
    edits = [Edit(before=None, after=record) for record in every_record(stew_day())]
    random.shuffle(edits)
    connection = connect_in_memory()
    try:
        with writing(connection):
            METADATA.create_all(connection)
        write(connection, *edits)
        assert held(connection) == stew_day()
        random.shuffle(edits)
        write(connection, *(edit.inverse() for edit in edits))
        assert every_record(held(connection)) == every_record(Binder())
    finally:
        close(connection)


def test_rows_made_changed_and_taken_out_in_one_go(stew: sa.Connection) -> None:
    binder = stew_day()
    change = Change(
        "all at once",
        (
            *new_food("salt").edits,
            *priced(binder, 399).edits,
            *remove("", binder, binder.builds["day/1/1"]).edits,
            *new_food("cumin").edits,
        ),
    )
    write(stew, *change.edits)
    assert held(stew) == apply(binder, change)


def test_many_rows_of_one_table_keep_each_its_own_values(stew: sa.Connection) -> None:
    made = changed("", after=[Food(id=f"food {number}", name=f"Food {number}") for number in range(1000)])
    write(stew, *made.edits)
    foods = [edit.after for edit in made.edits if edit.after]
    write(stew, *(Edit(before=food, after=with_values(food, name=f"{food.id} anew")) for food in reversed(foods)))
    names = {food.id: food.name for food in held(stew).foods.values() if food.id.startswith("food ")}
    assert names == {f"food {number}": f"food {number} anew" for number in range(1000)}


def test_a_row_that_should_not_be_there_is_strange(stew: sa.Connection) -> None:
    food = stew_day().foods["chickpeas"]
    with pytest.raises(StrangeRowError):
        write(stew, Edit(before=None, after=food))
    assert held(stew) == stew_day()


@pytest.mark.parametrize("after", [None, Food(id="salt", name="Sea salt")])
def test_a_row_that_is_not_there_is_strange(stew: sa.Connection, after: Food | None) -> None:
    """Also among others that are, and nothing of them is written."""
    salt, chickpeas = Food(id="salt", name="Salt"), stew_day().foods["chickpeas"]
    renamed = Edit(before=chickpeas, after=with_values(chickpeas, name="Peas"))
    with pytest.raises(StrangeRowError):
        write(stew, *new_food("cumin").edits, renamed, Edit(before=salt, after=after))
    assert held(stew) == stew_day()


def test_what_a_table_refuses_for_another_reason_is_not_strange(stew: sa.Connection) -> None:
    with pytest.raises(IntegrityError):
        write(stew, Edit(before=None, after=Pack(id="tin", food="no such food", size=1.0, unit="kg")))
    assert held(stew) == stew_day()


def test_records_go_into_a_table_that_has_none_of_them(stew: sa.Connection) -> None:
    with writing(stew):
        insert_records(stew, "foods", [Food(id="salt", name="Salt")])
    assert held(stew).foods["salt"].name == "Salt"
    with pytest.raises(StrangeRowError), writing(stew):
        insert_records(stew, "foods", [Food(id="salt", name="Salt")])
