"""The options of `binder print`: each does what it says, and what does not fit is wrong usage in one line."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.cli.conftest import Run, written
from tests.kitchen_binder import small_binder


def _words(file: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(file).pages).split())


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--from-metres", "9"], "Cards are made to be read from 0.5 to 3.0 metres, not from 9."),
        (["--from-metres", "nan"], "Cards are made to be read from 0.5 to 3.0 metres"),
        (["--style", "fancy"], "No style is called “fancy”. Choose plain or on-camera."),
        (["--margin", "99"], "A margin of “99” does not do."),
        (["--sheet", "a9"], "No paper is called “a9”."),
        (["--backs", "up"], "Backs are not printed “up”. Choose none, long-edge or short-edge."),
        (["--labels", "4 by 4"], "The labels “4 by 4” do not do: they cannot be read."),
        (["--names", "all"], "“all” names no files."),
        (["--every-shoot", "--shoot", "Bean day"], "Either one shoot or every shoot"),
    ],
)
def test_what_does_not_fit_is_one_line_and_wrong_usage_and_nothing_is_written(
    run: Run, bean_day: Path, tmp_path: Path, arguments: list[str], says: str
) -> None:
    result = run("print", bean_day, "--out", tmp_path / "out", "--only", "cards", *arguments)
    assert result.exit_code == 2
    assert says in result.stderr
    assert result.stderr.count("\n") == 1
    assert not (tmp_path / "out").exists()


def test_all_in_one_file_by_a_pattern(run: Run, bean_day: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    result = run("print", bean_day, "--out", out, "--together", "--names", "{shoot}", "--plan-seconds", 0)
    assert result.exit_code == 0
    assert [one.name for one in out.iterdir()] == ["bean-day.pdf"]
    assert len(PdfReader(out / "bean-day.pdf").outline) > 10


def test_every_shoot_of_a_binder(run: Run, tmp_path: Path) -> None:
    second = replace(small_binder().shoots["day"], id="two", name="Second day")
    file = written(small_binder(second), tmp_path / "two.json")
    result = run("print", file, "--out", tmp_path / "out", "--every-shoot", "--only", "shopping")
    assert result.exit_code == 0
    assert {one.name for one in (tmp_path / "out").iterdir()} == {
        "bean-day-shopping-list.pdf",
        "second-day-shopping-list.pdf",
    }


def test_cards_of_a_style_read_from_afar_several_to_a_sheet_with_their_backs(
    run: Run, bean_day: Path, tmp_path: Path
) -> None:
    plain, chosen = tmp_path / "plain", tmp_path / "chosen"
    usual = ["print", bean_day, "--only", "cards", "--paper", "a6", "--plan-seconds", 0, "--out"]
    assert run(*usual, plain).exit_code == 0
    options = [
        "--from-metres",
        "1",
        "--style",
        "on-camera",
        "--sheet",
        "a4",
        "--backs",
        "long-edge",
        "--margin",
        "laser",
    ]
    assert run(*usual, chosen, *options).exit_code == 0
    small, sheets = (PdfReader(folder / "station-cards.pdf") for folder in (plain, chosen))
    assert round(float(small.pages[0].mediabox.width) / 72 * 25.4) == 105
    assert round(float(sheets.pages[0].mediabox.width) / 72 * 25.4) == 210
    assert len(sheets.pages) % 2 == 0, "a back for each front"


def test_labels_by_their_measures_after_those_that_are_gone(run: Run, bean_day: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    options = ["--only", "labels", "--labels", "a5 1x3 120x60", "--used-labels", "2", "--plan-seconds", "0"]
    result = run("print", bean_day, "--out", out, *options, "--json")
    (file,) = json.loads(result.stdout)["files"]
    assert file["faults"] == []
    reader = PdfReader(out / "container-labels.pdf")
    assert round(float(reader.pages[0].mediabox.height) / 72 * 25.4) == 210
    assert reader.pages[0].extract_text().count("use by") == 1


def test_without_a_plan_sheets_of_times_say_so(run: Run, bean_day: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    result = run("print", bean_day, "--out", out, "--only", "running-order", "--plan-seconds", 0)
    assert result.exit_code == 0
    assert "There is no day plan to take times from" in _words(out / "running-order.pdf")
