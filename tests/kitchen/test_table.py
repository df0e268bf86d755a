"""A table changed is the table made anew: records, groups and their order."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.recipe import Step
from binder.kitchen.table import Table

KEYS = st.sampled_from([f"step-{number}" for number in range(12)])
STEPS = st.builds(
    Step,
    id=KEYS,
    recipe=st.sampled_from(["a", "b", "c"]),
    position=st.integers(0, 5),
    title=st.sampled_from(["x", "y"]),
)
CHANGES = st.lists(st.tuples(KEYS, st.none()) | STEPS.map(lambda step: (step.id, step)), max_size=8)
FIELDS = ("recipe", "title", "id")


def test_a_table_gives_its_records_by_owner_in_their_order() -> None:
    table = Table([Step(id="b", recipe="r", position=1), Step(id="c", recipe="r"), Step(id="a", recipe="s")])
    assert [step.id for step in table.where("recipe", "r")] == ["c", "b"]
    assert table.where("recipe", "none") == ()


def test_a_table_that_is_changed_stays_as_it_was() -> None:
    table = Table([Step(id=f"s{number}", recipe="r", position=number) for number in range(8)])
    before = table.where("recipe", "r")
    changed = table.with_changes([("s0", Step(id="s0", recipe="other")), ("s1", None)])
    assert table.where("recipe", "r") is before
    assert [step.id for step in changed.where("recipe", "r")] == [f"s{number}" for number in range(2, 8)]
    assert [step.id for step in changed.where("recipe", "other")] == ["s0"]


def test_a_group_that_empties_is_gone() -> None:
    table = Table([Step(id=f"s{number}", recipe="r" if number else "last") for number in range(8)])
    assert table.where("recipe", "last")
    assert table.with_changes([("s0", None)]).where("recipe", "last") == ()


@given(st.lists(STEPS, max_size=12), st.lists(CHANGES, max_size=4))
def test_groups_after_any_changes_are_those_of_a_table_made_anew(
    steps: list[Step], edits: list[list[tuple[str, Step | None]]]
) -> None:
    table = Table(steps)
    for changes in edits:
        for field in FIELDS:
            table.where(field, "a")  # groups are made, and kept up from here on
        table = table.with_changes(changes)
        fresh = Table(dict(table).values())
        assert table == fresh
        for field in FIELDS:
            for value in ("a", "b", "c", "x", "y", *(step.id for step in steps)):
                assert table.where(field, value) == fresh.where(field, value)
