"""Where a long word may be parted, in the language it is written in: Liang's patterns, from the tables of pyphen.

The tables are read here, not by pyphen itself: it takes most of a second over the German one, this a few hundredths,
because a pattern is only taken apart when a word meets it.
"""

from __future__ import annotations

import functools
import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

_LEAST_BEFORE, _LEAST_AFTER = 4, 4
"""Letters that stay before and after a hyphen. Common practice, no source."""

_LONGEST_WORD = 60
"""A longer word is none of any language, and is cut where the line ends."""

_DIGITS = b"0123456789"
_POINTS = re.compile(r"(\d?)(\D?)")


@functools.lru_cache(maxsize=16384)
def parting_points(word: str, language: str) -> tuple[int, ...]:
    """After how many letters `word` may be parted; nowhere in a language without patterns, or with no language."""
    if not language or not _LEAST_BEFORE + _LEAST_AFTER <= len(word) <= _LONGEST_WORD or not word.isalpha():
        return ()
    patterns, longest = _patterns(language)
    lower = word.lower()
    if not patterns or len(lower) != len(word):  # a letter whose small form is two letters
        return ()
    values = _values(f".{lower}.", patterns, longest)
    return tuple(at for at in range(_LEAST_BEFORE, len(word) - _LEAST_AFTER + 1) if values[at + 1] % 2)


def _values(pointed: str, patterns: Mapping[str, str], longest: int) -> list[int]:
    """The strongest value that any pattern gives each place in a word between two points."""
    values = [0] * (len(pointed) + 1)
    for start in range(len(pointed) - 1):
        for end in range(start + 1, min(start + longest, len(pointed)) + 1):
            found = patterns.get(pointed[start:end])
            if found is not None:
                for at, value in enumerate(_taken_apart(found)):
                    values[start + at] = max(values[start + at], value)
    return values


@functools.lru_cache(maxsize=4096)
def _taken_apart(pattern: str) -> tuple[int, ...]:
    """The value before each letter of a pattern and after the last; where letters would change nothing is parted."""
    standard, changes, _how = pattern.partition("/")
    values = [int(digit or "0") for digit, _letter in _POINTS.findall(standard)]
    return tuple(value + value % 2 for value in values) if changes else tuple(values)


@functools.cache
def _patterns(language: str) -> tuple[Mapping[str, str], int]:
    """The patterns of a language by their letters, and how many letters the longest has; none where there are none."""
    import pyphen

    known = pyphen.language_fallback(language)
    if known is None:
        return {}, 0
    encoding, _end, lines = pyphen.LANGUAGES[known].read_bytes().partition(b"\n")
    name = {"microsoft-cp1251": "cp1251"}.get(encoding.decode("ascii").strip().casefold(), encoding.decode().strip())
    whole = lines.decode(name).split("\n")
    letters = lines.translate(None, _DIGITS).decode(name).split("\n")
    patterns = {
        key.partition("/")[0].strip(): pattern.strip()
        for key, pattern in zip(letters, whole, strict=True)
        if not key.startswith(("%", "#"))
    }
    return patterns, max((len(key) for key in patterns), default=0)
