r"""Set everything up and run every check: lint, format, types, the walls between the rooms, tests.

    python3 packaging/test.py                 py packaging\test.py
    python3 packaging/test.py -k shopping     arguments go to pytest

All checks run even if one fails; the exit code is 0 only if all passed. Standard library only.
"""

from __future__ import annotations

import os
import subprocess
import sys
from typing import TYPE_CHECKING

import environment
from qt_libraries import qt_libraries
from system_packages import CannotSetUpError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

_LINT_IMPORTS = "import sys; from importlinter.cli import lint_imports_command; sys.exit(lint_imports_command())"


def checks(pytest_arguments: Sequence[str]) -> dict[str, list[str]]:
    """Name of each check -> what the environment's Python is given to run it, in running order."""
    return {
        "lint": ["-m", "ruff", "check", "."],
        "format": ["-m", "ruff", "format", "--check", "."],
        "types": ["-m", "mypy"],
        "rooms": ["-c", _LINT_IMPORTS],
        "tests": ["-m", "pytest", *pytest_arguments],
    }


def summary(codes: Mapping[str, int]) -> str:
    """A line for each check: its name and whether it passed."""
    return "\n".join(f"{name:<8}{'passed' if code == 0 else f'FAILED ({code})'}" for name, code in codes.items())


def main(arguments: Sequence[str]) -> int:
    """Run it; gives the exit code."""
    try:
        python = environment.set_up(libraries=qt_libraries(), extras=["test"])
    except CannotSetUpError as problem:
        print(problem, file=sys.stderr)
        return 1
    codes = {name: _run(name, python, command) for name, command in checks(arguments).items()}
    print(f"\n== summary ==\n{summary(codes)}", flush=True)
    return 1 if any(codes.values()) else 0


def _run(name: str, python: Path, command: Sequence[str]) -> int:
    print(f"\n== {name} ==", flush=True)
    variables = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONUTF8": "1"}
    return subprocess.run([python, *command], check=False, cwd=environment.ROOT, env=variables).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
