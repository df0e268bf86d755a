"""What a sentence is held against, guessed from its words."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.claim_guess import guessed_terms
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.claim import ClaimKind
from binder.kitchen.edits.records import set_fields
from tests.desktop.money_page.latest import DAY


@pytest.mark.parametrize(
    ("says", "kind", "target"),
    [
        ("Every plate under $1.75.", ClaimKind.PORTION_UNDER, 175),
        ("Nothing here costs more than 1.75 a plate", ClaimKind.PORTION_UNDER, 175),
        ("Everything you see for under $125!", ClaimKind.ALL_UNDER, 12_500),
        ("The whole shop is $90", ClaimKind.ALL_UNDER, 9000),
        ("On the table in 45 minutes", ClaimKind.MINUTES_UNDER, 45),
        ("Done in 2 hours", ClaimKind.MINUTES_UNDER, 120),
        ("All of it from one bag of chickpeas", ClaimKind.ALL_FROM_BASE, 0),
    ],
)
def test_the_kind_and_the_target_come_from_the_words(
    chickpeas: Binder, says: str, kind: ClaimKind, target: float
) -> None:
    terms = guessed_terms(chickpeas, chickpeas.shoots[DAY], says)
    assert (terms["kind"], terms["target"]) == (kind, target)


def test_a_dish_or_a_recipe_that_is_named_is_meant(chickpeas: Binder) -> None:
    day = chickpeas.shoots[DAY]
    assert guessed_terms(chickpeas, day, "The herb fritters come in under $1.50")["dish"] == "dish_2"
    assert guessed_terms(chickpeas, day, "Herb fritters in 30 minutes")["dish"] == "dish_2"
    spoon = guessed_terms(chickpeas, day, "A tablespoon of silky hummus with lemon: about 12 cents")
    assert (spoon["kind"], spoon["recipe"]) == (ClaimKind.AMOUNT_ABOUT, "silky_hummus_with_lemon")
    assert (spoon["amount"], spoon["unit"], spoon["target"]) == (1.0, "tbsp", 12)


@pytest.mark.parametrize(
    ("says", "target"), [("Jeder Teller unter 1,75 €", 175), ("under €2.50", 250), ("1,75 EUR", 175)]
)
def test_money_is_read_as_the_binder_writes_it(chickpeas: Binder, says: str, target: int) -> None:
    german = apply(chickpeas, set_fields("x", chickpeas.settings, locale="de_DE", currency="EUR"))
    assert guessed_terms(german, german.shoots[DAY], says)["target"] == target


def test_another_currency_is_no_price_here(chickpeas: Binder) -> None:
    terms = guessed_terms(chickpeas, chickpeas.shoots[DAY], "Under €1.75 they say, under £2 we say")
    assert terms["kind"] is ClaimKind.ALL_FROM_BASE


def test_numbers_that_are_no_money_are_left_alone(chickpeas: Binder) -> None:
    terms = guessed_terms(chickpeas, chickpeas.shoots[DAY], "5 dishes from 1 bag, 12 builds, 1.2.3")
    assert terms["kind"] is ClaimKind.ALL_FROM_BASE


@pytest.mark.parametrize("currency", ["JPY", "KWD"])
def test_currencies_without_cents_have_none(chickpeas: Binder, currency: str) -> None:
    other = apply(chickpeas, set_fields("x", chickpeas.settings, currency=currency))
    assert guessed_terms(other, other.shoots[DAY], "about 12 cents")["kind"] is ClaimKind.ALL_FROM_BASE
    assert guessed_terms(other, other.shoots[DAY], f"under {currency} 300")["kind"] is ClaimKind.ALL_FROM_BASE
    marked = guessed_terms(other, other.shoots[DAY], f"under 300 {currency}")
    assert marked["target"] == (300 if currency == "JPY" else 300_000)
