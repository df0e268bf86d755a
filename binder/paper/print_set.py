"""The print set: every sheet of a shoot as a PDF, written whole into a folder, or as bytes for the preview."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import UnwritableFileError, why_refused, write_whole
from binder.kitchen.wording import _
from binder.paper.file_names import FilesOfOneNameError, file_name, safe_name, together_name
from binder.paper.imposition import leaves_of
from binder.paper.job import Job
from binder.paper.label_grid import label_grid_for
from binder.paper.page import Booklet, Part
from binder.paper.paper_size import PaperSize, paper_called
from binder.paper.press import Printed, printed
from binder.paper.print_choices import PrintChoices
from binder.paper.sheet_kind import SheetKind, UnknownSheetError, sheet_kind, sheet_title
from binder.paper.sheet_table import SHEETS, On
from binder.paper.sheet_words import foot_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import date
    from pathlib import Path

    from binder.kitchen.binder import Binder
    from binder.paper.preflight import Fault

__all__ = [
    "FinishedSheet",
    "PrintChoices",
    "PrintResult",
    "PrintedFile",
    "SheetKind",
    "UnknownSheetError",
    "UnknownShootError",
    "file_name",
    "finished_set",
    "kinds_of",
    "print_set",
    "print_sheet",
    "safe_name",
    "sheet_bytes",
    "sheet_kind",
    "sheet_title",
    "usual_paper",
    "write_sheets",
]


class UnknownShootError(BinderError):
    """A shoot that the binder does not have."""

    def __init__(self, shoot_id: str) -> None:
        super().__init__(_("The binder has no shoot “{shoot}”. Choose one of its own.").format(shoot=shoot_id[:60]))


@dataclass(frozen=True)
class FinishedSheet:
    """A file of the set before it is written: its kind (None: several sheets in one), its name and its PDF."""

    kind: SheetKind | None
    name: str
    printed: Printed

    @property
    def title(self) -> str:
        """What it is called."""
        return _("Print set") if self.kind is None else sheet_title(self.kind)


@dataclass(frozen=True)
class PrintedFile:
    """One file of the set (`kind` None: several sheets in one), how many pages it has, and what is wrong with them."""

    kind: SheetKind | None
    path: Path
    pages: int
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True)
class PrintResult:
    """What was written, and the signs that no installed face has: each is shown by its number, as [U+1F35C]."""

    files: tuple[PrintedFile, ...]
    missing_glyphs: tuple[str, ...]

    @property
    def pages(self) -> int:
        """Pages in all."""
        return sum(file.pages for file in self.files)


def usual_paper(binder: Binder, kind: SheetKind) -> PaperSize:
    """The paper of a sheet where none is asked for: A5 and A4, or half Letter and Letter, by the binder's measures."""
    return SHEETS[kind].usual_paper(binder)


def kinds_of(binder: Binder, shoot_id: str) -> tuple[SheetKind, ...]:
    """The sheets that a shoot has anything to say on. Raises UnknownShootError."""
    _require_shoot(binder, shoot_id)
    return tuple(kind for kind, entry in SHEETS.items() if entry.has_any(binder, shoot_id))


def print_sheet(
    binder: Binder,
    shoot_id: str,
    kind: SheetKind | str,
    paper: str | None = None,
    *,
    data_of: date | None = None,
    choices: PrintChoices | None = None,
) -> Printed:
    """One sheet of a shoot as a PDF. `data_of` is the date of the data, for the foot (None: that of the newest price).

    Raises UnknownShootError, UnknownSheetError, UnknownPaperError or UnfitMarginError.
    """
    part = _part(binder, shoot_id, sheet_kind(kind), paper, data_of, choices or PrintChoices())
    return printed(Booklet(f"{part.title} · {binder.shoots[shoot_id].name}", _language(binder), [part]))


def sheet_bytes(
    binder: Binder,
    shoot_id: str,
    kind: SheetKind | str,
    paper: str | None = None,
    *,
    data_of: date | None = None,
    choices: PrintChoices | None = None,
) -> bytes:
    """The PDF of one sheet, for a preview or another program. Raises as `print_sheet`."""
    return print_sheet(binder, shoot_id, kind, paper, data_of=data_of, choices=choices).content


def finished_set(
    binder: Binder,
    shoot_ids: Sequence[str],
    *,
    paper: str | None = None,
    only: Iterable[SheetKind | str] | None = None,
    data_of: date | None = None,
    choices: PrintChoices | None = None,
) -> list[FinishedSheet]:
    """The files of a set, not yet written: of every sheet asked for, or where `only` is None of all that say something.

    A `paper` asked for is that of every sheet. Raises as `print_sheet`, UnfitPatternError or FilesOfOneNameError.
    """
    chosen = choices or PrintChoices()
    asked = None if only is None else tuple(dict.fromkeys(sheet_kind(name) for name in only))
    sheets = [(shoot, kind) for shoot in shoot_ids for kind in asked or kinds_of(binder, shoot)]
    if chosen.together:
        parts = [_part(binder, shoot, kind, paper, data_of, chosen) for shoot, kind in sheets]
        return [_in_one(binder, shoot_ids, [shoot for shoot, _kind in sheets], parts, chosen)]
    names = [file_name(binder, shoot, kind, chosen.pattern) for shoot, kind in sheets]
    if len(set(names)) < len(names):
        raise FilesOfOneNameError(next(name for name in names if names.count(name) > 1))
    return [
        FinishedSheet(kind, name, print_sheet(binder, shoot, kind, paper, data_of=data_of, choices=chosen))
        for (shoot, kind), name in zip(sheets, names, strict=True)
    ]


def _in_one(
    binder: Binder, shoot_ids: Sequence[str], of: Sequence[str], parts: list[Part], choices: PrintChoices
) -> FinishedSheet:
    several = len(shoot_ids) > 1
    for shoot, part in zip(of, parts, strict=True):
        part.title = f"{part.title} · {binder.shoots[shoot].name}" if several else part.title
    names = dict.fromkeys([binder.settings.name, *(binder.shoots[shoot].name for shoot in shoot_ids)])
    name = together_name(binder, None if several else shoot_ids[0], choices.pattern)
    return FinishedSheet(None, name, printed(Booklet(" · ".join(names), _language(binder), parts)))


def print_set(
    binder: Binder,
    shoot_id: str,
    folder: Path,
    *,
    paper: str | None = None,
    only: Iterable[SheetKind | str] | None = None,
    data_of: date | None = None,
    choices: PrintChoices | None = None,
) -> PrintResult:
    """Write the sheets of a shoot into a folder, made if it is not there.

    All is laid out before the first file is written, and each file is put in place whole. Raises as `finished_set`, or
    UnwritableFileError.
    """
    return write_sheets(
        folder, finished_set(binder, [shoot_id], paper=paper, only=only, data_of=data_of, choices=choices)
    )


def write_sheets(folder: Path, sheets: Sequence[FinishedSheet]) -> PrintResult:
    """Write finished sheets into a folder, made if it is not there. Raises UnwritableFileError.

    Several at a time: each waits until the disk has it.
    """
    _make_folder(folder)
    with ThreadPoolExecutor(_AT_A_TIME) as writers:
        files = list(writers.map(lambda sheet: _written(folder, sheet), sheets))
    lacking = dict.fromkeys(sign for sheet in sheets for sign in sheet.printed.missing_glyphs)
    return PrintResult(tuple(files), tuple(lacking))


_AT_A_TIME = 8


def _written(folder: Path, sheet: FinishedSheet) -> PrintedFile:
    path = folder / sheet.name
    write_whole(path, sheet.printed.content)
    return PrintedFile(sheet.kind, path, sheet.printed.pages, sheet.printed.faults)


def _require_shoot(binder: Binder, shoot_id: str) -> None:
    if shoot_id not in binder.shoots:
        raise UnknownShootError(shoot_id)


def _part(
    binder: Binder, shoot_id: str, kind: SheetKind, paper: str | None, data_of: date | None, choices: PrintChoices
) -> Part:
    """One sheet laid out."""
    _require_shoot(binder, shoot_id)
    entry = SHEETS[kind]
    on = _paper_for(binder, kind, paper, choices)
    pages = entry.pages(Job(binder, shoot_id, on, choices))
    return Part(
        sheet_title(kind),
        on,
        foot_words(binder, shoot_id, data_of),
        pages,
        leaves_of(pages, on, choices, cards=entry.on is On.CARD),
        tuple(entry.unknown(binder, shoot_id)),
    )


def _paper_for(binder: Binder, kind: SheetKind, paper: str | None, choices: PrintChoices) -> PaperSize:
    """The paper of a sheet; labels have that of their own sheet."""
    entry = SHEETS[kind]
    on = entry.usual_paper(binder) if paper is None else paper_called(paper)
    if entry.on is On.LABELS:
        return label_grid_for(choices, on).paper
    on = on.with_margin(choices.margin)
    return on.lying if entry.on is On.LYING else on


def _language(binder: Binder) -> str:
    return binder.settings.locale.replace("_", "-")


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnwritableFileError(folder, why_refused(error)) from error
