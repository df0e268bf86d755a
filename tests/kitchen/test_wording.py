"""How words are listed in a sentence."""

from __future__ import annotations

import pytest

from binder.kitchen.wording import listed


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], ""),
        (["leek"], "leek"),
        (["leek", "onion"], "leek and onion"),
        (["leek", "onion", "salt"], "leek, onion and salt"),
        (["leg, whole"], "leg, whole"),
        (["wing, whole", "salt", "breast, on the skin"], "wing, whole; salt; and breast, on the skin"),
        (["sesame (tahini, seeds)", "soybeans"], "sesame (tahini, seeds) and soybeans"),
        (["0,5 g of salt", "1,5 g of pepper"], "0,5 g of salt and 1,5 g of pepper"),
    ],
)
def test_where_one_ends_and_the_next_begins_is_never_in_doubt(words: list[str], says: str) -> None:
    assert listed(words) == says
