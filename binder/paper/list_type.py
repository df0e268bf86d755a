"""The sizes of type on lists and sheets, from how far they are read."""

from __future__ import annotations

import functools
from dataclasses import dataclass

from binder.paper.legibility import IN_THE_HAND, LEAST_ARC, PREFERRED_ARC, type_size
from binder.paper.run import Style
from binder.paper.typeface import Weight, capital_ratio

ON_THE_DESK = 0.45
"""Metres; sheets of figures lie on a table before one. Common practice, no source."""

_TITLE_TIMES = 1.8


@dataclass(frozen=True)
class ListType:
    """The styles of a list, the largest first. `label` heads columns, `quiet` is for what is only looked up."""

    title: Style
    section: Style
    figure: Style
    lead: Style
    strong: Style
    plain: Style
    label: Style


@functools.cache
def list_type(metres: float = IN_THE_HAND, language: str = "") -> ListType:
    """The styles of a list that is read from so many metres, its running text in a language."""

    def sized(weight: Weight, arc: float, times: float = 1.0, spoken: str = language) -> Style:
        return Style(weight, type_size(metres * times, arc, capitals=capital_ratio(weight)), spoken)

    return ListType(
        title=sized(Weight.BOLD, PREFERRED_ARC, _TITLE_TIMES, ""),
        section=sized(Weight.BOLD, PREFERRED_ARC, spoken=""),
        figure=sized(Weight.SEMIBOLD, PREFERRED_ARC, spoken=""),
        lead=sized(Weight.SEMIBOLD, PREFERRED_ARC),
        strong=sized(Weight.SEMIBOLD, LEAST_ARC),
        plain=sized(Weight.REGULAR, LEAST_ARC),
        label=sized(Weight.REGULAR, LEAST_ARC, 0.85),
    )
