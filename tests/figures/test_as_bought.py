"""What buying did to the dishes: prices paid, foods taken instead.

A portion of the spread was planned at 53.68106 cents: tahini 30 (15 g at 2), beans 10.27027, oil 13.30809, salt 0.1027.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.as_bought import as_bought, caps_as_bought
from binder.figures.cost import Verdict, dish_cost
from binder.kitchen.binder import Binder, every_record
from binder.kitchen.buying import Purchase
from binder.kitchen.price import Quote
from binder.kitchen.record import Record
from tests.figures.test_cap_repairs import pail, sunflower
from tests.kitchen_binder import small_binder

SPREAD = 53.68106
SMALL = small_binder()


def bought(food: str, key: str = "p", **fields: object) -> Purchase:
    return Purchase(id=key, shoot="day", food=food, **fields)  # type: ignore[arg-type]


def spread(*records: Record) -> float | None:
    return dish_cost(as_bought(small_binder(*records), "day"), "dish-spread").per_portion


def test_without_receipts_all_is_as_planned() -> None:
    assert as_bought(SMALL, "day") == SMALL
    assert caps_as_bought(SMALL, "day") == ()
    ticked = bought("tahini", pack="pack-tahini", planned=600)
    assert caps_as_bought(small_binder(ticked), "day") == ()


def test_a_dearer_jar_makes_dearer_portions() -> None:
    jar = bought("tahini", pack="pack-tahini", planned=600, paid=660)
    assert spread(jar) == pytest.approx(SPREAD + 3, abs=1e-4)
    dishes = caps_as_bought(small_binder(jar), "day")
    assert [cap.before.name for cap in dishes] == ["Bean spread", "Onion flatbread"]
    assert dishes[0].more == pytest.approx(3, abs=1e-4)
    assert dishes[0].instead == ()


def test_a_pinned_price_gives_way_to_what_was_paid() -> None:
    pinned = replace(SMALL.quotes["quote-tahini"], pinned=True)
    assert spread(pinned, bought("tahini", pack="pack-tahini", paid=660)) == pytest.approx(SPREAD + 3, abs=1e-4)


def test_two_packs_of_one_food_cost_their_mean_a_gram() -> None:
    # a jar of 300 g at 600 and a pail of 1 kg at 700 are 1 cent a gram
    both = bought("tahini", pack="pack-tahini", paid=600), bought("tahini", "q", pack="pail", paid=700)
    assert spread(*pail(), *both) == pytest.approx(SPREAD - 15, abs=1e-4)


def test_a_line_ticked_without_a_pack_counts_as_planned_weight() -> None:
    assert spread(bought("tahini", paid=660)) == pytest.approx(SPREAD + 3, abs=1e-4)


def test_a_pack_that_is_sold_out_since_was_bought_all_the_same() -> None:
    gone = replace(SMALL.packs["pack-tahini"], on_sale=False)
    assert spread(gone, bought("tahini", pack="pack-tahini", paid=660)) == pytest.approx(SPREAD + 3, abs=1e-4)


def test_what_was_taken_instead_stands_in_the_lines_at_once() -> None:
    # sunflower oil at 270 for a litre of 900 g is 0.3 cents a gram for 2
    instead = bought("oil", pack="sun/1", instead="sun", planned=900, paid=270)
    binder = small_binder(*sunflower(), instead)
    (first, second) = caps_as_bought(binder, "day")
    assert first.instead == (("olive oil", "sunflower oil"),)
    assert first.more == pytest.approx(-6.65404 * 1.7, abs=1e-4)
    assert second.instead == (("olive oil", "sunflower oil"),)  # in the spread that the bread is filled with


def test_what_was_taken_instead_may_take_a_dish_over_its_cap() -> None:
    capped = replace(SMALL.dishes["dish-spread"], cap=60)
    dear = bought("oil", pack="sun/1", instead="sun", planned=900, paid=4000)
    (spread_cap, _bread) = caps_as_bought(small_binder(*sunflower(), capped, dear), "day")
    assert (spread_cap.before.verdict, spread_cap.after.verdict) == (Verdict.WITHIN, Verdict.OVER)


def test_what_cannot_be_weighed_of_the_other_food_is_not_known() -> None:
    odd = [replace(record, density=None) if record.id == "sun" else record for record in sunflower()]  # type: ignore[call-arg]
    instead = bought("oil", pack="sun/1", instead="sun", paid=270)
    (first, _second) = caps_as_bought(small_binder(*odd, instead), "day")
    assert (first.after.per_portion, first.more) == (None, None)
    assert "sunflower oil" in first.after.missing[0].says


def test_what_was_not_to_be_had_changes_no_price() -> None:
    assert spread(bought("tahini", count=0, paid=0)) == pytest.approx(SPREAD, abs=1e-5)


def test_only_this_shoots_recipes_and_receipts_count() -> None:
    other = replace(SMALL.shoots["day"], id="other", name="Other")
    elsewhere = replace(bought("tahini", pack="pack-tahini", paid=660), shoot="other")
    assert caps_as_bought(small_binder(other, elsewhere), "day") == ()


def test_the_binder_itself_is_as_before() -> None:
    binder: Binder = small_binder(*sunflower(), bought("oil", pack="sun/1", instead="sun", paid=270))
    before = every_record(binder)
    as_bought(binder, "day")
    assert every_record(binder) == before
    assert not any(isinstance(record, Quote) and record.id.startswith("paid/") for record in before)


def test_a_trace_of_a_pack_says_nothing_of_the_price_of_all_of_it() -> None:
    for count in (1e-12, 5e-324):
        assert spread(bought("tahini", pack="pack-tahini", paid=600, count=count)) == pytest.approx(SPREAD, abs=1e-4)
