"""The whole plan as a list by time. A beginning is typed: what is typed is pinned; empty lets it go. Plain Python."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from typing import TYPE_CHECKING

from binder.desktop.day_page.bars import Bar, in_order
from binder.desktop.day_page.cautions import cautions_of, in_full, in_short
from binder.desktop.day_page.day_heading import day_heading
from binder.desktop.day_page.pinning import pinned_to, unpinned
from binder.desktop.day_page.why import names_of, reasons, title_of
from binder.desktop.sheet.cell import Cell, Column, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet, record_of
from binder.desktop.words.figure_text import clock_edit
from binder.desktop.words.typed import UnreadableError, typed_clock
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from datetime import date

    from binder.desktop.day_page.day_picture import DayPicture
    from binder.desktop.latest import Latest
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.change import Change

_COLUMNS = 6


class WholeList(PlainSheet):
    """A heading a day, a row an activity. `latest` holds the picture that the timeline shows too."""

    def __init__(self, latest: Latest[DayPicture]) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("The plan as a list")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("start", _("from"), characters=10, tip=_("Type a time to pin it; empty lets it go")),
            Column("end", _("to"), characters=9),
            Column("pin", "", characters=8),
            Column("what", _("what"), characters=26, stretch=4),
            Column("who", _("who"), characters=12, stretch=1),
            Column("why", _("why then"), characters=24, stretch=4),
        )

    def rows(self, sight: Sight) -> list[Row]:
        picture = self._latest.value
        if picture is None:
            return []
        rows: list[Row] = []
        day: date | None = None
        for bar in in_order(picture.bars):
            on = picture.wall(bar.start).date()
            if on != day:
                day = on
                rows.append(_heading(picture, on, first=not rows))
            rows.append(_row(picture, bar, stale=self._latest.stale))
        return rows

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        picture = self._latest.value
        assert picture is not None  # noqa: S101 - there are rows
        bar = picture.bars[record_of(row).id]
        if not text.strip():
            return unpinned(sight.binder, picture, bar)
        at = typed_clock(text)
        if at is None:
            raise UnreadableError(text, _("write a time of day such as 10:35."))
        return pinned_to(sight.binder, picture, bar, _nearest(picture, bar, at))


def _nearest(picture: DayPicture, bar: Bar, at: time) -> int:
    """The minute of a time of day: on the day the activity is planned for."""
    moment = datetime.combine(picture.wall(bar.start).date(), at)
    return picture.plan.asked.clock.at(moment)


def _heading(picture: DayPicture, day: date, *, first: bool) -> Row:
    before = (picture.plan.asked.clock.on - day) // timedelta(days=1)
    return day_heading(day, picture.day_name(day), before=before, columns=_COLUMNS, first=first)


def _row(picture: DayPicture, bar: Bar, *, stale: bool) -> Row:
    tone = Tone.QUIET if stale else Tone.INK
    start = picture.wall(bar.start).time()
    pin = _("has begun") if bar.done else _("pinned") if bar.pinned else _("on camera") if bar.filmed else ""
    why = "; ".join(one for one in reasons(picture, bar) if one != _("has begun"))
    hazards = cautions_of(picture.binder, bar.activity)
    cells = (
        Cell(picture.clock(bar.start), edit=clock_edit(picture.binder, start), tone=tone),
        Cell(picture.clock(bar.end), tone=Tone.QUIET),
        Cell(pin, tone=Tone.QUIET, size=Size.SMALL),
        Cell(
            title_of(picture.binder, bar),
            unit=in_short(hazards),
            tone=tone,
            size=Size.STRONG if bar.filmed else Size.BODY,
            tip=in_full(hazards),
        ),
        Cell(listed(names_of(picture, bar)) if bar.people else "", tone=tone),
        Cell(why[:1].upper() + why[1:], tone=Tone.QUIET, tip=why),
    )
    return Row(f"bar:{bar.key}", cells, lines=1.5)
