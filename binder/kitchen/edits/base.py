"""Edits of the base ingredient's forms, conversions and trials."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.change import Change, changed, joined
from binder.kitchen.conversion import Addition, Conversion, Outcome, Trial, TrialOutcome
from binder.kitchen.edits.identity import new_id, readable_id
from binder.kitchen.edits.records import insert, remove, set_fields
from binder.kitchen.food import Food
from binder.kitchen.larder import reference_larder
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from binder.kitchen.binder import Binder


def add_form(binder: Binder, base: Food, name: str, **fields: object) -> tuple[Change, Food]:
    """A form of the base, with the base's allergens. Returns the change and the form it makes."""
    taken = {*binder.foods, *reference_larder().foods}
    inherited = {"allergens": base.allergens, "section": base.section, "keeping": base.keeping}
    form = Food(id=readable_id(name, taken), name=name, form_of=base.id, **{**inherited, **fields})  # type: ignore[arg-type]
    return insert(_("Add the form {form}").format(form=name), binder, form), form


def add_conversion(takes: Food, name: str, gives: Mapping[str, float], **fields: object) -> tuple[Change, Conversion]:
    """A conversion of a form into others, `gives` grams of each for a gram.

    Returns the change and the conversion it makes.
    """
    conversion = Conversion(id=new_id("conversion"), takes=takes.id, name=name, **fields)  # type: ignore[arg-type]
    outcomes = [
        Outcome(id=new_id("outcome"), conversion=conversion.id, position=at, form=form, ratio=ratio)
        for at, (form, ratio) in enumerate(gives.items())
    ]
    return changed(_("Add the conversion {name}").format(name=name), after=[conversion, *outcomes]), conversion


def set_conversion(conversion: Conversion, **fields: object) -> Change:
    """Change a conversion's own facts."""
    return set_fields(_("Edit {conversion}").format(conversion=conversion.name), conversion, **fields)


def remove_conversion(binder: Binder, conversion: Conversion) -> Change:
    """Take a conversion out with its outcomes, additions and trials."""
    return remove(_("Remove {conversion}").format(conversion=conversion.name), binder, conversion)


def add_outcome(binder: Binder, conversion: Conversion, form: Food, ratio: float) -> Change:
    """One more form that comes out of a conversion, `ratio` grams for a gram taken."""
    outcome = Outcome(id=new_id("outcome"), conversion=conversion.id, form=form.id, ratio=ratio)
    return insert(_("Add {form} to {conversion}").format(form=form.name, conversion=conversion.name), binder, outcome)


def set_outcome(binder: Binder, outcome: Outcome, **fields: object) -> Change:
    """Change a yield or a cost share."""
    label = _("Set the yield of {form}").format(form=binder.foods[outcome.form].name)
    return set_fields(label, outcome, **fields)


def add_addition(binder: Binder, conversion: Conversion, food: Food, ratio: float) -> Change:
    """Another food that a conversion needs, `ratio` grams for a gram taken."""
    addition = Addition(id=new_id("addition"), conversion=conversion.id, food=food.id, ratio=ratio)
    return insert(_("Add {food} to {conversion}").format(food=food.name, conversion=conversion.name), binder, addition)


def set_addition(binder: Binder, addition: Addition, **fields: object) -> Change:
    """Change how much of another food a conversion needs."""
    label = _("Set {food} in {conversion}").format(
        food=binder.foods[addition.food].name, conversion=binder.conversions[addition.conversion].name
    )
    return set_fields(label, addition, **fields)


def record_trial(
    binder: Binder, conversion: Conversion, *, on: date, taken: float, gave: Mapping[str, float]
) -> Change:
    """A test day's run: `taken` grams in, `gave` grams out by form.

    The yields used become those of this trial; earlier trials stay.
    """
    label = _("Record a trial of {conversion}").format(conversion=conversion.name)
    trial = Trial(id=new_id("trial"), conversion=conversion.id, on=on, taken=taken)
    outcomes = [
        TrialOutcome(id=new_id("trial-outcome"), trial=trial.id, form=form, grams=grams) for form, grams in gave.items()
    ]
    measured = [
        set_fields(
            label, outcome, ratio=gave[outcome.form] / taken, source=_("measured on {day}").format(day=on.isoformat())
        )
        for outcome in binder.outcomes.where("conversion", conversion.id)
        if gave.get(outcome.form, 0.0) > 0
    ]
    return joined(label, [changed(label, after=[trial, *outcomes]), *measured])
