"""`binder print`: the print set in a folder."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.cli.conftest import Run


def test_the_whole_set_is_written_and_listed(run: Run, bean_day: Path, tmp_path: Path) -> None:
    out = tmp_path / "print set" / "today"
    result = run("print", bean_day, "--out", out)
    assert (result.exit_code, result.stderr) == (0, "")
    assert {"station-cards.pdf", "shopping-list.pdf", "mise-list.pdf"} <= {one.name for one in out.iterdir()}
    for one in out.iterdir():
        assert f"{len(PdfReader(one).pages)}  {one}\n" in result.stdout


def test_only_some_sheets_on_a_paper_of_their_own(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("print", bean_day, "--out", tmp_path / "out", "--only", "costs, cards", "--paper", "A6", "--json")
    answer = json.loads(result.stdout)
    assert list(answer) == ["binder", "shoot", "currency", "files", "missing_glyphs"]
    assert [file["sheet"] for file in answer["files"]] == ["costs", "cards"]
    for file in answer["files"]:
        pages = PdfReader(file["path"]).pages
        assert len(pages) == file["pages"]
        sides = (pages[0].mediabox.width, pages[0].mediabox.height)
        assert [round(float(side) / 72 * 25.4) for side in sides] == [105, 148], "millimetres of A6 (ISO 216)"


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (
            ["--paper", "a7"],
            "No paper is called “a7”. Choose a3, a4, a5, a6, letter, legal, half-letter, 4x6 or 5x8.\n",
        ),
        (["--only", "cards,soups"], "No sheet is called “soups”."),
    ],
)
def test_an_unknown_paper_or_sheet_is_wrong_usage_and_writes_nothing(
    run: Run, bean_day: Path, tmp_path: Path, arguments: list[str], says: str
) -> None:
    result = run("print", bean_day, "--out", tmp_path / "out", *arguments)
    assert result.exit_code == 2
    assert result.stderr.startswith(says)
    assert result.stderr.count("\n") == 1
    assert not (tmp_path / "out").exists()


def test_help_names_every_paper_and_the_sheets(run: Run) -> None:
    from binder.paper.paper_size import PAPERS
    from binder.paper.print_set import SheetKind

    shown = " ".join(run("print", "--help").stdout.split()).replace("- ", "-")
    assert all(paper in shown for paper in PAPERS)
    assert all(kind.value in shown for kind in SheetKind)


def test_a_folder_that_cannot_be_made_is_one_line_and_3(run: Run, bean_day: Path) -> None:
    result = run("print", bean_day, "--out", bean_day / "inside a file")
    assert result.exit_code == 3
    assert result.stderr.count("\n") == 1
    assert "cannot be written" in result.stderr
