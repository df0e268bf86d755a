"""No cell that we write runs in a spreadsheet, and what we wrote comes back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.exchange.text_safety import Cell, plain_cell, safe_cell


@pytest.mark.parametrize(
    ("value", "safe"),
    [
        ("=1+1", "'=1+1"),
        ("+49 30", "'+49 30"),
        ("-5", "'-5"),
        ("@home", "'@home"),
        ("\tx", "'\tx"),
        ("\rx", "'\rx"),
        ("＝1", "'＝1"),
        ("'=1", "''=1"),
        ("Salt", "Salt"),
        ("a=b", "a=b"),
        ("'quoted'", "'quoted'"),
        ("", ""),
        (-5, -5),
        (-0.5, -0.5),
        (None, None),
    ],
)
def test_only_text_that_begins_like_a_formula_is_marked(value: Cell, safe: Cell) -> None:
    assert safe_cell(value) == safe


@given(st.text() | st.text("='+-@ \t1", max_size=5))
def test_a_marked_text_comes_back(text: str) -> None:
    safe = safe_cell(text)
    assert isinstance(safe, str)
    assert plain_cell(safe) == text
    assert not safe.startswith(("=", "+", "-", "@", "\t", "\r"))
