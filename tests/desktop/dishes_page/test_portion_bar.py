"""The stacked bar of a portion."""

from __future__ import annotations

import pytest

from binder.desktop.dishes_page.portion_bar import portion_bar
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.figures.cap_basis import basis_text
from binder.figures.cost import dish_cost
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import remove_dish
from binder.kitchen.shoot import CapBasis


def test_widths_are_to_the_cap_as_costs_are(chickpeas: Binder) -> None:
    bar, cost = portion_bar(Sight(chickpeas, "day"), "smoky_tomato_stew"), dish_cost(chickpeas, "dish_3")
    assert bar.cap is not None
    assert cost.per_portion is not None
    assert cost.cap is not None
    assert sum(segment.width for segment in bar.segments) / bar.cap == pytest.approx(cost.per_portion / cost.cap)


def test_the_costliest_stands_first(chickpeas: Binder) -> None:
    widths = [segment.width for segment in portion_bar(Sight(chickpeas, "day"), "herb_fritters").segments]
    assert widths == sorted(widths, reverse=True)


def test_it_says_how_the_portion_stands_to_its_cap(chickpeas: Binder) -> None:
    bar = portion_bar(Sight(chickpeas, "day"), "smoky_tomato_stew")
    assert bar.says == "A portion costs $1.83 (used cost), within the cap of $2.00: $0.17 to spare."
    assert bar.mark is Mark.WITHIN


def test_what_is_missing_is_said_with_what_is_known(chickpeas: Binder) -> None:
    binder = apply(chickpeas, remove("", chickpeas, chickpeas.quotes["quote_tahini"]))
    bar = portion_bar(Sight(binder, "day"), "silky_hummus_with_lemon")
    assert bar.says.startswith("A portion (used cost) is not known: no price for tahini. What is known comes to $")
    assert bar.mark is Mark.UNKNOWN


def test_a_recipe_outside_the_shoot_has_no_cap(chickpeas: Binder) -> None:
    binder = apply(chickpeas, remove_dish(chickpeas, chickpeas.dishes["dish_2"]))
    bar = portion_bar(Sight(binder, "day"), "herb_fritters")
    assert bar.cap is None
    assert "no cap" in bar.says


@pytest.mark.parametrize("basis", [CapBasis.STAPLES_FREE, CapBasis.WHOLE_PACKS])
def test_on_another_basis_the_foods_take_the_parts_and_the_basis_is_named(chickpeas: Binder, basis: CapBasis) -> None:
    binder = apply(chickpeas, set_cap_basis(chickpeas.shoots["day"], basis))
    bar, cost = portion_bar(Sight(binder, "day"), "smoky_tomato_stew"), dish_cost(binder, "dish_3")
    assert cost.per_portion is not None
    assert cost.cap is not None
    assert bar.cap is not None
    assert sum(segment.width for segment in bar.segments) / bar.cap == pytest.approx(cost.per_portion / cost.cap)
    assert f"({basis_text(basis)})" in bar.says
    assert "tomatoes, plum" in {segment.name for segment in bar.segments}


def test_the_parts_come_to_a_hundred_per_cent(chickpeas: Binder) -> None:
    segments = portion_bar(Sight(chickpeas, "day"), "smoky_tomato_stew").segments
    shares = [int(segment.says.split()[-2]) for segment in segments]
    assert sum(shares) == pytest.approx(100, abs=len(shares) / 2)
