"""How a food is turned into its forms."""

from __future__ import annotations

from binder.desktop.larder_page.food_conversions import FoodConversions
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from tests.desktop.sheets import after_typing, is_even

FORMS = FoodConversions()


def test_a_food_shows_what_makes_it_and_what_is_made_of_it(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "foods:chickpeas_soaked")
    shown = [" ".join(cell.text for cell in row.cells if cell.text) for row in FORMS.rows(sight)]
    assert shown == [
        "Soak overnight chickpeas, dried 12 h",
        "gives 2.10 chickpeas, soaked",
        "with 3 water",
        "Cook chickpeas, soaked 1 h 15 min",
        "gives 1.05 chickpeas, cooked",
        "gives 0.80 chickpea cooking liquid",
        "with 1.50 water",
    ]
    assert is_even(FORMS, sight)


def test_yields_and_times_are_edited(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "foods:chickpeas_soaked")
    assert after_typing(FORMS, sight, "outcomes:soaked", "ratio", "2.2").outcomes["soaked"].ratio == 2.2
    assert after_typing(FORMS, sight, "additions:soak_water", "ratio", "4").additions["soak_water"].ratio == 4
    assert after_typing(FORMS, sight, "conversions:cook", "lead", "90 min").conversions["cook"].lead_minutes == 90
    assert after_typing(FORMS, sight, "conversions:cook", "name", "Boil").conversions["cook"].name == "Boil"


def test_what_is_no_form_has_none(chickpeas: Binder) -> None:
    assert FORMS.rows(Sight(chickpeas, "day", "foods:tahini")) == []
