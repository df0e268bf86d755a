from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import pytest

Script = Callable[[str], ModuleType]


@pytest.mark.parametrize("version", [(3, 11), (3, 12), (3, 20), (4, 0)])
def test_a_new_enough_python_is_taken_without_a_word(script: Script, version: tuple[int, int]) -> None:
    assert script("environment").version_complaint(version, executable="/usr/bin/python3", script="run.py") is None


@pytest.mark.parametrize("version", [(3, 10), (3, 9), (2, 7)])
def test_an_old_python_is_refused_in_one_sentence_with_what_to_do(script: Script, version: tuple[int, int]) -> None:
    says = script("environment").version_complaint(version, executable="/usr/bin/python3", script="run.py")
    assert f"{version[0]}.{version[1]}" in says
    assert "3.11 or newer" in says
    assert "/usr/bin/python3" in says
    assert "install a newer Python and start run.py with it" in says
    assert "\n" not in says


def test_the_interpreter_stands_where_each_system_puts_it(script: Script) -> None:
    python_of = script("environment").python_of
    assert python_of(Path("e"), windows=False) == Path("e/bin/python")
    assert python_of(Path("e"), windows=True) == Path("e/Scripts/python.exe")


def test_another_pyproject_or_another_folder_is_another_installation(script: Script) -> None:
    stamp_of = script("environment").stamp_of
    first = stamp_of(b"[project]", Path("/here"))
    assert first == stamp_of(b"[project]", Path("/here"))
    assert len({first, stamp_of(b"[project] ", Path("/here")), stamp_of(b"[project]", Path("/there"))}) == 3


@pytest.mark.parametrize(
    ("noted", "extras", "installed"),
    [
        ("", [], False),
        ("abc\n", [], True),
        ("abc\n", ["test"], False),
        ("abc\nabc test\n", ["test"], True),
        ("abc\nabc test\n", [], True),
        ("old\nold test\nabc\n", ["test"], False),
    ],
)
def test_an_installation_is_skipped_only_if_it_was_made_from_this_pyproject_with_these_extras(
    script: Script, noted: str, extras: list[str], *, installed: bool
) -> None:
    assert script("environment").is_installed("abc", extras, noted) is installed


def test_pip_is_asked_for_the_checkout_with_its_extras(script: Script) -> None:
    requirement = script("environment").requirement
    assert requirement([]) == "."
    assert requirement(["test"]) == ".[test]"
    assert requirement(["test", "more"]) == ".[test,more]"


def test_an_old_python_stops_setting_up_before_anything_is_made(
    script: Script, monkeypatch: pytest.MonkeyPatch
) -> None:
    environment = script("environment")
    monkeypatch.setattr(environment.sys, "version_info", (3, 9, 1))
    monkeypatch.setattr(environment, "see_to_system_packages", lambda _wanted: pytest.fail("went on"))
    with pytest.raises(environment.CannotSetUpError, match="newer Python"):
        environment.set_up(libraries=[])
