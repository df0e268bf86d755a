"""A line as a cook types it: `1 1/2 cups chopped onion` becomes amount, unit, food and preparation."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.kitchen.amount import Amount, begins_like_an_amount, leading_amount
from binder.kitchen.amount_text import NumberStyle, amount_text
from binder.kitchen.errors import BinderError
from binder.kitchen.name_book import Known, NameBook, singular_words, words_of
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.kitchen.recipe import Line

LONGEST_LINE = 1000
"""Characters; a line longer than this is a paragraph pasted in the wrong place."""


@dataclass(frozen=True)
class Understood:
    """What a typed line was taken to mean."""

    amount: Amount
    source: Known
    preparation: str = ""
    to_taste: bool = False
    garnish: bool = False
    note: str = ""

    def says(self, style: NumberStyle | None = None) -> str:
        """What was understood, for the person to see: `1½ cups · onion · chopped`."""
        marks = [_("to taste")] if self.to_taste else []
        marks += [_("garnish")] if self.garnish else []
        parts = [amount_text(self.amount, style), self.source.name, self.preparation, self.note, *marks]
        return " · ".join(part for part in parts if part)


class UnknownFoodError(BinderError):
    """A line whose food or recipe no one knows; `name` is what it seems to be called, `nearest` are names like it."""

    def __init__(self, text: str, name: str, nearest: list[str]) -> None:
        self.text, self.name, self.nearest = text, name, nearest
        near = _(" The nearest are {nearest}.").format(nearest=listed(nearest, joined_by=_("or"))) if nearest else ""
        super().__init__(
            _("No food or recipe called “{name}” is known.{near} Correct the name or add it to the larder.").format(
                name=name[:80], near=near
            )
        )


class UnclearTypedLineError(BinderError):
    """A typed line that cannot be one line."""

    def __init__(self, text: str, why: str) -> None:
        super().__init__(_("“{text}” cannot be one line: {why}").format(text=text[:60], why=why))


_TO_TASTE = re.compile(r"[,;]?\s*\b(?:to taste|as needed|as required)\b", re.IGNORECASE)
_GARNISH = re.compile(
    r"[,;]?\s*\b(?:(?:for|to|as)(?:\s+an?|\s+the)?\s+garnish(?:ing)?|garnish|to serve|for serving)\b", re.IGNORECASE
)
_PART = re.compile(
    r"^(?:the\s+)?(?P<how>(?:finely\s+)?(?:grated\s+)?)(?P<part>juice|zest|rind|peel)\s+of\s+(?P<thing>.+)$",
    re.IGNORECASE | re.DOTALL,
)
_NOTE = re.compile(r"\((?P<note>[^()]*)\)")
_JOINING = {"and", "or", "&"}


def understand_line(
    text: str, book: NameBook, *, pieces: frozenset[str] = frozenset(), decimal_comma: bool = False
) -> Understood:
    """What a typed line means. Raises UnknownFoodError, UnclearTypedLineError or the errors of amounts and units."""
    if len(text) > LONGEST_LINE:
        raise UnclearTypedLineError(text, _("it is longer than {most} characters. Split it.").format(most=LONGEST_LINE))
    said = _part_named_last(" ".join(text.split()))
    amount, rest = _amount_and_rest(said, book, pieces, decimal_comma=decimal_comma)
    rest, to_taste = _taken(_TO_TASTE, rest)
    rest, garnish = _taken(_GARNISH, rest)
    notes = [found["note"].strip() for found in _NOTE.finditer(rest)]
    source, preparation = _source_and_preparation(text, _NOTE.sub(" ", rest), book)
    if not amount.given and not to_taste and not garnish:
        to_taste = True
    return Understood(amount, source, preparation, to_taste, garnish, "; ".join(note for note in notes if note))


def _part_named_last(text: str) -> str:
    """`juice of 1 lemon` as `1 lemon juice`."""
    found = _PART.match(text)
    if found is None:
        return text
    thing, _comma, preparation = found["thing"].partition(",")
    said = (f"{thing} {found['part']}", found["how"].strip(), preparation.strip())
    return ", ".join(words for words in said if words)


def _amount_and_rest(text: str, book: NameBook, pieces: frozenset[str], *, decimal_comma: bool) -> tuple[Amount, str]:
    """The amount and what follows; a word that is a unit and begins a name (`1 whole chicken`) is left to the name."""
    amount, rest = leading_amount(text, pieces=pieces, decimal_comma=decimal_comma)
    if amount.unit and not amount.unit.startswith("(") and rest:
        whole = text[: len(text) - len(rest)].rstrip()
        word = whole.split()[-1]
        start, end = _best_run(words_of(f"{word} {rest}"), book)
        if start == 0 and end > 1 and end - start > _length_of_best(rest, book):
            return Amount(amount.low, amount.high, ""), f"{word} {rest}"
    return amount, rest


def _length_of_best(rest: str, book: NameBook) -> int:
    start, end = _best_run(words_of(rest), book)
    return end - start


def _taken(pattern: re.Pattern[str], text: str) -> tuple[str, bool]:
    shorter = pattern.sub("", text)
    return shorter, shorter != text


def _source_and_preparation(whole: str, rest: str, book: NameBook) -> tuple[Known, str]:
    words = words_of(rest)
    start, end = _best_run(words, book)
    if end == start:
        name = " ".join(words) or whole.strip()
        raise UnknownFoodError(whole, name, book.nearest(rest.split(",", maxsplit=1)[0]))
    source = book.known[singular_words(" ".join(words[start:end]))]
    before, after = words[:start], words[end:]
    if any(begins_like_an_amount(word) for word in before):
        raise UnclearTypedLineError(whole, _("write the amount first, then the food."))
    _refuse_second_food(whole, [before, after], book)
    return source, _preparation(rest, words, start, end)


def _best_run(words: list[str], book: NameBook) -> tuple[int, int]:
    """Where the longest known name stands, the last of several."""
    for length in range(min(len(words), book.longest), 0, -1):
        for start in range(len(words) - length, -1, -1):
            if singular_words(" ".join(words[start : start + length])) in book.known:
                return start, start + length
    return 0, 0


def _refuse_second_food(whole: str, groups: list[list[str]], book: NameBook) -> None:
    for words in groups:
        joined = _JOINING & {words[0].casefold(), words[-1].casefold()} if words else set()
        if joined and _best_run(words, book) != (0, 0):
            raise UnclearTypedLineError(whole, _("it names two foods. Give each a line of its own."))


def _preparation(rest: str, words: list[str], start: int, end: int) -> str:
    """The words around the name, those before and those after parted by a comma, as they were typed."""
    positions = []
    at = 0
    for word in words:
        at = rest.index(word, at)
        positions.append((at, at + len(word)))
        at += len(word)
    before = rest[: positions[start][0]].strip(" ,;.")
    after = rest[positions[end - 1][1] :].strip(" ,;.")
    return ", ".join(" ".join(part.split()) for part in (before, after) if part)


def typed_line(line: Line, name: str, style: NumberStyle | None = None) -> str:
    """A line written out so that typing it again means the same: `1½ cups onion, chopped`."""
    amount = amount_text(Amount(line.low, line.high, line.unit), style)
    text = " ".join(part for part in (amount, name) if part)
    note = f" ({line.note})" if line.note else ""
    marks = [_("to taste")] if line.to_taste else []
    marks += [_("for garnish")] if line.garnish else []
    return ", ".join([text + note, *(part for part in (line.preparation, *marks) if part)])
