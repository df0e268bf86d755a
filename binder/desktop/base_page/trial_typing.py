"""A trial as it is typed: a day, grams put in, grams got out by form. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.larder_page.food_measures import typed_grams
from binder.desktop.words.typed import UnreadableError, typed_date
from binder.kitchen.edits.base import record_trial
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.conversion import Conversion


def typed_trial(binder: Binder, conversion: Conversion, *, on: str, taken: str, got: Mapping[str, str]) -> Change:
    """The trial of texts; forms without one were not weighed. Raises BinderError for what cannot be read."""
    day = typed_date(binder, on)
    if day is None:
        raise UnreadableError(on, _("a trial has a day, such as 2026-11-06."))
    if not taken.strip():
        raise BinderError(_("Write how much was put in, such as 500 g."))
    grams = typed_grams(binder, taken)
    if grams <= 0:
        raise UnreadableError(taken, _("something must have been put in, such as 500 g."))
    gave = {form: typed_grams(binder, text) for form, text in got.items() if text.strip()}
    if not any(gave.values()):
        raise BinderError(_("Write what was got out of at least one form, such as 1 kg."))
    return record_trial(binder, conversion, on=day, taken=grams, gave=gave)
