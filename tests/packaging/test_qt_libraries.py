from __future__ import annotations

import importlib.util
import struct
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType

import pytest

Script = Callable[[str], ModuleType]

BOOKWORM = {"ID": "debian", "VERSION_CODENAME": "bookworm"}
TRIXIE = {"ID": "debian", "VERSION_CODENAME": "trixie"}
JAMMY = {"ID": "ubuntu", "ID_LIKE": "debian", "VERSION_CODENAME": "jammy", "UBUNTU_CODENAME": "jammy"}
NOBLE = {"ID": "ubuntu", "ID_LIKE": "debian", "VERSION_CODENAME": "noble", "UBUNTU_CODENAME": "noble"}
BUILT_ON_NOBLE = {"ID": "other", "ID_LIKE": "ubuntu debian", "VERSION_CODENAME": "own", "UBUNTU_CODENAME": "noble"}
BUILT_ON_BOOKWORM = {"ID": "other", "ID_LIKE": "debian", "VERSION_CODENAME": "own", "DEBIAN_CODENAME": "bookworm"}


@pytest.mark.parametrize("release", [BOOKWORM, JAMMY, BUILT_ON_BOOKWORM])
def test_an_older_release_gets_the_old_name_of_glib(script: Script, release: dict[str, str]) -> None:
    packages = script("qt_libraries").debian_packages(["libglib-2.0.so.0", "libEGL.so.1"], release)
    assert packages == ("libegl1", "libglib2.0-0")


@pytest.mark.parametrize("release", [TRIXIE, NOBLE, BUILT_ON_NOBLE, {"ID": "debian"}])
def test_a_newer_or_unnamed_release_gets_the_new_name_of_glib(script: Script, release: dict[str, str]) -> None:
    packages = script("qt_libraries").debian_packages(["libglib-2.0.so.0", "libEGL.so.1"], release)
    assert packages == ("libegl1", "libglib2.0-0t64")


def test_a_package_that_brings_two_libraries_is_named_once(script: Script) -> None:
    both = ["libglib-2.0.so.0", "libgthread-2.0.so.0"]
    assert script("qt_libraries").debian_packages(both, BOOKWORM) == ("libglib2.0-0",)


def test_each_screen_adds_its_own_libraries_to_those_for_drawing(script: Script) -> None:
    qt_libraries = script("qt_libraries").qt_libraries
    drawing = set(qt_libraries())
    assert "libEGL.so.1" in drawing
    assert "libxcb-cursor.so.0" not in drawing
    assert "libxcb-cursor.so.0" in qt_libraries(["x11"])
    assert "libwayland-client.so.0" in qt_libraries(["wayland"])
    assert set(qt_libraries(["x11", "wayland"])) == {*qt_libraries(["x11"]), *qt_libraries(["wayland"])}
    assert set(qt_libraries(["darwin"])) == drawing


def test_only_what_the_loader_does_not_find_is_missing(script: Script) -> None:
    module = script("qt_libraries")
    assert module.missing_libraries(["a.so", "b.so", "c.so"], is_there=lambda name: name == "b.so") == ("a.so", "c.so")
    assert not module.loads("libthat-no-one-has.so.99")


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux leaves these libraries to the system")
def test_the_loader_is_really_asked(script: Script) -> None:
    assert script("qt_libraries").loads("libc.so.6")


@pytest.mark.skipif(sys.platform != "linux", reason="ELF files are Linux's")
@pytest.mark.parametrize(
    ("screen", "plugin"), [("drawing", "libqoffscreen.so"), ("x11", "libqxcb.so"), ("wayland", "libqwayland.so")]
)
def test_the_table_names_everything_that_the_installed_qt_asks_of_the_system(
    script: Script, screen: str, plugin: str
) -> None:
    folder = _pyside()
    modules = ("QtCore", "QtGui", "QtWidgets", "QtSvg", "QtPrintSupport", "QtPdf", "QtPdfWidgets", "QtTest")
    files = [folder / "Qt" / "plugins" / "platforms" / plugin, *(folder / f"{name}.abi3.so" for name in modules)]
    asked = set(_asked_of_the_system(files, folder))
    assert asked - _PARTS_OF_EVERY_SYSTEM == set(script("qt_libraries").qt_libraries([screen]))


# What a Python from Debian, or any wheel with C++ in it, has loaded already (glibc and the compiler's own runtime).
_PARTS_OF_EVERY_SYSTEM = {
    *("ld-linux-x86-64.so.2", "ld-linux-aarch64.so.1", "libc.so.6", "libdl.so.2", "libm.so.6", "libpthread.so.0"),
    *("libresolv.so.2", "librt.so.1", "libgcc_s.so.1", "libstdc++.so.6"),
}


def _pyside() -> Path:
    spec = importlib.util.find_spec("PySide6")
    assert spec
    assert spec.origin
    return Path(spec.origin).parent


def _asked_of_the_system(files: list[Path], folder: Path) -> Iterator[str]:
    """Names that these ELF files, and what they need of the wheel itself, need from outside the wheel."""
    shipped = {
        file.name: file
        for home in (folder, folder / "Qt" / "lib", folder.parent / "shiboken6")
        for file in home.glob("*.so*")
    }
    waiting, seen = list(files), set(files)
    while waiting:
        for name in _needed(waiting.pop().read_bytes()):
            if name not in shipped:
                yield name
            elif shipped[name] not in seen:
                seen.add(shipped[name])
                waiting.append(shipped[name])


def _needed(elf: bytes) -> Iterator[str]:
    """DT_NEEDED of a little-endian 64-bit ELF file (System V ABI: program headers, then the dynamic section)."""
    (headers,) = struct.unpack_from("<Q", elf, 32)
    size, count = struct.unpack_from("<HH", elf, 54)
    segments = [struct.unpack_from("<IIQQQQQQ", elf, headers + size * index) for index in range(count)]
    (dynamic,) = [(offset, length) for kind, _, offset, _, _, length, _, _ in segments if kind == 2]
    entries = [struct.unpack_from("<QQ", elf, at) for at in range(dynamic[0], sum(dynamic), 16)]
    (names_address,) = [value for tag, value in entries if tag == 5]
    (names,) = [
        names_address - address + offset
        for kind, _, offset, address, _, length, _, _ in segments
        if kind == 1 and address <= names_address < address + length
    ]
    for value in (value for tag, value in entries if tag == 1):
        yield elf[names + value : elf.index(b"\0", names + value)].decode()
