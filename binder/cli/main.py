"""The command `binder`: all commands in one place, and the way in."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.base_command import base
from binder.cli.check_command import check
from binder.cli.cost_command import cost
from binder.cli.day_command import day
from binder.cli.endings import BinderCommands
from binder.cli.export_command import export
from binder.cli.import_command import import_file
from binder.cli.mise_command import mise
from binder.cli.open_command import open_binder
from binder.cli.print_command import print_sheets
from binder.cli.shop_command import shop
from binder.cli.take_command import take
from binder.kitchen.wording import _, choose_language

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

BINDER_SUFFIXES = (".binder", ".json")


def make_app() -> typer.Typer:
    """The commands, with their help in the language chosen by now."""
    app = typer.Typer(
        name="binder",
        cls=BinderCommands,
        help=_("A recipe binder for food shoots. Without a command it opens the window."),
        add_completion=False,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        context_settings={"help_option_names": ["-h", "--help"]},
    )
    app.callback(invoke_without_command=True)(_without_command)
    for name, command, says in _commands():
        app.command(name, help=says)(command)
    return app


def _commands() -> Iterator[tuple[str, Callable[..., None], str]]:
    yield "open", open_binder, _("Open a binder in the window.")
    yield "cost", cost, _("Show what a portion of each dish costs, against its cap.")
    yield "base", base, _("Show how far the base ingredient goes.")
    yield "shop", shop, _("Show what to buy and what it comes to at the till.")
    yield "mise", mise, _("Show what to set out, station by station.")
    yield "day", day, _("Show when everything starts; exit code 1 where the day has no plan.")
    yield "take", take, _("Say how many more takes of a dish could be made.")
    yield "check", check, _("Say what needs someone, the worst first; exit code 1 where something stops the shoot.")
    yield "print", print_sheets, _("Write cards, labels, lists and sheets as PDF files.")
    yield "import", import_file, _("Make a binder file from a JSON document, or bring a price list into one.")
    yield "export", export, _("Write a whole binder as one JSON document.")


def _without_command(
    context: typer.Context,
    version: Annotated[bool, typer.Option("--version", help=_("Say which version this is."))] = False,
) -> None:
    if version:
        from binder import __version__

        print(f"Binder {__version__}")
    elif context.invoked_subcommand is None:
        open_binder()


app = make_app()
"""All commands in English, for whoever looks at them without running them."""


def main() -> None:
    """Run the command line, in the language of its environment; ends the process with the exit code."""
    choose_language(_languages())
    _speak_unicode()
    make_app()(_with_open(sys.argv[1:]), prog_name="binder")


def _languages() -> list[str]:
    """The languages the environment asks for, first the most wanted, as gettext reads it."""
    named = (os.environ.get(name) for name in ("LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"))
    return next((value.split(":") for value in named if value), [])


def _speak_unicode() -> None:
    """Write UTF-8 also where a pipe would be given a code page without ⅓ (Windows): JSON is UTF-8 by its standard.

    A program that was started without an output (from an icon) gets one that leads nowhere.
    """
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        if stream is None:
            setattr(sys, name, Path(os.devnull).open("w", encoding="utf-8"))  # noqa: SIM115 - as long as the program runs
        elif hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")


def _with_open(arguments: Sequence[str]) -> list[str]:
    """`binder FILE`, as a desktop starts it for a file that was clicked, is `binder open FILE`."""
    alone = len(arguments) == 1 and arguments[0].lower().endswith(BINDER_SUFFIXES)
    return ["open", *arguments] if alone else list(arguments)


if __name__ == "__main__":
    main()
