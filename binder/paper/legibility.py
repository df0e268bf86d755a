"""How large type must be to be read from where people stand.

Character height by visual angle: 20 minutes of arc preferred, 16 the least (NUREG-0700 rev. 2, 1.3.1-4: at least 16,
20 to 22 preferred; the same in ISO 9241-303:2011, from memory). Print that is read only now and then, such as a page
number, may be smaller (ISO 9241-3, as quoted by IBM Healthy Computing).
"""

from __future__ import annotations

import math

from binder.paper.paper_size import POINTS_PER_MILLIMETRE

LEAST_ARC = 16.0
PREFERRED_ARC = 20.0
LARGE_ARC = 22.0
"""Minutes of arc: the least, the preferred and the upper end of the preferred."""

ARMS_LENGTH = 0.6
IN_THE_HAND = 0.5
"""Metres: a card read standing at the station, a list held or laid before one. Common practice, no source."""

_MINUTES = 60


def capital_height(metres: float, arc: float) -> float:
    """Millimetres of a capital that is seen under `arc` minutes of arc from so many metres: h = 2 D tan(arc / 2)."""
    return 2 * metres * 1000 * math.tan(math.radians(arc / _MINUTES) / 2)


def seen_under(millimetres: float, metres: float) -> float:
    """Minutes of arc under which a capital letter so high is seen."""
    return 2 * math.degrees(math.atan(millimetres / (2 * metres * 1000))) * _MINUTES


def type_size(metres: float, arc: float, *, capitals: float) -> float:
    """Points of type whose capitals, `capitals` of the size high, are seen under `arc`; rounded up to a tenth."""
    exact = capital_height(metres, arc) * POINTS_PER_MILLIMETRE / capitals
    return math.ceil(exact * 10 - 1e-9) / 10
