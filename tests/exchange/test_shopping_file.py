"""The shopping list as CSV, XLSX and text: whole, with numbers as numbers, and nothing that runs in a spreadsheet."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings

from binder.exchange.price_table import price_table
from binder.exchange.shopping_file import (
    NoShoppingFileError,
    shopping_content,
    shopping_csv,
    write_shopping,
)
from binder.exchange.shopping_text import shopping_text
from binder.exchange.shopping_workbook import shopping_workbook
from binder.exchange.table_cell import tidied
from binder.figures.buying_words import one_line
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder
from binder.kitchen.price import Store
from binder.kitchen.whole_file import FileInTheWayError
from tests.exchange.buying_day import buying_day
from tests.strategies import HARD_TEXTS, binders


def rows_of(text: str, delimiter: str = ",") -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), delimiter=delimiter))


def sheet_rows(binder: Binder, sheet: int = 0) -> list[dict[str, object]]:
    book = openpyxl.load_workbook(io.BytesIO(shopping_workbook(binder, "day")))
    heading, *rows = book.worksheets[sheet].iter_rows()
    return [{str(name.value): cell.value for name, cell in zip(heading, row, strict=True)} for row in rows]


def test_csv_has_a_row_a_line_by_trip_and_walking_order_and_then_the_rest() -> None:
    rows = rows_of(shopping_csv(buying_day(), "day"))
    assert [(row["day"], row["store"], row["food"]) for row in rows] == [
        ("2026-12-02", "Corner Larder", "flour"),
        ("2026-12-02", "Corner Larder", "olive oil"),
        ("2026-12-02", "Corner Larder", "onion"),
        ("2026-12-02", "Corner Larder", "tahini"),
        ("2026-12-02", "Market Hall", "beans, dried"),
        ("", "", "sumac"),
        ("", "", "salt"),
    ]
    flour, oil, onion, tahini, beans, sumac, salt = rows
    assert (flour["done"], flour["to pay (USD)"]) == ("bought", "1.50")
    assert (oil["packs"], oil["grams bought"], oil["deposit (USD)"]) == ("1", "450", "0.25")
    assert (onion["take"], onion["packs"], onion["grams bought"]) == ("534 g at the counter", "", "534")
    assert (tahini["grams needed"], tahini["grams at home"], tahini["grams left over"]) == ("150", "100", "250")
    assert (beans["offer"], beans["order by"], beans["price of"]) == ("3 for $10.00", "2026-11-28", "2026-11-02")
    assert sumac["note"] == "not known: no price for sumac"
    assert (salt["note"], salt["grams at home"]) == ("there is enough at home", "1000")


def test_csv_writes_numbers_as_a_spreadsheet_of_the_place_reads_them() -> None:
    binder = buying_day(replace(buying_day().settings, locale="de_DE", currency="EUR"))
    content = shopping_content(binder, "day", Path("list.csv"))
    assert content.startswith(b"\xef\xbb\xbfday;")
    rows = rows_of(content.decode("utf-8-sig"), ";")
    assert [row["to pay (EUR)"] for row in rows[:3]] == ["1,50", "9,00", "0,96"]
    assert rows[2]["grams needed"] == "533,3"


def test_yen_have_no_decimals_and_dinars_three() -> None:
    for currency, price in (("JPY", "150"), ("KWD", "0.150")):
        binder = buying_day(replace(buying_day().settings, currency=currency))
        assert rows_of(shopping_csv(binder, "day"))[0][f"to pay ({currency})"] == price


def test_xlsx_says_what_csv_does_with_numbers_and_days_that_are_such() -> None:
    for row, text in zip(sheet_rows(buying_day()), rows_of(shopping_csv(buying_day(), "day")), strict=True):
        assert row.keys() == text.keys()
        for name, value in row.items():
            if value is None:
                assert text[name] == ""
            elif isinstance(value, datetime):
                assert value.date().isoformat() == text[name]
            elif isinstance(value, int | float):
                assert value == pytest.approx(float(text[name]))
            else:
                assert value == text[name]


def test_xlsx_shows_money_as_money_and_days_as_days() -> None:
    binder = buying_day(replace(buying_day().settings, locale="de_DE", currency="EUR"))
    sheet = openpyxl.load_workbook(io.BytesIO(shopping_workbook(binder, "day"))).worksheets[0]
    formats = {str(heading.value): cell.number_format for heading, cell in zip(sheet[1], sheet[2], strict=True)}
    assert formats["to pay (EUR)"] == "#,##0.00 [$€]"
    assert formats["day"] == "yyyy-mm-dd"
    assert sheet.freeze_panes == "A2"


def test_xlsx_has_what_each_trip_comes_to() -> None:
    assert sheet_rows(buying_day(), 1) == [
        {
            "day": datetime(2026, 12, 2),  # noqa: DTZ001 - a workbook has no zones
            "store": "Corner Larder",
            "lines": 4,
            "to pay (USD)": 17.46,
            "deposit (USD)": 0.25,
        },
        {
            "day": datetime(2026, 12, 2),  # noqa: DTZ001
            "store": "Market Hall",
            "lines": 1,
            "to pay (USD)": 14,
            "deposit (USD)": 0,
        },
        {"day": None, "store": "all trips", "lines": 5, "to pay (USD)": 31.46, "deposit (USD)": 0.25},
    ]


def test_text_is_short_lines_with_boxes_by_trip_and_section() -> None:
    assert shopping_text(buying_day(), "day") == (
        "Shopping for Bean day, Thu, Dec 3, 2026\n"
        "\n"
        "Order ahead\n"
        "☐ by Sat, Nov 28, 2026: beans, dried\n"
        "   4 × 250 g, sack, Market Hall\n"
        "\n"
        "Wed, Dec 2, 2026: Corner Larder, $17.46\n"
        "· baking\n"
        "☑ flour: 1 × 1000 g, $1.50, bought\n"
        "· oils and vinegars\n"
        "☐ olive oil: 1 × 500 ml, $9.00, $0.25 deposit\n"
        "· produce\n"
        "☐ onion: 534 g at the counter, $0.96\n"
        "· tins and jars\n"
        "☐ tahini: 1 × 300 g, $6.00\n"
        "\n"
        "Wed, Dec 2, 2026: Market Hall, $14.00\n"
        "· grains and pulses\n"
        "☐ beans, dried: 4 × 250 g, sack (3 for $10.00), $14.00\n"
        "\n"
        "☐ sumac, 1 g: not known: no price for sumac\n"
        "At home: salt\n"
        "\n"
        "At the till: not known; at least $31.46\n"
        "Deposits: $0.25\n"
    )


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "＝"])
def test_no_name_runs_in_a_spreadsheet(start: str) -> None:
    evil = f'{start}HYPERLINK("http://example.invalid","free")'
    binder = buying_day(
        replace(buying_day().foods["onion"], name=evil),
        Store(id="hall", name=evil),
        replace(buying_day().packs["pack-tahini"], label=evil),
    )
    for value in (cell for row in rows_of(shopping_csv(binder, "day")) for cell in row.values()):
        assert not value.startswith(("=", "+", "-", "@", "＝"))
    sheet = openpyxl.load_workbook(io.BytesIO(shopping_workbook(binder, "day"))).worksheets[0]
    cells = [cell for row in sheet.iter_rows() for cell in row]
    assert not [cell.coordinate for cell in cells if cell.data_type == "f"]
    assert f"'{evil}" in {cell.value for cell in cells}
    # What reads tables here takes the guard off again.
    for content in (shopping_csv(binder, "day").encode(), shopping_workbook(binder, "day")):
        assert evil in {cell for row in price_table(content).rows for cell in row.cells}


@pytest.mark.parametrize("name", HARD_TEXTS)
def test_any_name_comes_through_each_file(name: str) -> None:
    binder = buying_day(replace(buying_day().foods["onion"], name=name))
    shown = one_line(binder.foods["onion"].name)
    assert shown in shopping_text(binder, "day")
    for content in (shopping_csv(binder, "day").encode(), shopping_workbook(binder, "day")):
        assert tidied(shown) in {cell for row in price_table(content).rows for cell in row.cells}


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=30)
@given(binders())
def test_any_binder_has_a_list_of_each_kind_with_a_row_for_each_item(binder: Binder) -> None:
    for shoot in binder.shoots:
        items = {item.food for item in shopping_list(binder, shoot).items}
        text = shopping_csv(binder, shoot)
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=";" if text.startswith("day;") else ","))
        assert len(rows) - 1 >= len(items)
        assert len({len(row) for row in rows}) == 1
        assert shopping_text(binder, shoot).endswith("\n")
        assert price_table(shopping_workbook(binder, shoot)).rows[0].cells[0] == "day"


def test_a_shoot_with_nothing_to_buy_has_a_list_that_says_so(tmp_path: Path) -> None:
    binder = buying_day()
    empty = binder.with_tables({"dishes": type(binder.dishes)({}), "builds": type(binder.builds)({})})
    for suffix in ("csv", "xlsx", "txt"):
        assert shopping_content(empty, "day", tmp_path / f"list.{suffix}")


def test_a_file_is_written_whole_and_only_where_it_may_be(tmp_path: Path) -> None:
    path = tmp_path / "list.txt"
    write_shopping(buying_day(), "day", path)
    assert path.read_text(encoding="utf-8") == shopping_text(buying_day(), "day")
    with pytest.raises(FileInTheWayError):
        write_shopping(buying_day(), "day", path, replace=False)
    with pytest.raises(NoShoppingFileError, match="A shopping list is written as"):
        write_shopping(buying_day(), "day", tmp_path / "list.pdf")
    assert [one.name for one in tmp_path.iterdir()] == ["list.txt"]


def test_a_shoot_without_a_date_has_days_that_are_any() -> None:
    binder = buying_day(replace(buying_day().shoots["day"], on=None))
    assert "\nany day: Corner Larder, $17.46\n" in shopping_text(binder, "day")
    assert {row["day"] for row in rows_of(shopping_csv(binder, "day"))} == {""}
    assert date(2026, 12, 3).isoformat() not in shopping_csv(binder, "day")
