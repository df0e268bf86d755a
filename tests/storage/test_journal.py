"""Undo and redo follow from the journal alone."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.change import Change, apply
from binder.storage.journal import Entry, ForgottenChangeError, Kind, Scribe, UndoOrder, entry_of_row
from tests.storage.samples import SCRIBE, new_food, stew_day
from tests.strategies import binders, changes


def entry(sequence: int, kind: Kind = Kind.EDIT, of: int | None = None) -> Entry:
    return SCRIBE.entry(new_food("salt"), kind=kind, of=of, made_on=sequence - 1)


@given(st.lists(st.sampled_from(["edit", "undo", "redo"]), max_size=40))
def test_the_piles_are_those_of_a_plain_undo_stack(moves: list[str]) -> None:
    order, done, undone, sequence = UndoOrder(), list[int](), list[int](), 0
    entries = []
    for move in moves:
        if (move == "undo" and not done) or (move == "redo" and not undone):
            continue
        sequence += 1
        if move == "edit":
            done.append(sequence)
            undone.clear()
            entries.append(entry(sequence))
        elif move == "undo":
            undone.append(done.pop())
            entries.append(entry(sequence, Kind.UNDO, undone[-1]))
        else:
            done.append(undone.pop())
            entries.append(entry(sequence, Kind.REDO, done[-1]))
        order.follow(entries[-1])
        assert order.next_undo == (done[-1] if done else None)
        assert order.next_redo == (undone[-1] if undone else None)
    again = UndoOrder(entries)
    assert (again.next_undo, again.next_redo) == (order.next_undo, order.next_redo)


@given(st.data())
def test_a_change_comes_back_from_its_entry(data: st.DataObject) -> None:
    binder = data.draw(binders(most=1))
    change = data.draw(changes(binder))
    kept = entry_of_row(SCRIBE.entry(change, kind=Kind.EDIT, of=None, made_on=0).row())
    assert kept.change() == change
    assert apply(apply(binder, change), kept.change().inverse()) == binder


def test_an_entry_is_its_row() -> None:
    made = entry(7, Kind.UNDO, 3)
    assert entry_of_row(made.row()) == made
    assert made.row()["made_on"] == 6


def test_time_is_kept_in_utc_whatever_the_clock_says() -> None:
    eastward = timezone(timedelta(hours=9))
    scribe = Scribe("Ada", lambda: datetime(2026, 3, 14, 1, 0, 0, 123456, tzinfo=eastward))
    made = scribe.entry(new_food("salt"), kind=Kind.EDIT, of=None, made_on=0)
    assert made.at == datetime(2026, 3, 13, 16, 0, 0, 123000, tzinfo=UTC)
    assert made.row()["at"] == "2026-03-13T16:00:00.123+00:00"


@pytest.mark.parametrize("year", [1, 1970, 2038, 9999])
def test_any_year_is_kept(year: int) -> None:
    scribe = Scribe("Ada", lambda: datetime(year, 1, 19, 3, 14, 8, tzinfo=UTC))
    made = scribe.entry(new_food("salt"), kind=Kind.EDIT, of=None, made_on=0)
    assert entry_of_row(made.row()) == made


def test_an_entry_of_another_version_is_named() -> None:
    kept = entry(1)
    for edits in ('[{"table": "spoons", "before": null, "after": null}]', "[", '[{"table": "foods"}]', "[1]"):
        with pytest.raises(ForgottenChangeError, match="“Add salt” cannot be taken back"):
            replace(kept, edits=edits).change()


@pytest.mark.parametrize("end", ["", "]", "]} ", "]},", ",{}]}", ',["foods",null]]}'])
def test_an_entry_that_is_cut_or_goes_on_is_named(end: str) -> None:
    kept = entry(1)
    assert kept.edits.endswith("]}")
    with pytest.raises(ForgottenChangeError, match="“Add salt” cannot be taken back"):
        replace(kept, edits=kept.edits[:-2] + end).change()


def test_labels_and_names_are_kept_as_text_can_be() -> None:
    scribe = Scribe("A\x00da\ud800")
    made = scribe.entry(Change("Set\r\nprice \udfff", ()), kind=Kind.EDIT, of=None, made_on=0)
    assert (made.author, made.label) == ("Ada", "Set\nprice ")


def test_without_a_change_there_is_nothing_to_undo() -> None:
    assert UndoOrder().next_undo is None
    assert stew_day() == stew_day()
