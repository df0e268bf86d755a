"""Where the nodes and bands of the flow are drawn, in units of the page or the window.

Heights are in proportion to weight. A band that passes a column is led between its bars, never behind one.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from binder.figures.flow import Band, Flow, Node


_FURTHEST = 1.5
"""So many gaps further apart than they must be stand the bars of a column that has room."""

_AIR_OF_PASSING = 0.08


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
    """A piece of a band, from one column to the next: left and right edge, and top and height at each.

    From the right edge of one bar, or where the piece before it ended, to the left edge of another, or to where the
    next piece of the same `band` begins.
    """

    band: Band
    left: float
    left_top: float
    left_height: float
    right: float
    right_top: float
    right_height: float


@dataclass(frozen=True)
class PlacedFlow:
    """The whole picture. The pieces of a band stand from left to right."""

    nodes: tuple[PlacedNode, ...]
    bands: tuple[PlacedBand, ...]


def place_flow(flow: Flow, *, width: float, height: float, bar: float, gap: float, least: float) -> PlacedFlow:
    """Place a flow in `width` by `height`: bars `bar` wide and no lower than `least`, `gap` or more between them.

    Between a bar and a band that passes it there is half the gap or more.
    """
    layout = _Layout(flow, width, height, bar, gap, least)
    nodes = [
        PlacedNode(stop.node, layout.left_of(stop), layout.top[stop.key], bar, layout.tall(stop))
        for column in layout.columns
        for stop in column
        if stop.node is not None
    ]
    return PlacedFlow(tuple(nodes), tuple(layout.bands()))


@dataclass(frozen=True)
class _Stop:
    """A node in its column, or (`node` None) a band that passes the column; grams tall."""

    key: str
    column: int
    grams: float
    node: Node | None = None


@dataclass(frozen=True)
class _Piece:
    """A band from one stop to another, in grams."""

    band: Band
    source: str
    target: str
    leaves: float
    arrives: float


class _Layout:
    def __init__(self, flow: Flow, width: float, height: float, bar: float, gap: float, least: float) -> None:
        self._width, self._height, self._bar, self._gap, self._least = width, height, bar, gap, least
        through = grams_through(flow)
        stops = [_Stop(node.key, node.column, through[node.key], node) for node in flow.nodes]
        by_key = {node.key: node for node in flow.nodes}
        self._pieces: list[_Piece] = []
        for number, band in enumerate(flow.bands):
            if band.source in by_key and band.target in by_key:
                ends = (by_key[band.source], by_key[band.target])
                passed = _passed(band, number, *ends)
                stops += passed
                self._pieces += _pieces(band, passed)
        self.columns = [[stop for stop in stops if stop.column == at] for at in range(flow.columns)]
        self._scale = self._widest_scale()
        self._ranks = self._ranks_of()
        self.top: dict[str, float] = {}
        for column in self.columns:
            column.sort(key=self._order)
            self._stack(column)

    def left_of(self, stop: _Stop) -> float:
        """The left edge of a stop's column."""
        return stop.column * (self._width - self._bar) / max(1, len(self.columns) - 1)

    def tall(self, stop: _Stop) -> float:
        """How high a stop is."""
        scaled = self._scale * stop.grams
        return scaled if stop.node is None else max(self._least, scaled)

    def _between(self, upper: _Stop, lower: _Stop) -> float:
        bars = (upper.node is not None) + (lower.node is not None)
        return self._gap * bars / 2

    def _gaps(self, column: Sequence[_Stop]) -> float:
        return sum(self._between(upper, lower) for upper, lower in itertools.pairwise(column))

    def _widest_scale(self) -> float:
        """The height of a gram, so that the column with least room still fits.

        It is found by halving, because bars that are as low as they may be do not shrink further. Gaps are reckoned as
        for the worst order of bars and passing bands.
        """
        filled = [column for column in self.columns if column]

        def fits(scale: float) -> bool:
            self._scale = scale
            return all(sum(map(self.tall, column)) + self._most_gaps(column) <= self._height for column in filled)

        most = max((sum(stop.grams for stop in column) for column in filled), default=0.0)
        low, high = 0.0, self._height / most if most else 0.0
        if fits(high):
            return high
        for _halving in range(40):
            middle = (low + high) / 2
            low, high = (middle, high) if fits(middle) else (low, middle)
        return low

    def _most_gaps(self, column: Sequence[_Stop]) -> float:
        bars = sum(stop.node is not None for stop in column)
        passing = len(column) - bars
        return self._gap * (bars - 1 + min(1, passing)) if bars else 0.0

    def _ranks_of(self) -> dict[str, float]:
        """Where in the last column what passes a stop ends, on the average: 0 at its top, 1 at its foot."""
        last = self.columns[-1] if self.columns else []
        ranks = {stop.key: at / max(1, len(last) - 1) for at, stop in enumerate(last)}
        onward: dict[str, list[_Piece]] = {}
        for piece in self._pieces:
            onward.setdefault(piece.source, []).append(piece)
        for column in reversed(self.columns[:-1]):
            for stop in column:
                pieces = [piece for piece in onward.get(stop.key, ()) if piece.target in ranks]
                grams = sum(piece.leaves for piece in pieces)
                if grams > 0:
                    ranks[stop.key] = sum(piece.leaves * ranks[piece.target] for piece in pieces) / grams
        return ranks

    def _order(self, stop: _Stop) -> float:
        """Bars stand near what feeds them and near what they feed; the last column keeps its order."""
        rank = self._ranks.get(stop.key, 1.0)
        if stop.column == len(self.columns) - 1:
            return rank
        feeding = [piece for piece in self._pieces if piece.target == stop.key and piece.source in self.top]
        if not feeding:
            return rank
        return rank + sum(self.top[piece.source] for piece in feeding) / len(feeding) / self._height

    def _stack(self, column: Sequence[_Stop]) -> None:
        """In the middle of the height, a column that has room to spare somewhat further apart."""
        spare = max(0.0, self._height - sum(map(self.tall, column)) - self._gaps(column))
        apart = min(spare / (len(column) + 1), self._gap * _FURTHEST)
        top = (spare - apart * self._airs(column)) / 2
        for at, stop in enumerate(column):
            if at:
                top += self._between(column[at - 1], stop) + apart * self._air(column[at - 1], stop)
            self.top[stop.key] = top
            top += self.tall(stop)

    def _airs(self, column: Sequence[_Stop]) -> float:
        return sum(self._air(upper, lower) for upper, lower in itertools.pairwise(column))

    @staticmethod
    def _air(upper: _Stop, lower: _Stop) -> float:
        """How much of the room to spare goes between two stops: little between bands that pass together."""
        return 1.0 if upper.node is not None or lower.node is not None else _AIR_OF_PASSING

    def bands(self) -> Iterator[PlacedBand]:
        """Pieces in the order of the stops they lead to, and at a stop in the order of those they come from."""
        by_key = {stop.key: stop for column in self.columns for stop in column}
        arriving, leaving = dict.fromkeys(by_key, 0.0), dict.fromkeys(by_key, 0.0)
        ends: dict[tuple[str, str, int], float] = {}
        for piece in sorted(self._pieces, key=lambda one: self.top[one.source]):
            ends[_key(piece)] = self.top[piece.target] + arriving[piece.target]
            arriving[piece.target] += piece.arrives * self._scale
        starts: dict[tuple[str, str, int], float] = {}
        for piece in sorted(self._pieces, key=lambda one: self.top[one.target]):
            starts[_key(piece)] = self.top[piece.source] + leaving[piece.source]
            leaving[piece.source] += piece.leaves * self._scale
        for piece in self._pieces:
            source, target = by_key[piece.source], by_key[piece.target]
            yield PlacedBand(
                piece.band,
                self.left_of(source) + (self._bar if source.node is not None else 0.0),
                starts[_key(piece)],
                piece.leaves * self._scale,
                self.left_of(target),
                ends[_key(piece)],
                piece.arrives * self._scale,
            )


def _key(piece: _Piece) -> tuple[str, str, int]:
    return (piece.source, piece.target, id(piece.band))


def _passed(band: Band, number: int, source: Node, target: Node) -> list[_Stop]:
    """The columns that a band passes between its ends; its number tells it from another of its name and ends."""
    return [
        _Stop(f"{band.source}>{band.target}>{number}@{column}", column, band.leaves)
        for column in range(source.column + 1, target.column)
    ]


def _pieces(band: Band, passed: Sequence[_Stop]) -> Iterator[_Piece]:
    """A band from stop to stop; its weight changes in the last piece, where it is made into something else."""
    keys = [band.source, *(stop.key for stop in passed), band.target]
    for at, (source, target) in enumerate(itertools.pairwise(keys)):
        arrives = band.arrives if at == len(keys) - 2 else band.leaves
        yield _Piece(band, source, target, band.leaves, arrives)


def grams_through(flow: Flow) -> Mapping[str, float]:
    """Grams that the bar of each node must be tall enough for: the most of what arrives, what leaves, what it holds."""
    arrives: dict[str, float] = {}
    leaves: dict[str, float] = {}
    for band in flow.bands:
        arrives[band.target] = arrives.get(band.target, 0.0) + band.arrives
        leaves[band.source] = leaves.get(band.source, 0.0) + band.leaves
    return {node.key: max(arrives.get(node.key, 0.0), leaves.get(node.key, 0.0), node.grams) for node in flow.nodes}
