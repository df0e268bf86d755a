"""The least base that meets a demand, against an independent solver and against trying everything."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from binder.figures.base_network import Network, Process, Runs
from binder.figures.base_program import program_of
from binder.figures.least_base import furthest, least_base, least_grams, made_forms, taken_forms, worth
from tests.figures.networks import networks

LARGE = 1e5
"""Grams; the demands of these tests never ask for so much, and a tighter bound keeps the solver's tolerance small."""


def by_scipy(network: Network, wanted: dict[str, float]) -> float:
    """Grams of base by scipy's own solver (HiGHS), from a formulation written for this test alone.

    A run with a least amount is a semi-continuous variable: nothing, or at least so much. Batches are counted.
    """
    processes, forms = network.processes, network.forms[1:]
    count = len(processes)
    balance = np.zeros((len(forms), 2 * count))
    for column, process in enumerate(processes):
        for form, ratio in process.gives:
            balance[forms.index(form), column] += ratio
        for form, share in process.inputs:
            if form != network.base:
                balance[forms.index(form), column] -= share
    batched = np.array([process.batch or 0.0 for process in processes])
    whole = np.hstack([np.diag((batched > 0).astype(float)), -np.diag(batched)])
    rows = [LinearConstraint(balance, [wanted[form] for form in forms], np.inf), LinearConstraint(whole, 0.0, 0.0)]
    cost = np.array([dict(process.inputs).get(network.base, 0.0) for process in processes] + [0.0] * count)
    kinds = np.array([2 if process.least else 0 for process in processes] + [1] * count)
    least = np.array([process.least or 0.0 for process in processes] + [0.0] * count)
    bounds = Bounds(least, np.full(2 * count, LARGE))
    solved = milp(cost, constraints=rows, integrality=kinds, bounds=bounds, options={"mip_rel_gap": 0})
    assert solved.success, solved.message
    return float(solved.fun + wanted[network.base])


def by_linprog(network: Network, wanted: dict[str, float]) -> float:
    processes, forms = network.processes, network.forms[1:]
    balance = np.zeros((len(forms), len(processes)))
    for column, process in enumerate(processes):
        for form, ratio in process.gives:
            balance[forms.index(form), column] -= ratio
        for form, share in process.inputs:
            if form != network.base:
                balance[forms.index(form), column] += share
    cost = [dict(process.inputs).get(network.base, 0.0) for process in processes]
    solved = linprog(cost, A_ub=balance, b_ub=[-wanted[form] for form in forms])
    assert solved.status == 0
    return float(solved.fun + wanted[network.base])


@settings(max_examples=500)
@given(networks(batches=False))
def test_the_same_least_base_as_scipys_linear_program(case: tuple[Network, dict[str, float]]) -> None:
    network, wanted = case
    runs = least_base(network, wanted)
    assert runs.base == pytest.approx(by_linprog(network, wanted), rel=1e-6, abs=1e-6)
    _require_balance(network, wanted, runs)


@settings(max_examples=150)
@given(networks(most_forms=6, least_ratio=0.4))
def test_the_same_least_base_with_whole_batches_and_least_amounts(case: tuple[Network, dict[str, float]]) -> None:
    network, wanted = case
    runs = least_base(network, wanted)
    assert runs.base == pytest.approx(by_scipy(network, wanted), rel=1e-5, abs=1e-3)
    _require_balance(network, wanted, runs)


@settings(max_examples=200)
@given(networks(batches=False))
def test_following_the_runs_back_is_the_program_where_there_is_one_way(case: tuple[Network, dict[str, float]]) -> None:
    network, wanted = case
    if network.one_way:
        assert least_base(network, wanted).base == pytest.approx(
            program_of(network).runs(wanted).base, rel=1e-6, abs=1e-6
        )


def _require_balance(network: Network, wanted: dict[str, float], runs: Runs) -> None:
    """Mass is conserved: what is made covers what is used and taken on, and batches are whole."""
    made, taken = made_forms(network, runs), taken_forms(network, runs)
    scale = max(1.0, runs.base)
    for form in network.forms[1:]:
        assert made.get(form, 0.0) - taken.get(form, 0.0) >= wanted[form] - 1e-6 * scale
    assert runs.base == pytest.approx(taken.get(network.base, 0.0) + wanted[network.base], rel=1e-6, abs=1e-6)
    for process in network.processes:
        grams = runs.grams.get(process.key, 0.0)
        assert grams >= 0
        if process.batch and grams:
            assert grams / process.batch == pytest.approx(round(grams / process.batch), abs=1e-6)
        if process.least and grams:
            assert grams >= process.least - 1e-6


def test_whole_batches_against_trying_every_count() -> None:
    cheap = Process("cheap", "base", (("form", 0.5),), batch=70.0)
    good = Process("good", "base", (("form", 0.9), ("side", 0.2)), batch=100.0)
    network = Network("base", ("base", "form", "side"), (cheap, good))
    for form, side in itertools.product((10.0, 95.0, 260.0), (0.0, 15.0, 70.0)):
        tried = min(
            70.0 * a + 100.0 * b
            for a, b in itertools.product(range(12), range(8))
            if 35.0 * a + 90.0 * b >= form and 20.0 * b >= side
        )
        assert least_base(network, {"base": 0.0, "form": form, "side": side}).base == pytest.approx(tried)


def test_whole_batches_are_chosen_to_the_gram_however_many_there_are() -> None:
    # A solver left to itself stops at a hundredth of a per cent: half a gram too much here.
    small = Process("small", "base", (("form", 0.53),), batch=8.82)
    large = Process("large", "base", (("form", 0.54),), batch=13.79)
    network = Network("base", ("base", "form"), (small, large))
    tried = min(8.82 * a + 13.79 * max(0, math.ceil((8844.0 - 0.53 * 8.82 * a) / (0.54 * 13.79))) for a in range(1894))
    assert least_base(network, {"form": 8844.0}).base == pytest.approx(tried, abs=0.01)


def test_a_form_that_a_conversion_adds_is_made_too() -> None:
    # By hand: 100 g of stew take 100 g of cooked and 40 g of liquid; 100 g of base give 100 g cooked and 20 g liquid.
    boil = Process("boil", "base", (("cooked", 1.0), ("liquid", 0.2)))
    stew = Process("stew", "cooked", (("stew", 1.4),), adds=(("liquid", 0.4),))
    network = Network("base", ("base", "cooked", "liquid", "stew"), (stew, boil))
    runs = least_base(network, {"stew": 140.0})
    assert runs.grams == pytest.approx({"stew": 100.0, "boil": 200.0})
    assert runs.base == pytest.approx(200.0)
    assert taken_forms(network, runs) == pytest.approx({"base": 200.0, "cooked": 100.0, "liquid": 40.0})
    assert made_forms(network, runs) == pytest.approx({"cooked": 200.0, "liquid": 40.0, "stew": 140.0})


def test_a_blender_needs_its_least_only_when_it_is_run() -> None:
    blend = Process("blend", "base", (("paste", 1.0),), least=200.0)
    network = Network("base", ("base", "paste"), (blend,))
    assert least_base(network, {"paste": 50.0}).base == 200.0
    assert least_base(network, {"paste": 0.0}).base == 0.0
    assert least_base(network, {"paste": 250.0}).base == 250.0


def test_the_cheaper_of_two_ways_is_taken_and_co_products_pay_for_the_other() -> None:
    plain = Process("plain", "base", (("stock", 2.0),))
    rich = Process("rich", "base", (("meat", 0.6), ("stock", 0.5)))
    network = Network("base", ("base", "meat", "stock"), (plain, rich))
    runs = least_base(network, {"meat": 600.0, "stock": 700.0})
    assert runs.grams == pytest.approx({"rich": 1000.0, "plain": 100.0})
    assert least_base(replace(network, processes=(rich,)), {"meat": 600.0, "stock": 700.0}).base == pytest.approx(
        1400.0
    )


@given(networks(least_ratio=0.4))
def test_the_grams_alone_are_those_of_the_runs_and_never_less_without_batches(
    case: tuple[Network, dict[str, float]],
) -> None:
    network, wanted = case
    base = least_base(network, wanted).base
    assert least_grams(network, wanted) == pytest.approx(base, rel=1e-5, abs=1e-3)
    assert least_grams(network, wanted, batches=False) <= base * (1 + 1e-6) + 1e-3


def test_solving_for_another_demand_between_changes_nothing() -> None:
    cheap = Process("cheap", "base", (("form", 0.5),), least=70.0)
    good = Process("good", "base", (("form", 0.9), ("side", 0.2)), batch=100.0)
    network = Network("base", ("base", "form", "side"), (cheap, good))
    first = least_base(network, {"form": 120.0, "side": 15.0})
    furthest(network, {"form": 10.0}, {"side": 1.0}, base=900.0, most=100.0)
    least_grams(network, {"form": 4000.0})
    assert least_base(network, {"form": 120.0, "side": 15.0}) == first


@settings(max_examples=100)
@given(networks(most_forms=8, least_ratio=0.4), st.floats(1.05, 4.0))
def test_so_far_and_no_further_does_the_base_go(case: tuple[Network, dict[str, float]], room: float) -> None:
    network, wanted = case
    more = {form: grams for form, grams in wanted.items() if grams > 0}
    base = least_grams(network, wanted) * room
    times = furthest(network, wanted, more, base=base, most=50.0)
    assert least_grams(network, _grown(wanted, more, times * (1 - 1e-5))) <= base * (1 + 1e-5) + 1e-3
    if times < 50.0:
        assert least_grams(network, _grown(wanted, more, times * (1 + 1e-4) + 1e-4)) > base * (1 - 1e-5)


def _grown(wanted: dict[str, float], more: dict[str, float], times: float) -> dict[str, float]:
    return {form: grams + more.get(form, 0.0) * times for form, grams in wanted.items()}


def test_what_is_wanted_already_leaves_nothing_for_more() -> None:
    network = Network("base", ("base", "paste"), (Process("blend", "base", (("paste", 0.5),)),))
    assert furthest(network, {"paste": 100.0}, {"paste": 1.0}, base=150.0, most=10.0) == 0.0
    assert furthest(network, {"paste": 50.0}, {"paste": 10.0}, base=150.0, most=10.0) == pytest.approx(2.5)


@settings(max_examples=200)
@given(networks(batches=False), st.floats(0.0, 1.0))
def test_less_wanted_frees_no_more_base_than_it_is_worth(case: tuple[Network, dict[str, float]], share: float) -> None:
    network, wanted = case
    prices, base = worth(network, wanted), least_grams(network, wanted)
    for form, grams in wanted.items():
        freed = base - least_grams(network, {**wanted, form: grams * share})
        assert freed <= prices.get(form, 0.0) * grams * (1 - share) * (1 + 1e-6) + 1e-6 * max(1.0, base)
