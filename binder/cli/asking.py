"""What most commands ask for: a file, a shoot, an answer for people or for programs.

Functions, not constants: Typer reads them when a command starts, in the language chosen by then.
"""

from __future__ import annotations

from typing import Any

import typer

from binder.kitchen.wording import _


def binder_argument() -> Any:  # noqa: ANN401 - as Typer declares it
    """FILE: the binder to read."""
    return typer.Argument(metavar="FILE", help=_("A .binder file, or a binder as a .json document."))


def shoot_option() -> Any:  # noqa: ANN401
    """`--shoot NAME`."""
    return typer.Option("--shoot", metavar="NAME", help=_("Which shoot, where the binder has several."))


def json_option() -> Any:  # noqa: ANN401
    """`--json`."""
    return typer.Option("--json", help=_("Answer in JSON, for programs."))
