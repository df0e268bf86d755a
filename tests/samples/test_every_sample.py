"""What holds for every sample binder: it is whole, complete, byte-stable, and a cook would not laugh at it."""

from __future__ import annotations

import math

import pytest

from binder.exchange.json_document import to_json
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.base_network import base_forms
from binder.figures.budget import shoot_budget
from binder.figures.checks import Severity, shoot_checks
from binder.figures.claims import ClaimVerdict, claim_findings, verdict_text
from binder.figures.cost import Verdict, shoot_costs
from binder.figures.day_activities import FILMED
from binder.figures.day_checks import day_checks
from binder.figures.day_plan import DayPlan
from binder.figures.demand import builds_of
from binder.figures.missing import Missing, is_known
from binder.figures.price import chosen_pack
from binder.figures.recipe_use import batches
from binder.figures.safety import doneness_needed
from binder.figures.shopping import shopping_list
from binder.figures.trips import buying_clashes, trip_plans
from binder.figures.weight import grams_of
from binder.figures.wrap import shoot_wrap
from binder.kitchen.binder import Binder
from binder.kitchen.claim import ClaimKind
from binder.kitchen.integrity import require_all_whole
from binder.kitchen.paths import samples_folder
from binder.kitchen.recipe import Heat, Recipe, Step
from binder.kitchen.reference import allergens, cautions, doneness
from binder.kitchen.shoot import BuildKind, Dish
from tests.samples.opened import SAMPLES, all_bought, planned, sample, shoot_of, stops, with_less_base


@pytest.fixture(params=SAMPLES)
def binder(request: pytest.FixtureRequest) -> Binder:
    return sample(request.param)


def dishes(binder: Binder) -> tuple[Dish, ...]:
    return binder.dishes.where("shoot", shoot_of(binder))


def steps(binder: Binder) -> list[tuple[Recipe, Step]]:
    return [(binder.recipes[step.recipe], step) for step in binder.steps.values()]


def test_every_sample_there_is_is_tested() -> None:
    assert sorted(path.stem for path in samples_folder().glob("*.json")) == sorted(SAMPLES)


@pytest.mark.parametrize("name", SAMPLES)
def test_exporting_a_sample_again_gives_the_same_bytes(name: str) -> None:
    assert to_json(sample(name)).encode() == (samples_folder() / f"{name}.json").read_bytes()


def test_its_records_hang_together(binder: Binder) -> None:
    require_all_whole(binder)


def test_one_shoot_with_date_call_zone_base_cap_and_budget(binder: Binder) -> None:
    shoot = binder.shoots[shoot_of(binder)]
    assert all(value is not None for value in (shoot.on, shoot.call, shoot.base, shoot.cap, shoot.budget))
    assert shoot.zone in {"America/Chicago", "Europe/Berlin"}


# --- nothing is lacking, and nothing lies about unused


def test_every_line_can_be_weighed_and_priced(binder: Binder) -> None:
    for line in binder.lines.values():
        if line.made is not None:
            assert is_known(batches(binder, binder.recipes[line.made], line)), line.id
        elif line.food is not None and not line.to_taste:
            assert line.high is not None, line.id
            grams = grams_of(binder, binder.foods[line.food], line.high, line.unit, line.preparation)
            assert is_known(grams), (line.id, grams)


def test_every_food_is_free_or_made_or_has_a_price(binder: Binder) -> None:
    made = {outcome.form for outcome in binder.outcomes.values()}
    for food in binder.foods.values():
        priced = not isinstance(chosen_pack(binder, food.id), Missing)
        assert food.free + priced + (food.id in made) == 1, food.name


def test_only_foods_recipes_and_stores_that_are_used_are_kept(binder: Binder) -> None:
    used = {line.food for line in binder.lines.values()} | {line.made for line in binder.lines.values()}
    used |= {addition.food for addition in binder.additions.values()}
    used |= {outcome.form for outcome in binder.outcomes.values()}
    used |= {shoot.base for shoot in binder.shoots.values()} | {dish.recipe for dish in binder.dishes.values()}
    used |= {pack.store for pack in binder.packs.values()}
    assert {*binder.foods, *binder.recipes, *binder.stores} <= used


def test_facts_name_their_source(binder: Binder) -> None:
    for food in binder.foods.values():
        assert food.source, food.name
        assert food.yield_source or food.trim_yield == 1, food.name
    assert all(measure.source for measure in binder.measures.values())
    assert all(quote.source for quote in binder.quotes.values())
    assert all(conversion.source for conversion in binder.conversions.values())
    assert all(outcome.source for outcome in binder.outcomes.values())


def test_two_stores_and_foods_with_a_choice_of_packs_and_older_quotes(binder: Binder) -> None:
    assert len(binder.stores) == 2
    assert sum(len(binder.packs.where("food", food)) > 1 for food in binder.foods) >= 5
    assert sum(len(binder.quotes.where("pack", pack)) > 1 for pack in binder.packs) >= 3


def test_no_price_is_of_the_day_of_the_shoot_or_later(binder: Binder) -> None:
    on = binder.shoots[shoot_of(binder)].on
    assert on is not None
    assert all(quote.on < on for quote in binder.quotes.values())


def test_allergens_cautions_and_doneness_are_known_to_the_reference(binder: Binder) -> None:
    hazards = {hazard for step in binder.steps.values() for hazard in step.hazards}
    hazards |= {hazard for conversion in binder.conversions.values() for hazard in conversion.hazards}
    assert hazards <= set(cautions())
    for food in binder.foods.values():
        assert set(food.allergens) <= set(allergens()), food.name
        assert not food.doneness or doneness(binder.settings.safety, food.doneness), food.name


# --- the dishes


def test_every_step_says_what_to_do_where_and_for_how_long(binder: Binder) -> None:
    for recipe, step in steps(binder):
        where = (recipe.name, step.position)
        assert step.title, where
        assert step.text[:1].isupper(), where
        assert step.text.endswith("."), where
        assert len(step.text) <= 160, where
        assert step.station, where
        assert step.equipment or not step.hands_on_minutes, where
        assert step.hands_on_minutes + step.waiting_minutes > 0, where


def test_every_dish_has_one_hero_made_to_the_end(binder: Binder) -> None:
    for dish in dishes(binder):
        heroes = [build for build in builds_of(binder, dish.id) if build.kind is BuildKind.HERO]
        assert [build.up_to for build in heroes] == [None], dish.id


def test_builds_stop_at_steps_of_their_own_dish(binder: Binder) -> None:
    for dish in dishes(binder):
        for build in builds_of(binder, dish.id):
            assert build.waits, build.id
            if build.kind is BuildKind.SWAP_OUT:
                assert build.up_to is not None, build.id
            if build.up_to is not None:
                assert binder.steps[build.up_to].recipe == dish.recipe, build.id


def test_there_are_swap_outs_a_spare_and_a_tasting(binder: Binder) -> None:
    kinds = [build.kind for build in binder.builds.values()]
    assert kinds.count(BuildKind.SWAP_OUT) >= 4
    assert {BuildKind.SPARE, BuildKind.TASTING} <= set(kinds)


def test_recipes_made_ahead_are_used_in_others(binder: Binder) -> None:
    own_place = {dish.recipe for dish in dishes(binder)}
    inside = {line.made for line in binder.lines.values() if line.made}
    assert inside
    assert own_place | inside == set(binder.recipes)
    assert not own_place & inside


def test_recipes_whose_volume_and_weight_are_both_given_are_no_lead_and_no_feathers(binder: Binder) -> None:
    for recipe in binder.recipes.values():
        if recipe.grams and recipe.millilitres:
            assert 0.4 <= recipe.grams / recipe.millilitres <= 1.3, recipe.name


def test_a_portion_weighs_what_one_can_eat(binder: Binder) -> None:
    # Without water, most of which is poured or steamed away, and the oil of the fryer; with the bones.
    for cost in shoot_costs(binder, shoot_of(binder)):
        grams = sum(line.edible or 0.0 for line in cost.lines if line.name not in {"water", "neutral oil"})
        assert 50 <= grams <= 650, (cost.name, grams)


# --- safety


def test_every_food_to_be_cooked_through_has_a_step_that_says_the_temperature(binder: Binder) -> None:
    for dish in dishes(binder):
        for needed in doneness_needed(binder, dish.recipe):
            assert needed.stated, (dish.recipe, needed.food)


def test_heat_carries_its_caution(binder: Binder) -> None:
    for recipe, step in steps(binder):
        if step.heat is Heat.OIL:
            assert "hot_oil" in step.hazards, recipe.name
        if step.heat is Heat.OVEN:
            assert "hot_oven" in step.hazards, recipe.name


def test_raw_poultry_carries_its_caution_where_it_is_first_handled(binder: Binder) -> None:
    raw = {food.id for food in binder.foods.values() if food.doneness == "poultry"}
    for line in binder.lines.values():
        if line.food in raw:
            assert "raw_poultry" in binder.steps[line.step].hazards, line.id


def test_temperatures_fit_what_they_are_the_temperature_of(binder: Binder) -> None:
    ranges = {
        Heat.OVEN: (150, 260),
        Heat.OIL: (110, 190),
        Heat.CORE: (60, 95),
        Heat.CHILL: (0, 5),
        Heat.PAN: (60, 100),
    }
    for recipe, step in steps(binder):
        assert (step.heat is None) == (step.celsius is None), recipe.name
        if step.heat is not None and step.celsius is not None:
            least, most = ranges[step.heat]
            assert least <= step.celsius <= most, (recipe.name, step.position)


def test_one_dish_is_chilled_for_hours_before_it_is_finished(binder: Binder) -> None:
    chilled = [step for _recipe, step in steps(binder) if step.heat is Heat.CHILL and step.waiting_minutes >= 240]
    assert chilled


# --- figures


def test_every_form_of_the_base_is_used(binder: Binder) -> None:
    balance = base_balance(binder, shoot_of(binder))
    assert balance is not None
    assert balance.missing == ()
    assert {form.form for form in balance.forms} == set(base_forms(binder, balance.base))
    for form in balance.forms:
        assert form.used + form.taken > 0, form.name


def test_a_co_product_is_used_in_a_dish(binder: Binder) -> None:
    balance = base_balance(binder, shoot_of(binder))
    assert balance is not None
    used = {form for grams in balance.by_dish.values() for form in grams}
    together = [binder.outcomes.where("conversion", conversion) for conversion in binder.conversions]
    assert any(sum(outcome.form in used for outcome in outcomes) >= 2 for outcomes in together)


def test_the_base_goes_round_but_not_with_a_hundred_grams_less(binder: Binder) -> None:
    enough, short = binder, with_less_base(binder, 100)
    verdicts = [base_balance(one, shoot_of(one)) for one in (enough, short)]
    assert [one.verdict for one in verdicts if one] == [BaseVerdict.ENOUGH, BaseVerdict.SHORT]
    assert "short of base" in dict(stops(short))


def test_all_costs_and_the_till_are_known_and_the_budget_just_covers_it_all(binder: Binder) -> None:
    assert Verdict.UNKNOWN not in {cost.verdict for cost in shoot_costs(binder, shoot_of(binder))}
    assert shopping_list(binder, shoot_of(binder)).spend is not None
    budget = shoot_budget(binder, shoot_of(binder))
    assert budget.allowed is not None
    assert budget.total.expected is not None
    assert 0.9 * budget.allowed < budget.total.expected <= budget.allowed


MEANT = {"A Bag and a Burner": ["claim does not hold"], "All but the Beak": []}
"""The checks that are to be looked at, by binder."""


def test_nothing_but_what_is_meant_wants_a_look(binder: Binder) -> None:
    found = shoot_checks(binder, shoot_of(binder))
    warned = [check.kind for check in found if check.severity is Severity.WARN]
    assert warned == MEANT[binder.settings.name], [check.says for check in found]


def test_dishes_cost_neither_nothing_nor_a_fortune(binder: Binder) -> None:
    for cost in shoot_costs(binder, shoot_of(binder)):
        assert cost.per_portion is not None
        assert 30 <= cost.per_portion <= 400, cost.name
        assert math.isclose(sum(line.share or 0.0 for line in cost.lines), 1.0), cost.name


# --- buying and money


def test_it_is_bought_in_two_trips_on_days_that_do(binder: Binder) -> None:
    trips = trip_plans(binder, shoot_of(binder))
    assert len(trips) == 2
    assert {(trip.on, trip.store) for trip in trips} == {(trip.on, trip.store) for trip in binder.trips.values()}
    assert buying_clashes(binder, shoot_of(binder)) == ()


def test_an_offer_and_the_counter_are_made_use_of(binder: Binder) -> None:
    taken = [pack for item in shopping_list(binder, shoot_of(binder)).items for pack in item.packs]
    assert any(pack.priced.pack.by_weight for pack in taken)
    offers = [pack for pack in taken if pack.priced.quote.bundle_price is not None]
    assert [pack for pack in offers if pack.price < pack.count * pack.priced.price]


def test_what_is_at_home_is_enough_of_it(binder: Binder) -> None:
    items = {item.food: item for item in shopping_list(binder, shoot_of(binder)).items}
    for stocked in binder.pantry_items.values():
        assert items[stocked.food].packs == (), stocked.food
        assert items[stocked.food].at_home > items[stocked.food].needed, stocked.food


def test_just_one_sentence_holds_on_a_condition_and_says_so(binder: Binder) -> None:
    found = claim_findings(binder, shoot_of(binder))
    (conditional,) = [one for one in found if one.verdict is ClaimVerdict.ONLY_IF]
    assert verdict_text(conditional).startswith("Holds only ")
    assert any(one.verdict is ClaimVerdict.HOLDS for one in found)
    assert {claim.kind for claim in binder.claims.values()} == set(ClaimKind)


def test_the_books_close_when_all_is_paid_as_listed(binder: Binder) -> None:
    wrap = shoot_wrap(all_bought(binder, shoot_of(binder), {}), shoot_of(binder))
    assert wrap.closes
    assert (wrap.total.open, wrap.total.variance) == (0, 0)
    assert wrap.total.paid == shopping_list(binder, shoot_of(binder)).spend


# --- the day


def plan_of(binder: Binder) -> DayPlan:
    return planned(next(name for name in SAMPLES if sample(name) is binder))


def test_the_day_has_a_plan_that_is_proven_and_takes_nothing_for_granted(binder: Binder) -> None:
    plan = plan_of(binder)
    assert plan.proven
    assert plan.bound == plan.wrap
    assert plan.assumed == ()


def test_the_plan_adds_no_false_alarm_to_the_checks(binder: Binder) -> None:
    found = day_checks(binder, shoot_of(binder), plan_of(binder))
    assert [check.says for check in found if check.severity is not Severity.NOTE] == []


def test_people_work_while_they_are_there(binder: Binder) -> None:
    plan, on = plan_of(binder), binder.shoots[shoot_of(binder)].on
    assert any(one.people for one in plan.activities)
    for one in plan.activities:
        for person in (binder.people[key] for key in one.people if one.start.date() == on):
            assert person.arrives is None or one.start.time() >= person.arrives, (person.name, one.activity.name)
            assert person.leaves is None or one.end.time() <= person.leaves, (person.name, one.activity.name)


def test_only_those_on_camera_are_filmed(binder: Binder) -> None:
    filmed = [one for one in plan_of(binder).activities if one.activity.kind in FILMED]
    assert filmed
    assert all(binder.people[person].on_camera for one in filmed for person in one.people)


def test_every_skill_asked_for_is_someones(binder: Binder) -> None:
    skills = {skill for person in binder.people.values() for skill in person.skills}
    assert {step.skill for step in binder.steps.values() if step.skill} == skills
