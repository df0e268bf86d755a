"""How the forms are made, as rows and as it is typed."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from binder.desktop.base_page.base_figures import BaseFigures, base_figures
from binder.desktop.base_page.conversions import ADD_CONVERSION, Conversions, conversions_of
from binder.desktop.latest import Latest
from binder.desktop.sheet.cell import Tone
from binder.desktop.sheet.sheet import CellName, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.conversion import Conversion, CostSplit, Outcome
from binder.kitchen.edits.base import record_trial
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even
from tests.kitchen_binder import small_binder
from tests.large_shoot import large_shoot

SMALL = Sight(small_binder(), "day")


def conversions(binder: Binder) -> Conversions:
    latest: Latest[BaseFigures] = Latest(base_figures(binder, "day"))
    return Conversions(latest)


def typed(key: str, column: str, text: str) -> Binder:
    return after_typing(conversions(SMALL.binder), SMALL, key, column, text)


def test_each_conversion_says_what_it_takes_how_long_and_by_when_it_must_start() -> None:
    sheet = conversions(SMALL.binder)
    shown = {
        row.key: [f"{cell.text} {cell.unit}".strip() for cell in row.cells]
        for row in sheet.rows(SMALL)
        if row.key.startswith("conversions:")
    }
    cook_by = "Thu, Dec 3, 6:30\u202fAM"
    assert shown == {
        "conversions:soak": ["Soak", "beans, dried", "", "357 g", "", "12 h", "Wed, Dec 2, 6:30\u202fPM", "by weight"],
        "conversions:cook": [
            "Cook",
            "soaked beans",
            "",
            "714 g",
            "",
            "1 h 30 min",
            cook_by,
            "by weight",
        ],
    }
    assert is_even(sheet, SMALL)


def test_a_shoot_without_a_date_counts_back_from_call() -> None:
    binder = small_binder(replace(SMALL.binder.shoots["day"], on=None))
    cell = cell_called(conversions(binder), Sight(binder, "day"), "conversions:soak", "starts")
    assert cell.text == "13 h 30 min before call"


def test_what_comes_of_it_carries_its_part_of_the_cost() -> None:
    sheet = conversions(SMALL.binder)
    cooked = cell_called(sheet, SMALL, "outcomes:cook/cooked", "split")
    assert (cooked.text, cooked.unit, cooked.tone, cooked.edit) == ("56.8", "%", Tone.QUIET, None)
    assert cell_called(sheet, SMALL, "outcomes:cook/liquid", "split").text == "43.2"


def test_shares_are_typed_where_the_cost_goes_by_shares() -> None:
    binder = typed("conversions:cook", "split", "by shares")
    sight = Sight(binder, "day")
    assert binder.conversions["cook"].split is CostSplit.SHARES
    shared = after_typing(conversions(binder), sight, "outcomes:cook/cooked", "split", "70 %")
    assert shared.outcomes["cook/cooked"].cost_share == pytest.approx(0.7)
    rest = cell_called(conversions(shared), Sight(shared, "day"), "outcomes:cook/liquid", "split")
    assert (rest.text, rest.tone) == ("30", Tone.QUIET)
    with pytest.raises(BinderError, match="100 %"):
        conversions(shared).edit(Sight(shared, "day"), "outcomes:cook/cooked", "split", "130")


@pytest.mark.parametrize(
    ("key", "column", "text", "field", "value"),
    [
        ("conversions:cook", "name", "Simmer", "name", "Simmer"),
        ("conversions:cook", "food", "beans, dried", "takes", "beans"),
        ("conversions:cook", "hands_on", "90 min", "hands_on_minutes", 90.0),
        ("conversions:cook", "lead", "12 h", "lead_minutes", 720.0),
        ("conversions:cook", "lead", "2 days", "lead_minutes", 2880.0),
        ("conversions:cook", "split", "all", "split", CostSplit.MAIN),
        ("text:cook", "food", "Keep it at a tremble.", "text", "Keep it at a tremble."),
        ("text:cook", "name", "large pot, skimmer", "equipment", ("large pot", "skimmer")),
        ("limits:cook", "food", "200 g", "least_grams", 200.0),
        ("limits:cook", "food", "", "least_grams", None),
        ("limits:cook", "ratio", "1 kg", "batch_grams", 1000.0),
        ("limits:cook", "hands_on", "Steam", "hazards", ("steam",)),
    ],
)
def test_typing_edits_a_conversion(key: str, column: str, text: str, field: str, value: object) -> None:
    assert getattr(typed(key, column, text).conversions["cook"], field) == value


def test_a_yield_is_typed_and_then_the_binders_own() -> None:
    binder = typed("outcomes:cook/cooked", "ratio", "110 %")
    assert binder.outcomes["cook/cooked"].ratio == pytest.approx(1.1)
    assert binder.outcomes["cook/cooked"].source == "the binder's own"
    assert typed("additions:soak/water", "ratio", "2 1/2").additions["soak/water"].ratio == 2.5


@pytest.mark.parametrize("text", ["0", "nothing", "", "1000"])
def test_a_yield_of_nothing_is_refused(text: str) -> None:
    with pytest.raises(BinderError):
        typed("outcomes:cook/cooked", "ratio", text)


@pytest.mark.parametrize(
    ("text", "form", "ratio"), [("0.05 cooked", "cooked", 0.05), ("1,5 bean liquid", "liquid", 1.5)]
)
def test_what_comes_of_it_is_typed_whole(text: str, form: str, ratio: float) -> None:
    binder = typed("part:soak", "food", text)
    made = binder.outcomes.where("conversion", "soak")[-1]
    assert made.form == form
    assert made.ratio == pytest.approx(ratio)


def test_what_goes_in_is_typed_after_with() -> None:
    binder = typed("part:soak", "food", "with 0.02 salt")
    assert [(one.food, one.ratio) for one in binder.additions.where("conversion", "soak")] == [
        ("water", 3.0),
        ("salt", 0.02),
    ]


def test_a_food_of_the_shipped_larder_comes_along() -> None:
    binder = typed("part:cook", "food", "with 0.01 garlic")
    added = binder.additions.where("conversion", "cook")[-1]
    assert binder.foods[added.food].name == "garlic"


def test_a_form_that_comes_of_it_already_is_not_added_twice() -> None:
    with pytest.raises(BinderError, match="comes of it already"):
        typed("part:cook", "food", "0.2 bean liquid")


def test_a_new_form_is_offered_with_its_outcome_as_one_change() -> None:
    sheet = conversions(SMALL.binder)
    text = "0.6 sprouts"
    with pytest.raises(BinderError) as refused:
        sheet.edit(SMALL, "part:soak", "food", text)
    remedies = sheet.remedies(SMALL, CellName("part:soak", "food"), text, refused.value)
    assert {remedy.text for remedy in remedies[:-1]} == {"0.6 soaked beans", "0.6 cooked beans", "0.6 bean liquid"}
    change = remedies[-1].change
    assert change is not None
    grown = apply(SMALL.binder, change)
    made = next(food for food in grown.foods.values() if food.name == "sprouts")
    assert made.form_of == "beans"
    assert any(one.form == made.id and one.ratio == 0.6 for one in grown.outcomes.values())


@pytest.mark.parametrize("text", ["", "cooked", "with", "some cooked", "0.5"])
def test_a_part_that_cannot_be_read_says_how_to_write_it(text: str) -> None:
    with pytest.raises(BinderError, match="with 3 water"):
        typed("part:soak", "food", text)


def test_a_conversion_is_added_by_what_is_done() -> None:
    binder = typed(ADD_CONVERSION, "name", "Sprout")
    made = next(one for one in binder.conversions.values() if one.name == "Sprout")
    assert made.takes == "beans"
    assert base_figures(binder, "day").balance is not None


def test_parts_and_whole_conversions_are_taken_out() -> None:
    sheet = conversions(SMALL.binder)
    gone = sheet.remove(SMALL, ["outcomes:cook/liquid", "additions:cook/salt"])
    assert gone is not None
    after = apply(SMALL.binder, gone)
    assert [one.form for one in after.outcomes.where("conversion", "cook")] == ["cooked"]
    whole = sheet.remove(SMALL, ["conversions:cook"])
    assert whole is not None
    assert whole.label == "Remove Cook"
    assert "cook" not in apply(SMALL.binder, whole).conversions
    assert sheet.remove(SMALL, ["part:cook", ADD_CONVERSION]) is None


def test_outcomes_change_places() -> None:
    moved = conversions(SMALL.binder).move_by(SMALL, "outcomes:cook/liquid", -1)
    assert moved is not None
    assert [one.form for one in apply(SMALL.binder, moved).outcomes.where("conversion", "cook")] == ["liquid", "cooked"]


def test_a_measured_yield_shows_its_mean_and_spread() -> None:
    binder = SMALL.binder
    for day, out in ((1, 1000.0), (2, 1040.0)):
        cook = binder.conversions["cook"]
        binder = apply(binder, record_trial(binder, cook, on=date(2026, 11, day), taken=1000.0, gave={"cooked": out}))
    cell = cell_called(conversions(binder), Sight(binder, "day"), "outcomes:cook/cooked", "hands_on")
    assert cell.text == "mean 1.02 ± 0.03 of 2 trials"
    assert (
        cell_called(conversions(binder), Sight(binder, "day"), "outcomes:cook/liquid", "hands_on").text
        == "no trial yet"
    )


def test_conversions_follow_one_another_the_longest_first() -> None:
    names = [one.name for one in conversions_of(large_shoot(), "groats")]
    assert names[:3] == ["Soak", "Crack", "Mill"]
    assert set(names) == {one.name for one in large_shoot().conversions.values()}


def test_a_loop_is_shown_so_that_it_can_be_mended() -> None:
    binder = small_binder(
        Conversion(id="back", takes="cooked", name="Uncook"),
        Outcome(id="back/1", conversion="back", form="soaked", ratio=0.5),
    )
    names = [one.name for one in conversions_of(binder, "beans")]
    assert names == ["Soak", "Cook", "Uncook"]
    assert is_even(conversions(binder), Sight(binder, "day"))
