r"""Set everything up and do the main job: open the window on the sample binder or, without a screen, print it to files.

    python3 packaging/run.py                  py packaging\run.py
    python3 packaging/run.py --print          paper, even with a screen
    python3 packaging/run.py --paper letter   paper of that size

Standard library only.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING, NoReturn

import environment
from qt_libraries import qt_libraries
from system_packages import CannotSetUpError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

SAMPLE = environment.ROOT / "sample_binders" / "chickpeas.json"
WORKING_BINDER = environment.ROOT / "my_binders" / "chickpeas.binder"
PRINT_SET = environment.ROOT / "print_set"
A_CHECK_FAILED = 1


@dataclass(frozen=True)
class Wish:
    """What the person asked for: `paper` is the size for the print set, `None` the program's own choice."""

    print_set: bool
    paper: str | None


class _OneSentenceParser(argparse.ArgumentParser):
    """Refuses what it does not know in one sentence instead of a usage text."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"packaging/run.py takes --print and --paper SIZE, nothing else: {message}.\n")


def wish_of(arguments: Sequence[str]) -> Wish:
    """Read the command's arguments; a paper size alone also asks for paper."""
    parser = _OneSentenceParser(prog="packaging/run.py", allow_abbrev=False, description=__doc__.splitlines()[0])
    parser.add_argument("--print", action="store_true", dest="print_set", help="write the print set, open no window")
    parser.add_argument("--paper", metavar="SIZE", help="its paper, such as a4 or letter; implies --print")
    asked = parser.parse_args(arguments)
    return Wish(print_set=asked.print_set or asked.paper is not None, paper=asked.paper)


def screens_of(variables: Mapping[str, str], *, platform: str) -> tuple[str, ...]:
    """The kinds of screen there are: macOS and Windows always have one, other systems name theirs in a variable."""
    if platform in {"darwin", "win32"}:
        return (platform,)
    named = {"x11": "DISPLAY", "wayland": "WAYLAND_DISPLAY"}
    return tuple(screen for screen, variable in named.items() if variables.get(variable))


def import_command(python: Path) -> list[str | Path]:
    """The command that makes the working binder from the sample."""
    return [python, "-m", "binder", "import", SAMPLE, "--into", WORKING_BINDER]


def paper_commands(python: Path, wish: Wish) -> list[list[str | Path]]:
    """The commands that write the print set and show costs and checks, in that order."""
    size = ["--paper", wish.paper] if wish.paper else []
    return [
        [python, "-m", "binder", "print", WORKING_BINDER, "--out", PRINT_SET, *size],
        [python, "-m", "binder", "cost", WORKING_BINDER],
        [python, "-m", "binder", "check", WORKING_BINDER],
    ]


def main(arguments: Sequence[str]) -> int:
    """Run it; gives the exit code."""
    wish = wish_of(arguments)
    screens = () if wish.print_set else screens_of(os.environ, platform=sys.platform)
    try:
        python = environment.set_up(libraries=() if wish.print_set else qt_libraries(screens))
    except CannotSetUpError as problem:
        print(problem, file=sys.stderr)
        if not wish.print_set:
            print("Paper alone needs no Qt: python3 packaging/run.py --print", file=sys.stderr)
        return 1
    if not WORKING_BINDER.exists():
        WORKING_BINDER.parent.mkdir(exist_ok=True)
        code = _binder(import_command(python))
        if code != 0:
            return code
    return _open_window(python) if screens else _write_paper(python, wish)


def _open_window(python: Path) -> int:
    print(f"Opening {WORKING_BINDER}", flush=True)
    code = _binder([python, "-m", "binder", "open", WORKING_BINDER])
    if code != 0:
        print("The window ended with a fault. Paper needs no window: python3 packaging/run.py --print", file=sys.stderr)
    return code


def _write_paper(python: Path, wish: Wish) -> int:
    *writing, checking = paper_commands(python, wish)
    for command in writing:
        code = _binder(command)
        if code != 0:
            return code
    code = _binder(checking)
    if code not in {0, A_CHECK_FAILED}:
        return code
    if code == A_CHECK_FAILED:
        print("\nChecks failed: that is the binder's own state, not a fault of the program, and says where to look.")
    print(f"\nThe print set is in {PRINT_SET}\nThe binder is {WORKING_BINDER}")
    return 0


def _binder(command: Sequence[str | Path]) -> int:
    # Windows' own code pages lack ½ and ⅓.
    return subprocess.run(command, check=False, cwd=environment.ROOT, env={**os.environ, "PYTHONUTF8": "1"}).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
