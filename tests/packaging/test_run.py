from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import pytest

Script = Callable[[str], ModuleType]
PYTHON = Path("python")


@pytest.fixture
def run(script: Script, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> ModuleType:
    """The script on a Linux machine without a screen, with everything set up and a folder of its own."""
    module = script("run")
    monkeypatch.setattr(module.sys, "platform", "linux")
    monkeypatch.delenv("DISPLAY", raising=False)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    monkeypatch.setattr(module, "WORKING_BINDER", tmp_path / "my_binders" / "chickpeas.binder")
    monkeypatch.setattr(module, "PRINT_SET", tmp_path / "print_set")
    monkeypatch.setattr(module.environment, "set_up", lambda **_: PYTHON)
    return module


@pytest.fixture
def commands(run: ModuleType, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The commands of the program that the script ran, by name; each ends well."""
    return _ending_with(run, monkeypatch, {})


@pytest.mark.parametrize(
    ("platform", "variables", "screens"),
    [
        ("linux", {}, ()),
        ("linux", {"DISPLAY": ""}, ()),
        ("linux", {"DISPLAY": ":0"}, ("x11",)),
        ("linux", {"WAYLAND_DISPLAY": "wayland-0"}, ("wayland",)),
        ("linux", {"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, ("x11", "wayland")),
        ("darwin", {}, ("darwin",)),
        ("win32", {}, ("win32",)),
    ],
)
def test_a_screen_is_told_by_the_system_and_its_variables(
    script: Script, platform: str, variables: dict[str, str], screens: tuple[str, ...]
) -> None:
    assert script("run").screens_of(variables, platform=platform) == screens


def test_without_a_screen_the_print_set_the_costs_and_the_checks_are_given(
    run: ModuleType, commands: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert run.main([]) == 0
    assert commands == ["import", "print", "cost", "check"]
    assert str(run.PRINT_SET) in capsys.readouterr().out


def test_with_a_screen_the_window_opens_on_the_working_binder(
    run: ModuleType, commands: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("DISPLAY", ":0")
    assert run.main([]) == 0
    assert commands == ["import", "open"]


@pytest.mark.parametrize("arguments", [["--print"], ["--paper", "letter"]])
def test_asking_for_paper_opens_no_window_and_asks_the_system_for_nothing_of_qt(
    run: ModuleType, commands: list[str], monkeypatch: pytest.MonkeyPatch, arguments: list[str]
) -> None:
    wanted: list[object] = []

    def set_up(*, libraries: object) -> Path:
        wanted.append(libraries)
        return PYTHON

    monkeypatch.setenv("DISPLAY", ":0")
    monkeypatch.setattr(run.environment, "set_up", set_up)
    assert run.main(arguments) == 0
    assert commands == ["import", "print", "cost", "check"]
    assert wanted == [()]


def test_a_binder_that_was_worked_in_is_kept(run: ModuleType, commands: list[str]) -> None:
    run.WORKING_BINDER.parent.mkdir()
    run.WORKING_BINDER.touch()
    assert run.main([]) == 0
    assert "import" not in commands


def test_the_paper_size_is_passed_on(run: ModuleType) -> None:
    letter, own = (run.paper_commands(PYTHON, run.wish_of(given))[0] for given in (["--paper", "letter"], ["--print"]))
    assert letter[-2:] == ["--paper", "letter"]
    assert "--paper" not in own


def test_a_failed_check_is_no_fault_of_the_program(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _ending_with(run, monkeypatch, {"check": 1})
    assert run.main([]) == 0
    assert "not a fault of the program" in capsys.readouterr().out


@pytest.mark.parametrize("command", ["import", "print", "cost", "check"])
def test_any_other_failure_is_passed_on_and_nothing_follows(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    ran = _ending_with(run, monkeypatch, {command: 3})
    assert run.main([]) == 3
    assert ran[-1] == command


@pytest.mark.parametrize("arguments", [["--colour"], ["my.binder"], ["--paper"]])
def test_what_it_does_not_know_is_refused_in_one_line(
    script: Script, capsys: pytest.CaptureFixture[str], arguments: list[str]
) -> None:
    with pytest.raises(SystemExit, match="2"):
        script("run").wish_of(arguments)
    says = capsys.readouterr().err
    assert says.count("\n") == 1
    assert arguments[0] in says


def test_what_stops_setting_up_is_said_without_a_traceback(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    stopped = run.CannotSetUpError("The line to run")

    def stop(**_: object) -> Path:
        raise stopped

    monkeypatch.setattr(run.environment, "set_up", stop)
    assert run.main([]) == 1
    assert capsys.readouterr().err.splitlines()[0] == "The line to run"


def test_the_sample_is_in_the_checkout(script: Script) -> None:
    assert script("run").SAMPLE.is_file()


def _ending_with(run: ModuleType, monkeypatch: pytest.MonkeyPatch, codes: dict[str, int]) -> list[str]:
    ran: list[str] = []

    def binder(command: list[str]) -> int:
        assert command[:3] == [PYTHON, "-m", "binder"]
        ran.append(command[3])
        return codes.get(command[3], 0)

    monkeypatch.setattr(run, "_binder", binder)
    return ran
