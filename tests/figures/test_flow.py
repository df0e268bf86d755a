"""The picture of the base: weights add up at every node."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.flow import NodeKind, base_flow
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from binder.kitchen.shoot import Build, Dish
from tests.kitchen_binder import small_binder


def test_what_arrives_at_a_form_leaves_it_again() -> None:
    flow = base_flow(small_binder(), "day")
    for node in flow.nodes:
        arrives = sum(band.arrives for band in flow.bands if band.target == node.key)
        leaves = sum(band.leaves for band in flow.bands if band.source == node.key)
        if node.kind is NodeKind.FORM:
            assert arrives == pytest.approx(leaves) == pytest.approx(node.grams)
        if node.kind is NodeKind.BASE:
            assert leaves == pytest.approx(1000)
        if node.kind in {NodeKind.DISH, NodeKind.LEFT}:
            assert arrives == pytest.approx(node.grams)


def test_columns_run_from_the_bag_to_the_dishes() -> None:
    columns = {node.name: node.column for node in base_flow(small_binder(), "day").nodes}
    assert columns == {
        "beans, dried": 0,
        "soaked beans": 1,
        "cooked beans": 2,
        "bean liquid": 2,
        "1 Bean spread": 3,
        "2 Onion flatbread": 3,
        "left over": 3,
    }


def test_what_runs_short_is_marked_on_its_form() -> None:
    shoot = replace(small_binder().shoots["day"], base_amount=300, base_unit="g")
    short = {node.name: node.short for node in base_flow(small_binder(shoot), "day").nodes if node.short}
    assert list(short) == ["cooked beans"]


def test_no_base_no_picture() -> None:
    assert base_flow(small_binder(replace(small_binder().shoots["day"], base=None)), "day").nodes == ()


def test_a_form_that_is_added_to_another_flows_into_it() -> None:
    binder = small_binder(
        Food(id="stew", name="bean stew", form_of="beans"),
        Conversion(id="stew", takes="cooked", name="Stew"),
        Outcome(id="stew/1", conversion="stew", form="stew", ratio=1.2),
        Addition(id="stew/2", conversion="stew", food="liquid", ratio=0.5),
        Line(id="x", step="bread/2", position=5, food="stew", low=240, high=240, unit="g"),
    )
    bands = {(band.source, band.target): band for band in base_flow(binder, "day").bands}
    # The bread is made once to its second step: 240 g of stew, of 200 g cooked and 100 g liquid.
    assert bands["cooked", "stew"].leaves == pytest.approx(200)
    assert bands["liquid", "stew"].leaves == pytest.approx(100)
    assert bands["cooked", "stew"].arrives + bands["liquid", "stew"].arrives == pytest.approx(240)
    columns = {node.key: node.column for node in base_flow(binder, "day").nodes}
    assert columns["stew"] == columns["liquid"] + 1


def test_a_dish_may_have_the_id_of_a_food() -> None:
    dish = Dish(id="cooked", shoot="day", position=2, recipe="spread", portions=4)
    flow = base_flow(small_binder(dish, Build(id="x", dish="cooked")), "day")
    assert len({node.key for node in flow.nodes}) == len(flow.nodes)
    assert all(band.source != band.target for band in flow.bands)
