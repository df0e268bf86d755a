"""The wrap report in a spreadsheet: its columns add up to the cent, and it says what the program says."""

from __future__ import annotations

import io
from dataclasses import replace
from decimal import Decimal

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings
from openpyxl.worksheet.worksheet import Worksheet

from binder.exchange.wrap_workbook import wrap_workbook
from binder.figures.wrap import shoot_wrap
from binder.kitchen.binder import Binder
from binder.kitchen.budget import BudgetLine
from binder.kitchen.buying import Purchase
from tests.exchange.buying_day import buying_day
from tests.strategies import binders

BOUGHT = (
    Purchase(id="b2", shoot="day", food="onion", pack="pack-onion", count=0.5, paid=77),
    Purchase(id="b3", shoot="day", food="oil", pack="pack-oil", paid=799),
    Purchase(id="b4", shoot="day", food="tahini", count=0),
)


def closed_day() -> Binder:
    gas = BudgetLine(id="gas", shoot="day", name="=gas", heading="@fuel", rate=1200)
    return buying_day(*BOUGHT, gas, replace(buying_day().shoots["day"], budget=5000))


def sheets(binder: Binder) -> dict[str, list[dict[str, object]]]:
    book = openpyxl.load_workbook(io.BytesIO(wrap_workbook(binder, "day")))
    return {sheet.title: rows_of(sheet) for sheet in book.worksheets}


def rows_of(sheet: Worksheet) -> list[dict[str, object]]:
    heading, *rows = sheet.iter_rows()
    return [{str(name.value): cell.value for name, cell in zip(heading, row, strict=True)} for row in rows]


def minor(value: object) -> int:
    return round(Decimal(str(value or 0)) * 100)


@pytest.mark.parametrize("sheet", ["By who used it", "By food"])
def test_every_column_adds_up_to_its_last_row(sheet: str) -> None:
    *rows, total = sheets(closed_day())[sheet]
    assert total["what"] == "Food in all"
    for column in ("planned (USD)", "paid (USD)", "still open (USD)", "over or under (USD)"):
        assert sum(minor(row[column]) for row in rows) == minor(total[column])


def test_the_sums_are_those_of_the_program() -> None:
    binder = closed_day()
    wrap, found = shoot_wrap(binder, "day"), sheets(binder)
    total = found["By food"][-1]
    assert (minor(total["planned (USD)"]), minor(total["paid (USD)"])) == (wrap.total.planned, wrap.total.paid)
    assert minor(total["worth (USD)"]) == wrap.worth
    assert minor(total["over or under (USD)"]) == wrap.total.variance


def test_the_budget_stands_on_a_sheet_of_its_own_and_runs_nothing() -> None:
    rows = sheets(closed_day())["Budget"]
    gas = next(row for row in rows if row["planned (USD)"] == 12)
    assert (gas["what"], gas["heading"]) == ("'=gas", "'@fuel")
    by_name = {row["what"]: row for row in rows}
    assert by_name["Budget"]["expected (USD)"] == 50


def test_caps_are_shown_where_things_bought_changed_them() -> None:
    binder = closed_day()
    caps = shoot_wrap(binder, "day").caps
    rows = sheets(binder).get("Caps as bought", [])
    assert [row["dish"] for row in rows] == [one.after.name for one in caps]
    assert [row["state"] for row in rows] == [one.after.verdict for one in caps]


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(binders(most=1))
def test_any_shoot_has_a_workbook(binder: Binder) -> None:
    for shoot in binder.shoots:
        book = openpyxl.load_workbook(io.BytesIO(wrap_workbook(binder, shoot)))
        assert book.sheetnames[:3] == ["By who used it", "By food", "Budget"]
