"""The day of the four birds and the days before it: ordered, fetched, jointed, simmered and set, each in time."""

from __future__ import annotations

from datetime import date, timedelta
from typing import TYPE_CHECKING

from binder.figures.prep_calendar import EntryKind, prep_calendar
from binder.figures.shopping import shopping_list
from binder.figures.tax import food_tax_rate
from binder.figures.trips import FETCHED_BY, fetched_on, to_order
from tests.samples.opened import planned, sample, shoot_of

if TYPE_CHECKING:
    from binder.figures.day_plan import PlannedActivity

BIRDS = sample("four_birds")
SHOOT = shoot_of(BIRDS)


def conversion(key: str) -> PlannedActivity:
    """A conversion as it is planned."""
    (one,) = [one for one in planned("four_birds").activities if one.activity.conversion == key]
    return one


def steps_of(recipe: str, number: int) -> list[PlannedActivity]:
    """What is planned of a step, build by build."""
    return [one for one in planned("four_birds").activities if one.activity.step == f"{recipe}/{number}"]


def test_the_birds_are_ordered_two_days_before_they_are_fetched() -> None:
    ((by, trip, line),) = to_order(BIRDS, SHOOT)
    assert (by, line.item.food) == (date(2026, 12, 12), "chicken_whole")
    assert trip.on == date(2026, 12, 14)


def test_nothing_is_jointed_before_it_is_fetched_nor_simmered_before_it_is_jointed() -> None:
    joint, stock = conversion("joint"), conversion("simmer_stock")
    assert joint.start.date() == fetched_on(BIRDS, SHOOT)["chicken_whole"]
    assert joint.start.time() >= FETCHED_BY
    assert stock.start >= joint.end


def test_the_terrine_that_is_cut_is_made_of_the_stock_and_set_overnight() -> None:
    ready = conversion("simmer_stock").end + timedelta(minutes=BIRDS.conversions["simmer_stock"].lead_minutes)
    jelly, layered, sliced = (steps_of("silver_terrine", number) for number in (4, 5, 6))
    cut = next(one for one in sliced if BIRDS.builds[one.activity.build or ""].up_to is not None)
    (set_before,) = [one for one in layered if one.activity.build == cut.activity.build and one.people]
    assert min(one.start for one in jelly) >= ready
    assert set_before.start.date() == date(2026, 12, 15)
    assert cut.start - set_before.end >= timedelta(hours=6)


FIRST_HEAT = {"gilded_wings": 2, "silver_terrine": 1, "gold_backed_breast": 3, "cider_house_legs": 1}
"""The step of each recipe that first cooks a raw cut."""


def test_raw_cuts_are_cooked_within_the_two_days_they_keep() -> None:
    jointed = conversion("joint").end
    for recipe, number in FIRST_HEAT.items():
        for one in steps_of(recipe, number):
            assert one.start - jointed <= timedelta(days=2), (recipe, one.activity.build)


def test_the_days_before_say_what_to_order_fetch_and_do() -> None:
    entries = [one for one in prep_calendar(BIRDS, SHOOT, planned("four_birds")) if one.kind is not EntryKind.SHOOT]
    on = {one.on for one in entries}
    assert on == {date(2026, 12, 12), date(2026, 12, 14), date(2026, 12, 15)}
    assert [one.kind for one in entries][:2] == [EntryKind.ORDER, EntryKind.TRIP]


def test_the_bottle_comes_back_and_is_no_part_of_the_price() -> None:
    (milk,) = [item for item in shopping_list(BIRDS, SHOOT).items if item.food == "milk"]
    assert (milk.deposit, milk.spend) == (15, 125)


def test_cider_is_taxed_as_a_drink_and_food_as_food() -> None:
    assert (food_tax_rate(BIRDS, SHOOT, "cider"), food_tax_rate(BIRDS, SHOOT, "leek")) == (0.19, 0.07)
