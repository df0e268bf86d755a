"""The table of the forms."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.desktop.base_page.base_figures import BaseFigures, base_figures
from binder.desktop.base_page.forms import ADD_FORM, Forms
from binder.desktop.latest import Latest
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import Sight
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even
from tests.kitchen_binder import small_binder

SMALL = Sight(small_binder(), "day")


def forms(binder: Binder, *, stale: bool = False) -> Forms:
    latest: Latest[BaseFigures] = Latest(base_figures(binder, "day"), stale)
    return Forms(latest)


def test_each_form_is_made_goes_into_dishes_and_other_forms_and_is_left() -> None:
    shown = [[f"{cell.text} {cell.unit}".strip() for cell in row.cells[:5]] for row in forms(SMALL.binder).rows(SMALL)]
    assert shown == [
        ["beans, dried", "1 kg", "–", "357 g", "643 g"],
        ["soaked beans", "714 g", "–", "714 g", "–"],
        ["cooked beans", "750 g", "750 g", "–", "–"],
        ["bean liquid", "571 g", "200 g", "–", "371 g"],
        ["", "", "", "", ""],
    ]
    assert is_even(forms(SMALL.binder), SMALL)


def test_what_runs_out_is_marked_and_the_base_is_below_nothing() -> None:
    binder = small_binder(replace(SMALL.binder.shoots["day"], base_amount=300, base_unit="g"))
    sheet, sight = forms(binder), Sight(binder, "day")
    name = cell_called(sheet, sight, "foods:cooked", "name")
    assert (name.mark, name.under) == (Mark.SHORT, "runs out: 120 g short")
    left = cell_called(sheet, sight, "foods:beans", "left")
    assert (left.text, left.tone) == ("−57", Tone.STOP)
    assert left.says == "57 g short"


def test_stale_figures_are_pale_and_said_to_be_stale() -> None:
    cell = cell_called(forms(SMALL.binder, stale=True), SMALL, "foods:cooked", "made")
    assert cell.tone is Tone.QUIET
    assert cell.says == "750 g, being worked out again"


def test_before_the_first_figures_the_forms_can_be_edited_all_the_same() -> None:
    latest: Latest[BaseFigures] = Latest(None, stale=True)
    assert cell_called(Forms(latest), SMALL, "foods:cooked", "made").text == "–"
    assert cell_called(Forms(latest), SMALL, "foods:cooked", "name").edit == "cooked beans"


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("name", "beans, simmered", "name", "beans, simmered"),
        ("keeps_days", "3", "keeps_days", 3),
        ("keeps_days", "3 days", "keeps_days", 3),
        ("keeps_days", "1 day", "keeps_days", 1),
        ("keeps_days", "", "keeps_days", None),
        ("good_from_days", "2 d", "good_from_days", 2),
    ],
)
def test_typing_edits_a_form(column: str, text: str, field: str, value: object) -> None:
    binder = after_typing(forms(SMALL.binder), SMALL, "foods:cooked", column, text)
    assert getattr(binder.foods["cooked"], field) == value


@pytest.mark.parametrize("text", ["soon", "1.5", "-2"])
def test_days_are_whole(text: str) -> None:
    with pytest.raises(BinderError):
        forms(SMALL.binder).edit(SMALL, "foods:cooked", "keeps_days", text)


def test_a_form_is_added_by_its_name_and_taken_out_again() -> None:
    sheet = forms(SMALL.binder)
    grown = after_typing(sheet, SMALL, ADD_FORM, "name", "roasted beans")
    made = next(food for food in grown.foods.values() if food.name == "roasted beans")
    assert made.form_of == "beans"
    sight = Sight(grown, "day")
    gone = forms(grown).remove(sight, [f"foods:{made.id}"])
    assert gone is not None
    assert gone.label == "Remove the form roasted beans"
    assert apply(grown, gone) == SMALL.binder


def test_the_base_itself_is_not_removed_here() -> None:
    assert forms(SMALL.binder).remove(SMALL, ["foods:beans"]) is None


def test_density_and_measures_lead_to_the_larder() -> None:
    sheet = forms(SMALL.binder)
    liquid = cell_called(sheet, SMALL, "foods:liquid", "weighs")
    assert (liquid.text, liquid.leads_to) == ("1 g/ml", Place("foods", "liquid"))
    assert cell_called(sheet, SMALL, "foods:cooked", "weighs").text == "add weights"


def test_without_a_base_there_are_no_rows() -> None:
    binder = small_binder(replace(SMALL.binder.shoots["day"], base=None))
    assert forms(binder).rows(Sight(binder, "day")) == []
