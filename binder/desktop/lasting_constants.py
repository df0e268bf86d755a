"""Keeps None, True and False from being used up by PySide6 6.12 on Python before 3.12.

Measured with PySide6 6.12.0 on CPython 3.11: each emitted signal takes one reference of True that it does not own,
and each slot, each null pointer and each `data()` that gives None takes one of None. From Python 3.12 on these objects
are immortal (PEP 683) and nothing happens; before, the interpreter aborts with "deallocating None" after some thousands
of signals. So they are given here what 3.12 gives them: more references than can ever be taken.
"""

from __future__ import annotations

import sys

_ENOUGH = 1 << 40
"""At a million signals a second this lasts for twelve days."""


def keep_constants() -> None:
    """Give None, True and False references that nobody can use up. Does nothing where they are immortal already."""
    if sys.version_info >= (3, 12) or sys.implementation.name != "cpython":
        return
    import ctypes

    for constant in (None, True, False):
        if sys.getrefcount(constant) < _ENOUGH:
            ctypes.c_ssize_t.from_address(id(constant)).value += _ENOUGH
