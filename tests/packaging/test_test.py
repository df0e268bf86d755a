from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import pytest

Script = Callable[[str], ModuleType]
ROOT = Path(__file__).resolve().parents[2]


def test_arguments_go_to_pytest_and_to_nothing_else(script: Script) -> None:
    checks = script("test").checks(["-k", "shopping"])
    assert [name for name, command in checks.items() if "shopping" in command] == ["tests"]


def test_every_check_runs_even_if_the_first_fails(
    script: Script, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    module = script("test")
    ran: list[str] = []

    def run(name: str, _python: Path, _command: list[str]) -> int:
        ran.append(name)
        return int(name == "lint")

    monkeypatch.setattr(module.environment, "set_up", lambda **_: Path("python"))
    monkeypatch.setattr(module, "_run", run)
    assert module.main([]) == 1
    assert ran == ["lint", "format", "types", "rooms", "tests"]
    lines = capsys.readouterr().out.splitlines()
    assert "lint    FAILED (1)" in lines
    assert "tests   passed" in lines


def test_it_passes_only_if_all_pass(script: Script, monkeypatch: pytest.MonkeyPatch) -> None:
    module = script("test")
    monkeypatch.setattr(module.environment, "set_up", lambda **_: Path("python"))
    monkeypatch.setattr(module, "_run", lambda *_: 0)
    assert module.main([]) == 0


def test_the_program_that_ci_starts_is_this_one_alone() -> None:
    lines = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if "python" in line] == ["exec python3 packaging/test.py"]
