"""The words of one printed sheet of the usual binder and its day, as an independent reader finds them."""

from __future__ import annotations

import functools

from binder.kitchen.binder import Binder
from binder.kitchen.money import money_text
from binder.paper.print_choices import PrintChoices
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.day_example import day_binder, planned
from tests.paper.example import SHOOT
from tests.paper.reader import Words, all_words


@functools.cache
def words_of_day(kind: SheetKind, paper: str = "a4") -> Words:
    """The words of a sheet of the usual binder, with a plan of its day."""
    return all_words(sheet_bytes(day_binder(), SHOOT, kind, paper, choices=planned()))


def words_of(binder: Binder, kind: SheetKind, paper: str = "a4", choices: PrintChoices | None = None) -> Words:
    """The words of a sheet of a binder."""
    return all_words(sheet_bytes(binder, SHOOT, kind, paper, choices=choices))


def money_said(binder: Binder, minor: float) -> str:
    """Money as a sheet has it: with a true minus, its spaces plain."""
    shown = money_text(minor, binder.settings.currency, binder.settings.locale)
    return " ".join(shown.replace("-", "−").split())
