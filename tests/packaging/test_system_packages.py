from __future__ import annotations

import subprocess
from collections.abc import Callable
from types import ModuleType

import pytest

Script = Callable[[str], ModuleType]

BOOKWORM = {"ID": "debian", "VERSION_CODENAME": "bookworm"}


@pytest.fixture
def bare(script: Script, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """A Debian 12 without Qt's libraries, on which nothing is really run."""
    module = script("system_packages")
    monkeypatch.setattr(module.sys, "platform", "linux")
    monkeypatch.setattr(module, "lacks_venv", lambda: False)
    monkeypatch.setattr(module, "missing_libraries", tuple)
    monkeypatch.setattr(module, "_release", lambda: BOOKWORM)
    monkeypatch.setattr(module.os, "geteuid", lambda: 1000, raising=False)
    monkeypatch.setattr(module.shutil, "which", lambda _name: "/usr/bin/apt-get")
    monkeypatch.setattr(module.subprocess, "run", lambda *_, **__: pytest.fail("ran something"))
    return module


def test_without_root_the_exact_line_is_said_and_nothing_is_run(bare: ModuleType) -> None:
    with pytest.raises(bare.PackagesMissingError) as stopped:
        bare.see_to_system_packages(["libGL.so.1", "libEGL.so.1"])
    line = str(stopped.value).splitlines()[-1].strip()
    assert line == "sudo apt-get update && sudo apt-get install --yes libegl1 libgl1"


def test_without_root_a_missing_venv_stands_on_the_same_line(bare: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bare, "lacks_venv", lambda: True)
    monkeypatch.setattr(bare.sys, "base_prefix", "/usr")
    monkeypatch.setattr(bare.sys, "version_info", (3, 12, 1))
    with pytest.raises(bare.PackagesMissingError, match=r"--yes libegl1 python3\.12-venv$"):
        bare.see_to_system_packages(["libEGL.so.1"])


def test_a_python_that_is_not_debians_own_gets_no_package_of_debians(
    bare: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bare, "lacks_venv", lambda: True)
    monkeypatch.setattr(bare.sys, "base_prefix", "/opt/python")
    with pytest.raises(bare.PartsMissingError, match="venv and ensurepip"):
        bare.see_to_system_packages([])


def test_on_another_linux_the_missing_libraries_are_named(bare: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bare, "_release", lambda: {"ID": "fedora"})
    with pytest.raises(bare.PartsMissingError, match=r"libGL\.so\.1, libEGL\.so\.1"):
        bare.see_to_system_packages(["libGL.so.1", "libEGL.so.1"])


def test_root_updates_the_lists_and_then_installs(bare: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    ran = _as_root(bare, monkeypatch, code=0)
    missing = iter([("libGL.so.1",), ()])
    monkeypatch.setattr(bare, "missing_libraries", lambda _wanted: next(missing))
    bare.see_to_system_packages(["libGL.so.1"])
    assert [command[1] for command in ran] == ["update", "install"]
    assert ran[1][-1] == "libgl1"


def test_root_hears_of_libraries_that_are_missing_even_then(bare: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    _as_root(bare, monkeypatch, code=0)
    with pytest.raises(bare.PartsMissingError, match=r"libGL\.so\.1"):
        bare.see_to_system_packages(["libGL.so.1"])


def test_root_is_told_the_line_and_what_apt_get_said_if_it_fails(
    bare: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    ran = _as_root(bare, monkeypatch, code=100)
    with pytest.raises(bare.PackagesRefusedError, match="install --yes libgl1"):
        bare.see_to_system_packages(["libGL.so.1"])
    assert len(ran) == 1
    assert "no room left" in capsys.readouterr().err


@pytest.mark.parametrize("platform", ["darwin", "win32"])
def test_macos_and_windows_are_not_asked_for_libraries(
    bare: ModuleType, monkeypatch: pytest.MonkeyPatch, platform: str
) -> None:
    monkeypatch.setattr(bare.sys, "platform", platform)
    monkeypatch.setattr(bare, "missing_libraries", lambda _wanted: pytest.fail("asked"))
    bare.see_to_system_packages(["libGL.so.1"])


def test_a_system_that_has_everything_is_left_alone(bare: ModuleType) -> None:
    bare.see_to_system_packages([])


@pytest.mark.parametrize(
    ("release", "like_debian"),
    [
        (BOOKWORM, True),
        ({"ID": "ubuntu", "ID_LIKE": "debian"}, True),
        ({"ID": "other", "ID_LIKE": "ubuntu debian"}, True),
        ({"ID": "fedora"}, False),
        ({"ID": "other", "ID_LIKE": "rhel fedora"}, False),
        ({}, False),
    ],
)
def test_debian_and_what_is_built_on_it_are_told_from_other_systems(
    script: Script, release: dict[str, str], *, like_debian: bool
) -> None:
    assert script("system_packages").is_debian_like(release) is like_debian


def _as_root(module: ModuleType, monkeypatch: pytest.MonkeyPatch, *, code: int) -> list[list[str]]:
    ran: list[list[str]] = []

    def run(command: list[str], **_: object) -> subprocess.CompletedProcess[bytes]:
        ran.append(command)
        return subprocess.CompletedProcess(command, code, stdout=b"no room left")

    monkeypatch.setattr(module.os, "geteuid", lambda: 0, raising=False)
    monkeypatch.setattr(module.subprocess, "run", run)
    return ran
