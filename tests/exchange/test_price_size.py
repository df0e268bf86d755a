"""A pack holds what its list says and nothing many times that."""

from __future__ import annotations

import pytest

from binder.exchange.price_size import SizeReader
from binder.exchange.table_cell import RefusedRowError
from binder.kitchen.settings import Measures

READER = SizeReader(Measures.US_CUSTOMARY, frozenset({"braid"}))
COMMA = SizeReader(Measures.METRIC, decimal_comma=True)


@pytest.mark.parametrize(
    ("said", "size"),
    [
        ("500 g", (500.0, "g")),
        ("2x500 g", (1000.0, "g")),
        ("2 × 500g", (1000.0, "g")),
        ("6 x 330ml", (1980.0, "ml")),
        ("2 x ½ lb", (1.0, "lb")),
        ("1 1/2 lb", (1.5, "lb")),
        ("½ lb", (0.5, "lb")),
        ("1/4 kg", (0.25, "kg")),
        ("1 lb 8 oz", (24.0, "oz")),
        ("1lb 8oz", (24.0, "oz")),
        ("dozen", (12.0, "each")),
        ("a dozen", (12.0, "each")),
        ("2 dozen", (24.0, "each")),
        ("½ dozen", (6.0, "each")),
        ("12 ct", (12.0, "each")),
        ("12 pcs", (12.0, "each")),
        ("kg", (1.0, "kg")),
        ("bunch", (1.0, "bunch")),
        ("braid", (1.0, "braid")),
        ("1,500 g", (1500.0, "g")),
        ("1.125 kg", (1.125, "kg")),
    ],
)
def test_a_size_is_read_as_lists_write_it(said: str, size: tuple[float, str]) -> None:
    assert READER.read(said) == size


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("500", "its pack size, 500, has no unit. Write 500 g, or 500 each."),
        ("1.5", "its pack size, 1.5, has no unit. Write 1.5 g, or 1.5 each."),
        ("6/2 lb", "its pack size, 6/2 lb, may be a part or so many packs. Write packs as 12 x 1 lb."),
        ("2/5 lb", "its pack size, 2/5 lb, may be a part or so many packs. Write packs as 12 x 1 lb."),
        ("1 500 g", "its pack size, 1 500 g, has a blank in its number. Write 1500 g, or 2 x 500 g."),
        ("2 t", "its pack size, 2 t, may be spoons or tonnes. Write tsp, tbsp or kg."),
        ("1.500 g", "its pack size, 1.500 g, may be 1500 g or a thousandth of it. Write it without the mark."),
        ("0 x 500 g", "a pack cannot hold 0 x 500 g. Write one size, above zero."),
        ("0", "a pack cannot hold 0. Write one size, above zero."),
        ("2-3 kg", "a pack cannot hold 2-3 kg. Write one size, above zero."),
    ],
)
def test_a_size_with_two_meanings_is_asked_for(said: str, why: str) -> None:
    with pytest.raises(RefusedRowError) as caught:
        READER.read(said)
    assert str(caught.value) == why


def test_a_unit_no_one_knows_is_told_with_a_way_to_write_it() -> None:
    with pytest.raises(RefusedRowError, match=r"No unit is called “kgg”.* Write its pack size as 500 g"):
        READER.read("1 kgg")


def test_where_a_comma_is_the_decimal_mark_a_point_groups() -> None:
    assert COMMA.read("1.500 g") == (1500.0, "g")
    assert COMMA.read("0,75 l") == (0.75, "l")
    with pytest.raises(RefusedRowError, match="may be 1500 g"):
        COMMA.read("1,500 g")


def test_a_number_of_a_workbook_is_taken_as_it_is() -> None:
    assert SizeReader(Measures.METRIC, exact=True).read("1.125 g") == (1.125, "g")
