from __future__ import annotations

from dataclasses import replace

from binder.figures.card import station_card
from binder.figures.safety import DonenessNeeded
from binder.kitchen.food import Food
from binder.kitchen.reference import doneness
from binder.kitchen.settings import SETTINGS_ID, AllergenScheme, SafetyRules, Settings
from binder.paper.block import Text
from binder.paper.card_safety import allergens_block, doneness_block
from binder.paper.card_type import card_type
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import all_words


def _said(block: Text) -> str:
    return "".join(run.text for run in block.runs).replace("\u00a0", " ")


def test_allergens_are_words_of_the_binders_scheme_with_the_foods_that_carry_them() -> None:
    binder = full_binder(
        Settings(id=SETTINGS_ID, name="EU", allergens=AllergenScheme.EU_FOURTEEN),
        Food(id="oil", name="mustard oil", allergens=("mustard",), density=0.91),
    )
    card = station_card(binder, "dish-stew")
    said = _said(allergens_block(card, AllergenScheme.EU_FOURTEEN, card_type(), carriers=True))
    assert said == "Contains milk (whole-milk yogurt) and mustard (mustard oil)."
    said = _said(allergens_block(card, AllergenScheme.EU_FOURTEEN, card_type(), carriers=False))
    assert said == "Contains milk and mustard."


def test_no_allergen_is_never_said_to_be_none_at_all() -> None:
    card = replace(station_card(full_binder(), "dish-stew"), allergens=())
    said = _said(allergens_block(card, AllergenScheme.US_NINE, card_type(), carriers=True))
    assert said == "None of the nine allergens of US law is named by a food here. Read the labels all the same."


def test_the_safe_temperature_stands_on_the_card_with_its_source() -> None:
    words = all_words(sheet_bytes(full_binder(), SHOOT, SheetKind.CARDS))
    # USDA FSIS chart: poultry 165 °F / 74 °C.
    assert "chicken thighs, boned 165 °F / 74 °C at the core [USDA FSIS" in words


def test_foods_of_one_rule_stand_together() -> None:
    rule = doneness(SafetyRules.USDA_FSIS, "poultry")
    assert rule is not None
    one, two = (DonenessNeeded(name, rule, stated=True) for name in ("wings", "thighs"))
    together = doneness_block(full_binder(), [one, two, one], card_type())
    alone = doneness_block(full_binder(), [one], card_type())
    assert together is not None
    assert alone is not None
    assert together.height(400) == alone.height(400)
    assert doneness_block(full_binder(), [], card_type()) is None
