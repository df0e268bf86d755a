"""The lists and sheets, read back from the PDF by an independent reader: what figures say is what stands on paper."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.figures.base import base_balance
from binder.figures.buying_words import take_words
from binder.figures.checks import cost_beside_cap, shoot_checks
from binder.figures.cost import break_even_prices, shoot_costs
from binder.figures.mise import mise_list
from binder.figures.portion_text import number_style
from binder.figures.shopping import shopping_list
from binder.figures.spend import shoot_spend
from binder.kitchen.amount_text import grams_text
from binder.kitchen.binder import Binder
from binder.kitchen.buying import PantryItem, Purchase
from binder.kitchen.money import money_text
from binder.kitchen.price import Pack, Quote
from binder.kitchen.shoot import Shoot
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder, metric_binder
from tests.paper.reader import all_words

BINDERS = pytest.mark.parametrize("binder", [full_binder(), metric_binder()], ids=["us", "metric"])
PAPERS = pytest.mark.parametrize("paper", ["a4", "letter", "a5", "4x6"])


def _words(binder: Binder, kind: SheetKind, paper: str | None = None) -> str:
    return all_words(sheet_bytes(binder, SHOOT, kind, paper))


def _plain(text: str) -> str:
    return " ".join(text.replace("-", "−").split()) if text.startswith("-") else " ".join(text.split())


def _money(binder: Binder, minor: float) -> str:
    return _plain(money_text(minor, binder.settings.currency, binder.settings.locale))


def _without(binder: Binder, table: str, *keys: str) -> Binder:
    return binder.with_tables({table: binder.table(table).with_changes((key, None) for key in keys)})


@PAPERS
@BINDERS
def test_the_shopping_list_has_every_item_with_its_packs_and_the_total(binder: Binder, paper: str) -> None:
    words, bought = _words(binder, SheetKind.SHOPPING, paper), shopping_list(binder, SHOOT)
    assert len(bought.items) > 8
    for item in bought.items:
        assert item.name in words
        assert ("not known: no price for" if item.spend is None else _money(binder, item.spend)) in words
        for pack in item.packs:
            assert take_words(binder, pack) in words
            assert _money(binder, pack.priced.price) in words
            assert pack.priced.quote.on.strftime("%Y") in words
            assert binder.stores[pack.priced.pack.store or ""].name in words
    if bought.spend is not None:
        assert _money(binder, bought.spend) in words


def test_a_food_without_a_price_is_named_and_the_total_is_not_known() -> None:
    words = _words(_without(full_binder(), "quotes", "quote-tahini"), SheetKind.SHOPPING)
    known = shoot_spend(_without(full_binder(), "quotes", "quote-tahini"), SHOOT).known
    assert "not known: no price for tahini" in words
    assert "Spend at the till: not known: no price for" in words
    assert f"What has a price comes to {_money(full_binder(), known)}" in words
    assert "$0.00" not in words


def test_the_shopping_list_says_whether_the_budget_holds() -> None:
    binder = _without(full_binder(), "lines", "stew/4/8")  # flat parsley has no price
    assert "within the budget of $75.00" in _words(binder, SheetKind.SHOPPING)
    shoot: Shoot = binder.shoots[SHOOT]
    tight = binder.with_tables({"shoots": binder.shoots.with_changes([(SHOOT, replace(shoot, budget=1000))])})
    assert "over the budget of $10.00 by $" in _words(tight, SheetKind.SHOPPING)


@PAPERS
@BINDERS
def test_the_mise_list_has_every_line_by_station_with_what_each_build_takes_and_in_all(
    binder: Binder, paper: str
) -> None:
    words, items = _words(binder, SheetKind.MISE, paper), mise_list(binder, SHOOT)
    for item in items:
        assert item.station[1:] in words
        for said in (
            item.food,
            item.preparation,
            item.total.weight,
            item.total.measure,
            *(b.amount.weight for b in item.builds),
        ):
            assert said in words
        if item.number is not None:
            assert f"×{item.count}" in words


@PAPERS
@BINDERS
def test_the_costs_sheet_has_cost_cap_and_state_of_every_dish_and_the_cost_of_every_line(
    binder: Binder, paper: str
) -> None:
    words, currency = _words(binder, SheetKind.COSTS, paper), binder.settings.currency
    for cost in shoot_costs(binder, SHOOT):
        for said in (cost.name, *(text for text in cost_beside_cap(binder, cost) if text != "–")):
            assert _plain(said) in words
        for line in cost.lines:
            if line.counted and line.cost is not None:
                assert line.name in words
                assert _plain(money_text(line.cost, currency, binder.settings.locale, digits=3)) in words
        for price in break_even_prices(binder, cost.dish):
            if price.price_at_cap is None:
                assert "no price would do" in words
            elif price.price_at_cap <= 10 * price.price_now:
                assert _money(binder, price.price_now) in words
                assert _money(binder, int(price.price_at_cap)) in words
            else:
                assert "could cost 10 times what it does" in words


def test_a_dish_over_its_cap_and_one_whose_cost_is_not_known_say_so_in_words() -> None:
    binder = _without(full_binder(), "quotes", "quote-tahini")
    words = _words(binder, SheetKind.COSTS)
    assert "not known: no price for flat parsley" in words
    assert "not known: no price for tahini" in words
    dear = _words(_without(full_binder(), "lines", "stew/4/8"), SheetKind.COSTS)
    assert "over: $" in dear or "within: $" in dear


@PAPERS
@BINDERS
def test_the_base_sheet_has_every_form_and_how_it_is_made(binder: Binder, paper: str) -> None:
    words, balance = _words(binder, SheetKind.BASE, paper), base_balance(binder, SHOOT)
    assert balance is not None
    for form in balance.forms:
        assert form.name in words
        for grams in (form.made, form.used, form.taken, form.left):
            assert grams_text(grams, number_style(binder)) in words
    for said in (
        "enough",
        "Soak",
        "Cook",
        "start at the latest",
        "12 h from start to ready",
        "Keep a long soak in the refrigerator",
    ):
        assert said in words


def test_a_base_that_is_short_says_what_runs_out_and_what_would_mend_it() -> None:
    binder = full_binder()
    shoot: Shoot = binder.shoots[SHOOT]
    short = binder.with_tables({"shoots": binder.shoots.with_changes([(SHOOT, replace(shoot, base_amount=0.2))])})
    words = _words(short, SheetKind.BASE)
    for said in ("short by", "is what runs out", "Any one of these mends it:", "Have "):
        assert said in words


@PAPERS
@BINDERS
def test_the_checks_sheet_has_every_finding_in_its_own_words(binder: Binder, paper: str) -> None:
    words = _words(binder, SheetKind.CHECKS, paper)
    assert shoot_checks(binder, SHOOT)
    for check in shoot_checks(binder, SHOOT):
        assert " ".join(check.says.split()) in words
        assert check.severity.value in words


@pytest.mark.parametrize(
    "kind", [kind for kind in SheetKind if kind not in {SheetKind.CARDS, SheetKind.STATIONS, SheetKind.LABELS}]
)
def test_an_empty_shoot_prints_sheets_that_say_so(kind: SheetKind) -> None:
    binder = full_binder(Shoot(id="empty", name="Empty day"))
    words = all_words(sheet_bytes(binder, "empty", kind))
    assert "Empty day" in words
    assert len(words.split()) > 8


def test_what_is_ordered_ahead_says_how_much_to_order() -> None:
    plain = full_binder()
    tahini, garlic = (replace(plain.foods[food], order_days=3) for food in ("tahini", "garlic"))
    unpriced = replace(plain.packs["pack-garlic"], on_sale=False)
    words = _words(full_binder(tahini, garlic, unpriced), SheetKind.SHOPPING)
    ahead = words[words.index("To order ahead") : words.index("Corner Larder")]
    needed = {item.food: item for item in shopping_list(plain, SHOOT).items}
    assert f"tahini {take_words(plain, needed['tahini'].packs[0])}" in ahead
    assert f"garlic {grams_text(needed['garlic'].needed)}" in ahead


def test_what_became_of_a_line_is_on_paper_too() -> None:
    """Or whoever goes next looks again for what there was none of, or buys what another food was taken for."""
    plain = full_binder()
    assert "instead" not in _words(plain, SheetKind.SHOPPING)
    tahini = Purchase(id="t", shoot=SHOOT, food="tahini", pack="pack-oil", instead="oil")
    onion = Purchase(id="o", shoot=SHOOT, food="onion", count=0)
    words = _words(full_binder(tahini, onion), SheetKind.SHOPPING)
    assert f"{plain.foods['oil'].name} instead" in words
    assert "not to be had" in words


def test_what_is_at_home_sold_by_weight_or_in_bundles_says_so() -> None:
    day = date(2026, 11, 2)
    binder = full_binder(
        PantryItem(id="home", shoot=SHOOT, food="oil", amount=2, unit="l"),
        Pack(id="pack-yogurt", food="yogurt", store="market", label="kilo", size=1, unit="kg", by_weight=True),
        Quote(id="quote-tomato", pack="pack-tomato", price=279, on=day, bundle_packs=2, bundle_price=499),
    )
    words = _words(binder, SheetKind.SHOPPING)
    for said in ("at home 1.82 kg", "nothing: there is enough", "at the counter at $4.69 for 1 kg", "2 for $4.99"):
        assert said in words
