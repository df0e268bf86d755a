"""Where the nodes and bands of the flow are drawn, in units of the page or the window.

Widths are in proportion to weight.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.figures.flow import Band, Flow, Node


@dataclass(frozen=True)
class PlacedNode:
    """A node's bar: left edge, top (downward from the top of the picture), width and height."""

    node: Node
    left: float
    top: float
    width: float
    height: float


@dataclass(frozen=True)
class PlacedBand:
    """A band from the right edge of one bar to the left edge of another: top and height at each end."""

    band: Band
    left: float
    left_top: float
    left_height: float
    right: float
    right_top: float
    right_height: float


@dataclass(frozen=True)
class PlacedFlow:
    """The whole picture."""

    nodes: tuple[PlacedNode, ...]
    bands: tuple[PlacedBand, ...]


def place_flow(flow: Flow, *, width: float, height: float, bar: float, gap: float, least: float) -> PlacedFlow:
    """Place a flow in `width` by `height`.

    Bars `bar` wide, at least `gap` between bars of a column and none lower than `least`.
    """
    columns = [[node for node in flow.nodes if node.column == at] for at in range(flow.columns)]
    scale = _scale(columns, flow, height, gap, least)
    placed: dict[str, PlacedNode] = {}
    for at, column in enumerate(columns):
        left = at * (width - bar) / max(1, len(columns) - 1)
        for node, top, tall in _stacked(_by_source(column, flow, placed), flow, height, scale, gap, least):
            placed[node.key] = PlacedNode(node, left, top, bar, tall)
    return PlacedFlow(tuple(placed.values()), tuple(_bands(flow, placed, scale)))


def through(node: Node, flow: Flow) -> float:
    """Grams that the bar of a node must be tall enough for.

    The larger of what arrives, what leaves and what it holds.
    """
    arrives = sum(band.arrives for band in flow.bands if band.target == node.key)
    leaves = sum(band.leaves for band in flow.bands if band.source == node.key)
    return max(arrives, leaves, node.grams)


def _scale(columns: Sequence[Sequence[Node]], flow: Flow, height: float, gap: float, least: float) -> float:
    """Height of a gram.

    The column that has least room decides, found by halving because low bars do not shrink further.
    """
    grams = [[through(node, flow) for node in column] for column in columns if column]

    def fits(scale: float) -> bool:
        return all(
            sum(max(least, scale * one) for one in column) + gap * (len(column) - 1) <= height for column in grams
        )

    low, high = 0.0, height / max((sum(column) for column in grams), default=1.0) if grams else 0.0
    if fits(high):
        return high
    for _halving in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


def _by_source(column: Sequence[Node], flow: Flow, placed: Mapping[str, PlacedNode]) -> list[Node]:
    """Nodes in the order of what feeds them, so that bands cross as little as may be; dishes keep the running order."""
    if any(node.place is not None and node.place.table == "dishes" for node in column):
        return list(column)

    def middle(node: Node) -> float:
        tops = [placed[band.source].top for band in flow.bands if band.target == node.key and band.source in placed]
        return sum(tops) / len(tops) if tops else 0.0

    return sorted(column, key=middle)


def _stacked(
    column: Sequence[Node], flow: Flow, height: float, scale: float, gap: float, least: float
) -> list[tuple[Node, float, float]]:
    talls = [max(least, scale * through(node, flow)) for node in column]
    spare = height - sum(talls) - gap * (len(column) - 1)
    top = max(0.0, spare / 2)
    stacked = []
    for node, tall in zip(column, talls, strict=True):
        stacked.append((node, top, tall))
        top += tall + gap
    return stacked


def _bands(flow: Flow, placed: Mapping[str, PlacedNode], scale: float) -> list[PlacedBand]:
    """Bands in the order of the bars they lead to, and at a bar in the order of the bars they come from."""
    known = [band for band in flow.bands if band.source in placed and band.target in placed]
    leaving, arriving = dict.fromkeys(placed, 0.0), dict.fromkeys(placed, 0.0)
    right: dict[int, float] = {}
    for band in sorted(known, key=lambda one: placed[one.source].top):
        right[id(band)] = placed[band.target].top + arriving[band.target]
        arriving[band.target] += band.arrives * scale
    found = []
    for band in sorted(known, key=lambda one: placed[one.target].top):
        source, target = placed[band.source], placed[band.target]
        found.append(
            PlacedBand(
                band,
                source.left + source.width,
                source.top + leaving[band.source],
                band.leaves * scale,
                target.left,
                right[id(band)],
                band.arrives * scale,
            )
        )
        leaving[band.source] += band.leaves * scale
    return found
