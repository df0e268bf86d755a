"""The rows of the timeline: the camera on top, then by who and what is at work, or dish by dish. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby
from typing import TYPE_CHECKING

from binder.desktop.day_page.bars import Bar, Bars, in_order
from binder.figures.temperature_text import temperature_short
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from binder.figures.day_kitchen import DayKitchen
    from binder.kitchen.binder import Binder

Minutes = tuple[int, int]
"""From a minute to another."""

_SHORT = 4 * 60
"""Minutes; what stays fit for longer does not press."""


class Rows(StrEnum):
    """What the rows under the camera are."""

    RESOURCES = "resources"
    DISHES = "dishes"


@dataclass(frozen=True)
class Piece:
    """What one lane shows of a bar: hands drawn solid, a wait hatched, the time it stays fit as an open tail."""

    bar: Bar
    hands: Minutes | None = None
    wait: Minutes | None = None
    fit: Minutes | None = None

    @property
    def start(self) -> int:
        """Its first minute."""
        return min(span[0] for span in self.spans)

    @property
    def end(self) -> int:
        """The minute up to which nothing else can stand on its lane."""
        return max(span[1] for span in (self.hands, self.wait) if span) if self.hands or self.wait else self.start + 1

    @property
    def spans(self) -> tuple[Minutes, ...]:
        """Its parts from left to right."""
        return tuple(span for span in (self.hands, self.wait, self.fit) if span is not None)


@dataclass(frozen=True)
class Level:
    """What an oven is at from a minute to another, in words."""

    minutes: Minutes
    text: str


@dataclass(frozen=True)
class DishOnCamera:
    """The time from the first to the last the camera sees of a dish."""

    minutes: Minutes
    text: str


@dataclass(frozen=True)
class Lane:
    """One line of the timeline: its pieces from left to right, none over another."""

    title: str
    pieces: tuple[Piece, ...]


@dataclass(frozen=True)
class Group:
    """Lanes that belong together. `heading` stands on a line of its own, where there is one."""

    key: str
    lanes: tuple[Lane, ...]
    heading: str = ""
    levels: tuple[Level, ...] = ()
    dishes: tuple[DishOnCamera, ...] = ()


def groups_of(binder: Binder, bars: Bars, kitchen: DayKitchen, rows: Rows) -> tuple[Group, ...]:
    """The rows of a day from the top."""
    camera = _camera(binder, bars)
    rest = _by_dish(binder, bars) if rows is Rows.DISHES else _by_resource(binder, bars, kitchen)
    return tuple(group for group in (camera, *rest) if group.lanes)


def _camera(binder: Binder, bars: Bars) -> Group:
    filmed = [bar for bar in in_order(bars) if bar.filmed]
    pieces = [Piece(bar, hands=(bar.start, bar.end)) for bar in filmed]
    dishes = [
        DishOnCamera((spans[0].start, max(bar.end for bar in spans)), _dish_title(binder, dish))
        for dish, group in groupby(filmed, key=lambda bar: bar.activity.dish)
        if dish is not None and (spans := list(group))
    ]
    return Group("camera", _lanes(pieces, _("camera")), dishes=tuple(dishes))


def _dish_title(binder: Binder, dish: str) -> str:
    record = binder.dishes[dish]
    return f"{record.position + 1} {dish_name(binder, record)}"


def _whole(bar: Bar) -> Piece:
    return Piece(bar, *_hands_wait_fit(bar))


def _hands_wait_fit(bar: Bar) -> tuple[Minutes | None, Minutes | None, Minutes | None]:
    hands = (bar.start, bar.end) if bar.end > bar.start else None
    wait = (bar.end, bar.ready) if bar.ready > bar.end else None
    fresh = bar.fresh_until if bar.fresh_until is not None else bar.ready
    fit = (bar.ready, fresh) if 0 < fresh - bar.ready <= _SHORT else None
    if hands is None and wait is None and fit is None:
        hands = (bar.start, bar.end)
    return hands, wait, fit


# By dish


def _by_dish(binder: Binder, bars: Bars) -> Iterator[Group]:
    """Each dish with its builds, after what is made for several of them."""
    ordered = in_order(bars)
    base = [_whole(bar) for bar in ordered if bar.activity.conversion is not None]
    yield Group("base", _lanes(base, _("conversions")), _("The base"))
    ahead: dict[str, list[Piece]] = {}
    for bar in ordered:
        step = binder.steps.get(bar.activity.step or "")
        if bar.activity.dish is None and step is not None:
            ahead.setdefault(step.recipe, []).append(_whole(bar))
    lanes = [lane for recipe, pieces in ahead.items() for lane in _lanes(pieces, binder.recipes[recipe].name)]
    yield Group("ahead", tuple(lanes), _("Made ahead"))
    dishes = sorted({bar.activity.dish for bar in ordered if bar.activity.dish}, key=lambda key: _position(binder, key))
    for dish in dishes:
        yield _dish(binder, dish, [bar for bar in ordered if bar.activity.dish == dish])


def _position(binder: Binder, dish: str) -> int:
    return binder.dishes[dish].position


def _dish(binder: Binder, dish: str, bars: Sequence[Bar]) -> Group:
    """A lane a build; the closing words stand with the build that is filmed last."""
    builds = sorted({bar.activity.build for bar in bars if bar.activity.build}, key=lambda key: _place(binder, key))
    filmed = [bar.activity.build for bar in bars if bar.filmed and bar.activity.build]
    lanes: list[Lane] = []
    for build in builds or [""]:
        of_build = {build, None} if build in filmed[-1:] or not filmed else {build}
        pieces = [_whole(bar) for bar in bars if bar.activity.build in of_build]
        lanes += _lanes(pieces, _build_title(binder, build))
    return Group(f"dish {dish}", tuple(lanes), _dish_title(binder, dish))


def _build_title(binder: Binder, build: str) -> str:
    record = binder.builds.get(build)
    if record is None:
        return _("close")
    last = binder.steps.get(record.up_to or "")
    kind = _(record.kind.value)
    return kind if last is None else _("{build} to step {number}").format(build=kind, number=last.position + 1)


def _place(binder: Binder, build: str) -> tuple[int, str]:
    return binder.builds[build].position, build


# By resource


def _by_resource(binder: Binder, bars: Bars, kitchen: DayKitchen) -> Iterator[Group]:
    """Each person, each appliance, and what stands by itself."""
    ordered = in_order(bars)
    for person in kitchen.people:
        does = [Piece(bar, hands=(bar.start, bar.end)) for bar in ordered if person.id in bar.people]
        yield Group(f"person {person.id}", _lanes(does, person.name) or (Lane(person.name, ()),))
    for appliance in kitchen.appliances:
        held = list(_held(ordered, kitchen, appliance.id))
        levels = tuple(_levels(binder, held)) if appliance.kind is ApplianceKind.OVEN else ()
        yield Group(appliance.id, _lanes(held, appliance.name), levels=levels)
    yield Group("stands", _lanes([piece for bar in ordered for piece in _alone(bar)], _("stands and waits")))


def _held(bars: Iterable[Bar], kitchen: DayKitchen, appliance: str) -> Iterator[Piece]:
    """What an appliance holds, with hands on it or without."""
    for bar in bars:
        with_hands = any(_is(kitchen, key, appliance) for key in bar.uses)
        waiting = any(_is(kitchen, key, appliance) for key in bar.stands)
        hands, wait, fit = _hands_wait_fit(bar)
        if with_hands or (waiting and wait is not None):
            yield Piece(bar, hands if with_hands else None, wait if waiting else None, fit if waiting else None)


def _is(kitchen: DayKitchen, resource: str, appliance: str) -> bool:
    found = kitchen.appliance(resource)
    return found is not None and found.id == appliance


def _alone(bar: Bar) -> Iterator[Piece]:
    """What waits outside of all appliances, or is fit for so short a time that it matters."""
    _hands, wait, fit = _hands_wait_fit(bar)
    if not bar.stands and (wait is not None or fit is not None):
        yield Piece(bar, None, wait, fit)


def _levels(binder: Binder, held: Sequence[Piece]) -> Iterator[Level]:
    """What an oven is at, from the first thing that needs it so to the last; near temperatures stand together."""
    runs: list[tuple[int, int, set[int]]] = []
    for piece in sorted((piece for piece in held if piece.bar.degrees), key=lambda piece: piece.start):
        degrees = piece.bar.degrees
        if runs and (piece.start < runs[-1][1] or runs[-1][2] == {degrees}):
            start, end, together = runs[-1]
            runs[-1] = (start, max(end, piece.end), together | {degrees})
        else:
            runs.append((piece.start, piece.end, {degrees}))
    for start, end, together in runs:
        text = " – ".join(
            temperature_short(binder, float(degrees)) for degrees in sorted({min(together), max(together)})
        )
        yield Level((start, end), text)


def _lanes(pieces: Sequence[Piece], title: str) -> tuple[Lane, ...]:
    """Pieces on as few lanes as hold them, the earliest first."""
    lanes: list[list[Piece]] = []
    for piece in sorted(pieces, key=lambda one: (one.start, one.bar.key)):
        free = next((lane for lane in lanes if lane[-1].end <= piece.start), None)
        if free is None:
            lanes.append([piece])
        else:
            free.append(piece)
    return tuple(Lane(title if not at else "", tuple(lane)) for at, lane in enumerate(lanes))
