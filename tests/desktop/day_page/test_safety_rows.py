"""Safety on the page of the day: what is out of the cold for how long, what else is to be seen to, who carries what."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.desktop.day_page.page import SAFETY, DayPage
from binder.desktop.day_page.safety_rows import AllergenRows, DaySafety, SafetyClocks, SafetyFindings, day_safety
from binder.desktop.latest import Latest
from binder.desktop.main_window import MainWindow
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import Sight
from binder.figures.allergen_matrix import allergen_matrix
from binder.figures.date_text import time_text
from binder.figures.day_plan import DayPlan
from binder.figures.missing import Place
from binder.figures.safety_clocks import safety_clocks
from binder.figures.safety_findings import SafetyFinding, SafetyKind
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply, changed
from tests.desktop.conftest import MakeWindow
from tests.desktop.day_page.straight_plan import straight_plan


@pytest.fixture(scope="module")
def chilled(chickpeas: Binder) -> Binder:
    """The chickpea day with everything bought for it in need of the cold."""
    foods = [food for food in chickpeas.foods.values() if not food.staple and not food.free]
    kept = [replace(food, temperature_control=True) for food in foods]
    return apply(chickpeas, changed("chilled", before=foods, after=kept))


@pytest.fixture(scope="module")
def cold_plan(chilled: Binder) -> DayPlan:
    made = straight_plan(chilled)
    assert made is not None
    return made


@pytest.fixture(scope="module")
def latest(cold_plan: DayPlan) -> Latest[DaySafety]:
    return Latest(day_safety(cold_plan, "day"))


def test_every_clock_of_the_plan_is_a_row_with_its_limit(
    chilled: Binder, cold_plan: DayPlan, latest: Latest[DaySafety]
) -> None:
    clocks = safety_clocks(chilled, "day", cold_plan)
    assert clocks
    rows = SafetyClocks(latest).rows(Sight(chilled, "day"))
    assert [row.cells[0].text for row in rows[:-1]] == [clock.name for clock in clocks]
    for row, clock in zip(rows[:-1], clocks, strict=True):
        assert row.cells[2].mark is (Mark.OVER if clock.over else Mark.WITHIN)
        assert (row.cells[2].tone is Tone.STOP) == clock.over
    assert "FDA Food Code 3-501.19" in rows[-1].cells[0].text
    assert "Follow your local food code" in rows[-1].cells[0].text


def test_a_clock_over_its_limit_says_when_the_limit_is_reached(latest: Latest[DaySafety]) -> None:
    assert latest.value is not None
    clock = latest.value.clocks[0]
    end = clock.spans[-1][1]
    over = replace(clock, minutes=130, runs_out=end)
    rows = SafetyClocks(Latest(replace(latest.value, clocks=(over,)))).rows(Sight(latest.value.binder, "day"))
    assert rows[0].cells[2].mark is Mark.OVER
    assert rows[0].cells[4].text.endswith(f"the limit is reached at {end:%a} {time_text(Binder(), end.time())}")
    assert latest.value.on is not None
    assert end.date() > latest.value.on


def test_nothing_out_of_the_cold_is_said(chickpeas: Binder, plan: DayPlan) -> None:
    (row,) = SafetyClocks(Latest(day_safety(plan, "day"))).rows(Sight(chickpeas, "day"))
    assert row.cells[0].text == "Nothing in this plan stands out of the cold."


def test_what_else_is_to_be_seen_to_is_said_with_its_source(chilled: Binder, latest: Latest[DaySafety]) -> None:
    assert latest.value is not None
    finding = SafetyFinding(SafetyKind.COOLING, Place("dishes", "dish_1"), "1", "Cool it (source).", over=True)
    shown = replace(latest.value, findings=(finding,))
    (row,) = SafetyFindings(Latest(shown)).rows(Sight(chilled, "day"))
    assert [cell.text for cell in row.cells] == ["cooling", "Cool it (source)."]
    assert (row.cells[0].mark, row.place) == (Mark.WARN, Place("dishes", "dish_1"))
    (nothing,) = SafetyFindings(Latest(replace(shown, findings=()))).rows(Sight(chilled, "day"))
    assert nothing.cells[0].text == "Nothing else."


def test_every_dish_says_what_it_contains_and_what_may_come_to_it(chickpeas: Binder) -> None:
    rows = AllergenRows().rows(Sight(chickpeas, "day"))
    matrix = allergen_matrix(chickpeas, "day")
    assert len(rows) == len(matrix.dishes) + 1
    for row, dish in zip(rows, matrix.dishes, strict=False):
        assert row.cells[0].leads_to == Place("dishes", dish.dish)
        assert all(allergen in row.cells[1].text for allergen in dish.contains)
        assert all(food in row.cells[1].text for foods in dish.contains.values() for food in foods)
        assert (row.cells[2].mark is Mark.WARN) == bool(dish.may_have)


def test_shared_things_carry_an_allergen_along(chickpeas: Binder) -> None:
    matrix = allergen_matrix(chickpeas, "day")
    with_one = next(one for one in matrix.dishes if one.contains)
    without = next(one for one in matrix.dishes if not set(with_one.contains) <= set(one.contains))
    steps = [
        max(chickpeas.steps.where("recipe", chickpeas.dishes[one.dish].recipe), key=lambda step: step.position)
        for one in (with_one, without)
    ]
    shared = [replace(step, equipment=(*step.equipment, "the one blender")) for step in steps]
    rows = AllergenRows().rows(Sight(apply(chickpeas, changed("x", before=steps, after=shared)), "day"))
    row = next(row for row in rows if row.key == f"allergens:{without.dish}")
    assert "by the one blender" in row.cells[2].text


def test_the_page_shows_them(page: DayPage) -> None:
    page.show_part(SAFETY)
    assert page.safety.clocks.sheet_model.rowCount() == 1
    assert page.safety.allergens.sheet_model.rowCount() > 1
    assert not page.safety.without.isVisible()


def test_without_a_plan_the_allergens_are_there_and_it_is_said_where_the_clocks_come_from(
    window_on: MakeWindow, chickpeas: Binder
) -> None:
    shoot = chickpeas.shoots["day"]
    window: MainWindow = window_on(
        apply(chickpeas, changed("no date", before=[shoot], after=[replace(shoot, on=None)]))
    )
    window.show_page("day")
    page = window.page("day")
    assert isinstance(page, DayPage)
    page.show_part(SAFETY)
    assert page.safety.without.text()
    assert not page.safety.clocks.isVisible()
    assert page.safety.allergens.isVisible()
