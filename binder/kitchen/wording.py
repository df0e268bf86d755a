"""The one gettext catalogue: window, command line and paper take their words from here."""

from __future__ import annotations

import gettext
import re
from typing import TYPE_CHECKING

from binder.kitchen.paths import catalogue_folder

if TYPE_CHECKING:
    from collections.abc import Iterable

_catalogue: gettext.NullTranslations = gettext.NullTranslations()


def choose_language(languages: Iterable[str]) -> None:
    """Take the first of `languages` (such as `de_DE`) that has a catalogue; English where none has."""
    global _catalogue  # noqa: PLW0603 - one catalogue for the whole program, as gettext itself has it
    _catalogue = gettext.translation("binder", catalogue_folder(), languages=list(languages), fallback=True)


def use_catalogue(catalogue: gettext.NullTranslations) -> None:
    """Take a catalogue that is already loaded (a test's, or one made from a string)."""
    global _catalogue  # noqa: PLW0603
    _catalogue = catalogue


def _(text: str) -> str:
    return _catalogue.gettext(text)


def ngettext(one: str, many: str, count: float) -> str:
    """`one` for a count of exactly 1, else `many`, in the language chosen."""
    return _catalogue.ngettext(one, many, 1 if count == 1 else 2)


_WITHIN = re.compile(r"\([^()]*\)")
"""What stands in parentheses: a comma there parts nothing else."""


def listed(words: Iterable[str], *, joined_by: str | None = None) -> str:
    """Words as a sentence lists them: `a, b and c`; `a, dried; b; and c` where one of them has a comma itself."""
    every = list(words)
    if len(every) < 2:  # noqa: PLR2004 - a list of one needs no conjunction
        return "".join(every)
    conjunction = joined_by or _("and")
    if any(", " in _WITHIN.sub("", word) for word in every):
        return _("{most}; {conjunction} {last}").format(
            most="; ".join(every[:-1]), conjunction=conjunction, last=every[-1]
        )
    return _("{most} {conjunction} {last}").format(most=", ".join(every[:-1]), conjunction=conjunction, last=every[-1])
