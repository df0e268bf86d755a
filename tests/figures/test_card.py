from __future__ import annotations

from binder.figures.card import made_ahead_card, station_card, station_cards
from binder.kitchen.recipe import Line, Recipe
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder


def test_a_card_has_the_amounts_of_the_dish_for_each_build_that_gets_so_far() -> None:
    card = station_card(small_binder(), "dish-spread")
    blend, dress = card.steps
    assert [c.food for c in blend.containers] == ["cooked beans", "tahini", "bean liquid"]
    (beans,) = blend.containers[0].amounts
    assert (beans.amount.weight, beans.kinds) == ("300 g", ("hero", "swap-out"))
    assert [amount.kinds for amount in dress.containers[0].amounts] == [("hero",)]


def test_builds_of_other_sizes_have_amounts_of_their_own() -> None:
    half = Build(id="spread-swap", dish="dish-spread", kind=BuildKind.SWAP_OUT, up_to="spread/1", portions=2)
    first = station_card(small_binder(half), "dish-spread").steps[0].containers[0]
    assert [(a.amount.weight, a.kinds) for a in first.amounts] == [("300 g", ("hero",)), ("150 g", ("swap-out",))]


def test_a_build_stops_at_its_step_and_one_up_to_the_last_step_is_finished() -> None:
    binder = small_binder(Build(id="spread-swap", dish="dish-spread", up_to="spread/2", kind=BuildKind.SWAP_OUT))
    assert [build.stops_at for build in station_card(binder, "dish-spread").builds] == [None, None]
    card = station_card(small_binder(), "dish-spread")
    assert [build.stops_at for build in card.builds] == [None, 1]
    assert [[build.kind for build in step.stopping] for step in card.steps] == [["swap-out"], []]


def test_a_dish_without_builds_shows_its_portions_once() -> None:
    binder = small_binder()
    binder = binder.with_tables({"builds": binder.builds.with_changes((key, None) for key in binder.builds)})
    (amount,) = station_card(binder, "dish-spread").steps[0].containers[0].amounts
    assert (amount.amount.weight, amount.kinds) == ("300 g", ())


def test_a_recipe_that_does_not_say_its_portions_shows_one_batch_and_why() -> None:
    card = station_card(small_binder(Recipe(id="spread", name="Bean spread")), "dish-spread")
    assert card.batches == 1
    assert card.missing is not None
    assert "Bean spread does not say how many portions" in card.missing.says


def test_what_is_made_ahead_has_a_card_with_what_all_builds_need() -> None:
    binder = small_binder()
    ahead = station_cards(binder, "day")[-1]
    # One flatbread of two is filled with 250 g of a batch of 500 g; the swap-out stops before it is filled.
    assert (ahead.number, ahead.name, ahead.batches) == (None, "Bean spread", 0.5)
    assert ahead == made_ahead_card(binder, "spread", 0.5)
    assert ahead.steps[0].containers[0].amounts[0].amount.weight == "150 g"


def test_a_card_names_allergens_and_cautions_where_the_hazard_is() -> None:
    spread, bread, _ahead = station_cards(small_binder(), "day")
    assert [carried.group for carried in bread.allergens] == ["sesame", "wheat"]
    assert [caution.hazard for caution in bread.steps[0].cautions] == ["hot_oil"]
    assert [caution.hazard for caution in spread.steps[1].cautions] == []


def test_an_amount_in_a_unit_no_one_knows_stands_as_it_was_typed() -> None:
    odd = Line(id="bread/2/1", step="bread/2", made="spread", low=1.0, high=1.0, unit="blorp")
    containers = station_card(small_binder(odd), "dish-bread").steps[1].containers
    assert containers[0].amounts[0].amount.both == "1 blorp"
