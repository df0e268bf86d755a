"""What the day's activities, resources and people are called, and why something is when it is."""

from __future__ import annotations

from datetime import date, time

from binder.figures.day_plan import DayPlan
from binder.figures.day_words import activity_text, build_text, dish_title, hours_text, people_text, resource_text, why
from binder.kitchen.day import Appliance, ApplianceKind, Person, Pin
from binder.kitchen.shoot import Build, BuildKind
from tests.figures.test_day_plan import plan_of, timed

SECOND = Build(id="spread-second", dish="dish-spread", position=2, kind=BuildKind.SWAP_OUT, up_to="spread/1")
PEOPLE = (
    Person(id="host", shoot="day", name="Ode", on_camera=True),
    Person(id="cook", shoot="day", name="Wren", position=1, arrives=time(7, 0), leaves=time(16, 0)),
    Appliance(id="whisk", shoot="day", name="stand mixer", kind=ApplianceKind.TOOL, places=2),
)


def reasons(plan: DayPlan, key: str) -> list[str]:
    (planned,) = (one for one in plan.activities if one.activity.key == key)
    return [" ".join(says.split()) for says in why(plan, planned)]


def test_an_activity_says_what_it_belongs_to() -> None:
    binder = timed(SECOND)
    names = {one.activity.key: activity_text(binder, one.activity) for one in plan_of(binder).activities}
    assert names["bread-swap/bread/1"] == "Fry of dish 2 (swap-out)"
    assert names["spread-second/spread/1"] == "Blend of dish 1 (swap-out 2)"
    assert names["ahead/spread/1"] == "Blend for Bean spread"
    assert names["conversion/soak"] == "Soak"
    assert names["dish-bread/talk"] == "the close of dish 2"
    assert build_text(binder, binder.builds["spread-swap"]) == "swap-out 1"
    assert dish_title(binder, "dish-bread") == "2 Onion flatbread"


def test_resources_and_people_have_names() -> None:
    asked = plan_of(timed(*PEOPLE)).asked
    assert resource_text(asked, "camera") == "the camera"
    assert resource_text(asked, "whisk#2") == "stand mixer"
    assert {resource_text(asked, crew.key) for crew in asked.kitchen.crews} == {"Ode", "Wren"}
    assert people_text(asked, ("host", "cook")) == "Ode and Wren"
    assert " ".join(hours_text(asked, PEOPLE[1]).split()) == "Wren is there from 7:00 AM to 4:00 PM"


def test_why_something_is_when_it_is() -> None:
    pin = Pin(
        id="p", shoot="day", dish="dish-bread", build="bread-swap", step="bread/1", on=date(2026, 12, 3), at=time(9)
    )
    plan = plan_of(timed(pin))
    assert reasons(plan, "bread-swap/bread/1") == [
        "Pinned to 9:00 AM.",
        "For: Fill of dish 2 (swap-out) at 9:08 AM; stays fit for 10 min.",
    ]
    assert "Waits for: Soak, and 12 h after it." in reasons(plan, "conversion/cook")
    assert "Waits for: Fry of dish 2 (swap-out)." in reasons(plan, "bread-swap/bread/2")
