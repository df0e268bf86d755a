"""Wording of station cards: portions, builds, measures and heat."""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING

from binder.figures.portion_text import number_style
from binder.kitchen.number import in_decimals, in_fractions
from binder.kitchen.recipe import Heat
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from binder.figures.card import PlannedBuild
    from binder.kitchen.binder import Binder


def count_text(binder: Binder, count: float) -> str:
    """A number of portions or batches as a cook says it: `4`, `2½`, else to a hundredth: `0.85`."""
    mark = number_style(binder).decimal_mark
    return in_fractions(count) or in_decimals(count, digits=2, decimal_mark=mark)


def portions_text(binder: Binder, portions: float) -> str:
    """`4 portions`, `1 portion`."""
    return ngettext("{count} portion", "{count} portions", portions).format(count=count_text(binder, portions))


def builds_text(builds: Sequence[PlannedBuild]) -> str:
    """How many builds of which kind: `3 builds: hero, swap-out ×2`."""
    kinds = kinds_text(build.kind for build in builds)
    return ngettext("{count} build: {kinds}", "{count} builds: {kinds}", len(builds)).format(
        count=len(builds), kinds=kinds
    )


def kinds_text(kinds: Iterable[str]) -> str:
    """Kinds of builds, counted where there are several of one: `hero, swap-out ×2`."""
    counted = Counter(kinds)
    return ", ".join(kind if count == 1 else f"{kind} ×{count}" for kind, count in counted.items())


_BARE_COUNT = re.compile(r"[\d¼-¾⅐-⅞.,–]+")


def measure_text(measure: str) -> str:
    """A cook's measure; a bare count says what it counts: `2 each`."""
    return _("{count} each").format(count=measure) if _BARE_COUNT.fullmatch(measure) else measure


def heat_text(heat: Heat) -> str:
    """What a step's temperature is the temperature of."""
    return {
        Heat.OVEN: _("oven"),
        Heat.PAN: _("pan"),
        Heat.OIL: _("oil"),
        Heat.CORE: _("at the core"),
        Heat.CHILL: _("chill to"),
    }[heat]
