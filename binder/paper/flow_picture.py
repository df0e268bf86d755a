"""The picture of the flow: bars as tall as their weight, bands between them, names beside the bars or in a key.

Shape says what the picture says: what is left over is hatched, the bar of what runs out is torn.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.flow import NodeKind
from binder.figures.flow_layout import place_flow
from binder.kitchen.wording import _
from binder.paper.arrangement import Stack
from binder.paper.block import Text, text
from binder.paper.mark import Shape, marked
from binder.paper.pen import End
from binder.paper.sheet_words import grams

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.figures.flow import Flow, Node
    from binder.figures.flow_layout import PlacedBand, PlacedFlow, PlacedNode
    from binder.kitchen.binder import Binder
    from binder.paper.block import Block
    from binder.paper.list_type import ListType
    from binder.paper.pen import Pen

_BAR = 10.0
_PAD = 4.0
"""Points of a bar's width, and of white between it and its words."""

_LEAST = 2.0
"""Points that the lowest bar is high."""

_NARROWEST = 7.0
"""A name has room beside its bar from so many times its type size on; with less, all names go into a key."""

_LAST_SHARE = 0.2
"""Part of the width that the names of the last column have."""

_THINNEST = 0.75
"""Points; a thinner band is drawn as thick as this, or it is lost on a photocopier."""

_LEAST_HATCHED, _STUB = 3.0, 16.0
"""Points; what is left over in a thinner band is a dashed line so long."""

_BAND, _FORM, _DISH = 0.84, 0.35, 0.0
"""Greys: of bands, which words may lie on, and of bars."""


@dataclass
class FlowPicture:
    """The picture in its own size: `wide` and `tall` points. `keyed`: bars have letters, and a key says whose."""

    binder: Binder
    flow: Flow
    style: ListType
    wide: float
    tall: float

    def __post_init__(self) -> None:
        self.keys = {node.key: _letters(at) for at, node in enumerate(self.flow.nodes)}
        self._last = self.wide * _LAST_SHARE
        self._pitch = (self.wide - self._last - _BAR) / max(1, self.flow.columns - 1)
        self.keyed = not self._has_room_for_names()
        if self.keyed:
            self._last = self.style.strong.size * 2
            self._pitch = (self.wide - self._last - _BAR) / max(1, self.flow.columns - 1)
        self._labels = {node.key: self._label(node) for node in self.flow.nodes}
        gap = max((self._label_height(node) for node in self.flow.nodes), default=0.0)
        self._placed: PlacedFlow = place_flow(
            self.flow, width=self.wide - self._last, height=self.tall, bar=_BAR, gap=gap, least=_LEAST
        )

    def height(self, width: float) -> float:  # noqa: ARG002 - it is drawn in its own size
        """Its own."""
        return self.tall

    def rise(self, width: float) -> float:  # noqa: ARG002
        """None."""
        return 0.0

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:  # noqa: ARG002
        """Not: it goes over whole."""
        return None, self

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:  # noqa: ARG002
        """Bands first, then bars over them, then words on white: no edge of a band runs through them."""
        begun: set[int] = set()
        for band in self._placed.bands:
            _draw_band(pen, band, x, top, first=id(band.band) not in begun)
            begun.add(id(band.band))
        for one in self._placed.nodes:
            _draw_bar(pen, one, x, top)
        for column in range(self.flow.columns):
            here = [one for one in self._placed.nodes if one.node.column == column]
            self._draw_labels(pen, sorted(here, key=lambda one: one.top), x, top)

    def _has_room_for_names(self) -> bool:
        """Whether all names of each column fit one below the other, and none is pressed into too narrow a column."""
        if self._pitch - _BAR - 2 * _PAD < _NARROWEST * self.style.plain.size and self.flow.columns > 1:
            return False
        self.keyed = False
        self._labels = {node.key: self._label(node) for node in self.flow.nodes}
        for column in range(self.flow.columns):
            here = [node for node in self.flow.nodes if node.column == column]
            if sum(self._label_height(node) for node in here) > self.tall:
                return False
        return True

    def _room(self, node: Node) -> float:
        """Points of width for a node's words."""
        is_last = node.column == self.flow.columns - 1
        return (self._last if is_last else self._pitch - _BAR) - 2 * _PAD

    def _label(self, node: Node) -> Block:
        if self.keyed:
            return text(self.keys[node.key], self.style.strong)
        rows: list[Block] = [text(node.name, self.style.plain), text(grams(self.binder, node.grams), self.style.strong)]
        if node.short:
            rows.append(short_block(self.binder, node, self.style))
        return Stack(tuple(rows))

    def _label_height(self, node: Node) -> float:
        return self._labels[node.key].height(self._room(node))

    def _draw_labels(self, pen: Pen, column: Sequence[PlacedNode], x: float, top: float) -> None:
        heights = [self._label_height(one.node) for one in column]
        for one, high, down in zip(column, heights, _apart(column, heights, self.tall), strict=True):
            left, room, words = x + one.left + _BAR + _PAD, self._room(one.node), self._labels[one.node.key]
            pen.bar(left - 1, top - down, min(room, _ink_width(words, room)) + 2, high, grey=1.0)
            words.draw(pen, left, top - down, room)


def _ink_width(block: Block, room: float) -> float:
    """Points that words take of their room."""
    if isinstance(block, Text):
        return max((line.width for line in block.lines(room).lines), default=0.0)
    parts = block.blocks if isinstance(block, Stack) else ()
    return max((_ink_width(part, room) for part in parts), default=room)


def short_block(binder: Binder, node: Node, style: ListType) -> Block:
    """How much a node is short by, after a broken bar."""
    says = _("short {grams}").format(grams=grams(binder, node.short))
    return marked(Shape.BROKEN_BAR, text(says, style.strong), style.strong)


def _letters(at: int) -> str:
    """A, B ... Z, AA ..."""
    letters, at = "", at + 1
    while at > 0:
        at, letter = divmod(at - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters


def _apart(column: Sequence[PlacedNode], heights: Sequence[float], tall: float) -> list[float]:
    """How far down the words of a column begin: beside the middle of their bars, or above what leaves a low one.

    They are pushed apart where they would meet.
    """
    tops = [
        one.top + (one.height - high) / 2 if one.height >= high else max(0.0, one.top + one.height - high)
        for one, high in zip(column, heights, strict=True)
    ]
    edge = 0.0
    for at, high in enumerate(heights):
        tops[at] = max(tops[at], edge)
        edge = tops[at] + high
    edge = tall
    for at in reversed(range(len(tops))):
        tops[at] = min(tops[at], edge - heights[at])
        edge = tops[at]
    return tops


def _draw_band(pen: Pen, band: PlacedBand, x: float, top: float, *, first: bool) -> None:
    """A band; what little is left over only begins: its line across the picture would say more than there is."""
    left = _end(x + band.left, top - band.left_top, band.left_height)
    right = _end(x + band.right, top - band.right_top, band.right_height)
    if band.band.target == NodeKind.LEFT and max(band.left_height, band.right_height) < _LEAST_HATCHED:
        if first:
            middle = (left.top + left.bottom) / 2
            pen.dashes(left.x, middle, min(_STUB, right.x - left.x))
    elif band.band.target == NodeKind.LEFT:
        pen.hatched_ribbon(left, right)
    else:
        pen.ribbon(left, right, grey=_BAND)


def _end(x: float, top: float, height: float) -> End:
    return End(x, top, top - max(_THINNEST, height))


def _draw_bar(pen: Pen, one: PlacedNode, x: float, top: float) -> None:
    left, upper = x + one.left, top - one.top
    if one.node.kind is NodeKind.LEFT:
        pen.hatched_ribbon(_end(left, upper, one.height), _end(left + _BAR, upper, one.height))
        return
    pen.bar(left, upper, _BAR, one.height, grey=_DISH if one.node.kind is NodeKind.DISH else _FORM)
    if one.node.short and one.height > 2 * _BAR:
        middle = upper - one.height / 2
        tear = (
            (left - 1, middle - 5),
            (left + _BAR + 1, middle + 1),
            (left + _BAR + 1, middle + 5),
            (left - 1, middle - 1),
        )
        pen.wedge(tear, solid=True, grey=1.0)


def shown_nodes(flow: Flow) -> Mapping[str, Node]:
    """The nodes by their keys."""
    return {node.key: node for node in flow.nodes}
