"""Garbage is looked for in the window's own thread only.

Python looks for cycles in whichever thread happens to make an object. Where that is a worker's, it may take apart what
is left of a window there, and Qt ends the program: widgets belong to the thread that made them (seen as a crash of the
cards' layout, in the middle of Python's search). So Python's own search is off while there is a window, and a timer of
the window's thread does what it would have done.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

from binder.kitchen.bulk import set_aside_what_is_new

_MILLISECONDS = 1000
"""Between two looks; each looks through one generation at most, so that the window is not held up."""


class GarbageCollector(QObject):
    """Takes Python's search for cycles into the thread of its parent."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.setInterval(_MILLISECONDS)
        self._timer.timeout.connect(collect_what_is_due)
        self._timer.start()


def collect_what_is_due() -> None:
    """Look through the oldest generation that has had more than its threshold, as Python would.

    What has just been made by the ten thousand is set aside: looking through it would hold the window up.
    """
    set_aside_what_is_new()
    counts, thresholds = gc.get_count(), gc.get_threshold()
    due = (generation for generation in (2, 1, 0) if counts[generation] > thresholds[generation] > 0)
    generation = next(due, None)
    if generation is not None:
        gc.collect(generation)
