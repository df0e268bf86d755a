"""Any text is kept as it can be, in the file and in the document; a number that no kitchen has is never stored."""

from __future__ import annotations

import decimal
import math
import unicodedata
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.exchange.json_document import from_json, to_json
from binder.kitchen.binder import Binder
from binder.kitchen.change import changed
from binder.kitchen.food import Food
from binder.kitchen.price import Pack, Quote
from binder.kitchen.record import UnfitValueError
from binder.kitchen.shoot import Shoot
from binder.storage.binder_file import read_binder
from binder.storage.document import OpenDocument
from tests.storage.samples import new_food
from tests.strategies import HARD_TEXTS

HOSTILE_TEXTS = (
    *HARD_TEXTS,
    "nul\x00inside",
    "bell\x07, escape\x1b[31m, delete\x7f",
    "lone surrogates \ud800\udfff",
    "cr\rlf\r\nboth",
    "e\x00\u0301",
    "\u1100\u1161\u11a8",
    "\ufb2c",
    "\u0344",
    "x" * 300,
    "👩‍👩‍👧‍👦" * 40,
    "a\u0301" * 300,
    "%s %d {0} {name} ${x} $(ls)",
    "../../etc/passwd",
    "CON",
)


def kept(path: Path, text: str) -> str:
    """A note as it comes back from the file, where that is also how it comes back from a document."""
    document = OpenDocument.create(path, Binder(), replace=True)
    document.make(
        changed(f"Add {text}", after=[Food(id="food", name="Food", notes=text, other_names=(f"n{text}"[:100],))])
    )
    in_memory = document.binder
    document.close()
    stored = read_binder(path)
    assert stored == in_memory
    assert from_json(to_json(stored).encode()) == in_memory
    return stored.foods["food"].notes


@pytest.mark.parametrize("text", HOSTILE_TEXTS)
def test_a_text_of_any_script_comes_back(tmp_path: Path, text: str) -> None:
    stored = kept(tmp_path / "day.binder", text)
    assert unicodedata.is_normalized("NFC", stored)
    printable = [c for c in text if unicodedata.category(c) not in {"Cc", "Cs"}]
    wanted = unicodedata.normalize("NFC", "".join(printable))
    assert "".join(c for c in stored if c not in "\n\t") == wanted


@given(st.text(st.characters(categories=["L", "M", "N", "P", "S", "Z", "C"]), max_size=40))
@settings(max_examples=10, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_text_at_all_comes_back(tmp_path: Path, text: str) -> None:
    kept(tmp_path / "day.binder", text)


NO_SIZES: list[object] = [
    math.nan,
    math.inf,
    -math.inf,
    -1.0,
    -0.0,
    0.0,
    5e-324,
    1e-320,
    9.9e-07,
    1e308,
    1e7 + 1,
    2**63,
    10**400,
    decimal.Decimal("NaN"),
    decimal.Decimal(1),
    "1,5",
    "١٢",
    "½",
    "1",
    True,
    None,
    [],
    b"1",
]


@pytest.mark.parametrize("size", NO_SIZES)
def test_a_number_that_no_kitchen_has_makes_no_record(size: object) -> None:
    with pytest.raises(UnfitValueError, match="size cannot be"):
        Pack(id="bag", food="food", size=size, unit="kg")  # type: ignore[arg-type]


@pytest.mark.parametrize("size", [1e-6, 1.0000000000000002e-06, 0.1, 1 / 3, 1.0, 1e7, 9999999.999999998])
def test_a_number_that_fits_is_kept_to_the_last_bit(tmp_path: Path, size: float) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, Binder())
    document.make(new_food("salt"))
    document.make(changed("Add a pack", after=[Pack(id="bag", food="salt", size=size, unit="kg")]))
    document.close()
    assert read_binder(path).packs["bag"].size == size
    assert from_json(to_json(document.binder)).packs["bag"].size == size


def test_minus_nothing_is_nothing(tmp_path: Path) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, Binder())
    document.make(changed("Add a shoot", after=[Shoot(id="day", name="Day", base_amount=-0.0)]))
    document.close()
    assert math.copysign(1, read_binder(path).shoots["day"].base_amount) == 1
    assert '"base_amount"' not in to_json(document.binder)


@pytest.mark.parametrize("price", [0, 1, 2**31, 10**13 - 1, 10**13])
def test_large_money_is_exact(tmp_path: Path, price: int) -> None:
    path = tmp_path / "day.binder"
    document = OpenDocument.create(path, Binder())
    document.make(new_food("salt"))
    pack = Pack(id="bag", food="salt", size=1.0, unit="kg")
    document.make(changed("Add", after=[pack, Quote(id="q", pack="bag", price=price, on=date(9999, 12, 31))]))
    document.close()
    assert read_binder(path).quotes["q"].price == price
