"""Tax rates: one for all, others by section, and whether the prices contain them."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.tax_sheet import ADD_TAX, TaxSheet
from binder.desktop.sheet.sheet import Sight
from binder.figures.tax import tax_rate
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import set_tax
from binder.kitchen.errors import BinderError
from binder.kitchen.food import Section
from tests.desktop.money_page.latest import DAY
from tests.desktop.sheets import after_typing, cell_called, is_even

SHEET = TaxSheet()


@pytest.fixture
def taxed(chickpeas: Binder) -> Binder:
    """Seven per cent on all, two on produce."""
    grown = apply(chickpeas, set_tax(chickpeas, chickpeas.shoots[DAY], None, 0.07))
    return apply(grown, set_tax(grown, grown.shoots[DAY], Section.PRODUCE, 0.02))


@pytest.mark.parametrize(
    ("typed", "section", "rate"),
    [
        ("7 %", None, 0.07),
        ("7", None, 0.07),
        ("1", None, 0.01),
        ("0.5 %", None, 0.005),
        ("produce 2 %", Section.PRODUCE, 0.02),
        ("Produce 8.25", Section.PRODUCE, 0.0825),
        ("all else 19 %", None, 0.19),
    ],
)
def test_a_rate_is_typed_whole_and_is_per_cent(
    chickpeas: Binder, typed: str, section: Section | None, rate: float
) -> None:
    after = after_typing(SHEET, Sight(chickpeas, DAY), ADD_TAX, "section", typed)
    assert tax_rate(after, DAY, section.value if section else None) == pytest.approx(rate)


@pytest.mark.parametrize("typed", ["", "produce", "moon dust 7 %", "140 %"])
def test_what_is_no_rate_is_refused(chickpeas: Binder, typed: str) -> None:
    with pytest.raises(BinderError):
        after_typing(SHEET, Sight(chickpeas, DAY), ADD_TAX, "section", typed)


def test_a_section_has_one_rate(taxed: Binder) -> None:
    with pytest.raises(BinderError, match="there is a rate for it already"):
        after_typing(SHEET, Sight(taxed, DAY), ADD_TAX, "section", "produce 3 %")
    produce = next(tax for tax in taxed.tax_rates.values() if tax.section is Section.PRODUCE)
    after = after_typing(SHEET, Sight(taxed, DAY), f"tax_rates:{produce.id}", "section", "all else")
    assert [(tax.section, tax.rate) for tax in after.tax_rates.values()] == [(None, 0.02)]


def test_rates_are_edited_and_removed(taxed: Binder) -> None:
    sight = Sight(taxed, DAY)
    every = next(tax for tax in taxed.tax_rates.values() if tax.section is None)
    key = f"tax_rates:{every.id}"
    assert cell_called(SHEET, sight, key, "rate").text == "7 %"
    assert tax_rate(after_typing(SHEET, sight, key, "rate", "19"), DAY) == pytest.approx(0.19)
    change = SHEET.remove(sight, [key, ADD_TAX, "prices_taxed"])
    assert change is not None
    assert [tax.section for tax in apply(taxed, change).tax_rates.values()] == [Section.PRODUCE]
    assert SHEET.remove(sight, [ADD_TAX]) is None
    assert is_even(SHEET, sight)


def test_whether_prices_contain_the_tax_is_chosen(taxed: Binder) -> None:
    after = after_typing(SHEET, Sight(taxed, DAY), "prices_taxed", "section", "added")
    assert after.shoots[DAY].prices_taxed is False
    assert cell_called(SHEET, Sight(after, DAY), "prices_taxed", "section").text == "added at the till"
