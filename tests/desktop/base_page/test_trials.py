"""Trials: recorded as typed, kept, averaged."""

from __future__ import annotations

import statistics
from datetime import date

import pytest

from binder.desktop.base_page.trial_typing import typed_trial
from binder.desktop.base_page.trials import Trials, use_means
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even
from tests.kitchen_binder import small_binder

TRIALS = Trials()


def recorded(binder: Binder, day: int, taken: str, cooked: str, liquid: str = "") -> Binder:
    cook = binder.conversions["cook"]
    got = {"cooked": cooked, "liquid": liquid}
    return apply(binder, typed_trial(binder, cook, on=f"2026-11-{day:02}", taken=taken, got=got))


def test_the_yields_are_then_those_measured_and_earlier_trials_stay() -> None:
    binder = recorded(recorded(small_binder(), 2, "1 kg", "1040 g", "790 g"), 9, "500 g", "530")
    assert binder.outcomes["cook/cooked"].ratio == pytest.approx(1.06)
    assert binder.outcomes["cook/liquid"].ratio == pytest.approx(0.79)
    shown = [
        [f"{cell.text} {cell.unit}".strip() for cell in row.cells] for row in TRIALS.rows(Sight(binder, "day", "cook"))
    ]
    assert shown == [
        ["Nov 2, 2026", "1000 g", "cooked beans", "1040 g", "1.04", ""],
        ["", "", "bean liquid", "790 g", "0.79", ""],
        ["Nov 9, 2026", "500 g", "cooked beans", "530 g", "1.06", ""],
        ["mean", "", "cooked beans", "", "1.05", f"spread ± {statistics.stdev((1.04, 1.06)):.2f}"],
        ["mean", "", "bean liquid", "", "0.79", "one trial has no spread"],
    ]
    assert is_even(TRIALS, Sight(binder, "day", "cook"))


def test_the_mean_can_be_reckoned_with_instead() -> None:
    binder = recorded(recorded(small_binder(), 2, "1 kg", "1040 g"), 9, "500 g", "530 g")
    change = use_means(binder, binder.conversions["cook"])
    assert change is not None
    after = apply(binder, change)
    assert after.outcomes["cook/cooked"].ratio == pytest.approx(1.05)
    assert after.outcomes["cook/cooked"].source == "mean of 2 trials"
    assert use_means(after, after.conversions["cook"]) is None
    assert use_means(binder, binder.conversions["soak"]) is None


@pytest.mark.parametrize(
    ("on", "taken", "cooked", "says"),
    [
        ("", "500 g", "530 g", "has a day"),
        ("one day", "500 g", "530 g", "write a date"),
        ("2026-11-02", "", "530 g", "put in"),
        ("2026-11-02", "0", "530 g", "put in"),
        ("2026-11-02", "2 cups", "530 g", "write a weight"),
        ("2026-11-02", "500 g", "", "got out"),
        ("2026-11-02", "500 g", "0", "got out"),
        ("2026-11-02", "500 g", "plenty", "plenty"),
    ],
)
def test_what_cannot_be_a_trial_says_why(on: str, taken: str, cooked: str, says: str) -> None:
    binder = small_binder()
    with pytest.raises(BinderError, match=says):
        typed_trial(binder, binder.conversions["cook"], on=on, taken=taken, got={"cooked": cooked})


def test_a_trial_is_mended_in_place() -> None:
    binder = recorded(small_binder(), 2, "1 kg", "1040 g", "790 g")
    trial = next(iter(binder.trials.values()))
    sight = Sight(binder, "day", "cook")
    liquid = next(one.id for one in binder.trial_outcomes.values() if one.form == "liquid")
    assert after_typing(TRIALS, sight, f"trials:{trial.id}", "taken", "990 g").trials[trial.id].taken == 990
    assert after_typing(TRIALS, sight, f"trials:{trial.id}", "on", "2026-11-03").trials[trial.id].on == date(
        2026, 11, 3
    )
    assert (
        after_typing(TRIALS, sight, f"trials:{trial.id}", "notes", "hard water").trials[trial.id].notes == "hard water"
    )
    mended = after_typing(TRIALS, sight, f"trial_outcomes:{liquid}", "grams", "800")
    assert mended.trial_outcomes[liquid].grams == 800
    assert cell_called(TRIALS, Sight(mended, "day", "cook"), f"trial_outcomes:{liquid}", "ratio").text == "0.80"
    with pytest.raises(BinderError, match="worked out"):
        TRIALS.edit(sight, "mean:cooked", "ratio", "2")


def test_a_trial_is_taken_out_with_what_it_gave() -> None:
    binder = recorded(small_binder(), 2, "1 kg", "1040 g", "790 g")
    trial = next(iter(binder.trials))
    gone = TRIALS.remove(Sight(binder, "day", "cook"), [f"trials:{trial}", "mean:cooked"])
    assert gone is not None
    after = apply(binder, gone)
    assert (len(after.trials), len(after.trial_outcomes)) == (0, 0)
