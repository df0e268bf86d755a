"""Text as it is written down: cleaned of what no page shows, Arabic letters joined, right-to-left words turned round.

A small part of the Unicode Bidirectional Algorithm (UAX #9), for lines that run left to right: a stretch from one
right-to-left letter to another is set from right to left, the numbers in it stay as they are.
"""

from __future__ import annotations

import functools
import re
import unicodedata
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

T = TypeVar("T")

UNBROKEN_SPACE = "\u00a0"

_UNBROKEN_SPACES = re.compile("[\u2007\u202f\u00a0]")
_DOTTED_CIRCLE = "\u25cc"
_MARKS = frozenset({"Mn", "Me"})
"""The categories of signs that take no room of their own: accents, and rings around letters."""

_LINE_ENDS = re.compile("\r\n|[\r\x0b\x0c\x85\u2028\u2029]")
_RIGHT_TO_LEFT = {"R", "AL"}
_NUMBERS = {"EN", "AN"}
_MIRRORED = dict(zip("()[]{}<>«»‹›", ")(][}{><»«›‹", strict=True))
_CLOSING = frozenset(")]}>»›")
_PLAIN_ENOUGH = re.compile("[\n\x20-\x7e\u00a0-\u02ff\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2150-\u215f]*")
"""Signs that need none of what this module does."""


@functools.lru_cache(maxsize=16384)
def clean(text: str) -> str:
    """A text without what has no picture: controls, direction marks, selectors. Spaces are plain or unbroken."""
    if _PLAIN_ENOUGH.fullmatch(text) and "\u00ad" not in text:
        return text
    one_kind = _UNBROKEN_SPACES.sub(UNBROKEN_SPACE, _LINE_ENDS.sub("\n", unicodedata.normalize("NFC", text)))
    return joined_letters(_on_bases("".join(_shown(sign) for sign in one_kind)))


def _on_bases(text: str) -> str:
    """Marks that begin a word, on a dotted circle: else they would be drawn over what stands before the text.

    So the Unicode Standard, 5.13, has a mark without a letter shown (from memory).
    """
    found: list[str] = []
    for sign in text:
        if unicodedata.category(sign) in _MARKS and (not found or found[-1] in " \n"):
            found.append(_DOTTED_CIRCLE)
        found.append(sign)
    return "".join(found)


def _shown(sign: str) -> str:
    category = unicodedata.category(sign)
    if sign in {"\n", UNBROKEN_SPACE}:
        return sign
    if category == "Zs" or sign == "\t":
        return " "
    invisible = category in {"Cc", "Cf", "Cs"} or "\ufe00" <= sign <= "\ufe0f" or "\U000e0100" <= sign <= "\U000e01ef"
    return "" if invisible else sign


@functools.cache
def _forms() -> Mapping[tuple[str, str], str]:
    """The presentation form of each Arabic letter, by letter and place: `isolated`, `initial`, `medial`, `final`."""
    found = {}
    for code in range(0xFE70, 0xFEFD):
        place, _space, letters = unicodedata.decomposition(chr(code)).partition(" ")
        if letters and place in {"<isolated>", "<initial>", "<medial>", "<final>"}:
            found["".join(chr(int(letter, 16)) for letter in letters.split()), place[1:-1]] = chr(code)
    return found


def joined_letters(text: str) -> str:
    """Arabic letters in the form that their neighbours ask for, as faces without their own shaping have them."""
    if not any("\u0600" <= sign <= "\u06ff" for sign in text):
        return text
    forms = _forms()
    pairs = {letters for letters, _place in forms if len(letters) == 2 and letters[0] == "\u0644"}  # noqa: PLR2004
    letters = re.findall("|".join([*(re.escape(pair) for pair in sorted(pairs)), "."]), text, re.DOTALL)
    return "".join(_joined(letters, at, forms) for at in range(len(letters)))


def _joined(letters: Sequence[str], at: int, forms: Mapping[tuple[str, str], str]) -> str:
    letter = letters[at]
    before = (_neighbour(letters, at, -1), "initial") in forms and (letter, "final") in forms
    after = (letter, "initial") in forms and (_neighbour(letters, at, 1), "final") in forms
    place = {(True, True): "medial", (True, False): "final", (False, True): "initial"}.get((before, after), "isolated")
    return forms.get((letter, place), letter)


def _neighbour(letters: Sequence[str], at: int, step: int) -> str:
    """The next letter on one side, past the vowel signs that sit on letters; nothing at the end."""
    at += step
    while 0 <= at < len(letters) and unicodedata.category(letters[at][0]) == "Mn":
        at += step
    return letters[at] if 0 <= at < len(letters) else ""


def turns(text: str) -> bool:
    """Whether any of a text is set from right to left."""
    return not text.isascii() and any(unicodedata.bidirectional(sign) in _RIGHT_TO_LEFT for sign in text)


def in_setting_order(signs: Sequence[T], letter: Callable[[T], str], mirrored: Callable[[T, str], T]) -> list[T]:
    """The signs of one line from left to right. `letter` gives a sign's character, `mirrored` the sign with another."""
    letters = [letter(sign) for sign in signs]
    kinds = _kinds(letters)
    ordered: list[T] = []
    at = 0
    while at < len(signs):
        end = _past_brackets(letters, at, _end_of_stretch(kinds, at))
        if end > at:
            stretch = [mirrored(sign, _MIRRORED.get(letter(sign), letter(sign))) for sign in signs[at:end]]
            ordered += _turned(stretch, kinds[at:end])
        else:
            ordered.append(signs[at])
            end = at + 1
        at = end
    return ordered


def _kinds(letters: Sequence[str]) -> list[str]:
    """The direction of each sign; a point or a comma within a number is part of the number."""
    kinds = [unicodedata.bidirectional(letter) for letter in letters]
    for at in range(1, len(kinds) - 1):
        if kinds[at] in {"CS", "ES"} and kinds[at - 1] == kinds[at + 1] == "EN":
            kinds[at] = "EN"
    return kinds


def _end_of_stretch(kinds: Sequence[str], start: int) -> int:
    """Where the right-to-left stretch that begins at `start` ends; `start` itself where none begins there."""
    if kinds[start] not in _RIGHT_TO_LEFT:
        return start
    end = start
    for at in range(start, len(kinds)):
        if kinds[at] == "L":
            break
        if kinds[at] in _RIGHT_TO_LEFT or kinds[at] in _NUMBERS:
            end = at + 1
    return end


def _past_brackets(letters: Sequence[str], start: int, end: int) -> int:
    """A stretch takes in the bracket that closes one opened within it."""
    while end < len(letters) and letters[end] in _CLOSING and _MIRRORED[letters[end]] in letters[start:end]:
        end += 1
    return end


def _turned(stretch: Sequence[T], kinds: Sequence[str]) -> list[T]:
    """A stretch from its end to its beginning, each number in it left as it is."""
    turned: list[T] = []
    number: list[T] = []
    for sign, kind in zip(reversed(stretch), reversed(kinds), strict=True):
        if kind in _NUMBERS:
            number.insert(0, sign)
            continue
        turned += [*number, sign]
        number = []
    return turned + number
