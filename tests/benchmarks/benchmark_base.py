"""The balance of the base: of a sample in under 20 ms, of 15 forms, 40 dishes and 200 builds in under 300 ms.

The median counts, in seconds of the processor, so that other programs do not; solvers are loaded by a first call.
"""

from __future__ import annotations

import time
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
    from collections.abc import Callable

    from pytest_benchmark.fixture import BenchmarkFixture

    from binder.kitchen.binder import Binder

SECONDS_FOR_A_SAMPLE = 0.020
SECONDS_FOR_THE_WORST_CASE = 0.300


def the_whole_balance(binder: Binder, shoot: str) -> None:
    """Everything the page of the base shows."""
    base_balance(binder, shoot)
    bottleneck(binder, shoot)
    base_repairs(binder, shoot)
    base_flow(binder, shoot)
    base_cost(binder, shoot)
    shoot_leads(binder, shoot)


def one_more_take(binder: Binder, shoot: str) -> None:
    """How many more of the first dish, whole and up to each step; what is bought is worked out anew as well."""
    dish = binder.dishes.where("shoot", shoot)[0]
    takes(binder, dish.id)
    stages(binder, dish.id)


def measured(
    benchmark: BenchmarkFixture, figures: Callable[[Binder, str], None], binder: Binder, shoot: str = "day"
) -> float:
    """Seconds from a change of the base's amount to the figures, the median."""
    figures(binder, shoot)
    amounts = iter(range(1, 1_000_000))

    def edit() -> None:
        record = binder.shoots[shoot]
        more = record.base_amount * (1 + 1e-6 * next(amounts))
        figures(apply(binder, set_fields("Edit", record, base_amount=more)), shoot)

    benchmark(edit)
    assert benchmark.stats is not None
    return float(benchmark.stats.stats.median)


@pytest.mark.benchmark(timer=time.process_time)
@pytest.mark.parametrize("figures", [the_whole_balance, one_more_take])
@pytest.mark.parametrize("name", ["chickpeas", "four_birds"])
def test_of_a_sample(benchmark: BenchmarkFixture, name: str, figures: Callable[[Binder, str], None]) -> None:
    binder = read_json(samples_folder() / f"{name}.json")
    assert measured(benchmark, figures, binder, next(iter(binder.shoots))) < SECONDS_FOR_A_SAMPLE


@pytest.mark.benchmark(timer=time.process_time)
@pytest.mark.parametrize("figures", [the_whole_balance, one_more_take])
@pytest.mark.parametrize("kilograms", [400.0, 146.5, 130.0], ids=["enough", "slightly short", "far short"])
def test_of_the_worst_case(
    benchmark: BenchmarkFixture, kilograms: float, figures: Callable[[Binder, str], None]
) -> None:
    binder = large_shoot(Size(kilograms=kilograms))
    assert measured(benchmark, figures, binder) < SECONDS_FOR_THE_WORST_CASE
