"""Commands read a binder file and a JSON document alike, and leave both as they are."""

from __future__ import annotations

from pathlib import Path

from binder.cli.loaded import loaded
from tests.cli.conftest import Run
from tests.kitchen_binder import small_binder


def test_both_kinds_of_file_hold_the_same_binder(bean_file: Path, bean_day: Path) -> None:
    assert loaded(bean_file) == loaded(bean_day) == small_binder()


def test_a_file_is_told_by_what_is_in_it(bean_file: Path, tmp_path: Path) -> None:
    misnamed = bean_file.rename(tmp_path / "bean.json")
    assert loaded(misnamed) == small_binder()


def test_every_command_that_reads_leaves_the_file_as_it_is(run: Run, bean_file: Path, tmp_path: Path) -> None:
    before = bean_file.read_bytes()
    for command in ("cost", "base", "shop", "mise", "check"):
        assert run(command, bean_file).exit_code == 0
    assert run("take", bean_file, "--dish", 1).exit_code == 0
    assert run("print", bean_file, "--out", tmp_path / "out").exit_code == 0
    assert run("export", bean_file, "--to", tmp_path / "out.json").exit_code == 0
    assert bean_file.read_bytes() == before
    assert {one.name for one in tmp_path.iterdir()} == {bean_file.name, "out", "out.json"}
