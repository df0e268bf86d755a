"""What is laid out: a sheet, its paper and choices, of a binder as it is at one moment. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from binder.desktop.cards_page.print_wishes import TIMED
from binder.figures.day_plan import day_plan
from binder.kitchen.whole_file import write_whole
from binder.paper.print_set import PrintChoices, SheetKind, file_name, finished_set, print_sheet, write_sheets

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from pathlib import Path

    from binder.figures.day_plan import DayPlan
    from binder.kitchen.binder import Binder
    from binder.paper.press import Printed
    from binder.paper.print_set import FinishedSheet


@dataclass(frozen=True)
class Layout:
    """All that pages follow from: the same layout gives the same pages."""

    binder: Binder
    shoot: str
    kind: SheetKind
    paper: str | None
    choices: PrintChoices

    def printed(self) -> Printed:
        """The pages. Raises BinderError."""
        return print_sheet(self.binder, self.shoot, self.kind, self.paper, choices=self.choices)

    @property
    def file_name(self) -> str:
        """What its file is called."""
        pattern = self.choices.pattern
        named = pattern if pattern is not None and "{sheet}" in pattern else None
        return file_name(self.binder, self.shoot, self.kind, named)


@dataclass(frozen=True)
class SetAsked:
    """A set to be written: which sheets of which shoots, into which folder."""

    binder: Binder
    shoots: tuple[str, ...]
    kinds: tuple[SheetKind, ...]
    paper: str | None
    choices: PrintChoices
    folder: Path


@dataclass(frozen=True)
class SetWritten:
    """How many files were written where, how many pages they have, and how many things are wrong with those."""

    folder: Path
    files: int
    pages: int
    faults: int


def write_set(asked: SetAsked, reached: Callable[[float], None]) -> SetWritten:
    """Lay all of it out, then write it; `reached` is told how far it is, and may raise to stop it. Raises BinderError.

    Nothing is written unless all of it could be laid out.
    """
    choices = replace(asked.choices, plans=_plans(asked))
    sheets: list[FinishedSheet] = []
    parts = [asked.kinds] if asked.choices.together else [(kind,) for kind in asked.kinds]
    for at, kinds in enumerate(parts):
        reached(at / len(parts))
        sheets += finished_set(asked.binder, asked.shoots, paper=asked.paper, only=kinds, choices=choices)
    reached(1.0)
    written = write_sheets(asked.folder, sheets)
    return SetWritten(asked.folder, len(written.files), written.pages, sum(len(one.faults) for one in written.files))


_PLAN_SECONDS = 10.0
"""What the plan of a day may take before the best so far is printed."""


def _plans(asked: SetAsked) -> dict[str, DayPlan]:
    """A plan of the day for each shoot that has one, where a sheet asked for has its times."""
    if not TIMED.intersection(asked.kinds):
        return {}
    found = {shoot: day_plan(asked.binder, shoot, seconds=_PLAN_SECONDS) for shoot in asked.shoots}
    return {shoot: plan for shoot, plan in found.items() if plan is not None}


def write_pictures(
    folder: Path, sheet: str, pictures: Iterable[bytes], count: int, name: Callable[[str, int, int], str]
) -> int:
    """Write the pictures of pages into a folder; how many there were. Raises UnwritableFileError."""
    written = 0
    for page, picture in enumerate(pictures):
        write_whole(folder / name(sheet, page, count), picture)
        written += 1
    return written
