"""Pinning and letting go as changes. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.edits.day import pins_on, set_pin, unpin

if TYPE_CHECKING:
    from binder.desktop.day_page.bars import Bar
    from binder.desktop.day_page.day_picture import DayPicture
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change


def pinned_to(binder: Binder, picture: DayPicture, bar: Bar, minute: int) -> Change:
    """Have an activity begin at a minute of the plan; one that has begun, has begun then."""
    moment = picture.wall(minute)
    shoot = binder.shoots[picture.plan.asked.clock.shoot.id]
    return set_pin(binder, shoot, bar.target, on=moment.date(), at=moment.time(), done=bar.done)


def unpinned(binder: Binder, picture: DayPicture, bar: Bar) -> Change:
    """Let an activity go where it fits; nothing is changed where it is not pinned."""
    return unpin(binder, *pins_on(binder, picture.plan.asked.clock.shoot.id, bar.target))
