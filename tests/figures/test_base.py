"""How far the base goes, against a calculation by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures import base
from binder.figures.base import BaseBalance, BaseVerdict, base_balance
from binder.figures.base_cost import BaseCost, base_cost
from binder.figures.base_network import UnsolvedError
from binder.figures.base_repairs import base_repairs
from binder.figures.shopping import needed_to_buy
from binder.kitchen.binder import Binder
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from binder.kitchen.shoot import Build
from tests.kitchen_binder import small_binder


def balance_of(binder: Binder) -> BaseBalance:
    balance = base_balance(binder, "day")
    assert balance is not None
    return balance


def test_the_balance_is_the_one_worked_by_hand() -> None:
    # Builds: spread hero and swap-out (both use the blending step), bread hero with half a batch of spread; the bread's
    # swap-out stops before the spread. Cooked: 300 + 300 + 150 = 750 g; liquid: 80 + 80 + 40 = 200 g.
    balance = balance_of(small_binder())
    forms = {form.form: form for form in balance.forms}
    assert forms["cooked"].used == pytest.approx(750)
    assert forms["liquid"].used == pytest.approx(200)
    soaked = max(750 / 1.05, 200 / 0.80)
    assert forms["soaked"].taken == pytest.approx(soaked)
    assert balance.needed == pytest.approx(soaked / 2.0)
    assert forms["liquid"].left == pytest.approx(soaked * 0.80 - 200)
    assert forms["cooked"].left == pytest.approx(0)
    assert balance.verdict is BaseVerdict.ENOUGH
    assert balance.left == pytest.approx(1000 - soaked / 2)
    assert balance.added["water"] == pytest.approx(3 * soaked / 2)
    assert balance.driver == "cooked"
    assert balance.by_dish["dish-bread"] == pytest.approx({"cooked": 150, "liquid": 40})


def test_a_half_made_build_counts_only_what_it_reaches() -> None:
    whole = small_binder(Build(id="bread-swap", dish="dish-bread", position=1))
    assert balance_of(whole).by_dish["dish-bread"]["cooked"] == pytest.approx(300)


def test_a_form_that_nothing_makes_is_named_and_the_rest_still_computes() -> None:
    binder = small_binder(
        Food(id="flakes", name="bean flakes", form_of="beans"),
        Line(id="f", step="spread/1", position=9, food="flakes", low=10, high=10, unit="g"),
    )
    balance = balance_of(binder)
    assert balance.verdict is BaseVerdict.UNKNOWN
    assert any("bean flakes" in lack.says for lack in balance.missing)
    assert next(form for form in balance.forms if form.form == "cooked").used == pytest.approx(750)


def test_a_loop_of_conversions_is_named() -> None:
    binder = small_binder(
        Conversion(id="back", takes="cooked", name="Uncook"),
        Outcome(id="back/1", conversion="back", form="soaked", ratio=0.5),
    )
    balance = balance_of(binder)
    assert balance.verdict is BaseVerdict.UNKNOWN
    assert any("loop" in lack.says for lack in balance.missing)


def test_no_base_no_balance() -> None:
    assert base_balance(small_binder(replace(small_binder().shoots["day"], base=None)), "day") is None


@given(st.floats(0.2, 5), st.floats(0.2, 5), st.floats(0.1, 3), st.integers(1, 12))
def test_mass_is_conserved_whatever_the_yields(soak: float, cook: float, pour: float, portions: int) -> None:
    small = small_binder()
    binder = small_binder(
        replace(small.outcomes["soak/soaked"], ratio=soak),
        replace(small.outcomes["cook/cooked"], ratio=cook),
        replace(small.outcomes["cook/liquid"], ratio=pour),
        replace(small.dishes["dish-spread"], portions=portions),
    )
    balance = balance_of(binder)
    runs = {run.conversion: run.grams for run in balance.runs}
    for form in balance.forms:
        assert form.made == pytest.approx(form.used + form.taken + form.left, rel=1e-6)
    assert balance.needed == pytest.approx(runs["soak"])
    assert runs["soak"] * soak == pytest.approx(runs["cook"])
    assert min(form.left for form in balance.forms if form.form in {"cooked", "liquid"}) == pytest.approx(0, abs=1e-6)


def test_a_form_that_a_conversion_adds_is_made_and_not_bought() -> None:
    # Stew of 1 g cooked with 0.5 g of the liquid: 300 g of it take 250 g cooked and 125 g liquid, by hand.
    binder = small_binder(
        Food(id="stew", name="bean stew", form_of="beans"),
        Conversion(id="stew", takes="cooked", name="Stew"),
        Outcome(id="stew/1", conversion="stew", form="stew", ratio=1.2),
        Addition(id="stew/2", conversion="stew", food="liquid", ratio=0.5),
        Addition(id="stew/3", conversion="stew", food="salt", ratio=0.02),
        Line(id="x", step="bread/2", position=5, food="stew", low=300, high=300, unit="g"),
    )
    balance = balance_of(binder)
    forms = {form.form: form for form in balance.forms}
    assert (forms["cooked"].taken, forms["liquid"].taken) == pytest.approx((250, 125))
    soaked = max((750 + 250) / 1.05, (200 + 125) / 0.8)
    assert balance.needed == pytest.approx(soaked / 2)
    assert balance.added["salt"] == pytest.approx(0.01 * soaked + 0.02 * 250)
    assert "liquid" not in balance.added
    assert "liquid" not in needed_to_buy(binder, "day")


def test_a_form_out_of_reach_of_the_base_is_named_and_the_rest_still_computes() -> None:
    # Two ways from a form that nothing makes: no way at all, and none that the solver may stumble over.
    binder = small_binder(
        Food(id="aged", name="aged beans", form_of="beans"),
        Food(id="meal", name="bean meal", form_of="beans"),
        Conversion(id="mill", takes="aged", name="Mill"),
        Outcome(id="mill/1", conversion="mill", form="meal", ratio=0.9),
        Conversion(id="pound", takes="aged", name="Pound"),
        Outcome(id="pound/1", conversion="pound", form="meal", ratio=0.8),
        Line(id="x", step="bread/2", position=5, food="meal", low=50, high=50, unit="g"),
    )
    balance = balance_of(binder)
    assert balance.verdict is BaseVerdict.UNKNOWN
    assert [lack.says for lack in balance.missing] == ["Nothing makes bean meal: add a conversion that gives it."]
    assert balance.needed == pytest.approx(750 / 1.05 / 2)


def test_what_a_conversion_gives_is_a_form_whether_it_says_so_or_not() -> None:
    binder = small_binder(
        Food(id="skins", name="bean skins"),
        Outcome(id="soak/skins", conversion="soak", position=1, form="skins", ratio=0.1),
        Line(id="x", step="bread/2", position=5, food="skins", low=20, high=20, unit="g"),
    )
    balance = balance_of(binder)
    skins = next(form for form in balance.forms if form.form == "skins")
    assert skins.used == pytest.approx(20)
    assert skins.made == pytest.approx(0.1 * balance.runs[0].grams)
    assert isinstance(base_cost(binder, "day"), BaseCost)
    assert "skins" not in needed_to_buy(binder, "day")


def test_a_conversion_that_gives_nothing_yet_does_no_harm() -> None:
    idle = Conversion(id="idle", takes="soaked", name="Idle")
    assert balance_of(small_binder(idle)) == balance_of(small_binder())
    short = small_binder(idle, replace(small_binder().shoots["day"], base_amount=300, base_unit="g"))
    assert base_repairs(short, "day")


def test_a_base_in_pieces_is_what_the_pieces_weigh_as_bought() -> None:
    shoot = replace(small_binder().shoots["day"], base="onion", base_amount=9, base_unit="each")
    assert balance_of(small_binder(shoot)).there_is == pytest.approx(9 * 110 / 0.9)


def test_a_line_may_use_the_base_itself() -> None:
    line = Line(id="x", step="spread/1", position=9, food="beans", low=50, high=50, unit="g")
    balance = balance_of(small_binder(line))
    assert balance.needed == pytest.approx(750 / 1.05 / 2 + 2.5 * 50)


def test_what_the_solver_cannot_find_is_named_and_nothing_is_claimed(monkeypatch: pytest.MonkeyPatch) -> None:
    def unsolved(*_asked: object) -> None:
        raise UnsolvedError

    monkeypatch.setattr(base, "least_base", unsolved)
    balance = balance_of(small_binder())
    assert balance.verdict is BaseVerdict.UNKNOWN
    assert "could not be worked out" in balance.missing[0].says
