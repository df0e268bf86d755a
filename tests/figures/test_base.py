"""How far the base goes, against a calculation by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.base import BaseBalance, BaseVerdict, base_balance
from binder.kitchen.binder import Binder
from binder.kitchen.conversion import Conversion, Outcome
from binder.kitchen.food import Food
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
    from binder.kitchen.recipe import Line

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
