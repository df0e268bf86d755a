"""The scripts in packaging/ are started by path, so the tests load them by path."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable
    from types import ModuleType

PACKAGING = Path(__file__).resolve().parents[2] / "packaging"


@pytest.fixture
def script(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], ModuleType]:
    """Load packaging/NAME.py under a name that hides nothing; its neighbours are found as when it is started."""
    monkeypatch.syspath_prepend(PACKAGING)

    def load(name: str) -> ModuleType:
        spec = importlib.util.spec_from_file_location(f"script_{name}", PACKAGING / f"{name}.py")
        assert spec
        assert spec.loader
        module = importlib.util.module_from_spec(spec)
        monkeypatch.setitem(sys.modules, spec.name, module)
        spec.loader.exec_module(module)
        return module

    return load
