"""What a card is filled with: a step with its containers, kept together and only parted where it must be."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from binder.paper.arrangement import Stack
from binder.paper.block import ROUNDING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.reference import Caution
    from binder.paper.block import Block
    from binder.paper.pen import Pen


@dataclass
class Kept:
    """A block that is not parted unless it is taller than `whole` points. `numbered`: it begins with its number."""

    block: Block
    whole: float
    numbered: bool = False

    def height(self, width: float) -> float:
        """As its block."""
        return self.block.height(width)

    def rise(self, width: float) -> float:
        """As its block."""
        return self.block.rise(width)

    def parted(self, width: float, room: float) -> tuple[Block | None, Block | None]:
        """Over whole to the next card, if it fits there."""
        return (None, self) if self.block.height(width) <= self.whole else self.block.parted(width, room)

    def draw(self, pen: Pen, x: float, top: float, width: float) -> None:
        """As its block."""
        self.block.draw(pen, x, top, width)


@dataclass(frozen=True)
class Group:
    """A step with its containers: what stands left, what stands right, and the cautions it calls for."""

    left: Block | None
    right: Block | None
    cautions: tuple[Caution, ...]


@dataclass(frozen=True)
class Strip:
    """A strip of a card: what stands ready at the left and steps at the right, or steps across where nothing does."""

    left: tuple[Block, ...] = ()
    right: tuple[Block, ...] = ()

    def with_group(self, group: Group) -> Strip:
        """The strip with a group more in it."""
        left = (*self.left, *([group.left] if group.left else []))
        return Strip(left, (*self.right, *([group.right] if group.right else [])))


@dataclass
class Card:
    """A card being filled, strip below strip. `above` and `below` run across both columns."""

    above: list[Block] = field(default_factory=list)
    strips: tuple[Strip, ...] = ()
    below: list[Block] = field(default_factory=list)
    cautions: dict[str, Caution] = field(default_factory=dict)
    first: bool = True

    @property
    def empty(self) -> bool:
        """Whether nothing stands on it yet."""
        return not (self.above or self.strips or self.below)

    def holding(self, group: Group) -> tuple[Card, ...]:
        """The card with a group more on it, in its last strip and in a new one."""
        last, before = self.strips[-1:], self.strips[:-1]
        ways = [(*self.strips, Strip().with_group(group))]
        ways = [*((*before, strip.with_group(group)) for strip in last), *ways]
        cautions = self.cautions | by_hazard(group.cautions)
        return tuple(replace(self, strips=strips, cautions=cautions) for strips in ways)


def by_hazard(cautions: Iterable[Caution]) -> dict[str, Caution]:
    """Cautions, each once."""
    return {caution.hazard: caution for caution in cautions}


def parted(block: Block | None, width: float, room: float) -> tuple[Block | None, Block | None]:
    """What of a block fits in the room, and what is left of it."""
    if block is None or block.height(width) <= room + ROUNDING:
        return block, None
    return block.parted(width, room)


def headed(head: Block, rest: Block | None) -> Block | None:
    """What goes on on the next card says so, unless it begins there, with its own number."""
    return rest if rest is None or (isinstance(rest, Kept) and rest.numbered) else Stack((head, rest))
