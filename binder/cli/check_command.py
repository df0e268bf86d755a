"""`binder check`: everything about a shoot that needs someone; exit code 1 where something stops it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from binder.cli.asking import binder_argument, json_option, shoot_option
from binder.cli.chosen_shoot import opened
from binder.cli.endings import ExitCode
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.figures.checks import Check
    from binder.kitchen.binder import Binder
    from binder.kitchen.shoot import Shoot


_SECONDS = 3.0
"""How long the day is planned for at most: any good plan tells what there is to check, a proof that it is best nothing
more. Where there is no plan, as long again to find out why, and again what would help."""

_NO_PLAN = _(
    "Leave out what needs the day planned, which takes a moment: up to {seconds} seconds, and up to twice that again "
    "where the day has no plan."
)


def check(
    file: Annotated[Path, binder_argument()],
    shoot: Annotated[str | None, shoot_option()] = None,
    no_plan: Annotated[bool, typer.Option("--no-plan", help=_NO_PLAN.format(seconds=round(_SECONDS)))] = False,
    as_json: Annotated[bool, json_option()] = False,
) -> None:
    """Say what needs someone, the worst first; exit code 1 where something stops the shoot."""
    from binder.figures.checks import failed, gravest_first, shoot_checks

    binder, chosen = opened(file, shoot)
    planned = () if no_plan or chosen.on is None else _of_the_day(binder, chosen)
    checks = gravest_first((*shoot_checks(binder, chosen.id), *planned))
    if as_json:
        _answer(binder, chosen, checks)
    else:
        _show(binder, chosen, checks)
    if failed(checks):
        raise typer.Exit(ExitCode.CHECK_FAILED)


def _of_the_day(binder: Binder, shoot: Shoot) -> tuple[Check, ...]:
    """The checks that need the day planned."""
    from binder.cli.planned_day import planned_day
    from binder.figures.day_checks import day_checks

    found = planned_day(binder, shoot, seconds=_SECONDS)
    return day_checks(binder, shoot.id, found.plan, clash=found.clash, repairs=found.repairs)


def _answer(binder: Binder, shoot: Shoot, checks: Sequence[Check]) -> None:
    from binder.cli.answer import answer_of, print_answer

    found = [
        {"kind": check.kind, "where": check.where, "severity": check.severity.value, "says": check.says}
        for check in checks
    ]
    print_answer(answer_of(binder, shoot, checks=found))


def _show(binder: Binder, shoot: Shoot, checks: Sequence[Check]) -> None:
    from binder.cli.heading import show_heading
    from binder.cli.marks import severity_mark
    from binder.cli.terminal import say, say_marked

    show_heading(binder, shoot)
    for check in checks:
        say_marked(severity_mark(check.severity), check.says)
    if checks:
        say()
    say(_summary(checks))


def _summary(checks: Sequence[Check]) -> str:
    from binder.figures.checks import Severity

    stops = sum(check.severity is Severity.STOP for check in checks)
    if stops:
        says = ngettext("{count} thing stops the shoot.", "{count} things stop the shoot.", stops)
        return says.format(count=stops)
    return _("Nothing stops the shoot.")
