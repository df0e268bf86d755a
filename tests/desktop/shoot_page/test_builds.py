"""The builds of a dish."""

from __future__ import annotations

import pytest

from binder.desktop.sheet.cell import Tone
from binder.desktop.sheet.sheet import Sight
from binder.desktop.shoot_page.builds import ADD_BUILD, Builds
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from binder.kitchen.shoot import BuildKind, BuildState
from tests.desktop.sheets import after_typing, cell_called, is_even

BUILDS = Builds()


@pytest.fixture
def fritters(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "dish_2")


def test_each_build_says_how_far_it_goes_and_where_it_waits(fritters: Sight) -> None:
    shown = [[cell.text for cell in row.cells[1:]] for row in BUILDS.rows(fritters)[:-1]]
    assert shown == [
        ["hero", "the end", "4", "", "planned"],
        ["swap-out", "1 Grind", "4", "fridge, shelf 2", "planned"],
        ["spare", "the end", "2", "", "planned"],
    ]
    assert is_even(BUILDS, fritters)


def test_the_dishs_own_portions_are_quiet(fritters: Sight) -> None:
    assert cell_called(BUILDS, fritters, "builds:dish_2_hero", "portions").tone is Tone.QUIET
    assert cell_called(BUILDS, fritters, "builds:dish_2_spare", "portions").tone is Tone.INK


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("kind", "tast", "kind", BuildKind.TASTING),
        ("up_to", "3", "up_to", "herb_fritters_2"),
        ("up_to", "2 Rest", "up_to", "herb_fritters_1"),
        ("up_to", "the end", "up_to", None),
        ("portions", "1", "portions", 1.0),
        ("portions", "", "portions", None),
        ("waits", "oven, low", "waits", "oven, low"),
        ("state", "under", "state", BuildState.UNDER_WAY),
        ("state", "spoiled", "state", BuildState.SPOILED),
    ],
)
def test_typing_edits_a_build(fritters: Sight, column: str, text: str, field: str, value: object) -> None:
    binder = after_typing(BUILDS, fritters, "builds:dish_2_swap", column, text)
    assert getattr(binder.builds["dish_2_swap"], field) == value


def test_a_step_that_is_not_there_is_refused(fritters: Sight) -> None:
    with pytest.raises(BinderError, match="choose a step"):
        BUILDS.edit(fritters, "builds:dish_2_swap", "up_to", "9")


def test_a_build_is_added_by_its_kind(fritters: Sight) -> None:
    binder = after_typing(BUILDS, fritters, ADD_BUILD, "kind", "swap")
    assert [build.kind.value for build in binder.builds.where("dish", "dish_2")] == [
        "hero",
        "swap-out",
        "spare",
        "swap-out",
    ]


def test_builds_are_removed_and_moved(fritters: Sight) -> None:
    gone = BUILDS.remove(fritters, ["builds:dish_2_hero", "builds:dish_2_swap"])
    assert gone is not None
    assert [build.id for build in apply(fritters.binder, gone).builds.where("dish", "dish_2")] == ["dish_2_spare"]
    moved = BUILDS.move_before(fritters, "builds:dish_2_spare", "builds:dish_2_hero")
    assert moved is not None
    assert apply(fritters.binder, moved).builds.where("dish", "dish_2")[0].id == "dish_2_spare"
