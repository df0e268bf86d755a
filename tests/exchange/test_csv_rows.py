"""Separated values become rows, however they are separated and encoded."""

from __future__ import annotations

import pytest

from binder.exchange.csv_rows import csv_table
from binder.exchange.table_cell import TableRow, UnreadableTableError


def cells(content: bytes) -> list[tuple[object, ...]]:
    return [row.cells for row in csv_table(content).rows]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "latin-1", "utf-16"])
def test_any_encoding_of_a_spreadsheet_is_read(encoding: str) -> None:
    content = "food;price\r\nPiment fumé;2,10\r\n".encode(encoding)
    assert cells(content) == [("food", "price"), ("Piment fumé", "2,10")]


def test_rows_keep_their_number_where_others_are_empty() -> None:
    assert csv_table(b"food\n\n,\nsalt\n").rows == (TableRow(1, ("food",)), TableRow(4, ("salt",)))


@pytest.mark.parametrize(
    ("content", "first"),
    [
        (b"food,store;price,size\n", ("food", "store;price", "size")),
        (b"Salt;1 kg;3,49\n", ("Salt", "1 kg", "3,49")),
        (b"sep=|\nfood|price\n", ("food", "price")),
        (b'Prices, of spring\n"food"\t"price"\nSalt\t1,5\n', ("Prices, of spring",)),
    ],
)
def test_the_separator_is_the_one_that_brings_headings_to_light(content: bytes, first: tuple[str, ...]) -> None:
    assert cells(content)[0] == first


def test_the_line_without_end_is_named_by_its_number() -> None:
    before = b"food,price\n" + b"Salt,1.50\n" * 300_000
    with pytest.raises(UnreadableTableError, match="line 300002 has a cell far too long"):
        csv_table(before + b"x" * 2_000_000)


def test_controls_are_tidied_away_and_our_own_guard_is_taken_off() -> None:
    assert cells("food\x00, 'x\n'=1+1,e\u0301\n".encode()) == [("food", "'x"), ("=1+1", "é")]


@pytest.mark.parametrize("line", [b"," * 2_000_000, b"x" * 2_000_000, b'"' * 2_000_000])
def test_a_line_without_end_is_refused(line: bytes) -> None:
    with pytest.raises(UnreadableTableError, match="line 2 has a cell far too long"):
        csv_table(b"food,price\n" + line + b"\n")


def test_marks_no_one_sees_are_left_off_a_cell() -> None:
    (row,) = csv_table("\u200fGarlic\u200e,\u202a 3.49\u202c ,a\u200db\n".encode()).rows
    assert row.cells == ("Garlic", "3.49", "a\u200db")
