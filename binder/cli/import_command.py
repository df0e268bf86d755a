"""`binder import`: a whole binder from a JSON document, or the prices of a CSV or XLSX list, into a binder file."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import Annotated

import typer

from binder.cli.asking import json_option
from binder.cli.endings import WrongUsageError
from binder.exchange.price_files import is_price_list
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _


class BinderInTheWayError(BinderError):
    """A file that an import would take the place of."""

    def __init__(self, path: Path) -> None:
        says = _("“{file}” is there already: choose another name, or have it replaced with --replace.")
        super().__init__(says.format(file=path.name))


def import_file(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help=_("A binder as .json, or a price list as .csv or .xlsx."))
    ],
    into: Annotated[
        Path, typer.Option("--into", metavar="Y.binder", help=_("The binder file: a new one, or for prices the one."))
    ],
    *,
    replace: Annotated[bool, typer.Option("--replace", help=_("Take the place of a file that is there."))] = False,
    good_rows: Annotated[
        bool, typer.Option("--good-rows", help=_("Take the good rows of a price list where others are refused."))
    ] = False,
    new_stores: Annotated[
        bool, typer.Option("--new-stores", help=_("Add the stores of a price list that the binder has not."))
    ] = False,
    priced_on: Annotated[
        datetime | None,
        typer.Option("--priced-on", metavar="DATE", formats=["%Y-%m-%d"], help=_("The day of prices without one.")),
    ] = None,
    columns: Annotated[
        str, typer.Option("--columns", metavar="COLUMNS", help=_("Which column is what: food=A,price=D,label=Name."))
    ] = "",
    sheet: Annotated[
        str | None, typer.Option("--sheet", metavar="NAME", help=_("Which sheet of a workbook; else the first."))
    ] = None,
    preview: Annotated[
        bool, typer.Option("--preview", help=_("Only show what would become of each row of a price list."))
    ] = False,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Make a binder file from a JSON document, or bring a price list into one."""
    if is_price_list(file):
        from binder.cli.price_import import PriceImport

        on = priced_on.date() if priced_on else None
        today = date.today()  # noqa: DTZ011 - prices are of the person's own day
        prices = PriceImport(file, good_rows, on, today, columns, sheet, new_stores)
        (prices.preview if preview else prices.bring_into)(into, as_json=as_json)
    elif preview or columns or sheet:
        raise WrongUsageError(_("“{file}” is no price list: only such has columns to see.").format(file=file.name))
    else:
        _make_binder(file, into, replace=replace)
        _say_made(file, into, as_json=as_json)


def _make_binder(file: Path, into: Path, *, replace: bool) -> None:
    from binder.cli.loaded import loaded
    from binder.kitchen.whole_file import FileInTheWayError
    from binder.storage.contents import Contents
    from binder.storage.new_file import create_file

    if into.suffix.lower() != ".binder":
        raise WrongUsageError(_("A binder is kept in a .binder file: end “{file}” so.").format(file=into.name))
    binder = loaded(file)
    try:
        create_file(into, Contents(binder), replace=replace or _is_empty(into))
    except FileInTheWayError as in_the_way:
        raise BinderInTheWayError(into) from in_the_way


def _is_empty(path: Path) -> bool:
    """Whether a file is there with nothing in it, so that nothing is lost."""
    return path.is_file() and path.stat().st_size == 0


def _say_made(file: Path, into: Path, *, as_json: bool) -> None:
    if as_json:
        from binder.cli.answer import print_answer

        print_answer({"imported": str(file), "file": str(into)})
    else:
        from binder.cli.terminal import say

        say(_("Made {file} from {source}.").format(file=into, source=file))
