"""How the base stands, in one line."""

from __future__ import annotations

from dataclasses import replace

from binder.desktop.base_page.base_figures import base_figures
from binder.desktop.base_page.standing import standing_of
from binder.desktop.sheet.cell import Mark
from binder.kitchen.binder import Binder
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from tests.kitchen_binder import small_binder


def with_grams(grams: float) -> Binder:
    return small_binder(replace(small_binder().shoots["day"], base_amount=grams, base_unit="g"))


def test_enough_says_what_is_left() -> None:
    binder = small_binder()
    standing = standing_of(binder, base_figures(binder, "day"))
    assert standing.line == "beans, dried  ·  there is 1 kg  ·  needed 357 g  ·  left 643 g"
    assert (standing.mark, standing.sentence, standing.repairs) == (Mark.WITHIN, "", ())


def test_short_says_what_runs_out_and_what_would_mend_it() -> None:
    binder = with_grams(300)
    standing = standing_of(binder, base_figures(binder, "day"))
    assert standing.line.endswith("needed 357 g  ·  short by 57 g")
    assert standing.mark is Mark.SHORT
    assert standing.sentence.startswith("cooked beans is what runs out: 120 g short")
    assert standing.repairs[-1].says.startswith("Have 57 g more beans, dried")


def test_nothing_left_is_said_with_its_unit() -> None:
    binder = with_grams(750 / 1.05 / 2)
    assert standing_of(binder, base_figures(binder, "day")).line.endswith("left 0 g")


def test_what_is_not_known_is_named() -> None:
    binder = small_binder(
        Food(id="flakes", name="bean flakes", form_of="beans"),
        Line(id="f", step="spread/1", position=9, food="flakes", low=10, high=10, unit="g"),
    )
    standing = standing_of(binder, base_figures(binder, "day"))
    assert standing.mark is Mark.UNKNOWN
    assert any("bean flakes" in lack.says for lack in standing.missing)


def test_a_stale_figure_says_so() -> None:
    binder = small_binder()
    assert standing_of(binder, base_figures(binder, "day"), stale=True).line.endswith("being worked out again")
    assert standing_of(binder, None, stale=True).line == "being worked out"


def test_no_base_no_line() -> None:
    binder = small_binder(replace(small_binder().shoots["day"], base=None))
    assert standing_of(binder, base_figures(binder, "day")).line == ""
