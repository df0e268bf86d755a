"""Times, dates, temperatures and choices as people type them. Each raises a BinderError that says what to type."""

from __future__ import annotations

import re
from datetime import date, datetime, time
from enum import StrEnum
from typing import TYPE_CHECKING, TypeAlias, TypeVar

from binder.kitchen.errors import BinderError
from binder.kitchen.money import parse_money, uses_decimal_comma
from binder.kitchen.number import NUMBER_PATTERN, in_decimals, parse_number
from binder.kitchen.recipe import Heat
from binder.kitchen.settings import Measures
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from binder.kitchen.binder import Binder

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)
Reading: TypeAlias = "Callable[[], object]"
"""Reads what was typed into a cell when that cell is the one edited."""


class UnreadableError(BinderError):
    """Text that is not what a cell holds."""

    def __init__(self, text: str, rule: str) -> None:
        super().__init__(_("“{text}” cannot stand here: {rule}").format(text=text[:60], rule=rule))


_MINUTES_PER = {"d": 1440.0, "h": 60.0, "m": 1.0}
_SPAN = re.compile(
    rf"(?P<count>{NUMBER_PATTERN})\s*(?P<unit>days?|d|hours?|hrs?|h|minutes?|mins?|min|m)?(?![^\W\d])[,\s]*",
    re.IGNORECASE,
)


def typed_minutes(binder: Binder, text: str) -> float:
    """Minutes of `20`, `20 min`, `1 h 30`, `1½ h`, `2 days`; none where the text is empty."""
    plain = text.strip()
    total, at, unit = 0.0, 0, ""
    while at < len(plain):
        found = _SPAN.match(plain, at)
        if found is None:
            raise UnreadableError(text, _("write a time such as 20 min, 1 h 30 or 2 days."))
        unit = (found["unit"] or ("m" if unit in {"", "h"} else "?"))[0].casefold()
        if unit not in _MINUTES_PER:
            raise UnreadableError(text, _("write a time such as 20 min, 1 h 30 or 2 days."))
        total += parse_number(found["count"], decimal_comma=comma(binder)) * _MINUTES_PER[unit]
        at = found.end()
    return total


def comma(binder: Binder) -> bool:
    """Whether the binder's locale writes a decimal comma."""
    return uses_decimal_comma(binder.settings.locale)


def typed_number(binder: Binder, text: str) -> float:
    """A number as a cook types it."""
    return parse_number(text, decimal_comma=comma(binder))


def typed_optional_number(binder: Binder, text: str) -> float | None:
    """A number, or None where the text is empty."""
    return typed_number(binder, text) if text.strip() else None


def typed_whole(binder: Binder, text: str) -> int:
    """A whole number."""
    number = typed_number(binder, text)
    if number != int(number):
        raise UnreadableError(text, _("write a whole number, such as 2."))
    return int(number)


def typed_part(binder: Binder, text: str) -> float:
    """A part of 1, of `15`, `15 %` or `0.15`; 0 where the text is empty."""
    plain = text.strip()
    number = typed_number(binder, plain.removesuffix("%").strip()) if plain else 0.0
    return number / 100 if number > 1 or plain.endswith("%") else number


def yes_or_no() -> dict[str, bool]:
    """The two words of a switch."""
    return {_("yes"): True, _("no"): False}


def typed_money(binder: Binder, text: str) -> int | None:
    """Minor currency units, or None where the text is empty."""
    return parse_money(text, binder.settings.currency, binder.settings.locale) if text.strip() else None


def typed_clock(text: str) -> time | None:
    """A time of day of `7`, `7:30`, `07.30`, `7 am`, `3:15 pm`; None where the text is empty."""
    plain = text.strip().casefold()
    if not plain:
        return None
    found = re.fullmatch(r"(\d{1,2})(?:[:.h](\d{2}))?\s*(am|pm|a\.m\.|p\.m\.)?", plain)
    hour = int(found[1]) if found else 24
    if found and found[3]:
        hour = hour % 12 + (12 if found[3].startswith("p") else 0)
    minute = int(found[2] or 0) if found else 0
    if hour > 23 or minute > 59:  # noqa: PLR2004 - a day's hours and an hour's minutes
        raise UnreadableError(text, _("write a time of day such as 7:30 or 15:00."))
    return time(hour, minute)


def typed_date(binder: Binder, text: str) -> date | None:
    """A date as `2026-11-06` or as the locale writes it; None where the text is empty."""
    from babel.core import UnknownLocaleError
    from babel.dates import ParseError, parse_date

    plain = text.strip()
    if not plain:
        return None
    try:
        if re.fullmatch(r"\d{4}-\d{1,2}-\d{1,2}", plain):
            return datetime.strptime(plain, "%Y-%m-%d").date()  # noqa: DTZ007 - a day has no zone
        return parse_date(plain, locale=binder.settings.locale)
    except (ParseError, UnknownLocaleError, ValueError, IndexError) as error:
        raise UnreadableError(text, _("write a date such as 2026-11-06.")) from error


def typed_choice(text: str, choices: Mapping[str, T]) -> T:
    """What a word stands for, by its beginning where that is enough."""
    plain = text.strip().casefold()
    exact = [value for word, value in choices.items() if word.casefold() == plain]
    begun = [value for word, value in choices.items() if plain and word.casefold().startswith(plain)]
    found = exact or begun
    if len(found) != 1 and not exact:
        raise UnreadableError(text, _("choose {choices}.").format(choices=listed(choices, joined_by=_("or"))))
    return found[0]


def words_for(kind: type[E]) -> dict[str, E]:
    """The values of an enumeration by the word each is written with."""
    return {_(value.value): value for value in kind}


def typed_words(text: str) -> tuple[str, ...]:
    """Words parted by commas or semicolons."""
    return tuple(word.strip() for word in re.split(r"[;,]", text) if word.strip())


_HEAT = re.compile(
    r"^(?P<word>[^\W\d]*)\s*(?P<number>[-−]?\d+(?:[.,]\d+)?)?\s*(?:°|º|degrees)?\s*(?P<scale>[cf])?\.?$", re.IGNORECASE
)


def typed_heat(binder: Binder, text: str) -> tuple[Heat | None, float | None]:
    """What is heated and to how many degrees Celsius: `oven 180 C`, `core 165 F`, `oil 350`, `chill`."""
    plain = " ".join(text.split())
    if not plain:
        return None, None
    found = _HEAT.match(plain)
    if found is None or not found["word"]:
        raise UnreadableError(text, _("write what is heated and how far, such as oven 180 °C or core 165 °F."))
    heat = typed_choice(found["word"], words_for(Heat))
    if not found["number"]:
        return heat, None
    degrees = float(found["number"].replace("−", "-").replace(",", "."))
    scale = (found["scale"] or own_scale(binder)).casefold()
    return heat, round((degrees - 32) * 5 / 9, 4) if scale == "f" else degrees


def own_scale(binder: Binder) -> str:
    """The scale a bare number of degrees is in: F in US customary measures, else C."""
    return "F" if binder.settings.measures is Measures.US_CUSTOMARY else "C"


def exact_temperature(binder: Binder, celsius: float) -> str:
    """Degrees as typed so that nothing is lost: in the binder's own scale where they are whole there, else in °C."""
    fahrenheit = round(celsius * 9 / 5 + 32)
    if own_scale(binder) == "F" and abs((fahrenheit - 32) * 5 / 9 - celsius) < _SAME:
        return f"{fahrenheit} °F"
    return f"{in_decimals(abs(celsius), digits=4)} °C" if celsius >= 0 else f"-{in_decimals(-celsius, digits=4)} °C"


_SAME = 1e-3
"""Degrees apart that no thermometer shows."""
