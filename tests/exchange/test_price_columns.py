"""Which column is what."""

from __future__ import annotations

import pytest

from binder.exchange.price_columns import (
    COLUMNS,
    UnknownColumnError,
    column_letter,
    column_place,
    guessed_columns,
    price_layout,
)
from binder.exchange.table_cell import TableRow


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("FOOD", "food"),
        ("Product", "food"),
        ("pack_size", "pack size"),
        ("Size (g)", "pack size"),
        ("Contents", "pack size"),
        ("Price (EUR)", "price"),
        ("Price €", "price"),
        ("as of", "date"),
        ("Shop", "store"),
        ("Description", "label"),
    ],
)
def test_a_heading_is_known_however_it_is_written(heading: str, column: str) -> None:
    assert guessed_columns([heading]) == {column: 0}


@pytest.mark.parametrize(
    "heading", ["", "colour", "unit price", "price per kg", "Price (per kg)", "price (/100 g)", "Price (kg)", "()"]
)
def test_what_is_not_the_price_of_a_pack_is_not_taken_for_one(heading: str) -> None:
    assert guessed_columns([heading]) == {}


def test_every_column_is_known_by_its_own_name() -> None:
    assert guessed_columns(COLUMNS) == {name: place for place, name in enumerate(COLUMNS)}


def test_two_of_a_name_are_trouble_until_one_is_chosen() -> None:
    rows = [TableRow(1, ("food", "size", "content", "price"))]
    assert "two columns for the pack size, “size” and “content”" in price_layout(rows).trouble
    chosen = price_layout(rows, {"pack size": 2})
    assert (chosen.trouble, chosen.places["pack size"]) == ("", 2)
    assert price_layout(rows, {"label": 1}).places == {"food": 0, "label": 1, "pack size": 2, "price": 3}


def test_a_row_of_prices_is_never_taken_for_titles_above_headings() -> None:
    rows = [TableRow(1, ("Salt", "1 kg", "2")), TableRow(2, ("food", "pack", "3"))]
    assert price_layout(rows, {"food": 0, "pack size": 1, "price": 2}).first == 0


@pytest.mark.parametrize(("place", "letter"), [(0, "A"), (25, "Z"), (26, "AA"), (255, "IV")])
def test_a_column_has_a_letter(place: int, letter: str) -> None:
    assert column_letter(place) == letter
    assert column_place(letter.lower()) == place


def test_a_column_is_found_by_its_heading_too() -> None:
    assert column_place("net price", ["Food", "Net Price"]) == 1
    for asked in ("", "gross", "7", "AAA"):
        with pytest.raises(UnknownColumnError, match="no column of this list"):
            column_place(asked, ["Food"])
