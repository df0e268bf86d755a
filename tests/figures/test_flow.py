"""The picture of the base: weights add up at every node."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.flow import NodeKind, base_flow
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
