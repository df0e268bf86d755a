"""Timers ring when they are over, now and then, until someone has heard them."""

from __future__ import annotations

from datetime import datetime, timedelta

from binder.desktop.set_view.ringing import Ringing
from binder.desktop.set_view.set_sight import Timer

NOON = datetime(2026, 11, 6, 12)  # noqa: DTZ001
BREAD, STEW = Timer("bread", "4 Bake", NOON), Timer("stew", "3 Simmer", NOON + timedelta(minutes=5))


def test_a_timer_rings_from_the_second_it_is_over() -> None:
    ringing = Ringing(NOON - timedelta(hours=1))
    assert ringing.now((BREAD, STEW), NOON - timedelta(seconds=1)) == ()
    assert ringing.now((BREAD, STEW), NOON) == (BREAD,)
    assert ringing.now((BREAD, STEW), NOON + timedelta(minutes=5)) == (BREAD, STEW)


def test_what_was_heard_is_silent_and_what_rings_later_is_not() -> None:
    ringing = Ringing(NOON - timedelta(hours=1))
    ringing.hear(ringing.now((BREAD, STEW), NOON))
    assert ringing.now((BREAD, STEW), NOON + timedelta(seconds=1)) == ()
    assert ringing.now((BREAD, STEW), STEW.ends) == (STEW,)


def test_a_timer_that_is_set_anew_rings_again() -> None:
    ringing = Ringing(NOON - timedelta(hours=1))
    ringing.hear((BREAD,))
    later = Timer("bread", "4 Bake", NOON + timedelta(minutes=10))
    assert ringing.now((later,), later.ends) == (later,)


def test_what_was_over_before_anyone_listened_is_silent() -> None:
    assert Ringing(NOON + timedelta(seconds=1)).now((BREAD,), NOON + timedelta(minutes=1)) == ()


def test_the_bell_sounds_at_once_and_every_ten_seconds() -> None:
    ringing = Ringing(NOON - timedelta(hours=1))
    sounds = [second for second in range(25) if ringing.is_to_sound((BREAD,), NOON + timedelta(seconds=second))]
    assert sounds == [0, 10, 20]
    assert not ringing.is_to_sound((), NOON + timedelta(seconds=25))
    assert ringing.is_to_sound((STEW,), NOON + timedelta(seconds=26))
