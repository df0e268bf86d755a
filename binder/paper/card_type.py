"""The sizes of type on a station card, from how far it is read; and the numbers on it set larger than their units."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass

from binder.paper.legibility import ARMS_LENGTH, LARGE_ARC, LEAST_ARC, PREFERRED_ARC, type_size
from binder.paper.print_choices import Look
from binder.paper.run import Run, Style, unbroken
from binder.paper.typeface import Weight, capital_ratio

_NUMBER_FROM = 10 / 3
_NAME_FROM = 5 / 3
"""The running number is found from this many times the reading distance (2 m for 0.6 m), the dish's name from 1 m."""


@dataclass(frozen=True)
class CardType:
    """The styles of a card that is read from `metres`, the largest first. `quiet` is for what is only looked up.

    `after` is for what follows a food: its measure and preparation. `near` has the styles for arm's length: whoever
    reads from further away comes near for cautions and allergens.
    """

    metres: float
    number: Style
    name: Style
    figure: Style
    lead: Style
    strong: Style
    plain: Style
    after: Style
    quiet: Style
    look: Look = Look.PLAIN

    @property
    def near(self) -> CardType:
        """The styles for arm's length, or its own where it is read from nearer."""
        return self if self.metres <= ARMS_LENGTH else card_type(ARMS_LENGTH, self.plain.language, self.look)


@functools.cache
def card_type(metres: float = ARMS_LENGTH, language: str = "", look: Look = Look.PLAIN) -> CardType:
    """The styles of a card that is read from so many metres, its running text in a language.

    On camera what follows a food is in italics: a second voice without a second size.
    """

    def sized(weight: Weight, arc: float, times: float = 1.0, spoken: str = "") -> Style:
        return Style(weight, type_size(metres * times, arc, capitals=capital_ratio(weight)), spoken)

    return CardType(
        metres=metres,
        number=sized(Weight.BOLD, PREFERRED_ARC, _NUMBER_FROM),
        name=sized(Weight.SEMIBOLD, PREFERRED_ARC, _NAME_FROM),
        figure=sized(Weight.BOLD, LARGE_ARC),
        lead=sized(Weight.SEMIBOLD, PREFERRED_ARC, spoken=language),
        strong=sized(Weight.SEMIBOLD, LEAST_ARC, spoken=language),
        plain=sized(Weight.REGULAR, LEAST_ARC, spoken=language),
        after=sized(Weight.ITALIC if look is Look.ON_CAMERA else Weight.REGULAR, LEAST_ARC, spoken=language),
        quiet=Style(Weight.REGULAR, 8.0, language),
        look=look,
    )


_NUMBERS = re.compile(r"[\d¼-¾⅐-⅞][\d¼-¾⅐-⅞.,\u00a0–−\u202f]*(?<![.,\u00a0\u202f])|[–−](?=\d)")


def figure_runs(words: str, figure: Style, unit: Style) -> tuple[Run, ...]:
    """An amount, a time or a temperature as one unbroken word: its numbers in `figure`, what they count in `unit`."""
    kept = unbroken(words)
    runs: list[Run] = []
    at = 0
    for found in _NUMBERS.finditer(kept):
        runs += [Run(kept[at : found.start()], unit)] if found.start() > at else []
        runs.append(Run(found.group(), figure))
        at = found.end()
    return (*runs, Run(kept[at:], unit)) if at < len(kept) else tuple(runs)
