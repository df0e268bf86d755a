"""Figures as cells and as words: money, weights, times, dates and states."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Mark, Tone
from binder.desktop.words.typed import UnreadableError, typed_clock
from binder.figures.cost import DishCost, Verdict
from binder.figures.date_text import DateForm, time_text
from binder.figures.date_text import date_text as written_date
from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.money import honest_digits, minor_digits
from binder.kitchen.name_book import singular_words
from binder.kitchen.number import in_decimals, in_fractions
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from datetime import date, time

    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder
    from binder.kitchen.food import Food

_VERDICT_MARKS = {
    Verdict.WITHIN: Mark.WITHIN,
    Verdict.OVER: Mark.OVER,
    Verdict.UNKNOWN: Mark.UNKNOWN,
    Verdict.NO_CAP: Mark.NONE,
}


def plain_money(binder: Binder, minor: int | None) -> str:
    """Minor units as they are typed, without the currency; empty for None."""
    if minor is None:
        return ""
    digits = minor_digits(binder.settings.currency)
    whole, rest = divmod(minor, 10**digits)
    return f"{whole}{number_style(binder).decimal_mark}{rest:0{digits}d}" if digits else str(whole)


def small_money(binder: Binder, minor: float) -> str:
    """A cost that may be a part of the smallest coin, with as many digits as show that it is there."""
    places = minor_digits(binder.settings.currency)
    digits = next(
        (more for more in range(places, places + 3) if round(minor / 10.0 ** (places - more)) or not minor), places + 3
    )
    return money(binder, minor, digits=digits)


def money_parts(text: str) -> tuple[str, str]:
    """Money parted into number and the currency that stands after it."""
    found = re.match(r"^(.*\d)[\s\u00a0\u202f]+(\D+)$", text)
    return (found[1], found[2]) if found else (text, "")


def grams_parts(binder: Binder, grams: float) -> tuple[str, str]:
    """A weight parted into number and unit."""
    number, _space, unit = grams_text(grams, number_style(binder)).partition(" ")
    return number, unit


def weight_cell(binder: Binder, grams: float | None) -> Cell:
    """A weight; a dash where there is none."""
    if grams is None:
        return Cell("–", tone=Tone.QUIET, spoken=_("no weight"))
    number, unit = grams_parts(binder, grams)
    return Cell(number, unit)


def number_text(binder: Binder, value: float | None, *, digits: int = 2) -> str:
    """A number as a cook writes it, in fractions where it is one; empty for None."""
    if value is None:
        return ""
    if value == 0:
        return "0"
    return in_fractions(value) or in_decimals(value, digits=digits, decimal_mark=number_style(binder).decimal_mark)


def part_text(binder: Binder, part: float) -> str:
    """A part of 1 in per cent, as it is typed: `15 %`, `7.25 %`."""
    mark = number_style(binder).decimal_mark
    return _("{number} %").format(number=in_decimals(part * 100, digits=4, decimal_mark=mark))


def minutes_text(minutes: float | None) -> str:
    """A time span: `20 min`, `1 h 30 min`, `2 days`; empty for none."""
    if not minutes:
        return ""
    days, rest = divmod(round(minutes), 1440)
    hours, left = divmod(rest, 60)
    parts = [ngettext("{count} day", "{count} days", days).format(count=days)] if days else []
    parts += [_("{count} h").format(count=hours)] if hours else []
    parts += [_("{count} min").format(count=left)] if left else []
    return " ".join(parts) or _("under a minute")


def date_text(binder: Binder, day: date | None, form: DateForm = DateForm.WEEKDAY_DATE) -> str:
    """A day as the binder's locale writes it, by default with its weekday; empty for none."""
    return "" if day is None else written_date(binder, day, form)


def clock_text(binder: Binder, at: time | None) -> str:
    """A time of day as the binder's locale writes it: `7:00 AM`, `07:00`; empty for none."""
    return "" if at is None else time_text(binder, at)


def clock_edit(binder: Binder, at: time | None) -> str:
    """A time of day as a cell offers it for editing: as it is shown where that can be read back, else `15:00`."""
    plain = " ".join(clock_text(binder, at).split())
    try:
        return plain if typed_clock(plain) == at else f"{at:%H:%M}"
    except UnreadableError:
        return f"{at:%H:%M}"


def not_known(missing: tuple[Missing, ...]) -> str:
    """What is missing for a figure, in one sentence: `not known: no price for tahini`."""
    if not missing:
        return _("not known")
    first = missing[0].says.split(":")[0].rstrip(".")
    first = first[:1].lower() + first[1:]
    says = _("not known: {reason}").format(reason=first)
    return says if len(missing) == 1 else _("{says} and {count} more").format(says=says, count=len(missing) - 1)


def mark_of(verdict: Verdict) -> Mark:
    """The shape of a verdict."""
    return _VERDICT_MARKS[verdict]


def headroom_text(binder: Binder, cost: DishCost) -> str:
    """How far a dish is below or above its cap, in words."""
    if cost.headroom is None:
        return ""
    digits = honest_digits(abs(cost.headroom), 0.0, binder.settings.currency)
    shown = money(binder, abs(cost.headroom), digits=digits)
    return (_("{money} over") if cost.verdict is Verdict.OVER else _("{money} to spare")).format(money=shown)


def short_name(food: Food, base_name: str) -> str:
    """A form's name without the base's own: `cooked` for `chickpeas, cooked`."""
    words, base = food.name.split(), set(singular_words(base_name))
    left = [word for word in words if not base.issuperset(singular_words(word))]
    return " ".join(left).strip(" ,") if left and len(left) < len(words) else food.name


def store_name(binder: Binder, store: str | None) -> str:
    """A store's name; *any store* where a pack names none."""
    return binder.stores[store].name if store else _("any store")
