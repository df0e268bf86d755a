"""A dish over as many cards as it takes. A step stays with what stands ready for it; nothing is cut or runs over.

A card is filled from the top, group by group: a group is a step and its containers. A group that does not fit goes to
the next card whole. Only one that is taller than a whole card is parted, between containers and, where a single step is
taller than a card, between its lines of text.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Space, Stack, stacked
from binder.paper.block import ROUNDING, Block, text
from binder.paper.card_band import CardBand
from binder.paper.card_builds import builds_block, what_it_makes
from binder.paper.card_containers import containers_block
from binder.paper.card_foot import CardFoot
from binder.paper.card_frame import PAD, CardSpace, Frame
from binder.paper.card_group import Card, Group, Kept, Strip, by_hazard, headed, parted
from binder.paper.card_number import StepNumber
from binder.paper.card_safety import deference_block, doneness_block
from binder.paper.card_step import StepOf, step_block
from binder.paper.page import Page
from binder.paper.print_choices import Look

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from binder.figures.card import CardStep, StationCard
    from binder.kitchen.binder import Binder
    from binder.paper.block import Text
    from binder.paper.card_type import CardType
    from binder.paper.paper_size import PaperSize

_BETWEEN_GROUPS = 3.0
"""Points of white below the containers of a step."""

_LARGEST_BAND = 0.33
"""Part of a card's height that a band with the builds in it may take."""


@dataclass(frozen=True)
class Way:
    """A way to lay cards out: with builds one by one under the name, not above the foot; closer, with less white."""

    builds_above: bool = False
    close: bool = False


USUAL = Way()


class CardLayout:
    """Lays one dish out on cards of one paper."""

    def __init__(
        self,
        binder: Binder,
        card: StationCard,
        *,
        label: str,
        paper: PaperSize,
        style: CardType,
        makes: Text | None = None,
        whose: Mapping[str, StepOf] | None = None,
        way: Way = USUAL,
    ) -> None:
        """`makes` stands under the name in place of portions and builds; `whose` has steps of several dishes by id."""
        self._binder, self._card, self._label, self._style = binder, card, label, style
        self._whose, self._way = whose or {}, way
        self._space = CardSpace(paper, style.metres, style.look)
        makes = makes or what_it_makes(binder, card, style.near, build_by_build=way.builds_above)
        self._band = CardBand(card.name, label, makes, self._space, style)
        self._foot = CardFoot(card, binder.settings.allergens, self._space, style.near)
        self._cards = [Card()]

    def pages(self) -> list[Page]:
        """The cards of the dish, the first with the dish's entry in the outline."""
        for block in self._above():
            self._add_above(block)
        before: CardStep | None = None
        for found in self._card.steps:
            for group in self._groups(found, before):
                self._add_group(group, self._number(found))
            before = found
        self._add_doneness()
        for block in self._below():
            self._add_below(block)
        return [self._page(card, at) for at, card in enumerate(self._cards, start=1)]

    @property
    def ends_without_steps(self) -> bool:
        """Whether the last of several cards has nothing to do on it, only what stands above its foot."""
        return len(self._cards) > 1 and not self._cards[-1].strips

    @property
    def has_a_small_band(self) -> bool:
        """Whether the band leaves most of the first card to what is done."""
        return self._band.height(first=True) <= _LARGEST_BAND * self._space.tall

    # What flows.

    def _above(self) -> Iterator[Block]:
        if self._band.rest_of_name:
            yield self._band.rest_of_name
        if self._card.missing:
            says = _("Amounts are for one batch. {reason}").format(reason=self._card.missing.says)
            yield text(says, self._style.strong)
        if self._card.notes:
            yield text(self._card.notes, self._style.plain)
        if not self._card.steps:
            yield text(_("The recipe has no steps yet."), self._style.plain)

    def _below(self) -> Iterator[Block]:
        builds = builds_block(self._binder, self._card, self._style.near)
        if builds and not self._way.builds_above:
            yield Stack((builds, Space(PAD)))
        if self._foot.flows_on:
            yield self._foot.flows_on

    def _number(self, found: CardStep) -> str:
        whose = self._whose.get(found.step.id)
        return whose.number if whose else str(found.number)

    def _groups(self, found: CardStep, before: CardStep | None) -> list[Group]:
        """A step with its containers; on a card of one column in two groups where one card cannot hold both."""
        solid = self._style.look is Look.ON_CAMERA
        number = StepNumber(self._number(found), self._style.strong, to_end=True, solid=solid)
        going_on = Card(first=False, cautions=by_hazard(found.cautions))
        whole = self._room(going_on) - 2 * number.height(self._space.inner)
        rows: list[Block] = [Kept(containers_block(row, self._style), whole) for row in found.containers]
        if rows:
            rows[0] = Kept(Stack((number, rows[0])), whole)
        left = stacked(*rows, Space(0 if self._way.close else _BETWEEN_GROUPS)) if rows else None
        whose = self._whose.get(found.step.id) or StepOf(str(found.number))
        words = step_block(self._binder, found, before, self._style, whose, close=self._way.close)
        step = Kept(words, whole, numbered=True)
        if self._space.two_columns or left is None:
            return [Group(left, step, found.cautions)]
        both = Group(None, Stack((left, step)), found.cautions)
        if self._fits(Card(first=False), both):
            return [both]
        return [Group(None, left, ()), Group(None, step, found.cautions)]

    # How cards are filled.

    def _room(self, card: Card) -> float:
        """Points for the columns of a card."""
        across = sum(block.height(self._space.inner) for block in (*card.above, *card.below))
        ends = self._band.height(first=card.first) + self._foot.height(card.cautions, self._said(card))
        return self._space.tall - ends - across - 2 * PAD

    def _said(self, card: Card) -> dict[str, int]:
        """The hazards whose cautions stand in full on an earlier card, each with the first such card's number."""
        at = next((at for at, one in enumerate(self._cards) if one is card), len(self._cards) - 1)
        said: dict[str, int] = {}
        for number, earlier in enumerate(self._cards[:at], start=1):
            said = {**dict.fromkeys(earlier.cautions, number), **said}
        return said

    def _strip_height(self, strip: Strip) -> float:
        """Points that the taller column of a strip takes."""
        _x, right = self._space.right_column(left_is_empty=not strip.left)
        left = sum(block.height(self._space.left) for block in strip.left)
        return max(left, sum(block.height(right) for block in strip.right))

    def _room_left(self, card: Card) -> float:
        return self._room(card) - sum(self._strip_height(strip) for strip in card.strips)

    def _holding(self, card: Card, group: Group) -> Card:
        """The card with a group more on it, in whichever way leaves most room."""
        ways = card.holding(group)
        return max(ways, key=self._room_left) if self._space.two_columns else ways[0]

    def _fits(self, card: Card, group: Group) -> bool:
        return self._room_left(self._holding(card, group)) >= -ROUNDING

    def _add_group(self, group: Group, number: str) -> None:
        if not self._fits(self._cards[-1], group) and not self._cards[-1].empty:
            self._next_card()
        if group.cautions and self._foot.too_large(by_hazard(group.cautions), self._said(self._cards[-1])):
            group = self._with_cautions_in_the_step(group)
        while not self._fits(self._cards[-1], group):
            placed, left_over = self._parted(group, number)
            if placed is None and not self._cards[-1].first:
                break  # a card too small for one line: no paper of the table is
            if placed is not None:
                self._put(placed)
            group = left_over
            self._next_card()
        self._put(group)

    def _parted(self, group: Group, number: str) -> tuple[Group | None, Group]:
        """What of a group fits on the open card, and what goes on on the next."""
        room = self._room(self._cards[-1].holding(Group(None, None, group.cautions))[0])
        left, left_over = parted(group.left, self._space.left, room)
        _x, wide = self._space.right_column(left_is_empty=group.left is None)
        right, right_over = parted(group.right, wide, room)
        if left is None and right is None:
            return None, group
        head = StepNumber(_("{number} continued").format(number=number), self._style.strong, to_end=True)
        rest = Group(headed(head, left_over), headed(head, right_over), group.cautions)
        return Group(left, right, group.cautions), rest

    def _with_cautions_in_the_step(self, group: Group) -> Group:
        """Cautions that would fill the foot follow their step instead, and flow on with it."""
        most = self._room(Card(first=False)) / 2
        *cautions, last = (self._foot.caution(caution) for caution in group.cautions)
        ends = Stack((last, deference_block(self._style.near)))
        flowing = [group.right] if group.right else []
        return Group(group.left, stacked(*flowing, *(Kept(one, most) for one in (*cautions, ends))), ())

    def _add_above(self, block: Block) -> None:
        """Add a block across both columns, over as many cards as it takes."""
        rest: Block | None = block
        while rest is not None:
            first, rest = self._across(rest)
            self._cards[-1].above += [first] if first else []
            if rest is not None:
                self._next_card()

    def _add_doneness(self) -> None:
        """Safe temperatures: above cautions, whose deference then serves for both, or else with their own."""
        doneness = doneness_block(self._binder, self._card.doneness, self._style.near)
        if doneness is None:
            return
        tall = doneness.height(self._space.inner) + PAD
        cautioned = next((card for card in self._cards if card.cautions and tall <= self._room_left(card)), None)
        if cautioned:
            cautioned.below.append(Stack((doneness, Space(PAD))))
        else:
            self._add_below(Stack((doneness, deference_block(self._style.near), Space(PAD))))

    def _add_below(self, block: Block) -> None:
        """Add a block above the foot of the first card that has room for it, or of as many more as it takes."""
        tall = block.height(self._space.inner)
        roomy = next((card for card in self._cards if tall <= self._room_left(card)), None)
        if roomy:
            roomy.below.append(block)
            return
        rest: Block | None = block
        while rest is not None:
            first, rest = self._across(rest)
            self._cards[-1].below += [first] if first else []
            if rest is not None:
                self._next_card()

    def _across(self, block: Block) -> tuple[Block | None, Block | None]:
        """What of a block fits on the open card: all of it or, unless it is taller than a card, nothing."""
        card = self._cards[-1]
        room, tall = self._room_left(card), block.height(self._space.inner)
        if tall <= room:
            return block, None
        if tall <= self._room(Card(first=False)) and not card.empty:
            return None, block
        first, rest = block.parted(self._space.inner, room)
        stuck = first is None and card.empty and not card.first
        return (block, None) if stuck else (first, rest)  # a card too small for one line: no paper of the table is

    def _next_card(self) -> None:
        self._cards.append(Card(first=False))

    def _put(self, group: Group) -> None:
        self._cards[-1] = self._holding(self._cards[-1], group)

    # The page.

    def _page(self, card: Card, at: int) -> Page:
        space, count, said = self._space, len(self._cards), self._said(card)
        page = Page(outline=f"{self._label} {self._card.name}".strip() if at == 1 else "")
        page.note = _("continued") if at < count else ""
        band, foot = self._band.height(first=card.first), self._foot.height(card.cautions, said)
        page.put(self._band.block(first=card.first, at=at, count=count), space.x, space.top - PAD, space.inner)
        y = _put_down(page, card.above, space.x, space.top - band - PAD, space.inner)
        end = space.top - space.tall + foot + PAD + sum(block.height(space.inner) for block in card.below)
        columns: list[tuple[float, float]] = []
        for strip in card.strips:
            right_x, right = space.right_column(left_is_empty=not strip.left)
            lower = _put_down(page, strip.left, space.x, y, space.left)
            lower = min(lower, _put_down(page, strip.right, right_x, y, right))
            columns += [(space.top - y, space.top - lower)] if strip.left else []
            y = lower
        _put_down(page, card.below, space.x, end, space.inner)
        page.put(self._foot.block(card.cautions, said), space.x, space.top - space.tall + foot - PAD, space.inner)
        between = space.between if space.two_columns else None
        frame, around = Frame(space.tall, band, foot, between, tuple(columns), space.around), space.around
        page.put(frame, space.edge - around, space.top + around, space.wide + 2 * around)
        return page


def _put_down(page: Page, blocks: Sequence[Block], x: float, top: float, width: float) -> float:
    """Place blocks one below the other; returns the y of the last one's lower edge."""
    for block in blocks:
        top = page.put(block, x, top, width)
    return top
