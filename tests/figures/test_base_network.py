"""The network of a binder's forms: which there are, in which order they are made, and what can be run."""

from __future__ import annotations

import pytest

from binder.figures.base_network import Network, Process, base_forms, network_of
from binder.figures.missing import Missing
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.record import Record
from tests.kitchen_binder import small_binder


def _network(*others: Record) -> Network:
    network = network_of(small_binder(*others), "beans")
    assert isinstance(network, Network)
    return network


def test_processes_stand_from_the_dishes_back_and_the_base_first_of_the_forms() -> None:
    network = _network()
    assert network.base == network.forms[0] == "beans"
    assert set(network.forms) == {"beans", "soaked", "cooked", "liquid"}
    assert [process.takes for process in network.processes] == ["soaked", "beans"]
    assert network.one_way
    assert not network.in_batches


def test_a_food_that_a_conversion_gives_is_a_form_though_it_is_not_called_one() -> None:
    blended = (
        Conversion(id="blend", name="Blend", takes="cooked"),
        Outcome(id="o", conversion="blend", form="oil", ratio=0.5),
    )
    assert "oil" in base_forms(small_binder(*blended), "beans")


def test_a_second_way_to_a_form_is_seen() -> None:
    dry = (
        Conversion(id="quick", name="Boil unsoaked", takes="beans"),
        Outcome(id="o", conversion="quick", form="cooked", ratio=2),
    )
    assert not _network(*dry).one_way


def test_what_needs_a_form_that_cannot_be_made_is_left_out() -> None:
    sprouts = (
        Food(id="sprouts", name="bean sprouts", form_of="beans"),
        Conversion(id="mash", name="Mash with sprouts", takes="cooked"),
        Outcome(id="o", conversion="mash", form="mash", ratio=1.0),
        Food(id="mash", name="bean mash", form_of="beans"),
        Addition(id="a", conversion="mash", food="sprouts", ratio=0.1),
    )
    assert "mash" not in {process.key for process in _network(*sprouts).processes}
    grown = (
        Conversion(id="grow", name="Sprout", takes="beans"),
        Outcome(id="p", conversion="grow", form="sprouts", ratio=2.5),
    )
    assert "mash" in {process.key for process in _network(*sprouts, *grown).processes}


def test_a_loop_is_named_by_its_conversions() -> None:
    back = (
        Conversion(id="back", name="Dry again", takes="cooked"),
        Outcome(id="o", conversion="back", form="soaked", ratio=0.5),
    )
    missing = network_of(small_binder(*back), "beans")
    assert isinstance(missing, Missing)
    assert "loop" in missing.says
    assert "Dry again" in missing.says


@pytest.mark.parametrize(
    ("asked", "least", "batch", "run"),
    [
        (0.0, 200.0, 100.0, 0.0),
        (50.0, 200.0, None, 200.0),
        (250.0, 200.0, None, 250.0),
        (250.0, None, 100.0, 300.0),
        (300.0000000001, None, 100.0, 300.0),
        (50.0, 250.0, 100.0, 300.0),
    ],
)
def test_a_run_is_none_or_at_least_the_least_and_whole(
    asked: float, least: float | None, batch: float | None, run: float
) -> None:
    assert Process("p", "beans", (("cooked", 2.0),), least, batch).allowed(asked) == run
