"""Whatever a binder holds, each figure is a number or says what is missing; none is infinite, none is a traceback."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass

import pytest
from hypothesis import given, settings

from binder.figures.base import base_balance
from binder.figures.base_cost import BaseCost, base_cost
from binder.figures.base_repairs import base_repairs, bottleneck
from binder.figures.card import station_cards
from binder.figures.checks import shoot_checks
from binder.figures.cost import Verdict, break_even_prices, shoot_costs
from binder.figures.demand import shoot_demand
from binder.figures.flow import base_flow
from binder.figures.flow_layout import place_flow
from binder.figures.leads import shelf_life_clashes, shoot_leads
from binder.figures.mise import mise_list
from binder.figures.shopping import needed_to_buy, shopping_list
from binder.figures.spend import shoot_spend
from binder.figures.swap_outs import proposed_builds
from binder.figures.takes import stages, takes, why_no_more
from binder.kitchen.binder import Binder
from binder.kitchen.integrity import require_all_whole
from tests.figures.any_kitchen import any_kitchens


def figures_of(binder: Binder) -> Iterator[object]:
    yield shoot_demand(binder, "day")
    yield base_balance(binder, "day")
    yield base_cost(binder, "day")
    yield base_repairs(binder, "day")
    yield bottleneck(binder, "day")
    yield shopping_list(binder, "day")
    yield needed_to_buy(binder, "day")
    yield shoot_spend(binder, "day")
    yield shoot_costs(binder, "day")
    yield mise_list(binder, "day")
    yield station_cards(binder, "day")
    yield shoot_leads(binder, "day")
    yield shelf_life_clashes(binder, "day")
    yield place_flow(base_flow(binder, "day"), width=100, height=100, bar=5, gap=3, least=2)
    yield shoot_checks(binder, "day")
    for dish in binder.dishes:
        yield takes(binder, dish)
        yield stages(binder, dish)
        yield why_no_more(binder, dish)
        yield break_even_prices(binder, dish)
        yield proposed_builds(binder, dish)


def numbers_in(value: object) -> Iterator[float]:
    if isinstance(value, float):
        yield value
    elif is_dataclass(value):
        for field in fields(value):
            yield from numbers_in(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for part in value.values():
            yield from numbers_in(part)
    elif isinstance(value, tuple | list):
        for part in value:
            yield from numbers_in(part)


@settings(max_examples=150)
@given(any_kitchens())
def test_every_figure_of_any_kitchen_is_a_number_that_can_be_reckoned_with(binder: Binder) -> None:
    require_all_whole(binder)
    for figure in figures_of(binder):
        assert all(map(math.isfinite, numbers_in(figure)))


@settings(max_examples=100)
@given(any_kitchens())
def test_what_is_not_known_of_any_kitchen_says_why(binder: Binder) -> None:
    for cost in shoot_costs(binder, "day"):
        assert (cost.verdict is Verdict.UNKNOWN) == bool(cost.missing)
    bought = shopping_list(binder, "day")
    assert (bought.spend is None) == bool(bought.missing)
    balance = base_balance(binder, "day")
    assert balance is None or balance.needed is not None or balance.missing
    for dish in binder.dishes:
        found = takes(binder, dish)
        assert (found.possible is None) == bool(found.missing)


@settings(max_examples=100)
@given(any_kitchens())
def test_what_is_bought_for_any_kitchen_covers_what_is_needed_and_weights_add_up(binder: Binder) -> None:
    for item in shopping_list(binder, "day").items:
        if item.packs:
            assert sum(pack.grams for pack in item.packs) + item.at_home >= item.needed * (1 - 2e-6) - 2e-6
    balance = base_balance(binder, "day")
    if balance is not None and balance.needed is not None and not balance.missing:
        for form in balance.forms:
            assert form.made == pytest.approx(form.used + form.taken + form.left, rel=1e-5, abs=1e-3)
    cost = base_cost(binder, "day")
    if isinstance(cost, BaseCost) and cost.total < 10**12:
        assert sum(cost.dishes.values()) + sum(cost.left.values()) == cost.total
