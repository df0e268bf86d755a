"""A spare, beauty or tasting build that the base does not suffice for is refused, with the reason and a way out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.base_page.repairing import have_more
from binder.desktop.sheet.sheet import Remedy
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.base_repairs import bottleneck
from binder.figures.portion_text import number_style
from binder.figures.takes import why_no_more
from binder.kitchen.amount_text import grams_text
from binder.kitchen.change import apply, joined
from binder.kitchen.errors import BinderError
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Build

_SLACK = 1e-9
REFUSABLE = (BuildKind.SPARE, BuildKind.BEAUTY, BuildKind.TASTING)
"""Builds that may be left out. A hero or a swap-out is wanted all the same; what it lacks is for the checks to say."""


class NoMoreError(BinderError):
    """A build that cannot be made. `change` is what would add it, `short` grams of base it lacks."""

    def __init__(self, says: str, change: Change, short: float) -> None:
        self.change, self.short = change, short
        super().__init__(says)


def require_base_for(binder: Binder, before: Build | None, build: Build, change: Change) -> Change:
    """The change, where the base suffices for the build as it makes it. Raises NoMoreError where it does not."""
    shoot = binder.dishes[build.dish].shoot
    if build.kind not in REFUSABLE:
        return change
    after = apply(binder, change)
    then, now = base_balance(after, shoot), base_balance(binder, shoot)
    if then is None or now is None or then.verdict is not BaseVerdict.SHORT or then.needed is None:
        return change
    if then.needed <= (now.needed or 0.0) * (1 + _SLACK):
        return change
    raise NoMoreError(_reason(binder, after, before, build), change, -(then.left or 0.0))


def _reason(binder: Binder, after: Binder, before: Build | None, build: Build) -> str:
    says = why_no_more(binder, build.dish, build.up_to) if before is None else ""
    found = bottleneck(after, binder.dishes[build.dish].shoot)
    return says or (found.says if found is not None else "")


def ways_out(binder: Binder, build_dish: str, error: BinderError) -> list[Remedy]:
    """More of the base and the build with it, as one change."""
    if not isinstance(error, NoMoreError):
        return []
    shoot = binder.shoots[binder.dishes[build_dish].shoot]
    base = binder.foods[shoot.base or ""]
    grams = grams_text(error.short, number_style(binder))
    title = _("Have {grams} more {base}, and do it").format(grams=grams, base=base.name)
    more = have_more(binder, shoot.id, error.short)
    return [Remedy(title, change=joined(error.change.label, [error.change, more]))]
