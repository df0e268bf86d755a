"""Why an activity is then: what it waits for and for how long, how long it is fit, that it is pinned."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time

from binder.desktop.day_page.bars import Bar
from binder.desktop.day_page.day_picture import DayPicture, day_picture
from binder.desktop.day_page.rows import Rows
from binder.desktop.day_page.why import heard, reasons, title_of, when_text, why_text
from binder.figures.date_text import time_text
from binder.figures.day_plan import DayPlan
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply, changed
from binder.kitchen.edits.day import set_pin
from tests.desktop.day_page.straight_plan import straight_plan


def test_what_waits_for_a_conversion_says_how_long(picture: DayPicture) -> None:
    cook = next(bar for bar in picture.bars.values() if bar.activity.conversion == "cook")
    assert "waits for: Soak overnight, 12 h" in reasons(picture, cook)


def test_a_hold_is_a_time_it_is_fresh_until(chickpeas: Binder) -> None:
    step = chickpeas.steps[next(key for key, one in chickpeas.steps.items() if one.hands_on_minutes)]
    fresh = apply(chickpeas, changed("hold", before=[step], after=[replace(step, hold_minutes=10)]))
    plan = straight_plan(fresh)
    assert plan is not None
    shown = day_picture(fresh, plan, Rows.DISHES)
    bar = next(bar for bar in shown.bars.values() if bar.activity.step == step.id)
    until = shown.wall(bar.ready + 10)
    clock = time_text(shown.binder, until.time())
    assert f"fresh until {clock}" in reasons(shown, bar)
    assert f"Fresh until {clock}." in why_text(shown, bar)


def test_a_pin_is_a_reason(chickpeas: Binder, plan: DayPlan, picture: DayPicture) -> None:
    bar = next(bar for bar in picture.bars.values() if bar.activity.build)
    on, at = date(2026, 11, 6), time(12, 5)
    pinned = apply(chickpeas, set_pin(chickpeas, chickpeas.shoots["day"], bar.target, on=on, at=at))
    shown = day_picture(pinned, plan, Rows.DISHES)
    assert reasons(shown, shown.bars[bar.key])[0] == "pinned to 12:05\u202fPM"
    begun = apply(chickpeas, set_pin(chickpeas, chickpeas.shoots["day"], bar.target, on=on, at=at, done=True))
    shown = day_picture(begun, plan, Rows.DISHES)
    assert reasons(shown, shown.bars[bar.key])[0] == "has begun"


def test_every_activity_is_named_with_its_dish_or_recipe(picture: DayPicture) -> None:
    titles = {key: title_of(picture.binder, bar) for key, bar in picture.bars.items()}
    assert titles["conversion/soak"] == "Soak overnight"
    filmed = next(bar for bar in picture.bars.values() if bar.activity.build and bar.filmed)
    assert f"{filmed.number} " in titles[filmed.key]
    assert titles["dish_1/talk"].startswith("The close of 1 ")
    assert all(titles.values())


def test_another_day_is_named(picture: DayPicture) -> None:
    soak = picture.bars["conversion/soak"]
    earlier = replace(soak, start=soak.start - 1440, end=soak.end - 1440)
    assert when_text(picture, earlier).startswith("Thu, Nov 5")
    assert not when_text(picture, soak).startswith("Fri")


def test_what_is_heard_is_one_line(picture: DayPicture) -> None:
    for bar in picture.bars.values():
        assert "\n" not in heard(picture, bar)
        assert title_of(picture.binder, bar) in heard(picture, bar)


def test_cautions_stand_where_the_hazard_is(picture: DayPicture) -> None:
    fries = next(
        bar
        for bar in picture.bars.values()
        if bar.activity.step and "hot_oil" in picture.binder.steps[bar.activity.step].hazards
    )
    hover = why_text(picture, fries)
    assert "△ Hot oil. " in hover
    assert hover.endswith("Follow your local food code and your own food-safety lead.")
    assert "caution: Hot oil" in heard(picture, fries)
    plain = next(bar for bar in picture.bars.values() if bar.activity.build and not hazards_of(picture, bar))
    assert "△" not in why_text(picture, plain)


def hazards_of(picture: DayPicture, bar: Bar) -> tuple[str, ...]:
    step = picture.binder.steps.get(bar.activity.step or "")
    return tuple(step.hazards) if step is not None else ()
