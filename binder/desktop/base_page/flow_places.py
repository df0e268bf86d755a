"""Where bars, bands and words of the flow stand on screen, so that no words lie on others. Pixels; plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.flow import NodeKind
from binder.figures.flow_layout import PlacedBand, PlacedNode, place_flow

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from binder.desktop.base_page.flow_words import NodeWords
    from binder.figures.flow import Flow, Node


@dataclass(frozen=True)
class Box:
    """A rectangle: left, top, width, height."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        return self.left + self.width

    @property
    def bottom(self) -> float:
        return self.top + self.height

    def meets(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        across = self.left < other.right - _HAIR and other.left < self.right - _HAIR
        return across and self.top < other.bottom - _HAIR and other.top < self.bottom - _HAIR


_HAIR = 0.01
_STEPS_FOR_WEIGHT = 10
"""Lines of text that the weights are given room for, beside the words."""


@dataclass(frozen=True)
class Measured:
    """What the picture is measured by: a line of text, the width of a text, a bar's width, all in pixels."""

    line: float
    width_of: Callable[[str], float]
    bar: float
    last_column: float

    @property
    def pad(self) -> float:
        """Space between a bar and its words."""
        return self.line * 0.35


@dataclass(frozen=True)
class PictureNode:
    """A node's bar and the box of its words beside it."""

    node: Node
    bar: Box
    words: Box


@dataclass(frozen=True)
class BandNumber:
    """The weight written on a band, where there is room for it."""

    text: str
    box: Box


@dataclass(frozen=True)
class Picture:
    """The whole picture and its height."""

    height: float
    nodes: tuple[PictureNode, ...]
    bands: tuple[PlacedBand, ...]
    numbers: tuple[BandNumber, ...]


def picture_of(
    flow: Flow, words: Mapping[str, NodeWords], amounts: Mapping[int, str], *, width: float, by: Measured
) -> Picture:
    """The flow in a width. `amounts` are the weights of its bands as text, by their places among them."""
    if not flow.nodes:
        return Picture(0.0, (), (), ())
    tall = by.line * max(words[node.key].lines for node in flow.nodes)
    height = _height(flow, words, by)
    placed = place_flow(
        flow, width=max(by.bar, width - by.last_column), height=height, bar=by.bar, gap=tall, least=by.line * 0.2
    )
    pitch = _pitch(flow, width, by)
    nodes: list[PictureNode] = []
    for column in range(flow.columns):
        here = [one for one in placed.nodes if one.node.column == column]
        room = by.last_column if column == flow.columns - 1 else pitch
        nodes += _with_words(sorted(here, key=lambda one: one.top), words, height, room, by)
    taken = [box for one in nodes for box in (one.bar, inked(one, words[one.node.key], by))]
    return Picture(height, tuple(nodes), placed.bands, _numbers(flow, placed.bands, taken, amounts, by))


def _height(flow: Flow, words: Mapping[str, NodeWords], by: Measured) -> float:
    """Room for the words and gaps of the fullest column, and beside them for the weights."""
    tallest = max(words[node.key].lines for node in flow.nodes)
    most = max(sum(node.column == column for node in flow.nodes) for column in range(flow.columns))
    return by.line * (most * (tallest + 0.2) + _STEPS_FOR_WEIGHT)


def _pitch(flow: Flow, width: float, by: Measured) -> float:
    return (width - by.last_column - by.bar) / max(1, flow.columns - 1) - by.bar


def _with_words(
    column: Sequence[PlacedNode], words: Mapping[str, NodeWords], height: float, room: float, by: Measured
) -> list[PictureNode]:
    """Words beside the middle of their bars, pushed apart where they would lie on each other."""
    heights = [by.line * words[one.node.key].lines for one in column]
    tops = [one.top + (one.height - tall) / 2 for one, tall in zip(column, heights, strict=True)]
    edge = 0.0
    for at, tall in enumerate(heights):
        tops[at] = max(tops[at], edge)
        edge = tops[at] + tall
    edge = height
    for at in range(len(tops) - 1, -1, -1):
        tops[at] = min(tops[at], edge - heights[at])
        edge = tops[at]
    return [
        PictureNode(
            one.node,
            Box(one.left, one.top, one.width, one.height),
            Box(one.left + one.width + by.pad, top, max(0.0, room - 2 * by.pad), tall),
        )
        for one, top, tall in zip(column, tops, heights, strict=True)
    ]


def inked(one: PictureNode, words: NodeWords, by: Measured) -> Box:
    """The part of the box that the words really take."""
    short = by.width_of(words.short) + by.line if words.short else 0.0
    widest = max(by.width_of(words.name), by.width_of(words.amount), short)
    return Box(one.words.left, one.words.top, min(one.words.width, widest), one.words.height)


def _numbers(
    flow: Flow, bands: Sequence[PlacedBand], taken: Sequence[Box], amounts: Mapping[int, str], by: Measured
) -> tuple[BandNumber, ...]:
    """A number where a band arrives, if it is as thick as a line, says more than the node's own and lies on nothing."""
    arriving = [band.target for band in flow.bands]
    ends = {id(placed.band): placed.right for placed in bands}
    found: list[BandNumber] = []
    for placed in bands:
        target = placed.band.target
        if target == NodeKind.LEFT or arriving.count(target) == 1 or placed.right_height < by.line:
            continue
        if placed.right != ends[id(placed.band)]:
            continue
        text = amounts[flow.bands.index(placed.band)]
        wide, top = by.width_of(text), placed.right_top + (placed.right_height - by.line) / 2
        box = Box(placed.right - by.pad - wide, top, wide, by.line)
        if not any(box.meets(other) for other in (*taken, *(one.box for one in found))):
            found.append(BandNumber(text, box))
    return tuple(found)
