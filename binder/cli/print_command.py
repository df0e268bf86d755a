"""`binder print`: station cards, labels, lists and sheets as PDF files in a folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import ExitCode, WrongUsageError
from binder.cli.print_choosing import choices_of, require_known, sheets_called, with_plans
from binder.kitchen.wording import _
from binder.paper.sheet_kind import SheetKind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot
    from binder.paper.print_set import FinishedSheet, PrintResult


def print_sheets(
    file: Annotated[Path, binder_argument()],
    out: Annotated[
        Path, typer.Option("--out", metavar="FOLDER", help=_("Where the files go; made if it is not there."))
    ],
    *,
    shoot: Annotated[str | None, shoot_option()] = None,
    every_shoot: Annotated[bool, typer.Option("--every-shoot", help=_("All shoots of the binder."))] = False,
    paper: Annotated[
        str | None,
        typer.Option("--paper", metavar="SIZE", help=_("a3, a4, a5, a6, letter, legal, half-letter, 4x6 or 5x8.")),
    ] = None,
    only: Annotated[
        str | None,
        typer.Option(
            "--only", metavar="SHEETS", help=_("Only some of {sheets}.").format(sheets=", ".join(list(SheetKind)))
        ),
    ] = None,
    from_metres: Annotated[
        float | None,
        typer.Option("--from-metres", metavar="M", help=_("How far cards and wall sheets are read from: 0.5 to 3.")),
    ] = None,
    style: Annotated[
        str | None, typer.Option("--style", metavar="STYLE", help=_("How cards look: plain or on-camera."))
    ] = None,
    margin: Annotated[
        str | None,
        typer.Option("--margin", metavar="MM", help=_("White on every side: laser, ink-jet, or millimetres.")),
    ] = None,
    sheet: Annotated[
        str | None,
        typer.Option("--sheet", metavar="SIZE", help=_("Several cards on one sheet of that size, with cutting marks.")),
    ] = None,
    backs: Annotated[
        str | None,
        typer.Option("--backs", metavar="EDGE", help=_("On both sides, turned about the long-edge or the short-edge.")),
    ] = None,
    labels: Annotated[
        str | None,
        typer.Option(
            "--labels",
            metavar="MEASURES",
            help=_("Sheets of labels: a4, letter, or as {example}.").format(
                example="“a4 3x8 70x36 from 0x4.5 step 70x36”"
            ),
        ),
    ] = None,
    used_labels: Annotated[
        int, typer.Option("--used-labels", metavar="N", min=0, help=_("Labels gone from the first sheet."))
    ] = 0,
    together: Annotated[bool, typer.Option("--together", help=_("All sheets in one file."))] = False,
    names: Annotated[
        str | None,
        typer.Option(
            "--names",
            metavar="PATTERN",
            help=_("Names of the files, as {example}.").format(example="“{date}-{shoot}-{sheet}”"),
        ),
    ] = None,
    plan_seconds: Annotated[
        float,
        typer.Option("--plan-seconds", metavar="S", min=0, max=600, help=_("For the day plan at most; 0 for none.")),
    ] = 10.0,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Write station cards, labels and lists as PDF files."""
    from binder.paper.paper_size import paper_called

    require_known(paper, paper_called)
    kinds = sheets_called(only)
    choices = choices_of(
        metres=from_metres,
        style=style,
        margin=margin,
        sheet=sheet,
        backs=backs,
        labels=labels,
        used_labels=used_labels,
        together=together,
        names=names,
    )
    binder, shoots = _opened(file, shoot, every_shoot=every_shoot)
    ids = [one.id for one in shoots]
    planned = with_plans(choices, binder, ids, plan_seconds if _wants_plan(kinds) else 0)
    from binder.paper.print_set import finished_set, write_sheets

    sheets = finished_set(binder, ids, paper=paper, only=kinds, choices=planned)
    if not as_json:
        _show_faults(sheets)
    result = write_sheets(out, sheets)
    if as_json:
        _answer(binder, shoots, result)
    else:
        _show(result)
    if any(_stops(one) for one in sheets):
        raise typer.Exit(ExitCode.CHECK_FAILED)


def _opened(file: Path, shoot: str | None, *, every_shoot: bool) -> tuple[Binder, list[Shoot]]:
    if not every_shoot:
        binder, chosen = opened(file, shoot)
        return binder, [chosen]
    if shoot is not None:
        raise WrongUsageError(_("Either one shoot or every shoot: leave out --shoot or --every-shoot."))
    from binder.cli.chosen_shoot import NoShootError
    from binder.cli.loaded import loaded

    binder = loaded(file)
    shoots = sorted(binder.shoots.values(), key=lambda one: (str(one.on or ""), one.name.casefold(), one.id))
    if not shoots:
        raise NoShootError(binder.settings.name)
    return binder, shoots


_TIMED = {"mise-times", "running-order", "people", "call", "prep"}


def _wants_plan(kinds: Sequence[SheetKind] | None) -> bool:
    """Whether a sheet asked for has times of the day plan on it."""
    return kinds is None or any(kind.value in _TIMED for kind in kinds)


def _stops(sheet: FinishedSheet) -> bool:
    """Whether a sheet has a fault that makes it unfit to use: a sign shown by its number does not."""
    from binder.paper.preflight import FaultKind

    return any(fault.kind is not FaultKind.NO_PICTURE for fault in sheet.printed.faults)


def _show_faults(sheets: Sequence[FinishedSheet]) -> None:
    """What is wrong with which page, before anything is written."""
    from binder.cli.terminal import say, say_marked

    says = _("{sheet}, page {page}: {fault}")
    found = [
        says.format(sheet=sheet.title, page=fault.page, fault=fault.says)
        for sheet in sheets
        for fault in sheet.printed.faults
    ]
    for one in found:
        say_marked("△", one)
    if found:
        say()


def _answer(binder: Binder, shoots: Sequence[Shoot], result: PrintResult) -> None:
    from binder.cli.answer import answer_of, print_answer

    files = [
        {
            "sheet": "all" if file.kind is None else file.kind.value,
            "path": str(file.path),
            "pages": file.pages,
            "faults": [{"page": fault.page, "kind": fault.kind.value, "says": fault.says} for fault in file.faults],
        }
        for file in result.files
    ]
    print_answer(answer_of(binder, shoots[0], files=files, missing_glyphs=list(result.missing_glyphs)))


def _show(result: PrintResult) -> None:
    from binder.cli.columns import names, numbers, words
    from binder.cli.terminal import show_table
    from binder.paper.print_set import sheet_title

    rows = [
        [_("Print set") if file.kind is None else sheet_title(file.kind), str(file.pages), str(file.path)]
        for file in result.files
    ]
    show_table([words(_("Sheet")), numbers(_("Pages")), names(_("File"))], rows)
