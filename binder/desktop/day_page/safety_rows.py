"""The safety of a planned day: the clocks of what is out of the cold, what else is to be seen to, who carries what.

Plain Python.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Mark, Row, Size, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.figures.allergen_matrix import allergen_matrix
from binder.figures.date_text import DateForm, date_text, time_text
from binder.figures.day_words import dish_title
from binder.figures.duration_text import duration_text
from binder.figures.missing import Place
from binder.figures.safety_clocks import safety_clocks
from binder.figures.safety_findings import SafetyKind, safety_findings
from binder.kitchen.reference import deference, time_limits
from binder.kitchen.wording import _, listed
from binder.paper.card_safety import no_allergens_text

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date, datetime

    from binder.desktop.latest import Latest
    from binder.desktop.sheet.sheet import Sight
    from binder.figures.allergen_matrix import Contact, DishAllergens
    from binder.figures.day_plan import DayPlan
    from binder.figures.safety_clocks import SafetyClock
    from binder.figures.safety_findings import SafetyFinding
    from binder.kitchen.binder import Binder


@dataclass(frozen=True)
class DaySafety:
    """What a plan says of safety, the binder it is a plan of, and the day of the shoot."""

    binder: Binder
    on: date | None
    clocks: tuple[SafetyClock, ...]
    findings: tuple[SafetyFinding, ...]


def day_safety(plan: DayPlan, shoot: str) -> DaySafety:
    """What a plan says of safety."""
    binder = plan.asked.binder
    return DaySafety(
        binder, binder.shoots[shoot].on, safety_clocks(binder, shoot, plan), safety_findings(binder, shoot, plan)
    )


class SafetyClocks(PlainSheet):
    """A row for each build and what comes into it together, the longest out of the cold first."""

    def __init__(self, latest: Latest[DaySafety]) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Out of the cold")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("what", _("what"), characters=24, stretch=3),
            Column("foods", _("foods that need the cold"), characters=20, stretch=3),
            Column("out", _("longest out"), characters=12, align=Align.RIGHT),
            Column("limit", _("of"), characters=8),
            Column("when", _("out of the cold from, to"), characters=24, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        safety = self._latest.value
        if safety is None:
            return []
        rows = [_clock_row(safety.binder, clock, safety.on) for clock in safety.clocks]
        if not rows:
            nothing = Cell(_("Nothing in this plan stands out of the cold."), mark=Mark.WITHIN, tone=Tone.QUIET)
            return [Row("nothing", (nothing, *(NOTHING,) * 4), spans=((0, 5),))]
        return [*rows, _limit_row(safety.clocks[0])]


def _clock_row(binder: Binder, clock: SafetyClock, on: date | None) -> Row:
    place = Place("dishes", clock.dish) if clock.dish else Place("recipes", clock.thread)
    out = Cell(duration_text(clock.minutes), mark=Mark.OVER if clock.over else Mark.WITHIN, tone=_tone(over=clock.over))
    spans = "  ".join(
        f"{_clock(binder, start, on)}–{time_text(binder, end.time())}" for start, end, _total in clock.spans
    )
    cells = (
        Cell(clock.name, leads_to=place),
        Cell(listed(binder.foods[food].name for food in clock.foods if food in binder.foods), paragraph=True),
        out,
        Cell(duration_text(clock.limit.minutes or 0), tone=Tone.QUIET),
        Cell(_spans_text(binder, clock, spans, on), tone=_tone(over=clock.over, usual=Tone.QUIET), paragraph=True),
    )
    return Row(f"clock:{clock.thread}/{'+'.join(clock.foods)}", cells, wraps=True)


def _spans_text(binder: Binder, clock: SafetyClock, spans: str, on: date | None) -> str:
    if clock.runs_out is None:
        return spans
    return _("{spans}; the limit is reached at {time}").format(spans=spans, time=_clock(binder, clock.runs_out, on))


def _clock(binder: Binder, moment: datetime, on: date | None) -> str:
    """A time of day, with its day where that is not the day of the shoot."""
    clock = time_text(binder, moment.time())
    return clock if moment.date() == on else f"{date_text(binder, moment.date(), DateForm.NAME)} {clock}"


def _tone(*, over: bool, usual: Tone = Tone.INK) -> Tone:
    return Tone.STOP if over else usual


def _limit_row(clock: SafetyClock) -> Row:
    """Where the limit comes from, the food code's four hours as context, and whom to follow."""
    context = time_limits()["time_control"]
    says = _(
        "{limit} ({source}). In place of temperature {context} at most, with a written procedure ({code}). {follow}"
    )
    text = says.format(
        limit=duration_text(clock.limit.minutes or 0),
        source=clock.limit.source,
        context=duration_text(context.minutes or 0),
        code=context.source,
        follow=deference(),
    )
    cells = (Cell(text, tone=Tone.QUIET, size=Size.SMALL, paragraph=True), *(NOTHING,) * 4)
    return Row("limit", cells, spans=((0, 5),), rule=False, wraps=True)


class SafetyFindings(PlainSheet):
    """What else is to be seen to, in sentences with their source: what is over a limit first."""

    def __init__(self, latest: Latest[DaySafety]) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("To see to")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("kind", _("about"), characters=22),
            Column("says", _("what"), characters=40, stretch=1),
        )

    def rows(self, sight: Sight) -> list[Row]:
        safety = self._latest.value
        if safety is None:
            return []
        found = [one for one in safety.findings if one.kind is not SafetyKind.OUT_OF_COLD]
        if not found:
            nothing = Cell(_("Nothing else."), mark=Mark.WITHIN, tone=Tone.QUIET)
            return [Row("nothing", (nothing, NOTHING), spans=((0, 2),))]
        return [_finding_row(at, finding) for at, finding in enumerate(found)]


def _finding_row(at: int, finding: SafetyFinding) -> Row:
    kind = Cell(_kind(finding.kind), mark=Mark.WARN if finding.over else Mark.NOTE, tone=Tone.QUIET)
    says = Cell(finding.says, paragraph=True, tone=Tone.INK)
    return Row(f"finding:{at}", (kind, says), place=finding.place, wraps=True)


def _kind(kind: SafetyKind) -> str:
    return {
        SafetyKind.OUT_OF_COLD: _("out of the cold"),
        SafetyKind.DONENESS: _("core temperature"),
        SafetyKind.COOLING: _("cooling"),
        SafetyKind.THAWING: _("thawing"),
        SafetyKind.RAW_FIRST: _("raw before ready to eat"),
        SafetyKind.REHEATING: _("reheating"),
    }[kind]


class AllergenRows(PlainSheet):
    """A row a dish, for everyone who tastes: what it contains by food, what may come to it by shared things."""

    @property
    def name(self) -> str:
        return _("Allergens, for everyone who tastes")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("dish", _("dish"), characters=22, stretch=2),
            Column("contains", _("contains"), characters=24, stretch=3),
            Column("may", _("may also carry"), characters=28, stretch=4),
        )

    def rows(self, sight: Sight) -> list[Row]:
        if sight.shoot is None:
            return []
        matrix = allergen_matrix(sight.binder, sight.shoot)
        rows = [_allergen_row(sight.binder, row) for row in matrix.dishes]
        says = _("As the foods of the larder name them: read the labels all the same. {follow}")
        last = Cell(says.format(follow=deference()), tone=Tone.QUIET, size=Size.SMALL, paragraph=True)
        return [*rows, Row("follow", (last, NOTHING, NOTHING), spans=((0, 3),), rule=False, wraps=True)] if rows else []


def _allergen_row(binder: Binder, row: DishAllergens) -> Row:
    contains = _contains(row.contains)
    may = _may_have(binder, row.may_have)
    cells = (
        Cell(dish_title(binder, row.dish), leads_to=Place("dishes", row.dish)),
        Cell(
            contains or no_allergens_text(binder.settings.allergens),
            paragraph=True,
            tone=Tone.INK if contains else Tone.QUIET,
        ),
        Cell(may or "–", paragraph=True, mark=Mark.WARN if may else Mark.NONE, tone=Tone.INK if may else Tone.QUIET),
    )
    return Row(f"allergens:{row.dish}", cells, wraps=True)


def _contains(contains: Mapping[str, tuple[str, ...]]) -> str:
    return "; ".join(f"{allergen} ({', '.join(foods)})" for allergen, foods in sorted(contains.items()))


def _may_have(binder: Binder, may_have: Mapping[str, Contact]) -> str:
    says = _("{allergen} by {things}, from {dishes}")
    return "; ".join(
        says.format(
            allergen=allergen,
            things=listed(contact.shared),
            dishes=listed(dish_title(binder, dish) for dish in contact.dishes),
        )
        for allergen, contact in may_have.items()
    )
