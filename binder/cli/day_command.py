"""`binder day`: when everything starts; exit code 1 where the day has no plan."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import ExitCode, WrongUsageError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.cli.planned_day import PlannedDay

CALENDAR_SUFFIX = ".ics"


def day(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    since: Annotated[
        str | None,
        typer.Option(
            "--from",
            metavar="CALL|DISH|HH:MM",
            help=_("Show only what begins from call on, from the filming of a dish on, or from a time of the day on."),
        ),
    ] = None,
    seconds: Annotated[
        float, typer.Option("--seconds", metavar="N", min=0.1, max=3600, help=_("How long to look for a better plan."))
    ] = 10.0,
    to: Annotated[
        Path | None,
        typer.Option("--to", metavar="X.ics", help=_("Write the days before as a calendar; replaced if there.")),
    ] = None,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Show when everything starts, who does it and where; exit code 1 where the day has no plan."""
    if to is not None and to.suffix.casefold() != CALENDAR_SUFFIX:
        raise WrongUsageError(
            _("The days before are written as an .ics calendar: end “{file}” so.").format(file=to.name)
        )
    from binder.cli.planned_day import beginning, planned_day

    binder, chosen = opened(file, shoot)
    found = planned_day(binder, chosen, seconds=seconds)
    begins = None if since is None else beginning(found, since)
    if to is not None:
        _write(found, file, to)
    if as_json:
        from binder.cli.answer import print_answer
        from binder.cli.day_answer import day_answer

        print_answer(day_answer(found, begins))
    else:
        from binder.cli.day_tables import show_day

        show_day(found, begins, written=to)
    if found.plan is None:
        raise typer.Exit(ExitCode.CHECK_FAILED)


def _write(found: PlannedDay, file: Path, to: Path) -> None:
    """The calendar, as of the last change of the data: of the file, or else of its prices."""
    from binder.cli.planned_day import last_change
    from binder.exchange.calendar_file import write_calendar
    from binder.figures.prep_calendar import prep_calendar

    entries = prep_calendar(found.binder, found.shoot.id, found.plan)
    as_of, revision = last_change(found, file)
    write_calendar(to, found.shoot, entries, as_of=as_of, revision=revision)
