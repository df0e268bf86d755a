"""What to take, in words: they say which pack is meant, once, and why so many of it cost less."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.figures.buying_words import bundle_words, offer_words, pack_size, pack_text, take_words
from binder.figures.price import PricedPack
from binder.figures.shopping import PackCount
from binder.kitchen.price import Pack, Quote
from tests.kitchen_binder import small_binder

SMALL = small_binder()
PACK = SMALL.packs["pack-onion"]


def taken(count: int, *, packs: int | None = 3, together: int | None = 298, by_weight: bool = False) -> PackCount:
    pack = replace(PACK, label="bunch", size=1, unit="bunch", by_weight=by_weight)
    quote = Quote(id="q", pack=pack.id, price=149, on=date(2026, 11, 2), bundle_packs=packs, bundle_price=together)
    return PackCount(PricedPack(pack, quote, 55.0), count, 55.0 * count, 149 * count)


@pytest.mark.parametrize(
    ("label", "size", "unit", "says"),
    [
        ("", 400, "g", "400 g"),
        ("jar", 400, "g", "400 g, jar"),
        ("400 g jar", 400, "g", "400 g jar"),
        ("1 kg bag", 1000, "g", "1 kg bag"),
        ("500 ml bottle", 0.5, "l", "500 ml bottle"),
        ("1½ lb net", 1.5, "lb", "1½ lb net"),
        ("1.5 lb net", 1.5, "lb", "1.5 lb net"),
        ("loose, by the pound", 1, "lb", "1 lb, loose, by the pound"),
        ("two\nlines", 2, "fl oz", "2 fl oz, two lines"),
        ("bunch", 1, "bunch", "bunch"),
        ("", 1, "bunch", "bunch"),
        ("lemon", 1, "each", "lemon"),
        ("", 1, "each", "1 piece"),
        ("", 6, "each", "6 pieces"),
        ("6, size M", 6, "each", "6, size M"),
        ("10 free range", 10, "each", "10 free range"),
        ("size M", 6, "each", "6 pieces, size M"),
        ("16 of size M", 6, "each", "6 pieces, 16 of size M"),
        ("12 leaves", 12, "leaf", "12 leaves"),
    ],
)
def test_a_pack_says_its_size_and_what_it_is_each_once(label: str, size: float, unit: str, says: str) -> None:
    assert pack_text(SMALL, replace(PACK, label=label, size=size, unit=unit)) == says


def test_a_size_is_as_it_is_typed() -> None:
    assert pack_size(SMALL, Pack(id="x", food="onion", size=1.5, unit="lb")) == "1½ lb"
    assert pack_size(SMALL, Pack(id="x", food="onion", size=2, unit="")) == "2 pieces"


def test_so_many_packs_or_a_weight_at_the_counter() -> None:
    assert take_words(SMALL, taken(3)) == "3 × bunch"
    assert take_words(SMALL, replace(taken(1, by_weight=True), grams=128.0)) == "128 g at the counter"


def test_an_offer_is_said_where_so_many_are_taken_that_it_counts() -> None:
    assert [offer_words(SMALL, taken(count)) for count in (1, 2, 3, 4)] == ["", "", "3 for $2.98", "3 for $2.98"]


def test_no_offer_is_said_where_there_is_none_or_the_counter_weighs() -> None:
    assert offer_words(SMALL, taken(3, packs=None, together=None)) == ""
    assert offer_words(SMALL, taken(3, by_weight=True)) == ""
    assert bundle_words(SMALL, taken(3, packs=None, together=None).priced.quote) == ""


def test_of_more_or_fewer_bought_than_listed_the_offer_is_said_by_what_was_bought() -> None:
    assert offer_words(SMALL, taken(3), 2) == ""
    assert offer_words(SMALL, taken(2), 3) == "3 for $2.98"
    # A part of a pack is weighed and not counted: its price is a part of the price of one.
    assert offer_words(SMALL, taken(2), 3.5) == ""
