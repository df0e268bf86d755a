"""Lists and sheets over as many pages as they take: the title once, a section's head on every page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.wording import _
from binder.paper.arrangement import Space, Stack, Tagged, stacked
from binder.paper.block import Block, text
from binder.paper.page import Page, foot_height
from binder.paper.structure import HEADING, SUBHEADING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.list_type import ListType
    from binder.paper.paper_size import PaperSize
    from binder.paper.table import Table

_ABOVE_SECTION = 8.0
_ABOVE_NAME = 13.0
"""Points of white above a section, and above one with a name of its own."""

_LINES_OF_RUNNING_HEAD = 1

_ENDING = 2
_END_OF_PAGE = 0.3
"""Rows that stay together at the end of a table with its notes, and the part of a page that they may take for it."""


def _going_on(name: str) -> str:
    return _("{section}, continued").format(section=name) if name else ""


@dataclass
class Section:
    """A part of a sheet: its name, what stands before its table and after it.

    `name` is empty for none, or where the table has one; `called` is its name where it goes on on another page, or the
    name of the whole that it goes on with. One with an `outline` has an entry in the outline of the document and begins
    on a page of its own.
    """

    name: str = ""
    called: str = ""
    before: Sequence[Block] = ()
    table: Table | None = None
    after: Sequence[Block] = ()
    outline: str = ""


@dataclass
class Sheet:
    """A list or a sheet of figures: its title, what stands under the title, and its sections.

    Where it does not `shows_title`, the title only heads the pages that it goes on on.
    """

    title: str
    under_title: Sequence[Block]
    sections: Sequence[Section]
    style: ListType
    shows_title: bool = True


class SheetLayout:
    """Lays a sheet out on pages of one paper."""

    def __init__(self, sheet: Sheet, paper: PaperSize) -> None:
        self.sheet, self.paper = sheet, paper
        width, height = paper.points
        self.x, self.width = paper.margin, width - 2 * paper.margin
        self.top, self.bottom = height - paper.margin, paper.margin + foot_height() + 3
        self.done: list[Page] = []
        self.page, self.y = Page(outline=sheet.title), self.top

    def pages(self) -> list[Page]:
        """All pages, the first with the sheet's entry in the outline."""
        title = Tagged(text(self.sheet.title, self.sheet.style.title), HEADING)
        for block in (*([title] if self.sheet.shows_title else []), *self.sheet.under_title):
            self._flow(block)
        for at, section in enumerate(self.sheet.sections):
            if section.outline:
                self._begin_part(section.outline, first=at == 0)
            self._section(section)
        return [*self.done, self.page]

    def _begin_part(self, outline: str, *, first: bool) -> None:
        if first:
            self.page.outline = outline
        else:
            self.done.append(self.page)
            self.page, self.y, self._placed_at_begin = Page(outline=outline), self.top, 0

    def _section(self, section: Section) -> None:
        """A section's head stays with its first row."""
        table, name = section.table, section.name
        head = table.head(self.width) if table else None
        rows = table.blocks(self.width) if table else []
        self._called = "" if name else section.called
        opening: list[Block] = [Space(_ABOVE_NAME if name else _ABOVE_SECTION)]
        opening += [Tagged(text(name, self.sheet.style.section), SUBHEADING)] if name else []
        before = list(section.before)
        if name and before:
            opening.append(before.pop(0))
        if not before:
            opening += [*([head] if head else []), *rows[:1]]
        self._together(opening)
        last = before[-1:] if table else []
        for block in before[: len(before) - len(last)]:
            self._flow(block)
        again = self._again(section)
        if before:
            self._together([*last, *([head] if head else []), *rows[:1]])
        ending = _ENDING if len(rows) > _ENDING + 1 else len(rows) - 1
        for block in rows[1 : len(rows) - ending]:
            self._flow(block, again)
        self._end_together(rows[len(rows) - ending :] if ending > 0 else [], section.after, again)

    def _end_together(self, rows: Sequence[Block], after: Sequence[Block], again: Block | None) -> None:
        """The last rows and what stands below them: no single row and no note goes over alone, where they are short."""
        ends = [*rows, *after] if self._tall([*rows, *after]) <= self._short_end else rows
        if ends and self._tall(ends) > self.y - self.bottom and self._tall(ends) <= self._short_end:
            self._next_page(again if rows else None)
        for block in rows:
            self._flow(block, again)
        for block in after:
            self._flow(block)

    def _tall(self, blocks: Sequence[Block]) -> float:
        return sum(block.height(self.width) for block in blocks)

    @property
    def _short_end(self) -> float:
        return (self.top - self.bottom) * _END_OF_PAGE

    def _again(self, section: Section) -> Block | None:
        """What stands above the rows of a section on the next pages."""
        table, called = section.table, (section.called or section.name) if section.name else ""
        head = table.head(self.width, going_on=_going_on(table.name)) if table else None
        above = [text(_going_on(called), self.sheet.style.strong)] if called else []
        return stacked(*above, *([head] if head else []))

    def _together(self, blocks: Sequence[Block]) -> None:
        """Blocks on one page where they fit on one, else one after the other."""
        tall = sum(block.height(self.width) for block in blocks)
        if tall > self.y - self.bottom and self.y < self.top:
            self._next_page()
        for block in blocks:
            if not (isinstance(block, Space) and not self.page.placed):
                self._flow(block)

    def _flow(self, block: Block, again: Block | None = None) -> None:
        """A block where there is room for it, else on the next page below `again`; parted if taller than a page."""
        rest: Block | None = block
        while rest is not None:
            room = self.y - self.bottom
            if rest.height(self.width) <= room:
                self.y = self.page.put(rest, self.x, self.y, self.width)
                return
            fresh = self._room_of_a_page(again)
            first, rest = (None, rest) if rest.height(self.width) <= fresh else rest.parted(self.width, room)
            if first is not None:
                self.page.put(first, self.x, self.y, self.width)
            elif rest is not None and self._just_begun:
                self.y = self.page.put(rest, self.x, self.y, self.width)
                return  # smaller than one line is no paper of the table
            if rest is not None:
                self._next_page(again)

    @property
    def _just_begun(self) -> bool:
        return len(self.page.placed) <= self._placed_at_begin

    def _room_of_a_page(self, again: Block | None) -> float:
        head = self._running_head().height(self.width)
        return self.top - self.bottom - head - (again.height(self.width) if again else 0.0)

    def _running_head(self) -> Block:
        words = " · ".join(part for part in (self.sheet.title, self._called) if part)
        short = text(words, self.sheet.style.strong).shortened(self.width, _LINES_OF_RUNNING_HEAD)
        return Stack((short, Space(4)))

    _placed_at_begin = 0
    _called = ""

    def _next_page(self, again: Block | None = None) -> None:
        self.done.append(self.page)
        self.page, self.y = Page(), self.top
        self.y = self.page.put(self._running_head(), self.x, self.y, self.width)
        if again:
            self.y = self.page.put(again, self.x, self.y, self.width)
        self._placed_at_begin = len(self.page.placed)
