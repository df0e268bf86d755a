"""What Binder needs from the system and pip cannot bring: installed with root's rights, else named to the last word.

Standard library only: this runs before anything is installed.
"""

from __future__ import annotations

import importlib.util
import os
import platform
import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

from qt_libraries import debian_packages, missing_libraries

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping


class CannotSetUpError(Exception):
    """Why setting up stopped and how to go on, in words for the person who started it."""


class PackagesMissingError(CannotSetUpError):
    """Debian packages that only root may install."""

    def __init__(self, packages: Iterable[str]) -> None:
        super().__init__(
            "Binder needs system packages that are not installed here. Run this line, then this script again:\n"
            f"    {install_line(packages)}"
        )


class PackagesRefusedError(CannotSetUpError):
    """Debian packages that apt-get did not install."""

    def __init__(self, packages: Iterable[str]) -> None:
        super().__init__(
            "apt-get did not install what Binder needs; what it said stands above. Mend that, or run by hand:\n"
            f"    {install_line(packages)}"
        )


class PartsMissingError(CannotSetUpError):
    """Libraries, or a part of Python, on a system whose packages we do not know by name."""

    def __init__(self, libraries: Iterable[str], *, without_venv: bool) -> None:
        parts = [*libraries]
        if without_venv:
            parts.append(f"the modules venv and ensurepip of {sys.executable}")
        super().__init__(
            f"Binder needs parts that this system does not have: {', '.join(parts)}. "
            "Install the packages that bring them, then run this script again."
        )


def is_debian_like(release: Mapping[str, str]) -> bool:
    """Whether the system is Debian, Ubuntu or built on one of them (fields of /etc/os-release)."""
    return bool({"debian", "ubuntu"} & {release.get("ID", ""), *release.get("ID_LIKE", "").split()})


def lacks_venv() -> bool:
    """Whether this Python cannot make virtual environments: Debian and Ubuntu ship that part on its own."""
    return any(importlib.util.find_spec(module) is None for module in ("venv", "ensurepip"))


def venv_package(version: tuple[int, int]) -> str:
    """Debian's package with the venv part of the system's own Python of this version."""
    return f"python{version[0]}.{version[1]}-venv"


def install_line(packages: Iterable[str]) -> str:
    """The line a person without root's rights runs (or asks for) to install the packages."""
    return f"sudo apt-get update && sudo apt-get install --yes {' '.join(packages)}"


def see_to_system_packages(wanted: Iterable[str]) -> None:
    """Install what the system lacks if we are root on Debian or Ubuntu; else say exactly what to run.

    Args:
        wanted: the shared libraries that the job at hand takes; only Linux leaves them to the system.

    Raises:
        CannotSetUpError: something is missing that only the person can install.
    """
    libraries = missing_libraries(wanted) if sys.platform == "linux" else ()
    without_venv = lacks_venv()
    if not libraries and not without_venv:
        return
    release = _release()
    if not is_debian_like(release) or (without_venv and sys.base_prefix != "/usr"):
        raise PartsMissingError(libraries, without_venv=without_venv)
    packages = debian_packages(libraries, release)
    if without_venv:
        packages += (venv_package(sys.version_info[:2]),)
    if os.geteuid() != 0 or shutil.which("apt-get") is None:
        raise PackagesMissingError(packages)
    _install(packages)
    still_missing = missing_libraries(libraries)
    if still_missing:
        raise PartsMissingError(still_missing, without_venv=False)


def _release() -> Mapping[str, str]:
    try:
        return platform.freedesktop_os_release()
    except OSError:
        return {}


def _install(packages: tuple[str, ...]) -> None:
    print(f"Installing system packages: {' '.join(packages)}", flush=True)
    silent = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in (
        ["apt-get", "update"],
        ["apt-get", "install", "--yes", "--no-install-recommends", *packages],
    ):
        finished = subprocess.run(
            command, env=silent, check=False, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
        )
        if finished.returncode != 0:
            print(finished.stdout.decode(errors="replace"), file=sys.stderr)
            raise PackagesRefusedError(packages)
