"""Change one amount in a shoot of 12 dishes and 180 lines: all figures again in under 5 ms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.checks import shoot_checks
from binder.figures.cost import shoot_costs
from binder.figures.mise import mise_list
from binder.figures.shopping import shopping_list
from binder.kitchen.change import apply
from binder.kitchen.edits.records import set_fields
from tests.benchmarks.season_binder import season_binder

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

    from binder.kitchen.binder import Binder


def all_figures(binder: Binder) -> None:
    """Everything the window shows of a shoot."""
    shoot_costs(binder, "day")
    base_balance(binder, "day")
    shopping_list(binder, "day")
    mise_list(binder, "day")
    shoot_checks(binder, "day")


def test_one_amount_changed(benchmark: BenchmarkFixture) -> None:
    binder = season_binder()
    line = binder.lines["r3/l4"]
    all_figures(binder)

    def edit() -> None:
        all_figures(apply(binder, set_fields("Edit", line, low=2.5, high=2.5)))

    benchmark(edit)
