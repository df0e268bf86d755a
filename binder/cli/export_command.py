"""`binder export`: a whole binder as one JSON document."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from binder.cli.asking import binder_argument, json_option
from binder.cli.endings import WrongUsageError
from binder.kitchen.wording import _


def export(
    file: Annotated[Path, binder_argument()],
    to: Annotated[Path, typer.Option("--to", metavar="X.json", help=_("The document to write; replaced if there."))],
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Write a whole binder as one JSON document."""
    from binder.cli.loaded import loaded
    from binder.exchange.json_document import write_json

    if to.suffix.lower() != ".json":
        raise WrongUsageError(_("A binder is exported as a .json document: end “{file}” so.").format(file=to.name))
    binder = loaded(file)
    write_json(binder, to)
    if as_json:
        from binder.cli.answer import print_answer

        print_answer({"binder": binder.settings.name, "file": str(to)})
    else:
        from binder.cli.terminal import say

        says = _("Wrote {binder} to {file}.")
        say(says.format(binder=binder.settings.name, file=to))
