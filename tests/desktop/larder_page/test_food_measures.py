"""What measures of a food weigh."""

from __future__ import annotations

import pytest

from binder.desktop.larder_page.food_measures import ADD_MEASURE, FoodMeasures
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, is_even

MEASURES = FoodMeasures()


@pytest.fixture
def garlic(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "foods:garlic")


@pytest.mark.parametrize(
    ("text", "unit", "preparation", "grams"),
    [
        ("1 cup chopped = 136 g", "us cup", "chopped", 136.0),
        ("2 cloves = 10 g", "clove", "", 5.0),
        ("1 = 45 g", "each", "", 45.0),
        ("1 knob = 12 g", "knob", "", 12.0),
        ("1 tbsp minced = 0.3 oz", "us tbsp", "minced", pytest.approx(8.505, abs=0.001)),
    ],
)
def test_a_weight_is_typed_whole(garlic: Sight, text: str, unit: str, preparation: str, grams: float) -> None:
    binder = after_typing(MEASURES, garlic, ADD_MEASURE, "unit", text)
    (added,) = [one for one in binder.measures.values() if one.id not in garlic.binder.measures]
    assert (added.food, added.unit, added.preparation, added.grams) == ("garlic", unit, preparation, grams)
    assert added.source == "the binder's own"
    assert is_even(MEASURES, Sight(binder, "day", "foods:garlic"))


@pytest.mark.parametrize("text", ["1 cup chopped", "1 cup = ", "1 cup = 3 tbsp", "= 20 g"])
def test_what_is_no_weight_is_refused(garlic: Sight, text: str) -> None:
    with pytest.raises(BinderError):
        MEASURES.edit(garlic, ADD_MEASURE, "unit", text)


def test_a_weight_is_edited_and_is_then_the_binders_own(garlic: Sight) -> None:
    measure = after_typing(MEASURES, garlic, "measures:garlic_clove", "grams", "6 g").measures["garlic_clove"]
    assert (measure.grams, measure.source) == (6.0, "the binder's own")


def test_measures_are_removed(garlic: Sight) -> None:
    gone = MEASURES.remove(garlic, ["measures:garlic_clove", "measures:garlic_head"])
    assert gone is not None
    assert gone.label == "Remove 2 measures"
    assert not apply(garlic.binder, gone).measures.where("food", "garlic")


def test_the_shipped_larders_measures_are_only_looked_at(chickpeas: Binder) -> None:
    rows = MEASURES.rows(Sight(chickpeas, "day", "shipped:all_purpose_flour"))
    assert rows
    assert all(cell.edit is None for row in rows for cell in row.cells)
