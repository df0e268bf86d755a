"""Builds that the steps themselves ask for."""

from __future__ import annotations

from dataclasses import replace

from binder.figures.swap_outs import proposed_builds
from binder.kitchen.recipe import Step
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder


def test_a_wait_longer_than_the_camera_stays_asks_for_a_swap_out_past_it() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.steps["spread/1"], waiting_minutes=60), replace(small.builds["spread-swap"], up_to=None)
    )
    swap = next(one for one in proposed_builds(binder, "dish-spread") if one.kind is BuildKind.SWAP_OUT)
    assert swap.up_to == "spread/1"
    assert "60 min" in swap.why


def test_what_the_user_has_is_not_proposed_again() -> None:
    small = small_binder()
    binder = small_binder(replace(small.steps["spread/1"], waiting_minutes=60))
    assert all(one.kind is not BuildKind.SWAP_OUT for one in proposed_builds(binder, "dish-spread"))


def test_a_short_wait_a_wait_off_camera_and_a_wait_at_the_end_need_none() -> None:
    small = small_binder()
    for step in (
        replace(small.steps["spread/1"], waiting_minutes=4),
        replace(small.steps["spread/1"], waiting_minutes=60, on_camera=False),
        replace(small.steps["spread/2"], waiting_minutes=60),
    ):
        assert all(one.kind is not BuildKind.SWAP_OUT for one in proposed_builds(small_binder(step), "dish-spread"))


def test_a_beauty_build_and_the_spares_the_shoot_asks_for() -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.shoots["day"], spares=2), Build(id="own", dish="dish-bread", position=5, kind=BuildKind.SPARE)
    )
    kinds = [one.kind for one in proposed_builds(binder, "dish-bread")]
    assert kinds.count(BuildKind.BEAUTY) == 1
    assert kinds.count(BuildKind.SPARE) == 1


def test_a_long_wait_off_camera_between_two_filmed_steps_is_passed_too() -> None:
    rest = Step(id="bread/1b", recipe="bread", position=1, waiting_minutes=30, on_camera=False)
    binder = small_binder(rest, replace(small_binder().steps["bread/2"], position=2))
    (swap,) = [one for one in proposed_builds(binder, "dish-bread") if one.kind is BuildKind.SWAP_OUT]
    assert swap.up_to == "bread/1b"
    unfilmed = [replace(step, on_camera=False) for step in binder.steps.where("recipe", "bread")]
    nothing = proposed_builds(small_binder(*unfilmed), "dish-bread")
    assert [one.kind for one in nothing] == [BuildKind.BEAUTY]


def test_spares_are_counted_in_words_that_agree() -> None:
    for count, says in ((1, "1 spare of"), (2, "2 spares of")):
        binder = small_binder(replace(small_binder().shoots["day"], spares=count))
        assert says in next(one.why for one in proposed_builds(binder, "dish-bread") if one.kind is BuildKind.SPARE)
