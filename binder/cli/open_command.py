"""`binder open`, and `binder` alone: the window. The one module of the command line that leads to Qt."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _


class NoWindowError(BinderError):
    """A machine on which no window can be shown."""

    def __init__(self, why: str) -> None:
        super().__init__(
            _("The window cannot be opened: {why}. Paper needs none: binder print FILE --out FOLDER.").format(why=why)
        )


def open_binder(
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help=_("The binder to open; without one the last.")),
    ] = None,
) -> None:
    """Open a binder in the window, or without FILE the one that was open last."""
    _require_screen()
    try:
        from binder.desktop.application import start
    except ImportError as lacking:
        raise NoWindowError(_("a part of Qt or of the system is missing ({what})").format(what=lacking)) from lacking
    raise typer.Exit(start(file))


def _require_screen() -> None:
    """Qt ends the whole process where there is no screen, so look first. Other systems than Linux always have one."""
    variables = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    if sys.platform.startswith("linux") and not any(os.environ.get(name) for name in variables):
        raise NoWindowError(_("there is no screen here"))
