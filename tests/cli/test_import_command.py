"""`binder import`: a binder file from a JSON document, and prices from a list."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from binder.cli.loaded import loaded
from tests.cli.conftest import Run, squeezed
from tests.exchange.workbooks import workbook
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
    assert "  2  + new      tahini, 300 g: $6.49 on Nov 20, 2026\n" in shown
    assert "  3  = same     tahini, 300 g: $6.00 on Nov 2, 2026\n" in shown
    assert "  4  ± changed  onion, 2 lb: $1.99 on Nov 2, 2026; it was $1.80\n" in shown


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
        "columns": {"food": "A", "store": "B", "pack size": "C", "unit": "D", "price": "E", "date": "F"},
        "rows": [{"row": 2, "fate": "new", "says": "tahini, 300 g: $6.49 on Nov 20, 2026"}],
        "changed": True,
    }


def test_prices_without_a_date_are_of_the_day_that_is_named(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = listed(tmp_path, "tahini,Corner Larder,300,g,6.49,\n")
    assert run("import", prices, "--into", bean_file).exit_code == 3
    assert run("import", prices, "--into", bean_file, "--priced-on", "2026-11-03").exit_code == 0
    (quote,) = (quote for quote in loaded(bean_file).quotes.values() if quote.price == 649)
    assert quote.on.isoformat() == "2026-11-03"


def test_a_list_without_days_is_told_how_to_say_the_day(run: Run, bean_file: Path, tmp_path: Path) -> None:
    (tmp_path / "prices.csv").write_text("food,size,price\ntahini,300 g,6.49\n", encoding="utf-8")
    asked = ("import", tmp_path / "prices.csv", "--into", bean_file)
    says = "say the day of its prices, as --priced-on 2026-03-14."
    assert run(*asked).stderr.endswith(says + "\n")
    preview = run(*asked, "--preview")
    assert (preview.exit_code, preview.stderr) == (1, "")
    assert says in " ".join(preview.stdout.split())
    assert says not in run(*asked, "--preview", "--priced-on", "2026-11-03").stdout


def test_columns_not_found_are_said_with_the_way_to_name_them(run: Run, bean_file: Path, tmp_path: Path) -> None:
    (tmp_path / "ware.csv").write_text("tahini,300 g,6.49\n", encoding="utf-8")
    result = run("import", tmp_path / "ware.csv", "--into", bean_file, "--preview")
    assert result.exit_code == 3
    assert result.stderr.endswith("Name it so, or say which column it is: --columns food=A,size=B,price=C.\n")
    named = ("--columns", "food=A,size=B,price=C", "--priced-on", "2026-11-03")
    assert run("import", tmp_path / "ware.csv", "--into", bean_file, *named).exit_code == 0


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


def as_workbook(tmp_path: Path, *rows: tuple[object, ...]) -> Path:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(workbook(rows))
    return path


NAMES = ("food", "store", "pack size", "unit", "price", "date")
TAHINI = ("tahini", "Corner Larder", 300, "g", 6.49, date(2026, 11, 20))


def test_prices_come_from_a_workbook_too(run: Run, bean_file: Path, tmp_path: Path) -> None:
    result = run("import", as_workbook(tmp_path, NAMES, TAHINI), "--into", bean_file)
    assert (result.exit_code, result.stderr) == (0, "")
    assert {quote.price for quote in loaded(bean_file).quotes.where("pack", "pack-tahini")} == {600, 649}


def test_a_formula_in_a_workbook_refuses_its_row(run: Run, bean_file: Path, tmp_path: Path) -> None:
    before = bean_file.read_bytes()
    result = run("import", as_workbook(tmp_path, NAMES, (*TAHINI[:4], "=6*2", TAHINI[5])), "--into", bean_file)
    assert result.exit_code == 3
    assert "Row 2: its price is a formula, and none is worked out here." in result.stderr
    assert bean_file.read_bytes() == before


def test_columns_are_chosen_by_letter_or_heading(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = as_workbook(tmp_path, ("Ware", "Menge", "Netto", "Brutto"), ("tahini", "300 g", 6.07, 6.49))
    asked = ["import", prices, "--into", bean_file, "--priced-on", "2026-11-20"]
    assert "none of its columns is called “food”" in run(*asked).stderr
    result = run(*asked, "--columns", "food=A, size=Menge,price=d")
    assert (result.exit_code, result.stderr) == (0, "")
    assert 649 in {quote.price for quote in loaded(bean_file).quotes.values()}


@pytest.mark.parametrize("columns", ["soup=A", "food", "price=Gross", "food=A,=B"])
def test_a_column_that_is_none_is_wrong_usage(run: Run, bean_file: Path, tmp_path: Path, columns: str) -> None:
    before = bean_file.read_bytes()
    result = run("import", listed(tmp_path, GOOD), "--into", bean_file, "--columns", columns)
    assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (2, "", 1)
    assert bean_file.read_bytes() == before


def test_a_preview_shows_columns_and_fates_and_changes_nothing(run: Run, bean_file: Path, tmp_path: Path) -> None:
    before = bean_file.read_bytes()
    prices = as_workbook(tmp_path, NAMES, TAHINI)
    result = run("import", prices, "--into", bean_file, "--preview")
    assert (result.exit_code, result.stderr) == (0, "")
    shown = squeezed(result.stdout)
    assert shown.startswith("Sheet “Sheet”\nWhat Column Heading\n")
    assert "\npack size C pack size\n" in shown
    assert "\n2 + new tahini, 300 g: $6.49 on Nov 20, 2026\n" in shown
    assert bean_file.read_bytes() == before
    answer = json.loads(run("import", prices, "--into", bean_file, "--preview", "--json").stdout)
    assert (answer["changed"], answer["rows"][0]["fate"]) == (False, "new")


def test_a_preview_of_a_list_that_would_be_refused_ends_with_1(run: Run, bean_day: Path, tmp_path: Path) -> None:
    prices = listed(tmp_path, GOOD, "tahini,,300,g,six,2026-11-20\n")
    result = run("import", prices, "--into", bean_day, "--preview")
    assert (result.exit_code, result.stderr) == (1, "")
    assert "◣ refused" in result.stdout
    assert run("import", prices, "--into", bean_day, "--preview", "--good-rows").exit_code == 0


def test_a_sheet_is_chosen_by_name(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = as_workbook(tmp_path, NAMES, TAHINI)
    result = run("import", prices, "--into", bean_file, "--sheet", "Soup", "--preview")
    assert result.exit_code == 3
    assert result.stderr == "This is no price list: no sheet of it is called “Soup”: it is “Sheet”.\n"


def test_what_is_only_for_price_lists_is_wrong_usage_elsewhere(run: Run, bean_day: Path, tmp_path: Path) -> None:
    result = run("import", bean_day, "--into", tmp_path / "made.binder", "--preview")
    assert (result.exit_code, result.stderr.count("\n")) == (2, 1)
    assert not (tmp_path / "made.binder").exists()


def test_of_a_long_list_the_rows_that_matter_are_shown(run: Run, bean_file: Path, tmp_path: Path) -> None:
    rows = [f"tahini,Corner Larder,{size},g,6.49,2026-11-20\n" for size in range(1000, 1600)]
    shown = run("import", listed(tmp_path, *rows, "tahini,,300,g,six,\n"), "--into", bean_file, "--good-rows").stdout
    assert "602  ◣ refused" in shown
    assert "101 rows more; --json has them all." in shown
    assert "600 prices are taken. 1 row is refused." in " ".join(shown.split())


@pytest.mark.parametrize("content", [b"PK\x03\x04 and no more", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" * 100, b""])
def test_what_is_no_workbook_is_one_line(run: Run, bean_file: Path, tmp_path: Path, content: bytes) -> None:
    (tmp_path / "prices.xlsx").write_bytes(content)
    before = bean_file.read_bytes()
    result = run("import", tmp_path / "prices.xlsx", "--into", bean_file)
    assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (3, "", 1)
    assert bean_file.read_bytes() == before


def test_a_store_that_is_not_known_is_added_where_that_is_asked_for(run: Run, bean_file: Path, tmp_path: Path) -> None:
    prices = listed(tmp_path, "onion,Hill farm,2,lb,1.99,2026-11-20\n")
    refused = run("import", prices, "--into", bean_file)
    assert refused.exit_code == 3
    assert "add its stores with --new-stores" in refused.stderr
    result = run("import", prices, "--into", bean_file, "--new-stores")
    assert (result.exit_code, result.stderr) == (0, "")
    assert "Hill farm" in {store.name for store in loaded(bean_file).stores.values()}
