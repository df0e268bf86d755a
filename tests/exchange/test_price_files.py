"""A price list is known by its name, in whatever case it is written."""

from __future__ import annotations

from pathlib import Path

import pytest

from binder.exchange.price_files import is_price_list


@pytest.mark.parametrize(
    ("name", "is_one"),
    [
        ("a.csv", True),
        ("A.XLSX", True),
        ("a.tsv", True),
        ("old.xls", True),
        ("a.binder", False),
        ("a.json", False),
        ("csv", False),
    ],
)
def test_a_price_list_is_known_by_its_name(name: str, is_one: bool) -> None:
    assert is_price_list(Path(name)) is is_one
