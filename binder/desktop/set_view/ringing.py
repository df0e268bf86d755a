"""Which timers ring: from the moment a wait is over until someone says that it was heard. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.desktop.set_view.set_sight import Timer

_BETWEEN = timedelta(seconds=10)
"""A timer that nobody has heard rings again after so long."""


@dataclass
class Ringing:
    """Remembers what was heard. A timer that was over before this began to listen does not ring."""

    since: datetime
    heard: set[tuple[str, datetime]] = field(default_factory=set)
    _last: datetime | None = None

    def now(self, timers: Iterable[Timer], now: datetime) -> tuple[Timer, ...]:
        """The timers that ring."""
        over = (timer for timer in timers if self.since <= timer.ends <= now)
        return tuple(timer for timer in over if (timer.key, timer.ends) not in self.heard)

    def is_to_sound(self, ringing: Iterable[Timer], now: datetime) -> bool:
        """Whether the bell is to sound at this moment: at once for a timer that has begun to ring, and now and then."""
        if not tuple(ringing):
            self._last = None
            return False
        if self._last is not None and now - self._last < _BETWEEN:
            return False
        self._last = now
        return True

    def hear(self, ringing: Iterable[Timer]) -> None:
        """Someone has heard them."""
        self.heard |= {(timer.key, timer.ends) for timer in ringing}
