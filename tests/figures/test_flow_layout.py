"""Bars and bands stay inside the picture, in proportion, and never lie on each other."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.flow import Band, Flow, Node, NodeKind, base_flow
from binder.figures.flow_layout import PlacedFlow, place_flow
from tests.kitchen_binder import small_binder


def require_in_order(placed: PlacedFlow, width: float, height: float) -> None:
    columns: dict[float, list[tuple[float, float]]] = {}
    for node in placed.nodes:
        assert node.top >= -1e-6
        assert node.top + node.height <= height + 1e-6
        assert node.left + node.width <= width + 1e-6
        columns.setdefault(node.left, []).append((node.top, node.top + node.height))
    for spans in columns.values():
        ordered = sorted(spans)
        assert all(one[1] <= other[0] + 1e-6 for one, other in itertools.pairwise(ordered))


def test_the_small_flow_fits_and_is_in_proportion() -> None:
    placed = place_flow(base_flow(small_binder(), "day"), width=500, height=300, bar=12, gap=8, least=4)
    require_in_order(placed, 500, 300)
    ratios = {band.left_height / band.band.leaves for band in placed.bands}
    assert max(ratios) == pytest.approx(min(ratios))


@st.composite
def flows(draw: st.DrawFn) -> Flow:
    """One to fifteen forms, each feeding a dish or two."""
    forms = draw(st.integers(1, 15))
    dishes = draw(st.integers(1, 8))
    grams = st.floats(0.5, 5000)
    bands, nodes = [], [Node("base", NodeKind.BASE, "base", 0, 0.0, None)]
    for at in range(forms):
        made = draw(grams)
        bands.append(Band("base", f"f{at}", made * draw(st.floats(0.3, 2)), made))
        bands.append(Band(f"f{at}", f"d{draw(st.integers(0, dishes - 1))}", made, made))
        nodes.append(Node(f"f{at}", NodeKind.FORM, f"form {at}", 1, made, None))
    nodes += [Node(f"d{at}", NodeKind.DISH, f"dish {at}", 2, 0.0, None) for at in range(dishes)]
    return Flow(tuple(nodes), tuple(bands))


@given(flows(), st.floats(200, 2000), st.floats(250, 1500))
def test_any_flow_of_up_to_fifteen_forms_fits(flow: Flow, width: float, height: float) -> None:
    placed = place_flow(flow, width=width, height=height, bar=10, gap=6, least=3)
    require_in_order(placed, width, height)
    by_key = {node.node.key: node for node in placed.nodes}
    for band in placed.bands:
        source, target = by_key[band.band.source], by_key[band.band.target]
        assert band.left_top + band.left_height <= source.top + source.height + 1e-6
        assert band.right_top + band.right_height <= target.top + target.height + 1e-6


def test_an_empty_flow_is_an_empty_picture() -> None:
    assert place_flow(Flow((), ()), width=100, height=100, bar=10, gap=5, least=2) == PlacedFlow((), ())
