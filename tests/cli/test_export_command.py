"""`binder export`: a whole binder as one JSON document."""

from __future__ import annotations

import json
from pathlib import Path

from binder.exchange.json_document import read_json
from tests.cli.conftest import Run
from tests.kitchen_binder import small_binder


def test_an_exported_binder_is_the_same_binder(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("export", bean_day, "--to", tmp_path / "out.json")
    assert (result.exit_code, result.stderr) == (0, "")
    assert read_json(tmp_path / "out.json") == small_binder()
    assert " ".join(result.stdout.split()) == f"Wrote Bean day to {tmp_path / 'out.json'}."


def test_programs_are_told_which_file(run: Run, bean_day: Path, tmp_path: Path) -> None:
    answer = json.loads(run("export", bean_day, "--to", tmp_path / "out.json", "--json").stdout)
    assert answer == {"binder": "Bean day", "file": str(tmp_path / "out.json")}


def test_another_kind_of_file_is_wrong_usage(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("export", bean_day, "--to", tmp_path / "out.xml")
    assert result.exit_code == 2
    assert result.stderr == "A binder is exported as a .json document: end “out.xml” so.\n"
    assert not (tmp_path / "out.xml").exists()


def test_a_binder_that_cannot_be_read_leaves_the_old_document(run: Run, tmp_path: Path) -> None:
    old = tmp_path / "out.json"
    old.write_text("old", encoding="utf-8")
    (tmp_path / "broken.json").write_text("{", encoding="utf-8")
    result = run("export", tmp_path / "broken.json", "--to", old)
    assert result.exit_code == 3
    assert old.read_text(encoding="utf-8") == "old"
    assert sorted(one.name for one in tmp_path.iterdir()) == ["broken.json", "out.json"]


def test_a_folder_that_is_not_there_is_one_line_and_3(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("export", bean_day, "--to", tmp_path / "no" / "out.json")
    assert result.exit_code == 3
    assert result.stderr.count("\n") == 1
