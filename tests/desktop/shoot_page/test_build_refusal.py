"""A build that the base does not suffice for is refused where it is typed, with a way out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.desktop.sheet.sheet import CellName, Sight
from binder.desktop.shoot_page.build_refusal import NoMoreError
from binder.desktop.shoot_page.builds import ADD_BUILD, Builds
from binder.figures.base import BaseVerdict, base_balance
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.shoot import BuildKind
from tests.desktop.sheets import after_typing
from tests.kitchen_binder import small_binder

BUILDS = Builds()


def sight(grams: float) -> Sight:
    """357 g of beans are needed; one more spread takes 143 g."""
    shoot = replace(small_binder().shoots["day"], base_amount=grams, base_unit="g")
    return Sight(small_binder(shoot), "day", "dish-spread")


def kinds(binder: Binder) -> list[str]:
    return [build.kind.value for build in binder.builds.where("dish", "dish-spread")]


@pytest.mark.parametrize("kind", ["spare", "beauty", "tasting"])
def test_what_may_be_left_out_is_refused_with_the_reason(kind: str) -> None:
    with pytest.raises(NoMoreError, match="not enough cooked beans left for one more of dish 1"):
        BUILDS.edit(sight(400), ADD_BUILD, "kind", kind)
    assert kinds(after_typing(BUILDS, sight(501), ADD_BUILD, "kind", kind))[-1] == kind


@pytest.mark.parametrize("kind", ["hero", "swap-out"])
def test_what_the_day_needs_is_added_and_the_checks_say_what_lacks(kind: str) -> None:
    assert kinds(after_typing(BUILDS, sight(400), ADD_BUILD, "kind", kind))[-1] == kind


def test_the_way_out_has_more_of_the_base_and_the_build_in_one_change() -> None:
    before = sight(400)
    with pytest.raises(NoMoreError) as refused:
        BUILDS.edit(before, ADD_BUILD, "kind", "spare")
    (remedy,) = BUILDS.remedies(before, CellName(ADD_BUILD, "kind"), "spare", refused.value)
    assert remedy.title == "Have 100 g more beans, dried, and do it"
    assert remedy.change is not None
    after = apply(before.binder, remedy.change)
    balance = base_balance(after, "day")
    assert balance is not None
    assert balance.verdict is BaseVerdict.ENOUGH
    assert kinds(after)[-1] == "spare"
    assert apply(after, remedy.change.inverse()) == before.binder


def test_a_build_that_grows_is_refused_and_one_that_shrinks_is_not() -> None:
    grown = after_typing(BUILDS, sight(501), ADD_BUILD, "kind", "spare")
    spare = grown.builds.where("dish", "dish-spread")[-1]
    here = Sight(grown, "day", "dish-spread")
    with pytest.raises(NoMoreError, match="cooked beans is what runs out"):
        BUILDS.edit(here, f"builds:{spare.id}", "portions", "8")
    assert after_typing(BUILDS, here, f"builds:{spare.id}", "portions", "1").builds[spare.id].portions == 1


def test_a_short_shoot_can_still_be_tidied() -> None:
    swap = after_typing(BUILDS, sight(300), "builds:spread-swap", "kind", "spare").builds["spread-swap"]
    assert swap.kind is BuildKind.SPARE, "it takes no more than before"


def test_foods_that_are_bought_for_the_list_never_refuse_a_build() -> None:
    """Tahini is enough for two more; the third is bought when it is on the list."""
    here = sight(2000)
    for _number in range(4):
        here = Sight(after_typing(BUILDS, here, ADD_BUILD, "kind", "spare"), "day", "dish-spread")
    assert kinds(here.binder).count("spare") == 4
