"""`binder import`: a binder file from a JSON document, and prices from a list."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from binder.cli.loaded import loaded
from tests.cli.conftest import Run
from tests.kitchen_binder import small_binder

HEADER = "food,store,pack size,unit,price,date\n"
GOOD = "tahini,Corner Larder,300,g,6.49,2026-11-20\n"


def listed(tmp_path: Path, *rows: str) -> Path:
    path = tmp_path / "prices.csv"
    path.write_text(HEADER + "".join(rows), encoding="utf-8")
    return path


def test_a_document_becomes_a_binder_file(run: Run, bean_day: Path, tmp_path: Path) -> None:
    made = tmp_path / "made.binder"
    result = run("import", bean_day, "--into", made)
    assert (result.exit_code, result.stderr) == (0, "")
    assert loaded(made) == small_binder()
    assert " ".join(result.stdout.split()) == f"Made {made} from {bean_day}."


def test_export_after_import_gives_the_same_bytes(run: Run, bean_day: Path, tmp_path: Path) -> None:
    run("import", bean_day, "--into", tmp_path / "made.binder")
    run("export", tmp_path / "made.binder", "--to", tmp_path / "again.json")
    assert (tmp_path / "again.json").read_bytes() == bean_day.read_bytes()


def test_programs_are_told_which_file_was_made(run: Run, bean_day: Path, tmp_path: Path) -> None:
    made = tmp_path / "made.binder"
    answer = json.loads(run("import", bean_day, "--into", made, "--json").stdout)
    assert answer == {"imported": str(bean_day), "file": str(made)}


def test_a_file_that_is_there_is_not_replaced_unasked(run: Run, bean_day: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept.binder"
    kept.write_bytes(b"somebody's own")
    result = run("import", bean_day, "--into", kept)
    assert result.exit_code == 3
    assert result.stderr == (
        "“kept.binder” is there already: choose another name, or have it replaced with --replace.\n"
    )
    assert kept.read_bytes() == b"somebody's own"
    assert run("import", bean_day, "--into", kept, "--replace").exit_code == 0
    assert loaded(kept) == small_binder()


def test_an_empty_file_is_filled(run: Run, bean_day: Path, tmp_path: Path) -> None:
    (tmp_path / "empty.binder").touch()
    assert run("import", bean_day, "--into", tmp_path / "empty.binder").exit_code == 0
    assert loaded(tmp_path / "empty.binder") == small_binder()


def test_a_document_that_cannot_be_read_replaces_nothing(run: Run, bean_file: Path, tmp_path: Path) -> None:
    before = bean_file.read_bytes()
    (tmp_path / "broken.json").write_text("{", encoding="utf-8")
    assert run("import", tmp_path / "broken.json", "--into", bean_file, "--replace").exit_code == 3
    assert bean_file.read_bytes() == before


def test_another_ending_is_wrong_usage(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("import", bean_day, "--into", tmp_path / "made.db")
    assert result.exit_code == 2
    assert result.stderr == "A binder is kept in a .binder file: end “made.db” so.\n"


def test_prices_come_into_a_binder_as_one_change(run: Run, bean_file: Path, tmp_path: Path) -> None:
    onion = "onion,,2,lb,1.99,2026-11-20\n"
    result = run("import", listed(tmp_path, GOOD, onion), "--into", bean_file)
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.endswith("\n2 prices are taken.\n")
    changed = loaded(bean_file)
    assert {quote.price for quote in changed.quotes.where("pack", "pack-tahini")} == {600, 649}
    assert len(changed.quotes) == len(small_binder().quotes) + 2


def test_every_row_is_shown_with_what_became_of_it(run: Run, bean_file: Path, tmp_path: Path) -> None:
    again = "tahini,Corner Larder,300,g,6.00,2026-11-02\n"
    other = "onion,Corner Larder,2,lb,1.99,2026-11-02\n"
    shown = run("import", listed(tmp_path, GOOD, again, other), "--into", bean_file).stdout
    assert "  2  + new      tahini, 300 g\n" in shown
    assert "  3  = same     tahini, 300 g\n" in shown
    assert "  4  ± changed  onion, 2 lb; it was $1.80\n" in shown


def test_a_bad_row_refuses_the_list_and_leaves_the_file(run: Run, bean_file: Path, tmp_path: Path) -> None:
    before = bean_file.read_bytes()
    result = run("import", listed(tmp_path, GOOD, "tahini,,300,g,six,2026-11-20\n"), "--into", bean_file)
    assert result.exit_code == 3
    assert result.stderr == (
        "0 prices are taken. 1 row is refused. Row 3: “six” is not a price: write a number such as 3.49. "
        "Mend the list, or take its good rows with --good-rows.\n"
    )
    assert "  3  ◣ refused  “six” is not a price" in result.stdout
    assert bean_file.read_bytes() == before


def test_good_rows_are_taken_where_that_is_asked_for(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = listed(tmp_path, GOOD, "tahini,,300,g,six,2026-11-20\n")
    result = run("import", prices, "--into", bean_file, "--good-rows")
    assert (result.exit_code, result.stderr) == (0, "")
    assert 649 in {quote.price for quote in loaded(bean_file).quotes.values()}


def test_programs_are_told_what_became_of_each_row(run: Run, bean_file: Path, tmp_path: Path) -> None:
    result = run("import", listed(tmp_path, GOOD), "--into", bean_file, "--json")
    assert json.loads(result.stdout) == {
        "binder": "Bean day",
        "rows": [{"row": 2, "fate": "new", "says": "tahini, 300 g"}],
        "changed": True,
    }


def test_prices_without_a_date_are_of_the_day_that_is_named(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = listed(tmp_path, "tahini,Corner Larder,300,g,6.49,\n")
    assert run("import", prices, "--into", bean_file).exit_code == 3
    assert run("import", prices, "--into", bean_file, "--priced-on", "2026-11-03").exit_code == 0
    (quote,) = (quote for quote in loaded(bean_file).quotes.values() if quote.price == 649)
    assert quote.on.isoformat() == "2026-11-03"


def test_a_price_of_the_future_is_refused(run: Run, bean_file: Path, tmp_path: Path) -> None:
    result = run("import", listed(tmp_path, "tahini,,300,g,6.49,9999-01-01\n"), "--into", bean_file)
    assert result.exit_code == 3
    assert "still to come" in result.stderr


@pytest.mark.parametrize("into", ["no such.binder", "bean day.json"])
def test_prices_need_a_binder_file_to_go_into(run: Run, bean_day: Path, tmp_path: Path, into: str) -> None:
    before = bean_day.read_bytes()
    result = run("import", listed(tmp_path, GOOD), "--into", tmp_path / into)
    assert result.exit_code == 3
    assert result.stderr.count("\n") == 1
    assert bean_day.read_bytes() == before
