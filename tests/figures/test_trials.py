"""Measured yields: each kept, their mean and spread."""

from __future__ import annotations

from datetime import date

import pytest

from binder.figures.trials import measured_yields
from binder.kitchen.change import apply
from binder.kitchen.edits.base import record_trial
from tests.kitchen_binder import small_binder


def test_a_trial_updates_the_yield_and_earlier_ones_stay() -> None:
    binder = small_binder()
    cook = binder.conversions["cook"]
    for day, taken, cooked in ((1, 1000, 1040), (8, 500, 540)):
        binder = apply(
            binder,
            record_trial(
                binder, cook, on=date(2026, 10, day), taken=taken, gave={"cooked": cooked, "liquid": 0.8 * taken}
            ),
        )
    measured = {one.form: one for one in measured_yields(binder, "cook")}
    assert measured["cooked"].ratios == pytest.approx((1.04, 1.08))
    assert measured["cooked"].mean == pytest.approx(1.06)
    assert measured["cooked"].spread == pytest.approx(0.0282842712)  # sample standard deviation of 1.04 and 1.08
    assert binder.outcomes["cook/cooked"].ratio == pytest.approx(1.08)
    assert "2026-10-08" in binder.outcomes["cook/cooked"].source


def test_one_trial_has_no_spread() -> None:
    # Roast ribeye, 1605 g raw to 1468 g: 91.5 % (BCcampus, Basic Kitchen and Food Service Management, cooking loss).
    binder = small_binder()
    binder = apply(
        binder,
        record_trial(binder, binder.conversions["soak"], on=date(2026, 10, 1), taken=1605, gave={"soaked": 1468}),
    )
    (measured,) = measured_yields(binder, "soak")
    assert round(measured.mean, 3) == 0.915
    assert measured.spread is None
    assert measured_yields(binder, "cook") == ()
