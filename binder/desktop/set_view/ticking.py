"""Ticks on the set as changes: something has begun, a swap-out is ready. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.change import Change, joined
from binder.kitchen.edits.day import pins_on, set_pin, unpin
from binder.kitchen.edits.shoots import dish_name, set_build
from binder.kitchen.shoot import BuildKind, BuildState
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from datetime import datetime, time

    from binder.desktop.day_page.bars import Bar
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Build, Shoot


def begin(binder: Binder, shoot: Shoot, bar: Bar, now: datetime) -> Change:
    """It has begun now; a build that was only planned is under way from here on, and one that is filmed is used."""
    pinned = set_pin(binder, shoot, bar.target, on=now.date(), at=_to_the_minute(now), done=True)
    build = binder.builds.get(bar.activity.build or "")
    state = _state_after(build, bar) if build is not None else None
    if build is None or state is None or state is build.state:
        return pinned
    return joined(pinned.label, [pinned, set_build(binder, build, state=state)])


def _state_after(build: Build, bar: Bar) -> BuildState | None:
    if bar.filmed and build.kind is BuildKind.SWAP_OUT:
        return BuildState.USED
    return BuildState.UNDER_WAY if build.state is BuildState.PLANNED else None


def take_back(binder: Binder, shoot: Shoot, bar: Bar) -> Change:
    """It has not begun after all."""
    return unpin(binder, *(pin for pin in pins_on(binder, shoot.id, bar.target) if pin.done))


def is_ready(binder: Binder, build: Build) -> Change:
    """The build stands ready."""
    dish = binder.dishes[build.dish]
    label = _("The {build} of {dish} is ready")
    change = set_build(binder, build, state=BuildState.READY)
    return Change(label.format(build=_(build.kind.value), dish=dish_name(binder, dish)), change.edits)


def _to_the_minute(now: datetime) -> time:
    return now.time().replace(second=0, microsecond=0)
