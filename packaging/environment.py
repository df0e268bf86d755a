"""The virtual environment that both commands share: made in `.venv`, filled from pyproject.toml, kept till it changes.

Standard library only, and no syntax newer than Python 3.7, so that an old Python still gets to say that it is too old.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from system_packages import CannotSetUpError, see_to_system_packages

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

ROOT = Path(__file__).resolve().parent.parent
VIRTUAL_ENVIRONMENT = ROOT / ".venv"
OLDEST_PYTHON = (3, 11)


def version_complaint(version: tuple[int, int], *, executable: str, script: str) -> str | None:
    """One sentence if this Python is too old for Binder, else None."""
    if version >= OLDEST_PYTHON:
        return None
    return (
        f"Binder needs Python {OLDEST_PYTHON[0]}.{OLDEST_PYTHON[1]} or newer and {executable} is Python "
        f"{version[0]}.{version[1]}: install a newer Python and start {script} with it."
    )


def python_of(environment: Path, *, windows: bool) -> Path:
    """The interpreter inside a virtual environment."""
    return environment / "Scripts" / "python.exe" if windows else environment / "bin" / "python"


def stamp_of(project: bytes, checkout: Path) -> str:
    """What an installation was made from: the text of pyproject.toml, and the folder that it points to."""
    return hashlib.sha256(project + b"\0" + os.fsencode(checkout)).hexdigest()


def is_installed(stamp: str, extras: Iterable[str], noted: str) -> bool:
    """Whether the note left by earlier installations (lines of stamp and extra) covers these extras."""
    lines = set(noted.splitlines())
    return all(f"{stamp} {extra}".rstrip() in lines for extra in ("", *extras))


def requirement(extras: Iterable[str]) -> str:
    """The checkout with its extras, as pip is asked for it."""
    names = ",".join(extras)
    return f".[{names}]" if names else "."


def set_up(*, libraries: Iterable[str], extras: Sequence[str] = ()) -> Path:
    """Make everything ready and give the interpreter to run with.

    Args:
        libraries: shared libraries that the system must have, on Linux.
        extras: optional dependencies of pyproject.toml to install too.

    Raises:
        CannotSetUpError: with what stopped it and how to go on.
    """
    complaint = version_complaint(sys.version_info[:2], executable=sys.executable, script=sys.argv[0])
    if complaint:
        raise CannotSetUpError(complaint)
    see_to_system_packages(libraries)
    python = python_of(VIRTUAL_ENVIRONMENT, windows=os.name == "nt")
    if not _answers(python):
        _make_virtual_environment()
    _install_project(python, extras)
    return python


def _answers(python: Path) -> bool:
    """Whether the environment's pip runs: its Python may be gone since, or its making was cut off."""
    try:
        asked = subprocess.run([python, "-m", "pip", "--version"], check=False, capture_output=True)
    except OSError:
        return False
    return asked.returncode == 0


def _make_virtual_environment() -> None:
    print(f"Making the virtual environment {VIRTUAL_ENVIRONMENT}", flush=True)
    _run_or_stop(
        [sys.executable, "-m", "venv", "--clear", VIRTUAL_ENVIRONMENT],
        otherwise=f"The virtual environment could not be made in {VIRTUAL_ENVIRONMENT}; what Python said stands above.",
    )


def _install_project(python: Path, extras: Sequence[str]) -> None:
    note = VIRTUAL_ENVIRONMENT / "installed.txt"
    stamp = stamp_of((ROOT / "pyproject.toml").read_bytes(), ROOT)
    noted = note.read_text(encoding="utf-8") if note.exists() else ""
    if is_installed(stamp, extras, noted):
        return
    print("Installing what Binder needs; the first time takes a minute or more.", flush=True)
    quiet = [] if sys.stdout.isatty() else ["--quiet"]
    _run_or_stop(
        [python, "-m", "pip", "install", "--disable-pip-version-check", *quiet, "--editable", requirement(extras)],
        otherwise="pip could not install what Binder needs; what it said stands above. "
        "It takes a connection to a package index: look at that, then run this script again.",
    )
    with note.open("a", encoding="utf-8") as file:
        file.writelines(f"{stamp} {extra}".rstrip() + "\n" for extra in ("", *extras))


def _run_or_stop(command: Sequence[str | Path], *, otherwise: str) -> None:
    if subprocess.run(command, check=False, cwd=ROOT).returncode != 0:
        raise CannotSetUpError(otherwise)
