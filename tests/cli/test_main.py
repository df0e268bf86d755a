"""The command as a whole: what it offers, how it begins, and what it loads to do so."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
import typer

from binder import __version__
from binder.cli.main import app
from binder.kitchen.paths import samples_folder
from tests.cli.conftest import Run, written
from tests.kitchen_binder import small_binder

WINDOW = {"PySide6", "shiboken6"}
SOLVER = {"ortools", "pandas"}
"""OR-Tools imports pandas itself."""
HEAVY = WINDOW | SOLVER | {"numpy", "reportlab", "openpyxl", "icalendar"}


def started(*arguments: object, **variables: str) -> subprocess.CompletedProcess[bytes]:
    """The command run as a process of its own."""
    environment = {**os.environ, "COLUMNS": "80", **variables}
    command = [sys.executable, "-m", "binder", *(str(argument) for argument in arguments)]
    return subprocess.run(command, capture_output=True, check=False, env=environment)


def loaded_by(*arguments: object) -> set[str]:
    """The top-level modules that are loaded once a command has run."""
    script = (
        "import json, sys; sys.argv = ['binder', *json.loads(sys.argv[1])]\n"
        "from binder.cli.main import main\n"
        "try:\n    main()\n"
        "except SystemExit:\n    pass\n"
        "print(json.dumps(sorted({name.partition('.')[0] for name in sys.modules})), file=sys.stderr)\n"
    )
    asked = json.dumps([str(argument) for argument in arguments])
    done = subprocess.run([sys.executable, "-c", script, asked], capture_output=True, check=True)
    return set(json.loads(done.stderr.splitlines()[-1]))


def test_help_names_every_command_with_a_sentence(run: Run) -> None:
    shown = run("--help").stdout
    group = typer.main.get_command(app)
    for name, command in group.commands.items():  # type: ignore[attr-defined]
        assert f"\n  {name} " in shown
        assert command.help.endswith(".")


def test_version(run: Run) -> None:
    assert run("--version").stdout == f"Binder {__version__}\n"


@pytest.mark.parametrize("arguments", [["cost"], ["csot", "x.json"], ["cost", "x.json", "--salt"]])
def test_wrong_usage_ends_with_2_and_without_a_traceback(run: Run, arguments: list[str]) -> None:
    result = run(*arguments)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "Traceback" not in result.stderr


@pytest.mark.parametrize("command", ["cost", "base", "shop", "mise", "day", "check"])
def test_a_binder_of_several_shoots_asks_which(run: Run, command: str, tmp_path: Path) -> None:
    second = replace(small_binder().shoots["day"], id="two", name="Second day")
    file = written(small_binder(second), tmp_path / "two.json")
    result = run(command, file)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr == "The binder has several shoots: choose one with --shoot “Bean day” or “Second day”.\n"
    assert "Second day" in run(command, file, "--shoot", "second day").stdout


@pytest.mark.parametrize("command", ["cost", "base", "shop", "mise", "check"])
def test_figures_need_no_window_no_solver_and_no_paper(command: str, bean_day: Path) -> None:
    without_solver = ["--no-plan"] if command == "check" else []
    loaded = loaded_by(command, bean_day, *without_solver)
    assert loaded.isdisjoint(HEAVY)
    assert "rich" in loaded
    assert "sqlalchemy" not in loaded, "a JSON binder needs no database"


def test_an_answer_for_programs_needs_no_terminal_library(bean_day: Path) -> None:
    assert "rich" not in loaded_by("cost", bean_day, "--json")


@pytest.mark.parametrize(
    "arguments",
    [
        ["take", "--dish", 1],
        ["print", "--only", "cards,shopping,mise", "--out", "out"],
        ["export", "--to", "x.json"],
        ["import", "--into", "x.binder"],
    ],
)
def test_no_command_but_open_loads_qt(arguments: list[object], bean_day: Path, tmp_path: Path) -> None:
    name, *options, place = arguments
    target = place if isinstance(place, int) else tmp_path / str(place)
    loaded = loaded_by(name, bean_day, *options, target)
    assert loaded.isdisjoint(WINDOW | SOLVER | {"openpyxl", "icalendar"})


def test_the_whole_print_set_needs_the_solver_for_the_times_of_the_day_and_no_more(
    bean_day: Path, tmp_path: Path
) -> None:
    loaded = loaded_by("print", bean_day, "--out", tmp_path / "with times")
    assert "ortools" in loaded
    assert loaded.isdisjoint(WINDOW | {"openpyxl", "icalendar"})
    unplanned = loaded_by("print", bean_day, "--plan-seconds", 0, "--out", tmp_path / "without times")
    assert unplanned.isdisjoint(WINDOW | SOLVER | {"openpyxl", "icalendar"})


@pytest.mark.parametrize("sample", ["chickpeas", "four_birds"])
@pytest.mark.parametrize("command", ["cost", "base", "shop", "mise", "day", "check"])
def test_the_samples_read_at_80_columns(run: Run, command: str, sample: str) -> None:
    result = run(command, samples_folder() / f"{sample}.json")
    assert result.exit_code in {0, 1}
    assert max(map(len, result.stdout.splitlines())) <= 80


def test_a_process_writes_the_same_utf_8_whatever_the_locale(bean_day: Path) -> None:
    plain = started("mise", bean_day, LC_ALL="C", PYTHONIOENCODING="latin-1", PYTHONHASHSEED="1")
    other = started("mise", bean_day, PYTHONHASHSEED="2")
    assert plain.returncode == other.returncode == 0
    assert "────" in plain.stdout.decode(), "a sign that Latin-1 has not"
    assert plain.stdout == other.stdout


@pytest.mark.parametrize("name", ["mise", "check"])
def test_a_reader_that_leaves_is_not_a_check_that_failed(name: str, troubled_day: Path) -> None:
    command = [sys.executable, "-m", "binder", name, str(troubled_day)]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert process.stdout is not None
    process.stdout.close()
    assert process.communicate()[1] == b""
    assert process.returncode == 141


@pytest.mark.skipif(sys.platform == "win32", reason="a shell's way to close an output")
def test_without_an_output_a_command_still_does_its_work(bean_day: Path, tmp_path: Path) -> None:
    command = '"$0" -m binder export "$1" --to "$2" >&- 2>&-'
    done = subprocess.run(["sh", "-c", command, sys.executable, bean_day, tmp_path / "out.json"], check=False)
    assert done.returncode == 0
    assert (tmp_path / "out.json").read_bytes() == bean_day.read_bytes()


def test_a_pipe_gets_no_colour(troubled_day: Path) -> None:
    assert b"\x1b" not in started("check", troubled_day).stdout


def test_colour_only_repeats_what_a_word_says(troubled_day: Path) -> None:
    coloured = started("check", troubled_day, FORCE_COLOR="1", TERM="xterm").stdout.decode()
    assert "\x1b[31m◣ stop\x1b[0m" in coloured
    uncoloured = started("check", troubled_day, FORCE_COLOR="1", NO_COLOR="1", TERM="xterm").stdout.decode()
    assert "\x1b[31m" not in uncoloured


def test_a_missing_file_is_one_line_and_3(tmp_path: Path) -> None:
    done = started("cost", tmp_path / "no such.json")
    assert (done.returncode, done.stdout) == (3, b"")
    assert done.stderr.count(b"\n") == 1
    assert b"no such.json" in done.stderr


def test_a_file_alone_is_opened_in_the_window(tmp_path: Path) -> None:
    """A desktop starts `binder FILE` for a file that was clicked; here without a screen, which the window says."""
    variables = dict.fromkeys(("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"), "")
    done = started(tmp_path / "clicked.binder", **variables)
    assert done.returncode == 3
    assert b"window" in done.stderr
