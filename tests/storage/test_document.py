"""One edit, all the way: applied, written, announced once, undoable also after closing and opening again."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.kitchen.binder import Binder
from binder.kitchen.change import Change, ConflictError, changed
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import StillUsedError
from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument, Origin
from binder.storage.file_errors import MovedFileError, OwnFileError
from tests.storage.samples import SCRIBE, new_food, priced, renamed, stew_day
from tests.strategies import binders, changes


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "day.binder"


@pytest.fixture(params=["file", "memory"])
def document(request: pytest.FixtureRequest, path: Path) -> Iterator[OpenDocument]:
    in_memory = request.param == "memory"
    made = OpenDocument.in_memory(stew_day(), scribe=SCRIBE) if in_memory else OpenDocument.create(path, stew_day())
    yield made
    made.close()


def heard(document: OpenDocument) -> list[tuple[Change, Origin]]:
    said: list[tuple[Change, Origin]] = []
    document.listen(lambda change, origin: said.append((change, origin)))
    return said


def price(document: OpenDocument) -> int:
    return document.binder.quotes["bag/1"].price


def test_an_edit_is_made_written_and_announced_once(document: OpenDocument) -> None:
    said = heard(document)
    change = priced(stew_day(), 399)
    assert document.make(change) == change
    assert price(document) == 399
    assert said == [(change, Origin.EDIT)]
    if document.path:
        assert read_binder(document.path) == document.binder


def test_a_listener_sees_the_binder_already_changed(document: OpenDocument) -> None:
    seen: list[int] = []
    document.listen(lambda _change, _origin: seen.append(price(document)))
    document.make(priced(stew_day(), 399))
    document.undo()
    assert seen == [399, 349]


def test_undo_and_redo_carry_the_names_of_what_they_do(document: OpenDocument) -> None:
    said = heard(document)
    assert (document.undo_label, document.redo_label) == (None, None)
    document.make(priced(document.binder, 399))
    document.make(new_food("salt"))
    assert (document.undo_label, document.redo_label) == ("Add salt", None)
    document.undo()
    assert (document.undo_label, document.redo_label) == ("Set price to 399", "Add salt")
    document.undo()
    assert document.binder == stew_day()
    assert (document.undo_label, document.redo_label) == (None, "Set price to 399")
    document.redo()
    assert price(document) == 399
    document.make(new_food("cumin"))
    assert (document.undo_label, document.redo_label) == ("Add cumin", None)
    assert [origin for _change, origin in said] == [
        Origin.EDIT,
        Origin.EDIT,
        Origin.UNDO,
        Origin.UNDO,
        Origin.REDO,
        Origin.EDIT,
    ]


def test_with_nothing_to_undo_or_redo_nothing_happens(document: OpenDocument) -> None:
    said = heard(document)
    assert document.undo() is None
    assert document.redo() is None
    assert said == []


def test_an_edit_that_changes_nothing_leaves_no_trace(document: OpenDocument) -> None:
    said = heard(document)
    assert document.make(priced(document.binder, 349)).edits == ()
    assert said == []
    assert document.history() == ()


def test_an_edit_that_cannot_be_leaves_everything_as_it_was(document: OpenDocument) -> None:
    said = heard(document)
    food = stew_day().foods["chickpeas"]
    with pytest.raises(StillUsedError):
        document.make(changed("Remove chickpeas", before=[food]))
    with pytest.raises(ConflictError):
        document.make(renamed(renamed(food, "Peas").edits[0].after or food, "Beans"))
    assert document.binder == stew_day()
    assert (said, document.history(), document.undo_label) == ([], (), None)


def test_undo_reaches_back_past_closing_and_opening(path: Path) -> None:
    first = OpenDocument.create(path, stew_day())
    first.make(priced(first.binder, 399))
    first.make(new_food("salt"))
    first.undo()
    first.close()
    second = OpenDocument.open(path)
    assert (second.undo_label, second.redo_label) == ("Set price to 399", "Add salt")
    second.redo()
    second.undo()
    second.undo()
    assert second.binder == stew_day()
    second.close()
    third = OpenDocument.open(path)
    assert (third.undo_label, third.redo_label) == (None, "Set price to 399")
    third.redo()
    third.redo()
    assert "salt" in third.binder.foods
    third.close()


def test_history_keeps_every_change_the_oldest_first(document: OpenDocument) -> None:
    document.make(priced(document.binder, 399))
    document.undo()
    entries = document.history()
    assert [(entry.sequence, str(entry.kind), entry.of, entry.label) for entry in entries] == [
        (1, "edit", None, "Set price to 399"),
        (2, "undo", 1, "Set price to 399"),
    ]
    assert entries[1].change() == entries[0].change().inverse()


def test_going_back_to_how_it_was_opened_is_one_change(document: OpenDocument) -> None:
    document.make(priced(document.binder, 399))
    document.make(new_food("salt"))
    now = document.binder
    said = heard(document)
    document.go_back_to_opened()
    assert document.binder == stew_day()
    assert len(said) == 1
    document.undo()
    assert document.binder == now


def test_going_back_goes_to_the_last_opening(path: Path) -> None:
    first = OpenDocument.create(path, stew_day())
    first.make(priced(first.binder, 399))
    first.close()
    second = OpenDocument.open(path)
    second.make(new_food("salt"))
    second.go_back_to_opened()
    assert price(second) == 399
    assert "salt" not in second.binder.foods
    second.close()


def test_two_documents_on_one_file_follow_each_other(path: Path) -> None:
    ours = OpenDocument.create(path, stew_day())
    theirs = OpenDocument.open(path)
    said = heard(ours)
    assert not ours.catch_up()
    theirs.make(priced(theirs.binder, 399))
    theirs.make(new_food("salt"))
    assert price(ours) == 349
    assert ours.catch_up()
    assert ours.binder == theirs.binder
    assert [(change.label, origin) for change, origin in said] == [
        ("Set price to 399", Origin.ELSEWHERE),
        ("Add salt", Origin.ELSEWHERE),
    ]
    assert not ours.catch_up()
    assert not theirs.catch_up()
    assert ours.undo_label == "Add salt"
    ours.close()
    theirs.close()


def test_an_edit_on_what_others_have_left_alone_takes_theirs_in_first(path: Path) -> None:
    ours, theirs = OpenDocument.create(path, stew_day()), OpenDocument.open(path)
    said = heard(ours)
    theirs.make(new_food("salt"))
    ours.make(priced(ours.binder, 399))
    assert [origin for _change, origin in said] == [Origin.ELSEWHERE, Origin.EDIT]
    theirs.catch_up()
    assert ours.binder == theirs.binder == read_binder(path)
    assert [entry.sequence for entry in ours.history()] == [1, 2]
    ours.close()
    theirs.close()


def test_an_edit_of_what_others_have_changed_is_a_conflict_and_loses_nothing(path: Path) -> None:
    ours, theirs = OpenDocument.create(path, stew_day()), OpenDocument.open(path)
    theirs.make(priced(theirs.binder, 399))
    with pytest.raises(ConflictError, match="“Set price to 299” was not done"):
        ours.make(priced(ours.binder, 299))
    assert price(ours) == price(theirs) == 399
    ours.make(priced(ours.binder, 299))
    theirs.catch_up()
    assert price(theirs) == 299
    ours.close()
    theirs.close()


def test_an_undo_takes_back_the_change_it_named_though_others_have_written_since(path: Path) -> None:
    ours, theirs = OpenDocument.create(path, stew_day()), OpenDocument.open(path)
    ours.make(priced(ours.binder, 399))
    theirs.catch_up()
    theirs.make(new_food("salt"))
    assert ours.undo_label == "Set price to 399"
    ours.undo()
    assert price(ours) == 349
    assert "salt" in ours.binder.foods
    assert (ours.undo_label, ours.redo_label) == ("Add salt", "Set price to 399")
    ours.close()
    theirs.close()


def test_an_undo_of_what_others_have_taken_back_already_moves_on(path: Path) -> None:
    ours, theirs = OpenDocument.create(path, stew_day()), OpenDocument.open(path)
    ours.make(priced(ours.binder, 399))
    theirs.make(new_food("salt"))
    theirs.make(priced(theirs.binder, 349))
    ours.catch_up()
    for _times in range(3):
        ours.undo()
    assert ours.undo_label is None
    assert ours.binder == stew_day()
    ours.close()
    theirs.close()


def test_a_document_in_memory_is_saved_and_goes_on_in_its_file(path: Path) -> None:
    document = OpenDocument.in_memory(stew_day(), scribe=SCRIBE)
    document.make(priced(document.binder, 399))
    places = [document.path]
    document.move_to(path)
    places.append(document.path)
    assert places == [None, path]
    document.make(new_food("salt"))
    assert read_binder(path) == document.binder
    document.close()
    again = OpenDocument.open(path)
    again.undo()
    again.undo()
    assert again.binder == stew_day()
    again.close()


def test_a_copy_is_left_behind_while_the_document_goes_on(path: Path) -> None:
    document, copy = OpenDocument.create(path, stew_day()), path.with_name("copy.binder")
    document.make(priced(document.binder, 399))
    document.save_copy_as(copy)
    document.make(new_food("salt"))
    assert document.path == path
    assert "salt" not in read_binder(copy).foods
    copied = OpenDocument.open(copy)
    assert copied.undo_label == "Set price to 399"
    copied.close()
    document.close()


def test_a_copy_over_itself_is_refused(path: Path) -> None:
    document = OpenDocument.create(path, stew_day())
    with pytest.raises(OwnFileError, match="is saved already"):
        document.save_copy_as(path.parent / "." / path.name)
    document.make(new_food("salt"))
    assert read_binder(path) == document.binder
    document.close()


def test_a_document_outlives_its_file(path: Path) -> None:
    document, copy = OpenDocument.create(path, stew_day()), path.with_name("copy.binder")
    document.make(priced(document.binder, 399))
    path.rename(path.with_name("elsewhere.binder"))
    said = heard(document)
    actions: list[Callable[[], object]] = [
        lambda: document.make(new_food("salt")),
        document.undo,
        document.catch_up,
        document.go_back_to_opened,
    ]
    for action in actions:
        with pytest.raises(MovedFileError, match="Save a copy of what you see"):
            action()
    assert price(document) == 399
    assert said == []
    assert document.undo_label == "Set price to 399"
    document.move_to(copy)
    document.make(new_food("salt"))
    assert read_binder(copy) == document.binder
    document.close()


@given(st.data())
@settings(max_examples=10, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
def test_undoing_everything_is_where_it_began_and_redoing_everything_where_it_ended(
    path: Path, data: st.DataObject
) -> None:
    start: Binder = data.draw(binders(most=1))
    document = OpenDocument.create(path, start, replace=True)
    try:
        for _number in range(data.draw(st.integers(1, 5))):
            document.make(data.draw(changes(document.binder)))
        end = document.binder
        document.close()
        document = OpenDocument.open(path)
        while document.undo_label is not None:
            document.undo()
        assert document.binder == start
        while document.redo_label is not None:
            document.redo()
        assert document.binder == end
        assert read_binder(path) == end
    finally:
        document.close()


def test_errors_of_a_document_are_sentences(path: Path) -> None:
    for wrong in (path, path.parent):
        with pytest.raises(BinderError) as caught:
            OpenDocument.open(wrong)
        assert str(caught.value).endswith(".")


def test_what_a_change_makes_and_takes_out_again_leaves_no_trace(document: OpenDocument) -> None:
    salt = new_food("salt")
    both = Change("Add salt, or not", (*salt.edits, *salt.inverse().edits))
    assert document.make(both).edits == ()
    assert document.history() == ()
    beside = document.make(Change("Price", (*both.edits, *priced(document.binder, 399).edits)))
    assert [edit.table for edit in beside.edits] == ["quotes"]
    assert price(document) == 399


def test_a_change_of_a_value_that_is_equal_and_not_the_same_is_made(document: OpenDocument) -> None:
    change = priced(stew_day(), 399)
    assert change.edits[0].before is not document.binder.quotes["bag/1"]
    assert document.make(change) == change
    document.undo()
    assert document.binder == stew_day()
