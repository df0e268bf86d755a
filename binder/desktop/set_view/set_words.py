"""What the panels and lines of the set's screen say. Plain Python."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from binder.desktop.day_page.cautions import in_short
from binder.desktop.set_view.panel_text import PanelLine, PanelText
from binder.desktop.sheet.cell import Mark
from binder.figures.date_text import time_text
from binder.figures.day_words import build_text
from binder.kitchen.shoot import BuildState
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from binder.desktop.set_view.set_sight import NextSwapOut, SetSight, Timer
    from binder.figures.safety_clocks import SafetyClock
    from binder.kitchen.binder import Binder

_MOST = 2
"""Lines of a panel."""

_STATE_MARKS = {
    BuildState.PLANNED: Mark.NONE,
    BuildState.UNDER_WAY: Mark.UNKNOWN,
    BuildState.READY: Mark.WITHIN,
}


def left_text(left: timedelta) -> str:
    """How long a timer still runs: `12:30`, `1:05:00`; nothing left reads `0:00`."""
    seconds = max(0, -(-int(left.total_seconds() * 1000) // 1000))
    hours, rest = divmod(seconds, 3600)
    minutes, last = divmod(rest, 60)
    return f"{hours}:{minutes:02d}:{last:02d}" if hours else f"{minutes}:{last:02d}"


def camera_lines(binder: Binder, sight: SetSight) -> tuple[str, str]:
    """The dish that is filmed and what of it; or until when the camera waits."""
    filmed, coming = sight.filmed, sight.next_filmed
    if filmed is not None:
        until = _("to {time}") if not filmed.over else _("was to end {time}")
        parts = (filmed.what, until.format(time=time_text(binder, filmed.until.time())), in_short(filmed.cautions))
        return filmed.dish, "  ·  ".join(part for part in parts if part)
    if coming is None:
        return _("That is a wrap"), ""
    return _("The camera waits"), _("until {time}").format(time=coming.clock)


def swap_out_panel(binder: Binder, swap: NextSwapOut | None) -> PanelText:
    """The next swap-out; pressed, it is ready."""
    heading = _("Next swap-out")
    if swap is None:
        return PanelText(heading, (PanelLine(_("none to come")),))
    hint = "" if swap.state is BuildState.READY else "S"
    first = PanelLine(f"{time_text(binder, swap.at.time())}  {swap.dish}")
    return PanelText(heading, (first, PanelLine(swap.says, mark=_STATE_MARKS.get(swap.state, Mark.NONE))), hint)


def timer_panel(timers: Sequence[Timer], ringing: Sequence[Timer], now: datetime) -> PanelText:
    """The timers, those that ring first; pressed, they have been heard."""
    heading = _("Timers") if len(timers) <= _MOST else _("Timers, {count}").format(count=len(timers))
    running = [timer for timer in timers if timer.left(now) > timedelta(0)]
    lines = [PanelLine(f"0:00  {timer.what}", solid=True) for timer in ringing]
    lines += [PanelLine(f"{left_text(timer.left(now))}  {timer.what}") for timer in running]
    return PanelText(heading, tuple(lines[:_MOST]) or (PanelLine("–"),), "T" if ringing else "")


def safety_panel(binder: Binder, clocks: Sequence[SafetyClock], now: datetime) -> PanelText:
    """The clocks that run of food out of the cold, the nearest to its limit first, and what the limit is."""
    running = [(clock, clock.minutes_at(now)) for clock in clocks]
    found = [(clock, minutes) for clock, minutes in running if minutes is not None]
    found.sort(key=lambda one: (one[0].limit.minutes or 0) - one[1])
    if not found:
        return PanelText(_("Out of the cold"), (PanelLine("–"),))
    limit = found[0][0].limit.minutes or 0
    heading = _("Out of the cold, of {limit}").format(limit=_clock(limit))
    lines = tuple(
        PanelLine(f"{_clock(minutes)}  {_whose(binder, clock)}", mark=Mark.OVER if minutes > limit else Mark.NONE)
        for clock, minutes in found[:_MOST]
    )
    return PanelText(heading, lines)


def _whose(binder: Binder, clock: SafetyClock) -> str:
    """A build by the number of its dish and its kind, as it is called across the set: `5 swap-out`."""
    dish, build = binder.dishes.get(clock.dish or ""), binder.builds.get(clock.build or "")
    if dish is None or build is None:
        return clock.name
    return f"{dish.position + 1} {build_text(binder, build)}"


def _clock(minutes: float) -> str:
    whole = int(minutes)
    return f"{whole // 60}:{whole % 60:02d}"
