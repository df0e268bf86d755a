"""Wording that several sheets share: money, counts, what is not known, and the line at the foot of every page."""

from __future__ import annotations

import hashlib
import math
import re
from typing import TYPE_CHECKING

from binder.figures import money_words
from binder.figures.date_text import date_text, time_text
from binder.figures.memory import remembered
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.binder import every_record
from binder.kitchen.locale import known_locale
from binder.kitchen.wording import _
from binder.paper.run import unbroken

if TYPE_CHECKING:
    from datetime import date

    from binder.kitchen.binder import Binder

_ONE_PER_CENT = 0.01


def money(binder: Binder, minor: float, *, digits: int | None = None) -> str:
    """An amount of money as the binder's locale writes it, on one line."""
    return unbroken(money_words.money(binder, minor, digits=digits).replace("-", "−"))


def newest_quote(binder: Binder) -> date | None:
    """The day of the newest price in the binder; None where there is no price."""
    return max((quote.on for quote in binder.quotes.values()), default=None)


def data_date_text(binder: Binder, data_of: date | None) -> str:
    """The date of the data: the one given, or else that of the newest price; empty where there is neither."""
    if data_of is not None:
        return _("data of {date}").format(date=date_text(binder, data_of))
    newest = newest_quote(binder)
    return _("prices up to {date}").format(date=date_text(binder, newest)) if newest else ""


def foot_words(binder: Binder, shoot_id: str, data_of: date | None) -> str:
    """The foot of every page: date and version of the data, binder, shoot and its day. Names may be shortened."""
    shoot = binder.shoots[shoot_id]
    version = _("version {version}").format(version=data_version(binder))
    day = _("shoot on {date}").format(date=date_text(binder, shoot.on)) if shoot.on else ""
    names = dict.fromkeys((binder.settings.name, shoot.name))
    kept = [unbroken(part) for part in (data_date_text(binder, data_of), version) if part]
    return " · ".join([*kept, *(part for part in (*names, unbroken(day)) if part)])


@remembered
def data_version(binder: Binder) -> str:
    """Six signs that are others as soon as anything in the binder is: two sheets with the same are of one state."""
    found = hashlib.blake2b(digest_size=_VERSION_BYTES)
    for record in every_record(binder):
        found.update(repr(record).encode("utf-8", "surrogatepass"))
    return found.hexdigest()


_VERSION_BYTES = 3


def true_minus(text: str) -> str:
    """A figure with a minus for the hyphen that stands before it."""
    return re.sub(r"(?<![\w.,])-(?=[^\w\s]?\s?\d)", "−", text)


def shoot_words(binder: Binder, shoot_id: str) -> str:
    """The shoot as a sheet's second line has it: its name, its day and its call time."""
    shoot = binder.shoots[shoot_id]
    day = date_text(binder, shoot.on) if shoot.on else ""
    call = _("call {time}").format(time=time_text(binder, shoot.call)) if shoot.call else ""
    return " · ".join(part for part in (shoot.name, day, call) if part)


def grams(binder: Binder, weight: float) -> str:
    """A weight to a cook's step, on one line; true minus below zero."""
    shown = grams_text(abs(weight), number_style(binder))
    return unbroken(f"−{shown}" if weight < 0 else shown)


def share_text(binder: Binder, share: float) -> str:
    """A share of 1 in whole per cent, as the locale writes it; `<1%` for what is less and not nothing."""
    from babel.numbers import format_percent

    locale = known_locale(binder.settings.locale)
    little = 0 < share < _ONE_PER_CENT
    shown = format_percent(_ONE_PER_CENT if little else math.floor(share * 100 + 0.5) / 100, locale=locale)
    return unbroken(f"<{shown}" if little else shown)


def titled(name: str) -> str:
    """A name as a heading begins it, its first letter large."""
    return name[:1].upper() + name[1:]
