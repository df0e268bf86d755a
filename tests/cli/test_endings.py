"""How commands end: one line on standard error and an exit code that says whose the fault is."""

from __future__ import annotations

import pytest
import typer
from typer.testing import CliRunner, Result

from binder.cli.endings import BinderCommands, ExitCode, WrongUsageError, one_line
from binder.kitchen.errors import BinderError


def ended(error: BaseException, **variables: str | None) -> Result:
    """The result of a command that raises `error`."""
    app = typer.Typer(cls=BinderCommands, rich_markup_mode=None, pretty_exceptions_enable=False)

    @app.callback()
    def _every() -> None: ...

    @app.command()
    def fail() -> None:
        raise error

    return CliRunner(env={"BINDER_TRACEBACK": None, **variables}).invoke(app, ["fail"])


@pytest.mark.parametrize(
    ("error", "code", "line"),
    [
        (BinderError("The cup is empty: fill it."), ExitCode.INPUT_UNUSABLE, "The cup is empty: fill it."),
        (BinderError("Two\nlines \x1b[31m of it"), ExitCode.INPUT_UNUSABLE, "Two lines [31m of it"),
        (WrongUsageError("Say which."), ExitCode.WRONG_USAGE, "Say which."),
        (
            PermissionError(13, "Permission denied", "locked"),
            ExitCode.INPUT_UNUSABLE,
            "locked: Permission denied. Choose another place, or mend this one.",
        ),
        (OSError("odd"), ExitCode.INPUT_UNUSABLE, "The system refused it: OSError."),
    ],
)
def test_what_stops_a_command_is_one_line(error: Exception, code: ExitCode, line: str) -> None:
    result = ended(error)
    assert (result.exit_code, result.stderr, result.stdout) == (code, f"{line}\n", "")


def test_a_fault_of_the_program_asks_to_be_reported_without_a_traceback() -> None:
    result = ended(KeyError("spoon"))
    assert result.exit_code == ExitCode.FAULT
    assert result.stderr.count("\n") == 1
    assert "fault of Binder" in result.stderr
    assert "KeyError: 'spoon'" in result.stderr
    assert "Traceback" not in result.stderr


def test_a_fault_shows_its_traceback_where_that_is_asked_for() -> None:
    result = ended(KeyError("spoon"), BINDER_TRACEBACK="1")
    assert isinstance(result.exception, KeyError)


def test_exit_codes_are_those_that_scripts_rely_on() -> None:
    assert [code.value for code in ExitCode][:4] == [0, 1, 2, 3]


def test_wrong_usage_is_said_by_the_command_itself() -> None:
    result = ended(typer.BadParameter("no such spoon"))
    assert result.exit_code == ExitCode.WRONG_USAGE
    assert "no such spoon" in result.stderr


def test_a_command_that_ends_itself_keeps_its_exit_code() -> None:
    assert ended(typer.Exit(1)).exit_code == 1


def test_a_line_has_no_line_ends_and_no_terminal_commands() -> None:
    assert one_line("two  spaces of a path") == "two  spaces of a path"
    assert one_line("a\r\nb\tc\x1b]0;title\x07 ⅓") == "a b c]0;title ⅓"
