"""The checks as a table of sentences, the gravest first, and how many wait behind each divider. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.base_page.base_figures import is_quick
from binder.desktop.places import PAGE_OF
from binder.desktop.quick_shopping import shopping_is_quick
from binder.desktop.sheet.cell import Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.checks import Check, Severity, shoot_checks
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder

_MARKS = {Severity.STOP: Mark.OVER, Severity.WARN: Mark.WARN, Severity.NOTE: Mark.NOTE}
_SHAPES = {
    "cost not known": Mark.UNKNOWN,
    "price missing": Mark.UNKNOWN,
    "cannot convert": Mark.UNKNOWN,
    "short of base": Mark.SHORT,
}


def checks_of(sight: Sight) -> tuple[Check, ...]:
    """The checks of the shoot looked at."""
    return shoot_checks(sight.binder, sight.shoot) if sight.shoot else ()


def checks_are_quick(binder: Binder, shoot: str) -> bool:
    """Whether the checks of a shoot are there within a frame: nothing is claimed, which is tried at many prices."""
    claimed = binder.claims.where("shoot", shoot)
    return not claimed and shopping_is_quick(binder, shoot) and is_quick(binder, shoot)


def waiting_by_page(checks: Iterable[Check]) -> dict[str, tuple[int, int]]:
    """For each page how many checks stop the shoot there and how many want a look."""
    counts: dict[str, tuple[int, int]] = {}
    for check in checks:
        page = PAGE_OF.get(check.place.table, "shoot")
        stops, warns = counts.get(page, (0, 0))
        counts[page] = (stops + (check.severity is Severity.STOP), warns + (check.severity is Severity.WARN))
    return counts


def heading_of(severity: Severity) -> str:
    """What a group of checks is called."""
    return {
        Severity.STOP: _("Stops the shoot"),
        Severity.WARN: _("Wants a look"),
        Severity.NOTE: _("Worth knowing"),
    }[severity]


class ChecksSheet(PlainSheet):
    """A heading for each severity, and its sentences, in one column. `found` gives the checks; None: not known yet."""

    columns = (Column("says", "", characters=24, stretch=1),)

    def __init__(self, found: Callable[[Sight], Iterable[Check] | None] = checks_of) -> None:
        self._found = found

    @property
    def name(self) -> str:
        return _("Checks")

    def rows(self, sight: Sight) -> list[Row]:
        rows: list[Row] = []
        severity: Severity | None = None
        found = self._found(sight)
        if found is None and sight.shoot:
            return [_not_yet()]
        for number, check in enumerate(found or ()):
            if check.severity is not severity:
                severity = check.severity
                rows.append(_heading(severity, first=not rows))
            rows.append(_sentence(check, number))
        return rows or [_all_well(sight)]


def _heading(severity: Severity, *, first: bool) -> Row:
    cell = Cell(heading_of(severity), size=Size.SMALL, tone=Tone.QUIET)
    return Row(f"heading:{severity.value}", (cell,), lines=1.5, gap=0 if first else 2, rule=False)


def _sentence(check: Check, number: int) -> Row:
    mark = _SHAPES.get(check.kind, _MARKS[check.severity])
    tone = Tone.QUIET if check.severity is Severity.NOTE else Tone.INK
    cell = Cell(check.says, mark=mark, tone=tone, spoken=f"{heading_of(check.severity)}: {check.says}")
    apart = number if check.severity is Severity.NOTE else check.where
    key = f"{check.kind}/{check.place.table}/{check.place.id}/{apart}"
    return Row(key, (cell,), place=check.place, wraps=True)


def _not_yet() -> Row:
    """Before anything is known it is not said that all is well."""
    return Row("not yet", (Cell(_("being worked out"), tone=Tone.QUIET),), rule=False, wraps=True)


def _all_well(sight: Sight) -> Row:
    says = _("Nothing needs you.") if sight.shoot else _("Checks begin with the first shoot.")
    return Row(
        "well", (Cell(says, mark=Mark.WITHIN if sight.shoot else Mark.NONE, tone=Tone.QUIET),), rule=False, wraps=True
    )
