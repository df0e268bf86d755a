"""Which shoot a command is about."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.cli.chosen_shoot import NoShootError, ShootNotChosenError, UnknownShootError, chosen_shoot
from binder.cli.endings import WrongUsageError
from binder.kitchen.binder import Binder
from tests.kitchen_binder import small_binder

DAY = small_binder().shoots["day"]


def test_the_only_shoot_needs_no_name() -> None:
    assert chosen_shoot(small_binder(), None).id == "day"


@pytest.mark.parametrize("name", ["Second day", "second DAY ", "two"])
def test_a_shoot_is_chosen_by_its_name_or_its_id(name: str) -> None:
    several = small_binder(replace(DAY, id="two", name="Second day"))
    assert chosen_shoot(several, name).id == "two"


def test_several_and_none_chosen_names_them() -> None:
    several = small_binder(replace(DAY, id="two", name="Second day"))
    with pytest.raises(ShootNotChosenError, match=r"choose one with --shoot “Bean day” or “Second day”\.$") as caught:
        chosen_shoot(several, None)
    assert isinstance(caught.value, WrongUsageError)


def test_two_of_one_name_are_told_apart_by_their_ids() -> None:
    several = small_binder(replace(DAY, id="two"))
    with pytest.raises(ShootNotChosenError, match="--shoot “day” or “two”"):
        chosen_shoot(several, "Bean day")
    assert chosen_shoot(several, "two").id == "two"


def test_a_name_that_no_shoot_has_is_wrong_usage() -> None:
    with pytest.raises(UnknownShootError, match="No shoot is called “Monday”: it is --shoot “Bean day”") as caught:
        chosen_shoot(small_binder(), "Monday")
    assert isinstance(caught.value, WrongUsageError)


def test_a_binder_without_a_shoot_cannot_be_worked_on() -> None:
    with pytest.raises(NoShootError, match="has no shoot yet: open it and add one"):
        chosen_shoot(Binder(), None)
