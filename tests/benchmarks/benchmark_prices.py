"""50,000 prices of 50,000 packs read from a CSV file and from a workbook, by processor time: each in under 5 s."""

from __future__ import annotations

import csv
import io
import random
from datetime import date
from time import process_time
from typing import TYPE_CHECKING

import openpyxl
import pytest

from binder.exchange.price_list import read_price_list
from binder.kitchen.binder import binder_of
from binder.kitchen.food import Food
from binder.kitchen.price import Store
from binder.kitchen.settings import SETTINGS_ID, Settings

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pytest_benchmark.fixture import BenchmarkFixture

    from binder.kitchen.binder import Binder

pytestmark = pytest.mark.benchmark(timer=process_time, min_rounds=3)

HEAD = ("food", "store", "pack size", "unit", "price", "date", "label")


def larder() -> Binder:
    foods = (Food(id=f"f{number}", name=f"food {number}") for number in range(2500))
    stores = (Store(id=f"s{number}", name=f"store {number}") for number in range(4))
    return binder_of([Settings(id=SETTINGS_ID, name="Binder"), *foods, *stores])


def rows() -> Iterator[tuple[object, ...]]:
    chance = random.Random(1)
    for number in range(50_000):
        size, price = 100 + number // 2500 * 10, round(chance.uniform(0.2, 20), 2)
        label = f"label {number % 50}"
        yield f"food {number % 2500}", f"store {number % 4}", size, "g", price, date(2026, 11, 1), label


def test_csv(benchmark: BenchmarkFixture) -> None:
    written = io.StringIO()
    csv.writer(written).writerows([HEAD, *rows()])
    content, binder = written.getvalue().encode(), larder()
    prices = benchmark(read_price_list, binder, content)
    assert len(prices.change.edits) == 100_000


def test_workbook(benchmark: BenchmarkFixture) -> None:
    book = openpyxl.Workbook(write_only=True)
    sheet = book.create_sheet()
    for row in (HEAD, *rows()):
        sheet.append(row)
    written = io.BytesIO()
    book.save(written)
    prices = benchmark(read_price_list, larder(), written.getvalue())
    assert len(prices.change.edits) == 100_000
