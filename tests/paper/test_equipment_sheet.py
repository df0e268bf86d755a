from __future__ import annotations

import pytest

from binder.paper.containers_needed import containers_needed
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder
from tests.paper.example import SHOOT
from tests.paper.said import words_of_day


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_equipment_the_kitchen_and_bowls_by_their_size_are_on_it(paper: str) -> None:
    words = words_of_day(SheetKind.EQUIPMENT, paper)
    for said in ("wide braising pan", "12 quart pot", "gas hob", "Containers"):
        assert said in words
    for one in containers_needed(day_binder(), SHOOT):
        assert f"{one.count} {one.size.name if one.size else 'size not known'}" in words
        assert all(food in words for food, _count in one.foods)
