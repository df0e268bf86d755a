"""What the tests of commands share: a runner in a plain terminal of 80 columns, and binders as files."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from binder.cli.main import app
from binder.exchange.json_document import write_json
from binder.kitchen.binder import Binder
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from binder.storage.contents import Contents
from binder.storage.new_file import create_file
from tests.kitchen_binder import small_binder

Run = Callable[..., Result]
Ask = Callable[..., Any]


@pytest.fixture
def run() -> Run:
    """Run a command as someone would type it, in a terminal of 80 columns without colour."""
    runner = CliRunner(env={"COLUMNS": "80", "NO_COLOR": "1", "BINDER_TRACEBACK": None})

    def command(*arguments: object) -> Result:
        return runner.invoke(app, [str(argument) for argument in arguments], prog_name="binder")

    return command


@pytest.fixture
def ask(run: Run) -> Ask:
    """What a command answers with `--json`, read back."""

    def answer(*arguments: object) -> Any:  # noqa: ANN401 - JSON is anything
        result = run(*arguments, "--json")
        assert result.stderr == ""
        return json.loads(result.stdout)

    return answer


@pytest.fixture
def bean_day(tmp_path: Path) -> Path:
    """The small binder as a JSON file: nothing stops its shoot."""
    return written(small_binder(), tmp_path / "bean day.json")


@pytest.fixture
def bean_file(tmp_path: Path) -> Path:
    """The small binder as a binder file."""
    path = tmp_path / "bean day.binder"
    create_file(path, Contents(small_binder()))
    return path


@pytest.fixture
def troubled_day(tmp_path: Path) -> Path:
    """The same with a dish over its cap, too little of the base, and a food without a price."""
    return written(troubled_binder(), tmp_path / "troubled day.json")


def troubled_binder() -> Binder:
    small = small_binder()
    return small_binder(
        replace(small.dishes["dish-spread"], cap=50),
        replace(small.shoots["day"], base_amount=300, base_unit="g"),
        Food(id="sumac", name="sumac"),
        Line(id="sumac-line", step="bread/2", position=1, food="sumac", low=1, high=1, unit="g"),
    )


def written(binder: Binder, path: Path) -> Path:
    write_json(binder, path)
    return path


def squeezed(text: str) -> str:
    """A table without its alignment: single blanks between cells."""
    return "\n".join(" ".join(line.split()) for line in text.splitlines())
