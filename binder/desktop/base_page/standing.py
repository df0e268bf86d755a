"""How the base stands, in one line: there is, needed, left or short, with what runs out and what would mend it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Mark
from binder.figures.base import BaseVerdict
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.base_page.base_figures import BaseFigures
    from binder.figures.base import BaseBalance
    from binder.figures.base_repairs import Repair
    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder

_MARKS = {BaseVerdict.ENOUGH: Mark.WITHIN, BaseVerdict.SHORT: Mark.SHORT, BaseVerdict.UNKNOWN: Mark.UNKNOWN}


@dataclass(frozen=True)
class Standing:
    """The line with its mark, the sentence of what runs out, the repairs, and what is missing for the figure."""

    mark: Mark
    line: str
    sentence: str = ""
    repairs: tuple[Repair, ...] = ()
    missing: tuple[Missing, ...] = ()


def standing_of(binder: Binder, figures: BaseFigures | None, *, stale: bool = False) -> Standing:
    """How the base of a shoot stands."""
    if figures is None or figures.balance is None:
        return Standing(Mark.UNKNOWN, _("being worked out")) if stale else Standing(Mark.NONE, "")
    balance = figures.balance
    line = _line(binder, balance)
    if stale:
        line = _("{line}  ·  being worked out again").format(line=line)
    sentence = figures.bottleneck.says if figures.bottleneck else ""
    return Standing(_MARKS[balance.verdict], line, sentence, figures.repairs, balance.missing)


def _line(binder: Binder, balance: BaseBalance) -> str:
    parts = [
        balance.name,
        _("there is {grams}").format(grams=_grams(binder, balance.there_is)),
        _("needed {grams}").format(grams=_grams(binder, balance.needed)),
    ]
    if balance.left is not None:
        left = _("left {grams}") if balance.left >= 0 else _("short by {grams}")
        parts.append(left.format(grams=_grams(binder, abs(balance.left))))
    return "  ·  ".join(parts)


def _grams(binder: Binder, grams: float | None) -> str:
    if grams is None:
        return _("not known")
    return grams_text(grams, number_style(binder)) if grams else "0 g"
