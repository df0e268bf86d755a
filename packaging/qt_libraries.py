"""Which shared libraries of the system Qt needs on Linux, and the Debian packages that bring them.

Standard library only: this runs before anything is installed.
"""

from __future__ import annotations

import ctypes
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

# Library -> Debian package: what the Qt libraries of PySide6 6.12 that Binder uses name as NEEDED in their ELF headers
# (read with readelf; a test reads them again from the installed wheel). The packages are those that dpkg -S names.
_DRAWING = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11.so.6": "libx11-6",
    "libbrotlicommon.so.1": "libbrotli1",
    "libbrotlidec.so.1": "libbrotli1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgssapi_krb5.so.2": "libgssapi-krb5-2",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libz.so.1": "zlib1g",
    "libzstd.so.1": "libzstd1",
}
_X11 = {
    "libX11-xcb.so.1": "libx11-xcb1",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}
_WAYLAND = {
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
}
_OF_SCREEN = {"x11": _X11, "wayland": _WAYLAND}
_PACKAGE_OF = {**_DRAWING, **_X11, **_WAYLAND}

# Packages renamed when 32-bit machines got a 64-bit clock: Debian 13 and Ubuntu 24.04 are the first releases with the
# new names (from memory; tried on Debian 12 and 13). Older ones are told by their code names; all others are newer.
_RENAMED = {"libglib2.0-0": "libglib2.0-0t64"}
_RELEASES_WITH_OLD_NAMES = {"buster", "bullseye", "bookworm", "bionic", "focal", "jammy", "kinetic", "lunar", "mantic"}


def qt_libraries(screens: Iterable[str] = ()) -> tuple[str, ...]:
    """The shared libraries Qt loads on Linux: for drawing always, and for each kind of screen its own."""
    return (*_DRAWING, *(library for screen in screens for library in _OF_SCREEN.get(screen, ())))


def loads(library: str) -> bool:
    """Whether the system's loader finds this shared library."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def missing_libraries(wanted: Iterable[str], *, is_there: Callable[[str], bool] = loads) -> tuple[str, ...]:
    """Those of the wanted libraries that the system does not have, in the order asked."""
    return tuple(library for library in wanted if not is_there(library))


def debian_packages(libraries: Iterable[str], release: Mapping[str, str]) -> tuple[str, ...]:
    """The packages that bring these libraries, sorted, under the names of this release (fields of /etc/os-release)."""
    packages = {_PACKAGE_OF[library] for library in libraries}
    if _code_name(release) not in _RELEASES_WITH_OLD_NAMES:
        packages = {_RENAMED.get(package, package) for package in packages}
    return tuple(sorted(packages))


def _code_name(release: Mapping[str, str]) -> str:
    """The code name of the Debian or Ubuntu release that a distribution is, or is built on."""
    for field in ("UBUNTU_CODENAME", "DEBIAN_CODENAME", "VERSION_CODENAME"):
        if release.get(field):
            return release[field]
    return ""
