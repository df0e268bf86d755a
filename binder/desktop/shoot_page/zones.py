"""Time zones as they are typed: by their names, or the beginning of a town's."""

from __future__ import annotations

import functools
import zoneinfo

from binder.desktop.words.typed import UnreadableError
from binder.figures.clock import zone_of
from binder.kitchen.wording import _

_MOST_OFFERED = 8
_NO_PLACES = ("Etc/", "posix/", "right/")


@functools.cache
def _known() -> tuple[str, ...]:
    """The zones of the system, without those that name no place."""
    every = zoneinfo.available_timezones()
    return tuple(sorted(name for name in every if "/" in name and not name.startswith(_NO_PLACES)))


def zones_like(text: str) -> list[str]:
    """Zones with a part that begins as typed; none while nothing is typed or a zone is named."""
    wanted = text.strip().casefold().replace(" ", "_")
    if not wanted or text.strip() in _known():
        return []
    found = (name for name in _known() if any(part.startswith(wanted) for part in name.casefold().split("/")))
    return list(found)[:_MOST_OFFERED]


def typed_zone(text: str) -> str:
    """The name of a zone, or nothing where the text is empty."""
    plain = text.strip()
    if not plain or zone_of(plain) is not None:
        return plain
    near = zones_like(plain)
    if len(near) == 1:
        return near[0]
    raise UnreadableError(text, _("write a time zone such as Europe/Berlin."))
