"""Crew, kitchen, fixed times and hours: typed as people say them, refused in place where they cannot be."""

from __future__ import annotations

from datetime import time

import pytest

from binder.desktop.day_page.crew import ADD_PERSON, CrewSheet
from binder.desktop.day_page.day_hours import DayHours
from binder.desktop.day_page.degrees import degrees_text, typed_degrees
from binder.desktop.day_page.fixed_events import ADD_EVENT, FixedEvents
from binder.desktop.day_page.kitchen_table import ADD_APPLIANCE, KitchenSheet
from binder.desktop.sheet.sheet import Sheet, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.day import ApplianceKind
from binder.kitchen.errors import BinderError


def edited(binder: Binder, sheet: Sheet, row: str, column: str, text: str) -> Binder:
    return apply(binder, sheet.edit(Sight(binder, "day"), row, column, text))


def keys(binder: Binder, sheet: Sheet) -> list[str]:
    return [row.key for row in sheet.rows(Sight(binder, "day"))]


def test_a_name_is_someone_in_the_crew_and_the_assumed_ones_go(chickpeas: Binder) -> None:
    sheet = CrewSheet()
    assert [key for key in keys(chickpeas, sheet) if key.startswith("assumed:")]
    binder = edited(chickpeas, sheet, ADD_PERSON, "name", " Wren ")
    person = binder.people.where("shoot", "day")[0]
    assert person.name == "Wren"
    assert keys(binder, sheet) == [f"people:{person.id}", ADD_PERSON]


def test_what_someone_can_do_and_when_they_are_there(chickpeas: Binder) -> None:
    sheet = CrewSheet()
    binder = edited(chickpeas, sheet, ADD_PERSON, "name", "Wren")
    row = keys(binder, sheet)[0]
    typed = [
        ("role", "home economist"),
        ("on_camera", "y"),
        ("skills", "sugar, piping"),
        ("arrives", "6:30"),
        ("leaves", "3 pm"),
    ]
    for column, text in typed:
        binder = edited(binder, sheet, row, column, text)
    person = binder.people.where("shoot", "day")[0]
    assert (person.role, person.on_camera, person.skills) == ("home economist", True, ("sugar", "piping"))
    assert (person.arrives, person.leaves) == (time(6, 30), time(15, 0))
    with pytest.raises(BinderError, match="choose yes or no"):
        edited(binder, sheet, row, "on_camera", "perhaps")
    with pytest.raises(BinderError, match="write a name"):
        edited(binder, sheet, row, "name", "  ")


def test_people_are_removed_and_moved(chickpeas: Binder) -> None:
    sheet = CrewSheet()
    binder = chickpeas
    for name in ("Wren", "Ode", "Ida"):
        binder = edited(binder, sheet, ADD_PERSON, "name", name)
    rows = keys(binder, sheet)
    change = sheet.move_by(Sight(binder, "day"), rows[2], -1)
    assert change is not None
    binder = apply(binder, change)
    assert [person.name for person in binder.people.where("shoot", "day")] == ["Wren", "Ida", "Ode"]
    change = sheet.remove(Sight(binder, "day"), rows[:2])
    assert change is not None
    assert [person.name for person in apply(binder, change).people.where("shoot", "day")] == ["Ida"]
    assert sheet.remove(Sight(binder, "day"), [ADD_PERSON]) is None


@pytest.mark.parametrize(
    ("text", "name", "kind", "places"),
    [
        ("oven", "oven", ApplianceKind.OVEN, 2),
        ("deck oven, 4 shelves", "deck oven", ApplianceKind.OVEN, 4),
        ("burners 6", "burners", ApplianceKind.BURNERS, 6),
        ("fridge", "fridge", ApplianceKind.FRIDGE, 1),
        ("food processor", "food processor", ApplianceKind.TOOL, 1),
        ("blender × 2", "blender", ApplianceKind.TOOL, 2),
    ],
)
def test_an_appliance_is_typed_whole(chickpeas: Binder, text: str, name: str, kind: ApplianceKind, places: int) -> None:
    made = edited(chickpeas, KitchenSheet(), ADD_APPLIANCE, "name", text).appliances.where("shoot", "day")[0]
    assert (made.name, made.kind, made.places) == (name, kind, places)


def test_the_assumed_kitchen_is_shown_until_it_is_named(chickpeas: Binder) -> None:
    sheet = KitchenSheet()
    assert "assumed:assumed oven" in keys(chickpeas, sheet)
    binder = edited(chickpeas, sheet, ADD_APPLIANCE, "name", "oven")
    assert "assumed:assumed oven" not in keys(binder, sheet)
    assert "assumed:assumed burners" in keys(binder, sheet)


def test_an_appliance_is_edited_cell_by_cell(chickpeas: Binder) -> None:
    sheet = KitchenSheet()
    binder = edited(chickpeas, sheet, ADD_APPLIANCE, "name", "oven")
    row = keys(binder, sheet)[0]
    for column, text in [("places", "3"), ("change_minutes", "20 min"), ("tolerance", "10 °C"), ("kind", "oven")]:
        binder = edited(binder, sheet, row, column, text)
    made = binder.appliances.where("shoot", "day")[0]
    assert (made.places, made.change_minutes, made.tolerance) == (3, 20.0, 10.0)
    with pytest.raises(BinderError):
        edited(binder, sheet, row, "places", "2.5")
    with pytest.raises(BinderError):
        edited(binder, sheet, row, "places", "0")


def test_a_difference_of_degrees_is_in_the_binders_own_scale(chickpeas: Binder) -> None:
    assert degrees_text(chickpeas, 10.0) == "18 °F"
    for text in ("18", "18 °F", "10 C", "10°C"):
        assert typed_degrees(chickpeas, text) == pytest.approx(10.0)
    assert typed_degrees(chickpeas, degrees_text(chickpeas, 7.5)) == pytest.approx(7.5, abs=0.01)


@pytest.mark.parametrize(
    ("text", "name", "at", "minutes"),
    [
        ("Lunch 12:30, 45 min", "Lunch", time(12, 30), 45.0),
        ("Guest at 2 pm", "Guest", time(14, 0), 0.0),
        ("Fire test, 8.15, 10", "Fire test", time(8, 15), 10.0),
        ("Act 2 meeting 16:00 1 h", "Act 2 meeting", time(16, 0), 60.0),
    ],
)
def test_an_event_is_typed_whole(chickpeas: Binder, text: str, name: str, at: time, minutes: float) -> None:
    event = edited(chickpeas, FixedEvents(), ADD_EVENT, "at", text).fixed_events.where("shoot", "day")[0]
    assert (event.name, event.at, event.minutes) == (name, at, minutes)


@pytest.mark.parametrize("text", ["Lunch", "12:30", "Lunch 25:00", ""])
def test_an_event_that_is_not_understood_says_what_to_write(chickpeas: Binder, text: str) -> None:
    with pytest.raises(BinderError):
        edited(chickpeas, FixedEvents(), ADD_EVENT, "at", text)


def test_events_stand_by_time_and_are_edited_and_removed(chickpeas: Binder) -> None:
    sheet = FixedEvents()
    binder = edited(chickpeas, sheet, ADD_EVENT, "at", "Guest 14:00")
    binder = edited(binder, sheet, ADD_EVENT, "at", "Lunch 12:30, 45 min")
    lunch, guest, _adding = keys(binder, sheet)
    assert binder.fixed_events[lunch.partition(":")[2]].name == "Lunch"
    binder = edited(binder, sheet, guest, "stops_work", "no")
    binder = edited(binder, sheet, guest, "minutes", "20")
    event = binder.fixed_events[guest.partition(":")[2]]
    assert (event.stops_work, event.minutes) == (False, 20.0)
    with pytest.raises(BinderError):
        edited(binder, sheet, guest, "at", "")
    change = sheet.remove(Sight(binder, "day"), [lunch])
    assert change is not None
    assert change.label == "Take Lunch out of the day"


def test_the_hours_of_the_day_are_one_row(chickpeas: Binder) -> None:
    sheet, row = DayHours(), "shoots:day"
    binder = chickpeas
    typed = [
        ("call", "6:45"),
        ("wrap", "5 pm"),
        ("zone", "Europe/Berlin"),
        ("prep_from", "9"),
        ("prep_until", "18:30"),
        ("reset_minutes", "8 min"),
        ("may_reorder", "yes"),
        ("hot_set", "yes"),
        ("on", "2026-11-07"),
    ]
    for column, text in typed:
        binder = edited(binder, sheet, row, column, text)
    shoot = binder.shoots["day"]
    assert (shoot.call, shoot.wrap, shoot.zone) == (time(6, 45), time(17, 0), "Europe/Berlin")
    assert (shoot.prep_from, shoot.prep_until, shoot.reset_minutes) == (time(9, 0), time(18, 30), 8.0)
    assert (shoot.may_reorder, shoot.hot_set, str(shoot.on)) == (True, True, "2026-11-07")
    with pytest.raises(BinderError, match="Europe/Berlin"):
        edited(binder, sheet, row, "zone", "Somewhere/Else")
    with pytest.raises(BinderError):
        edited(binder, sheet, row, "prep_from", "")
    cleared = edited(binder, sheet, row, "wrap", "")
    assert cleared.shoots["day"].wrap is None
