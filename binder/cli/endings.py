"""How a command ends: its exit code, and one line on standard error where something stopped it."""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from enum import IntEnum
from typing import TYPE_CHECKING, Any, NoReturn

import typer
from typer.core import TyperGroup

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

TRACEBACK_VARIABLE = "BINDER_TRACEBACK"
"""Set to anything, it makes a fault of the program show its traceback."""


class ExitCode(IntEnum):
    """What a command's exit code says.

    FAULT is `EX_SOFTWARE` of sysexits.h: an error in Binder itself. READER_GONE is what a shell reports of a program
    whose reader has left, 128 + SIGPIPE; it must not look like a check that passed or failed. Both from memory.
    """

    DONE = 0
    CHECK_FAILED = 1
    WRONG_USAGE = 2
    INPUT_UNUSABLE = 3
    FAULT = 70
    READER_GONE = 141


class WrongUsageError(BinderError):
    """A command asked for in a way that it cannot be done: nothing is wrong with the file."""


class BinderCommands(TyperGroup):
    """The group of all commands. Whatever goes wrong in one of them ends here, in a sentence and an exit code."""

    def invoke(self, ctx: Any) -> Any:  # noqa: ANN401 - as Typer declares it
        """Run a command and turn what it raises into its ending."""
        return _ended(lambda: super(BinderCommands, self).invoke(ctx))


def _ended(run: Callable[[], Any]) -> Any:  # noqa: ANN401
    try:
        return _with_all_written(run)
    except WrongUsageError as problem:
        _end(problem.says, ExitCode.WRONG_USAGE)
    except BinderError as problem:
        _end(problem.says, ExitCode.INPUT_UNUSABLE)
    except BrokenPipeError:
        _let_go_of_output()
        raise typer.Exit(ExitCode.READER_GONE) from None
    except OSError as problem:
        _end(_system_says(problem), ExitCode.INPUT_UNUSABLE)
    except (typer.Exit, typer.Abort, typer.TyperException):
        raise
    except Exception as fault:
        if _is_for_typer(fault) or os.environ.get(TRACEBACK_VARIABLE):
            raise
        _end(_fault_says(fault), ExitCode.FAULT)


def _with_all_written(run: Callable[[], Any]) -> Any:  # noqa: ANN401
    """Run, and have what was printed leave the process while what goes wrong with that can still be told."""
    try:
        return run()
    finally:
        sys.stdout.flush()


def _let_go_of_output() -> None:
    """Have what is still unwritten go nowhere: Python would otherwise complain while it ends."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _is_for_typer(error: Exception) -> bool:
    """Whether Typer raised it to say how a command is used: its usage errors have a way to show themselves."""
    return callable(getattr(error, "show", None)) and hasattr(error, "exit_code")


def _system_says(problem: OSError) -> str:
    what = problem.strerror or type(problem).__name__
    if not problem.filename:
        return _("The system refused it: {what}.").format(what=what)
    return _("{file}: {what}. Choose another place, or mend this one.").format(file=problem.filename, what=what)


def _fault_says(fault: Exception) -> str:
    return _(
        "This is a fault of Binder, not of your file: please report {fault}. "
        "{variable}=1 before the command shows where it happened."
    ).format(fault=f"{type(fault).__name__}: {fault}"[:200], variable=TRACEBACK_VARIABLE)


def _end(says: str, code: ExitCode) -> NoReturn:
    print(one_line(says), file=sys.stderr)
    raise typer.Exit(code)


def one_line(text: str) -> str:
    """A text as one line that no terminal takes for a command: without line ends and control characters."""
    kept = (sign for sign in " ".join(text.splitlines()) if sign.isspace() or sign.isprintable())
    return "".join(" " if sign.isspace() else sign for sign in kept)
