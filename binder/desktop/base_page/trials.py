"""The trials of one conversion: what went in and came out on each test day, with mean and spread of the yields."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.base_page.conversion_cells import exact_grams, ratio_text, spread_text
from binder.desktop.larder_page.food_measures import typed_grams
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row, Size, Tone, key_of
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.figure_text import date_text
from binder.desktop.words.typed import UnreadableError, typed_date
from binder.figures.date_text import DateForm
from binder.figures.missing import Place
from binder.figures.trials import MeasuredYield, measured_yields
from binder.kitchen.change import joined
from binder.kitchen.edits.base import set_outcome
from binder.kitchen.edits.records import remove, set_fields
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.conversion import Conversion, Trial, TrialOutcome


class Trials(PlainSheet):
    """The subject is a conversion."""

    @property
    def name(self) -> str:
        return _("Trials")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("on", _("day"), characters=13),
            Column("taken", _("put in"), characters=8, align=Align.DECIMAL, unit_room="kg"),
            Column("form", _("got out"), characters=22, stretch=2),
            Column("grams", "", characters=8, align=Align.DECIMAL, unit_room="kg"),
            Column("ratio", _("yield"), characters=14, align=Align.RIGHT),
            Column("notes", _("notes"), characters=16, stretch=3),
        )

    def rows(self, sight: Sight) -> list[Row]:
        conversion = sight.binder.conversions.get(sight.subject or "")
        if conversion is None:
            return []
        trials = trials_of(sight.binder, conversion)
        shown = [row for trial in trials for row in _trial_rows(sight.binder, trial)]
        measured = {one.form: one for one in measured_yields(sight.binder, conversion.id)}
        means = [_mean(sight.binder, measured[form]) for form in _in_order(sight.binder, conversion.id, measured)]
        return [*shown, *means]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder, place = sight.binder, record_of(row)
        if place.table == "trial_outcomes":
            outcome = binder.trial_outcomes[place.id]
            return set_fields(_label(binder, binder.trials[outcome.trial]), outcome, grams=typed_grams(binder, text))
        if place.table != "trials":
            raise NotEditableError
        trial = binder.trials[place.id]
        if column == "grams":
            first = got_out(binder, trial)[0]
            return set_fields(_label(binder, trial), first, grams=typed_grams(binder, text))
        return set_fields(_label(binder, trial), trial, **{column: _typed(binder, column, text)})

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        trials = [sight.binder.trials[record_of(row).id] for row in rows if record_of(row).table == "trials"]
        if not trials:
            return None
        label = ngettext("Remove a trial", "Remove {count} trials", len(trials)).format(count=len(trials))
        return remove(label, sight.binder, *trials)


def trials_of(binder: Binder, conversion: Conversion) -> list[Trial]:
    """The trials of a conversion, the earliest first."""
    return sorted(binder.trials.where("conversion", conversion.id), key=lambda one: (one.on, one.id))


def _in_order(binder: Binder, conversion: str, forms: Iterable[str]) -> list[str]:
    """Forms in the order in which the conversion gives them."""
    order = [outcome.form for outcome in binder.outcomes.where("conversion", conversion)]
    return sorted(forms, key=lambda form: (order.index(form) if form in order else len(order), form))


def got_out(binder: Binder, trial: Trial) -> list[TrialOutcome]:
    """What came out of a trial, in the order in which the conversion gives it."""
    found = {outcome.form: outcome for outcome in binder.trial_outcomes.where("trial", trial.id)}
    return [found[form] for form in _in_order(binder, trial.conversion, found)]


def use_means(binder: Binder, conversion: Conversion) -> Change | None:
    """The means of all trials as the yields the binder reckons with; None where they are so already."""
    changes = [
        set_outcome(binder, outcome, ratio=found.mean, source=_source(len(found.ratios)))
        for found in measured_yields(binder, conversion.id)
        for outcome in binder.outcomes.where("conversion", conversion.id)
        if outcome.form == found.form and found.mean > 0 and outcome.ratio != found.mean
    ]
    label = _("Use the mean yields of {conversion}").format(conversion=conversion.name)
    return joined(label, changes) if changes else None


def _source(count: int) -> str:
    return ngettext("measured in {count} trial", "mean of {count} trials", count).format(count=count)


def _label(binder: Binder, trial: Trial) -> str:
    return _("Edit a trial of {conversion}").format(conversion=binder.conversions[trial.conversion].name)


def _typed(binder: Binder, column: str, text: str) -> object:
    if column == "taken":
        return typed_grams(binder, text)
    if column == "on":
        day = typed_date(binder, text)
        if day is None:
            raise UnreadableError(text, _("a trial has a day, such as 2026-11-06."))
        return day
    if column == "notes":
        return text.strip()
    raise NotEditableError


def _trial_rows(binder: Binder, trial: Trial) -> list[Row]:
    """The day with what went in, and a row for each form that came out."""
    outcomes = got_out(binder, trial)
    taken = exact_grams(binder, trial.taken)
    head = (
        Cell(date_text(binder, trial.on, DateForm.DATE), edit=trial.on.isoformat()),
        _weight(taken),
    )
    notes = Cell(trial.notes, edit=trial.notes, placeholder="–", tone=Tone.QUIET)
    first = _out(binder, trial, outcomes[0]) if outcomes else (NOTHING,) * 3
    place = Place("trials", trial.id)
    rows = [Row(key_of(place), (*head, *first, notes), place=place, lines=1.5, rule=len(outcomes) < 2)]  # noqa: PLR2004
    for at, outcome in enumerate(outcomes[1:], 2):
        key = key_of(Place("trial_outcomes", outcome.id))
        cells = (NOTHING, NOTHING, *_out(binder, trial, outcome), NOTHING)
        rows.append(Row(key, cells, place=place, lines=1.4, rule=at == len(outcomes)))
    return rows


def _out(binder: Binder, trial: Trial, outcome: TrialOutcome) -> tuple[Cell, Cell, Cell]:
    ratio = ratio_text(binder, outcome.grams / trial.taken)
    return Cell(binder.foods[outcome.form].name), _weight(exact_grams(binder, outcome.grams)), Cell(ratio)


def _weight(text: str) -> Cell:
    number, _space, unit = text.partition(" ")
    return Cell(number, unit, edit=text)


def _mean(binder: Binder, found: MeasuredYield) -> Row:
    count = len(found.ratios)
    mean = ratio_text(binder, found.mean)
    if found.spread is None:
        spread = _("one trial has no spread")
    else:
        spread = _("spread ± {spread}").format(spread=spread_text(binder, found.spread))
    cells = (
        Cell(_("mean"), tone=Tone.QUIET),
        NOTHING,
        Cell(binder.foods[found.form].name),
        NOTHING,
        Cell(mean, size=Size.STRONG),
        Cell(spread, tone=Tone.QUIET, tip=_("Sample standard deviation of {count} yields").format(count=count)),
    )
    return Row(f"mean:{found.form}", cells, lines=1.5)
