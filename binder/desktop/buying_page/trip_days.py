"""The days of trips as they are typed above the list: a day of one's own takes the place of the one worked out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.words.typed import UnreadableError, typed_date
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.edits.buying import add_trip, remove_trip, set_trip
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import date

    from binder.figures.trips import TripPlan
    from binder.kitchen.binder import Binder
    from binder.kitchen.buying import Trip


def own_trip(binder: Binder, shoot: str, plan: TripPlan) -> Trip | None:
    """The trip of the producer's own that a plan follows; None where its day was worked out."""
    trips = binder.trips.where("shoot", shoot)
    return next((one for one in trips if one.store == plan.store and one.on == plan.on), None)


def typed_day(binder: Binder, shoot: str, plans: Sequence[TripPlan], plan: TripPlan, text: str) -> Change:
    """The change that typing the day of a trip is; an empty text gives the day back to be worked out."""
    day, own = typed_date(binder, text), own_trip(binder, shoot, plan)
    if plan.store is None:
        raise UnreadableError(text, _("say in the larder which store sells this first."))
    if day is None and own is None:
        raise UnreadableError(text, _("write a date such as 2026-11-06."))
    if own is not None:
        return remove_trip(binder, own) if day is None else set_trip(binder, own, on=day)
    return _own_days(binder, shoot, [day if one is plan else one.on for one in plans if one.store == plan.store], plan)


def _own_days(binder: Binder, shoot: str, days: Sequence[date | None], plan: TripPlan) -> Change:
    """All days of a store as one's own: the one typed, and the others as they were worked out."""
    store, grown, changes = binder.stores[plan.store or ""], binder, list[Change]()
    for day in dict.fromkeys(one for one in days if one is not None):
        change, _trip = add_trip(grown, grown.shoots[shoot], store, on=day)
        grown = apply(grown, change)
        changes.append(change)
    return changes[0] if len(changes) == 1 else joined(changes[0].label, changes)


def remove_day(binder: Binder, shoot: str, plan: TripPlan) -> Change | None:
    """Take a trip of one's own out; None where its day was worked out."""
    own = own_trip(binder, shoot, plan)
    return remove_trip(binder, own) if own is not None else None
