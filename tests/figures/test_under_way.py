"""Whoever waits for a long figure is told how far it is, and can stop it; no one else is troubled."""

from __future__ import annotations

import pytest

from binder.figures.pack_offers import Need, Offer, Terms
from binder.figures.pack_program import cheapest_purchase
from binder.figures.under_way import telling, told

NEEDS = [Need(f"food {number}", 700.0) for number in range(4)]
OFFERS = [Offer(f"{need.food}/{pack}", need.food, "shop", 100.0 + pack, 90) for need in NEEDS for pack in range(3)]


class EnoughError(Exception):
    pass


def test_without_a_listener_all_goes_on() -> None:
    assert list(told("abc")) == ["a", "b", "c"]


def test_a_listener_is_told_before_each() -> None:
    heard: list[float] = []
    with telling(heard.append):
        assert list(told([1, 2, 3, 4])) == [1, 2, 3, 4]
    assert heard == [0.0, 0.25, 0.5, 0.75]
    assert list(told([1])) == [1]
    assert len(heard) == 4


def test_the_choice_of_packs_tells_and_is_the_same_whether_heard_or_not() -> None:
    heard: list[float] = []
    terms = Terms(trip_costs={"shop": 100})
    with telling(heard.append):
        found = cheapest_purchase(NEEDS, OFFERS, terms)
    assert heard == [0.0, 0.25, 0.5, 0.75]
    assert found == cheapest_purchase(NEEDS, OFFERS, terms)


@pytest.mark.parametrize("terms", [Terms(), Terms(trip_costs={"shop": 100})])
def test_the_choice_of_packs_can_be_stopped(terms: Terms) -> None:
    def stop(share: float) -> None:
        if share >= 0.5:
            raise EnoughError

    with pytest.raises(EnoughError), telling(stop):
        cheapest_purchase(NEEDS, OFFERS, terms)
