"""`binder print`: station cards and lists as PDF files in a folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import WrongUsageError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot
    from binder.paper.print_set import PrintResult, SheetKind


def print_sheets(
    file: Annotated[Path, binder_argument()],
    out: Annotated[
        Path, typer.Option("--out", metavar="FOLDER", help=_("Where the files go; made if it is not there."))
    ],
    shoot: Annotated[str | None, shoot_option()] = None,
    paper: Annotated[
        str | None,
        typer.Option("--paper", metavar="SIZE", help=_("a4, a5, a6, letter, half-letter, 4x6 or 5x8.")),
    ] = None,
    only: Annotated[
        str | None,
        typer.Option("--only", metavar="SHEETS", help=_("Only some of cards,shopping,mise,costs,base,checks.")),
    ] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Write station cards and lists as PDF files."""
    _require_paper(paper)
    sheets = None if only is None else _sheets(only)
    binder, chosen = opened(file, shoot)
    from binder.paper.print_set import print_set

    result = print_set(binder, chosen.id, out, paper=paper, only=sheets)
    if as_json:
        _answer(binder, chosen, result)
    else:
        _show(result)


def _require_paper(paper: str | None) -> None:
    from binder.paper.paper_size import UnknownPaperError, paper_called

    try:
        if paper is not None:
            paper_called(paper)
    except UnknownPaperError as unknown:
        raise WrongUsageError(unknown.says) from unknown


def _sheets(only: str) -> list[SheetKind]:
    from binder.paper.print_set import UnknownSheetError, sheet_kind

    try:
        return [sheet_kind(name) for name in only.split(",")]
    except UnknownSheetError as unknown:
        raise WrongUsageError(unknown.says) from unknown


def _answer(binder: Binder, shoot: Shoot, result: PrintResult) -> None:
    from binder.cli.answer import answer_of, print_answer

    files = [{"sheet": file.kind.value, "path": str(file.path), "pages": file.pages} for file in result.files]
    print_answer(answer_of(binder, shoot, files=files, missing_glyphs=list(result.missing_glyphs)))


def _show(result: PrintResult) -> None:
    from binder.cli.columns import names, numbers, words
    from binder.cli.terminal import say, say_marked, show_table
    from binder.paper.print_set import sheet_title

    rows = [[sheet_title(file.kind), str(file.pages), str(file.path)] for file in result.files]
    show_table([words(_("Sheet")), numbers(_("Pages")), names(_("File"))], rows)
    if result.missing_glyphs:
        say()
        says = _("No installed face has {signs}: on paper each is shown by its number.")
        say_marked("△", says.format(signs=" ".join(result.missing_glyphs)))
