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
    """One to fifteen forms, each feeding a dish; some are fed by another form, some dishes by the base itself."""
    forms = draw(st.integers(1, 15))
    dishes = draw(st.integers(1, 8))
    grams = st.floats(0.5, 5000)
    bands, nodes = [], [Node("base", NodeKind.BASE, "base", 0, 0.0, None)]
    for at in range(forms):
        made = draw(grams)
        further = at > 0 and draw(st.booleans())
        bands.append(Band("f0" if further else "base", f"f{at}", made * draw(st.floats(0.3, 2)), made))
        bands.append(Band(f"f{at}", f"d{draw(st.integers(0, dishes - 1))}", made, made))
        nodes.append(Node(f"f{at}", NodeKind.FORM, f"form {at}", 2 if further else 1, made, None))
    if draw(st.booleans()):
        bands.append(Band("base", "d0", 30.0, 30.0))
    nodes += [Node(f"d{at}", NodeKind.DISH, f"dish {at}", 3, 0.0, None) for at in range(dishes)]
    return Flow(tuple(nodes), tuple(bands))


@given(flows(), st.floats(200, 2000), st.floats(250, 1500))
def test_any_flow_of_up_to_fifteen_forms_fits(flow: Flow, width: float, height: float) -> None:
    placed = place_flow(flow, width=width, height=height, bar=10, gap=6, least=3)
    require_in_order(placed, width, height)
    require_joined(placed)


def require_joined(placed: PlacedFlow) -> None:
    """Each band begins at a bar, goes on from piece to piece, and ends at a bar; no piece is behind another bar."""
    by_key = {node.node.key: node for node in placed.nodes}
    for _band, group in itertools.groupby(placed.bands, key=lambda piece: id(piece.band)):
        pieces = list(group)
        source, target = by_key[pieces[0].band.source], by_key[pieces[0].band.target]
        assert pieces[0].left == pytest.approx(source.left + source.width)
        assert source.top - 1e-6 <= pieces[0].left_top
        assert pieces[0].left_top + pieces[0].left_height <= source.top + source.height + 1e-6
        assert pieces[-1].right == pytest.approx(target.left)
        assert target.top - 1e-6 <= pieces[-1].right_top
        assert pieces[-1].right_top + pieces[-1].right_height <= target.top + target.height + 1e-6
        for one, other in itertools.pairwise(pieces):
            assert (one.right, one.right_top, one.right_height) == (other.left, other.left_top, other.left_height)
            for bar in (node for node in placed.nodes if node.left == one.right):
                below = other.left_top >= bar.top + bar.height - 1e-6
                assert below or other.left_top + other.left_height <= bar.top + 1e-6


def test_dishes_stand_in_running_order() -> None:
    placed = place_flow(base_flow(small_binder(), "day"), width=500, height=300, bar=12, gap=8, least=4)
    last = sorted((node for node in placed.nodes if node.node.column == 3), key=lambda node: node.top)
    assert [node.node.name for node in last] == ["1 Bean spread", "2 Onion flatbread", "left over"]


def test_two_conversions_of_one_name_between_the_same_forms_are_two_bands() -> None:
    """Both pass the column between, one above the other."""
    nodes = (
        Node("base", NodeKind.BASE, "base", 0, 900, None),
        Node("flour", NodeKind.FORM, "flour", 1, 100, None),
        Node("crumb", NodeKind.FORM, "crumb", 2, 700, None),
    )
    bands = (
        Band("base", "crumb", 300, 200, "Grate"),
        Band("base", "flour", 100, 100),
        Band("base", "crumb", 500, 500, "Grate"),
    )
    placed = place_flow(Flow(nodes, bands), width=500, height=300, bar=12, gap=8, least=4)
    require_in_order(placed, 500, 300)
    require_joined(placed)
    middle = placed.nodes[1].left
    passing = sorted((one.left_top, one.left_top + one.left_height) for one in placed.bands if one.left == middle)
    assert len(passing) == 2
    assert passing[0][1] <= passing[1][0] + 1e-6


def test_an_empty_flow_is_an_empty_picture() -> None:
    assert place_flow(Flow((), ()), width=100, height=100, bar=10, gap=5, least=2) == PlacedFlow((), ())
