"""The print set: every sheet of a shoot as a PDF, written whole into a folder, or as bytes for the preview."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import UnwritableFileError, why_refused, write_whole
from binder.kitchen.wording import _, listed
from binder.paper.base_sheet import base_sheet
from binder.paper.check_sheet import check_sheet
from binder.paper.cost_sheet import cost_sheet
from binder.paper.list_pages import SheetLayout
from binder.paper.mise_sheet import mise_sheet
from binder.paper.page import Booklet
from binder.paper.paper_size import PaperSize, card_paper, list_paper, paper_called
from binder.paper.press import Printed, printed
from binder.paper.sheet_words import foot_words
from binder.paper.shopping_sheet import shopping_sheet
from binder.paper.station_cards import card_pages

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from datetime import date
    from pathlib import Path

    from binder.kitchen.binder import Binder
    from binder.paper.list_pages import Sheet


class SheetKind(StrEnum):
    """What a print set is made of, by the words that commands use."""

    CARDS = "cards"
    SHOPPING = "shopping"
    MISE = "mise"
    COSTS = "costs"
    BASE = "base"
    CHECKS = "checks"


_FILES = {
    SheetKind.CARDS: "station-cards",
    SheetKind.SHOPPING: "shopping-list",
    SheetKind.MISE: "mise-list",
    SheetKind.COSTS: "costs",
    SheetKind.BASE: "base",
    SheetKind.CHECKS: "checks",
}

_SHEETS: dict[SheetKind, Callable[[Binder, str], Sheet]] = {
    SheetKind.SHOPPING: shopping_sheet,
    SheetKind.MISE: mise_sheet,
    SheetKind.COSTS: cost_sheet,
    SheetKind.BASE: base_sheet,
    SheetKind.CHECKS: check_sheet,
}


class UnknownSheetError(BinderError):
    """A kind of sheet that is not in the set."""

    def __init__(self, name: str) -> None:
        super().__init__(
            _("No sheet is called “{name}”. Choose {sheets}.").format(
                name=name[:60], sheets=listed(SheetKind, joined_by=_("or"))
            )
        )


class UnknownShootError(BinderError):
    """A shoot that the binder does not have."""

    def __init__(self, shoot_id: str) -> None:
        super().__init__(_("The binder has no shoot “{shoot}”. Choose one of its own.").format(shoot=shoot_id[:60]))


@dataclass(frozen=True)
class PrintedFile:
    """One file of the set and how many pages it has."""

    kind: SheetKind
    path: Path
    pages: int


@dataclass(frozen=True)
class PrintResult:
    """What was written, and the signs that no installed face has: each is shown by its number, as [U+1F35C]."""

    files: tuple[PrintedFile, ...]
    missing_glyphs: tuple[str, ...]

    @property
    def pages(self) -> int:
        """Pages in all."""
        return sum(file.pages for file in self.files)


def sheet_kind(name: str) -> SheetKind:
    """The kind of sheet of that name, however its letters are cased. Raises UnknownSheetError."""
    folded = name.strip().casefold()
    if folded not in list(SheetKind):
        raise UnknownSheetError(name)
    return SheetKind(folded)


def usual_paper(binder: Binder, kind: SheetKind) -> PaperSize:
    """The paper of a sheet where none is asked for: A5 and A4, or half Letter and Letter, by the binder's measures."""
    measures = binder.settings.measures
    return card_paper(measures) if kind is SheetKind.CARDS else list_paper(measures)


def print_sheet(
    binder: Binder, shoot_id: str, kind: SheetKind | str, paper: str | None = None, *, data_of: date | None = None
) -> Printed:
    """One sheet of a shoot as a PDF. `data_of` is the date of the data, for the foot (None: that of the newest price).

    Raises UnknownShootError, UnknownSheetError or UnknownPaperError.
    """
    if shoot_id not in binder.shoots:
        raise UnknownShootError(shoot_id)
    kind = sheet_kind(kind)
    on = usual_paper(binder, kind) if paper is None else paper_called(paper)
    foot = foot_words(binder, shoot_id, data_of)
    pages = (
        card_pages(binder, shoot_id, on)
        if kind is SheetKind.CARDS
        else SheetLayout(_SHEETS[kind](binder, shoot_id), on).pages()
    )
    title = f"{sheet_title(kind)} · {binder.shoots[shoot_id].name}"
    return printed(Booklet(title, binder.settings.locale.replace("_", "-"), on, foot, pages))


def sheet_bytes(
    binder: Binder, shoot_id: str, kind: SheetKind | str, paper: str | None = None, *, data_of: date | None = None
) -> bytes:
    """The PDF of one sheet, for a preview or another program. Raises as `print_sheet`."""
    return print_sheet(binder, shoot_id, kind, paper, data_of=data_of).content


def sheet_title(kind: SheetKind) -> str:
    """What a kind of sheet is called."""
    return {
        SheetKind.CARDS: _("Station cards"),
        SheetKind.SHOPPING: _("Shopping list"),
        SheetKind.MISE: _("Mise list"),
        SheetKind.COSTS: _("Costs"),
        SheetKind.BASE: _("Base"),
        SheetKind.CHECKS: _("Checks"),
    }[kind]


def print_set(
    binder: Binder,
    shoot_id: str,
    folder: Path,
    *,
    paper: str | None = None,
    only: Iterable[SheetKind | str] | None = None,
    data_of: date | None = None,
) -> PrintResult:
    """Write the sheets of a shoot into a folder, made if it is not there; all sheets where `only` is None.

    A `paper` asked for is that of every sheet. All is laid out before the first file is written, and each file is put
    in place whole. Raises as `print_sheet`, or UnwritableFileError.
    """
    kinds = tuple(SheetKind) if only is None else tuple(dict.fromkeys(sheet_kind(name) for name in only))
    sheets = {kind: print_sheet(binder, shoot_id, kind, paper, data_of=data_of) for kind in kinds}
    _make_folder(folder)
    files = []
    for kind, sheet in sheets.items():
        path = folder / file_name(binder, shoot_id, kind)
        write_whole(path, sheet.content)
        files.append(PrintedFile(kind, path, sheet.pages))
    lacking = dict.fromkeys(sign for sheet in sheets.values() for sign in sheet.missing_glyphs)
    return PrintResult(tuple(files), tuple(lacking))


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnwritableFileError(folder, why_refused(error)) from error


def file_name(binder: Binder, shoot_id: str, kind: SheetKind) -> str:
    """`station-cards.pdf`; where the binder has several shoots the shoot's name goes before it, fit for any disk."""
    name = f"{_FILES[kind]}.pdf"
    if len(binder.shoots) == 1:
        return name
    return f"{safe_name(binder.shoots[shoot_id].name) or safe_name(shoot_id) or 'shoot'}-{name}"


def safe_name(name: str) -> str:
    """A name as every disk takes it: ASCII letters, figures and hyphens, at most 40 characters."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().casefold()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].strip("-")
