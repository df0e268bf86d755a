"""Figures are worked out once, and again when what they depend on changes."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from binder.figures import memory
from binder.figures.base import base_balance
from binder.figures.base_cost import base_cost
from binder.figures.card import station_cards
from binder.figures.checks import shoot_checks
from binder.figures.cost import break_even_prices, shoot_costs
from binder.figures.demand import shoot_demand
from binder.figures.leads import shoot_leads
from binder.figures.memory import PRICES, remembered, remembered_from, remembered_of
from binder.figures.mise import mise_list
from binder.figures.shopping import shopping_list
from binder.figures.swap_outs import proposed_builds
from binder.figures.takes import takes
from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.change import Change, apply
from binder.kitchen.edits.recipes import add_line, remove_line, remove_step
from binder.kitchen.edits.records import set_fields
from binder.kitchen.edits.shoots import add_build, remove_build, set_dish
from binder.kitchen.shoot import BuildKind
from tests.kitchen_binder import small_binder

asked: list[tuple[str, int]] = []


@remembered
def anything(binder: Binder, name: str, count: int = 1) -> int:
    asked.append((name, count))
    return count * len(name)


@remembered_from(PRICES)
def priced(binder: Binder, name: str) -> int:
    asked.append((name, 0))
    return len(binder.quotes)


def test_a_figure_is_worked_out_once_for_each_way_it_is_asked() -> None:
    asked.clear()
    binder = small_binder()
    assert [anything(binder, "a", 2), anything(binder, "a", 3), anything(binder, "a", 2)] == [2, 3, 2]
    assert [anything(binder, "a", count=5), anything(binder, "a", count=6), anything(binder, "a", count=5)] == [5, 6, 5]
    assert asked == [("a", 2), ("a", 3), ("a", 5), ("a", 6)]


def test_a_change_forgets_only_what_depends_on_a_table_it_touched() -> None:
    asked.clear()
    binder = small_binder()
    anything(binder, "b")
    priced(binder, "c")
    renamed = apply(binder, set_fields("Edit", binder.recipes["spread"], name="Dip"))
    anything(renamed, "b")
    priced(renamed, "c")
    assert asked == [("b", 1), ("c", 0), ("b", 1)]
    dearer = apply(renamed, set_fields("Edit", binder.quotes["quote-oil"], price=1))
    priced(dearer, "c")
    assert asked[-1] == ("c", 0)
    assert priced(binder, "c") == 6


def test_no_shelf_grows_without_end() -> None:
    binder = small_binder()
    for number in range(50):
        priced(binder, f"name {number}")
    shelf = binder.memory.shelf(PRICES)
    kept, memory._MOST_KEPT = memory._MOST_KEPT, 50
    try:
        priced(binder, "one more")
        assert len(shelf) == 1
        assert priced(binder, "name 7") == 6
    finally:
        memory._MOST_KEPT = kept


def of_record(binder: Binder, food: str) -> tuple[object, ...]:
    return (binder.foods[food], *binder.measures.where("food", food))


@remembered_of(of_record, frozenset({"settings"}))
def weighed(binder: Binder, food: str, count: int = 1) -> int:
    asked.append((food, count))
    return count * len(binder.measures.where("food", food))


def test_a_figure_of_one_record_outlives_changes_of_others() -> None:
    asked.clear()
    binder = small_binder()
    weighed(binder, "onion")
    weighed(binder, "tahini")
    heavier = apply(binder, set_fields("Edit", binder.measures["onion/each"], grams=120.0))
    assert [weighed(heavier, "onion"), weighed(heavier, "tahini"), weighed(heavier, "onion", 3)] == [2, 1, 6]
    assert asked == [("onion", 1), ("tahini", 1), ("onion", 1), ("onion", 3)]
    asked.clear()
    metric = apply(heavier, set_fields("Edit", heavier.settings, measures="metric"))
    weighed(metric, "tahini")
    assert asked == [("tahini", 1)]


def everything(binder: Binder) -> tuple[object, ...]:
    """All that is shown of the shoot."""
    dishes = [dish.id for dish in binder.dishes.where("shoot", "day")]
    return (
        shoot_costs(binder, "day"),
        shoot_demand(binder, "day"),
        base_balance(binder, "day"),
        base_cost(binder, "day"),
        shopping_list(binder, "day"),
        mise_list(binder, "day"),
        station_cards(binder, "day"),
        shoot_leads(binder, "day"),
        shoot_checks(binder, "day"),
        [takes(binder, dish) for dish in dishes],
        [proposed_builds(binder, dish) for dish in dishes],
        [break_even_prices(binder, dish) for dish in dishes],
    )


def edits(binder: Binder) -> list[Change]:
    """Changes of every kind of record that figures read."""
    dishes = binder.dishes.where("shoot", "day")
    lines, steps = list(binder.lines.values()), list(binder.steps.values())
    changes = [
        *(set_fields("Edit", line, low=(line.high or 1.0) * 2, high=(line.high or 1.0) * 2) for line in lines),
        *(remove_line(binder, line) for line in lines),
        *(add_line(binder, step, "2 tbsp tahini") for step in steps),
        *(add_line(binder, step, "50 g bean spread") for step in steps if step.recipe == "bread"),
        *(set_fields("Edit", step, waiting_minutes=30.0, station="rack") for step in steps),
        *(remove_step(binder, step) for step in steps),
        *(set_fields("Edit", recipe, portions=(recipe.portions or 1.0) + 1) for recipe in binder.recipes.values()),
        *(set_fields("Edit", recipe, name=recipe.name + "!") for recipe in binder.recipes.values()),
        *(set_dish(binder, dish, portions=dish.portions + 1, name="Special") for dish in dishes),
        *(set_dish(binder, dish, recipe="spread") for dish in dishes),
        *(add_build(binder, dish, BuildKind.SPARE, portions=1.0)[0] for dish in dishes),
        *(remove_build(binder, build) for build in binder.builds.values()),
        *(set_fields("Edit", build, up_to=None) for build in binder.builds.values()),
        *(set_fields("Edit", food, name=food.name + "!", allergens=("milk",)) for food in binder.foods.values()),
        *(set_fields("Edit", measure, grams=measure.grams * 2) for measure in binder.measures.values()),
        *(set_fields("Edit", quote, price=quote.price + 7) for quote in binder.quotes.values()),
        *(set_fields("Edit", outcome, ratio=outcome.ratio * 1.1) for outcome in binder.outcomes.values()),
        *(set_fields("Edit", addition, ratio=addition.ratio * 1.5) for addition in binder.additions.values()),
        *(set_fields("Edit", one, lead_minutes=200.0, split="all to the first") for one in binder.conversions.values()),
        set_fields("Edit", binder.shoots["day"], base_amount=0.5, cap=90, spares=2),
        set_fields("Edit", binder.settings, measures="metric", currency="EUR", locale="de_DE"),
    ]
    return [change for change in changes if not change.empty]


@settings(max_examples=40)
@given(st.lists(st.integers(0, 10**6), min_size=1, max_size=5))
def test_after_any_edits_every_figure_is_what_it_would_be_in_a_binder_just_opened(picks: list[int]) -> None:
    binder = small_binder()
    everything(binder)
    for pick in picks:
        possible = edits(binder)
        binder = apply(binder, possible[pick % len(possible)])
        assert everything(binder) == everything(binder_of(every_record(binder)))
