"""Where a change leads the eye."""

from __future__ import annotations

from binder.desktop.places import PAGE_OF, changed_fields, place_of_change, shown_record
from binder.figures.missing import Place
from binder.kitchen.binder import RECORD_TYPES, Binder
from binder.kitchen.change import Change, apply
from binder.kitchen.edits.foods import set_price
from binder.kitchen.edits.recipes import add_line, remove_line, set_step
from binder.kitchen.edits.shoots import add_dish, move_dish, remove_dish


def after(binder: Binder, change: Change) -> Place | None:
    return place_of_change(apply(binder, change), change)


def test_only_tables_have_pages() -> None:
    assert set(PAGE_OF) <= set(RECORD_TYPES)


def test_an_edit_leads_to_the_record_edited(chickpeas: Binder) -> None:
    quote = chickpeas.quotes["quote_tahini"]
    assert after(chickpeas, set_price(chickpeas, quote, 800)) == Place("quotes", "quote_tahini")
    step = chickpeas.steps["herb_fritters_1"]
    assert after(chickpeas, set_step(chickpeas, step, text="Chill.")) == Place("steps", "herb_fritters_1")


def test_a_new_record_comes_before_its_parts_and_what_it_brought(chickpeas: Binder) -> None:
    change, dish = add_dish(chickpeas, chickpeas.shoots["day"], chickpeas.recipes["herb_fritters"])
    assert after(chickpeas, change) == Place("dishes", dish.id)
    typed = add_line(chickpeas, chickpeas.steps["herb_fritters_0"], "1 tbsp chopped mint")
    place = after(chickpeas, typed)
    assert place is not None
    assert place.table == "lines"


def test_what_is_gone_leads_to_its_owner(chickpeas: Binder) -> None:
    line = chickpeas.lines.where("step", "herb_fritters_0")[0]
    assert after(chickpeas, remove_line(chickpeas, line)) == Place("steps", "herb_fritters_0")
    gone = remove_dish(chickpeas, chickpeas.dishes["dish_1"])
    assert after(chickpeas, gone) == Place("shoots", "day")


def test_what_comes_back_leads_to_itself(chickpeas: Binder) -> None:
    gone = remove_dish(chickpeas, chickpeas.dishes["dish_1"])
    back = gone.inverse()
    assert place_of_change(chickpeas, back) == Place("dishes", "dish_1")


def test_a_move_leads_to_one_that_moved(chickpeas: Binder) -> None:
    place = after(chickpeas, move_dish(chickpeas, chickpeas.dishes["dish_1"], to=4))
    assert place is not None
    assert place.table == "dishes"


def test_a_part_is_shown_with_its_owner(chickpeas: Binder) -> None:
    line = chickpeas.lines.where("step", "herb_fritters_0")[0]
    assert shown_record(chickpeas, Place("lines", line.id), "recipes") == "herb_fritters"
    assert shown_record(chickpeas, Place("quotes", "quote_tahini"), "foods") == "tahini"
    assert shown_record(chickpeas, Place("quotes", "gone"), "foods") is None
    assert shown_record(chickpeas, Place("foods", "tahini"), "recipes") is None


def test_the_fields_that_differ_are_named(chickpeas: Binder) -> None:
    step = chickpeas.steps["herb_fritters_1"]
    change = set_step(chickpeas, step, text="Chill.", title="Chill")
    assert set(changed_fields(change, Place("steps", step.id))) == {"title", "text"}
    assert changed_fields(change, Place("steps", "herb_fritters_0")) == ()
    gone = remove_dish(chickpeas, chickpeas.dishes["dish_1"])
    assert changed_fields(gone, Place("dishes", "dish_1")) == ()
