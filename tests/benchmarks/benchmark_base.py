"""The balance of the base: of a sample in under 20 ms, of 15 forms, 40 dishes and 200 builds in under 300 ms.

The median counts; solvers are loaded and set up by a first call.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from binder.exchange.json_document import read_json
from binder.figures.base import base_balance
from binder.figures.base_cost import base_cost
from binder.figures.base_repairs import base_repairs, bottleneck
from binder.figures.flow import base_flow
from binder.figures.leads import shoot_leads
from binder.figures.takes import stages, takes
from binder.kitchen.change import apply
from binder.kitchen.edits.records import set_fields
from binder.kitchen.paths import samples_folder
from tests.large_shoot import Size, large_shoot

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

    from binder.kitchen.binder import Binder

SECONDS_FOR_A_SAMPLE = 0.020
SECONDS_FOR_THE_WORST_CASE = 0.300


def the_whole_balance(binder: Binder, shoot: str) -> None:
    """Everything the page of the base shows, and one more take of its first dish."""
    base_balance(binder, shoot)
    bottleneck(binder, shoot)
    base_repairs(binder, shoot)
    base_flow(binder, shoot)
    base_cost(binder, shoot)
    shoot_leads(binder, shoot)
    dish = binder.dishes.where("shoot", shoot)[0]
    takes(binder, dish.id)
    stages(binder, dish.id)


def measured(benchmark: BenchmarkFixture, binder: Binder, shoot: str) -> float:
    """Seconds from a change of the base's amount to the whole balance, the median."""
    the_whole_balance(binder, shoot)
    amounts = iter(range(1, 1_000_000))

    def edit() -> None:
        record = binder.shoots[shoot]
        more = record.base_amount * (1 + 1e-6 * next(amounts))
        the_whole_balance(apply(binder, set_fields("Edit", record, base_amount=more)), shoot)

    benchmark(edit)
    assert benchmark.stats is not None
    return float(benchmark.stats.stats.median)


@pytest.mark.parametrize("name", ["chickpeas", "four_birds"])
def test_of_a_sample(benchmark: BenchmarkFixture, name: str) -> None:
    binder = read_json(samples_folder() / f"{name}.json")
    assert measured(benchmark, binder, next(iter(binder.shoots))) < SECONDS_FOR_A_SAMPLE


@pytest.mark.parametrize("kilograms", [400.0, 146.5, 130.0], ids=["enough", "slightly short", "far short"])
def test_of_the_worst_case(benchmark: BenchmarkFixture, kilograms: float) -> None:
    binder = large_shoot(Size(kilograms=kilograms))
    assert measured(benchmark, binder, "day") < SECONDS_FOR_THE_WORST_CASE
