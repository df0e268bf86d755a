"""The usual cautions of what is done in an activity, where it is done. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.safety import step_cautions
from binder.kitchen.reference import cautions, deference
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.day_activities import Activity
    from binder.kitchen.binder import Binder
    from binder.kitchen.reference import Caution

SIGN = "△"
"""Stands before every caution, in the window and on paper."""


def cautions_of(binder: Binder, activity: Activity) -> tuple[Caution, ...]:
    """The cautions for the hazards that the step or the conversion of an activity names."""
    step = binder.steps.get(activity.step or "")
    if step is not None:
        return step_cautions(step)
    conversion = binder.conversions.get(activity.conversion or "")
    known = cautions()
    return tuple(known[hazard] for hazard in (conversion.hazards if conversion else ()) if hazard in known)


def in_short(found: tuple[Caution, ...]) -> str:
    """`△ Hot oil, sharp blade`; empty where there is no hazard."""
    titles = [caution.title for caution in found]
    return (
        f"{SIGN} {', '.join([*titles[:1], *(title[:1].lower() + title[1:] for title in titles[1:])])}" if titles else ""
    )


def in_full(found: tuple[Caution, ...]) -> str:
    """Each caution with its source, and whom to follow; empty where there is no hazard."""
    if not found:
        return ""
    says = [f"{SIGN} {caution.title}. {caution.text} ({caution.source})" for caution in found]
    return "\n".join([*says, deference()])


def caution_spoken(found: tuple[Caution, ...]) -> str:
    """The same in short as it is heard."""
    titles = in_short(found).removeprefix(SIGN).strip()
    return _("caution: {hazards}").format(hazards=titles) if titles else ""
