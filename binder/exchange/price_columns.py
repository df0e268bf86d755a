"""Which column of a price list is what: guessed from the headings, and settable by whoever knows better."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from binder.exchange.table_cell import ExactNumber, UnreadableTableError, shown_text
from binder.kitchen.errors import BinderError
from binder.kitchen.units import canonical_unit
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from binder.exchange.table_cell import TableRow

COLUMNS = ("food", "store", "pack size", "unit", "price", "currency", "date", "label")
"""What a column may be. Store, currency, date and label may be missing, and the unit may stand with the size."""

REQUIRED = ("food", "pack size", "price")

_HEADINGS = {
    "food": ("food", "item", "product", "article", "ingredient", "food name", "item name", "product name"),
    "store": ("store", "shop", "market", "supplier", "seller", "vendor"),
    "pack size": ("pack size", "size", "pack", "package", "content", "contents", "quantity"),
    "unit": ("unit", "units", "unit of measure", "uom"),
    "price": ("price", "pack price", "price a pack", "price per pack", "cost"),
    "currency": ("currency",),
    "date": ("date", "price date", "date of the price", "as of", "day"),
    "label": ("label", "description", "variety", "pack label"),
}
"""What people write over each column; from memory."""

_NOTED = re.compile(
    r"^(?P<name>.*?\w)\s*"
    r"(?:[(\[](?P<bracketed>[^()\[\]]*)[)\]]|\s(?:in\s)?(?P<code>[A-Z]{3}|[^\w\s])|\sin\s(?P<word>[\w ]+))$"
)
_LOOKED_AT = 30
_LETTERS = 26


class UnknownColumnError(BinderError):
    """A column that was asked for and is none, or is not there."""

    def __init__(self, asked: str) -> None:
        says = _("“{asked}” is no column of this list: name one by its letter, such as C, or by its heading.")
        super().__init__(says.format(asked=asked[:60]))


@dataclass(frozen=True)
class PriceLayout:
    """Where what stands: for each column its place from 0, and the rows that hold prices.

    `first` is the index of the first of them; `headings` are the cells above them. `doubled` are columns that two
    headings name.
    """

    places: Mapping[str, int]
    headings: tuple[str, ...] = ()
    first: int = 0
    doubled: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def note(self, column: str) -> str:
        """What a heading says of all its column: `EUR` for `Price (EUR)`; empty where it says nothing."""
        return _note_of(self.headings, self.places.get(column))

    @property
    def unit(self) -> str:
        """The unit of sizes that name none, as `Size (g)` says."""
        return canonical_unit(self.note("pack size")) or ""

    @property
    def trouble(self) -> str:
        """Why prices cannot be read from these columns, as the second half of a sentence; empty where they can."""
        missing = [name for name in REQUIRED if name not in self.places and name not in self.doubled]
        if missing:
            says = _(
                "none of its columns is called {missing}; it needs {required}, each with its heading. "
                "Name it so, or say which column it is."
            )
            named = listed((f"“{_(name)}”" for name in missing), joined_by=_("or"))
            return says.format(missing=named, required=listed(_(name) for name in REQUIRED))
        for name, headings in self.doubled.items():
            says = _("it has two columns for the {column}, “{one}” and “{other}”. Take one out, or say which it is.")
            return says.format(column=_(name), one=headings[0], other=headings[1])
        return ""

    def require(self) -> None:
        """Raise UnreadableTableError where prices cannot be read from these columns."""
        if self.trouble:
            raise UnreadableTableError(self.trouble)


def price_layout(rows: Sequence[TableRow], chosen: Mapping[str, int | None] | None = None) -> PriceLayout:
    """The layout of a table: guessed from its headings, but for the columns `chosen` by place (None: not in the list).

    Headings are looked for in the first rows; the rows above them are titles, and left out.
    """
    chosen = chosen or {}
    at = _heading_at(rows, chosen)
    headings = rows[at].shown if at is not None else ()
    found = {name: places for name, places in _guessed(headings).items() if name not in chosen}
    free = {name: [one for one in places if one not in chosen.values()] for name, places in found.items()}
    places = {name: place for name, place in chosen.items() if place is not None}
    places |= {name: some[0] for name, some in free.items() if len(some) == 1}
    return PriceLayout(
        places=places,
        headings=headings,
        first=0 if at is None else at + 1,
        doubled={name: tuple(headings[one] for one in some) for name, some in free.items() if len(some) > 1},
    )


def _heading_at(rows: Sequence[TableRow], chosen: Mapping[str, int | None]) -> int | None:
    """The row of headings; None where the columns are chosen and the first row has a price already."""
    for index, row in enumerate(rows[:_LOOKED_AT]):
        if set(REQUIRED) <= _guessed(row.shown).keys():
            return index
    if rows and chosen.get("price") is not None and _has_number(rows[0], chosen["price"]):
        return None
    return 0 if rows else None


def _has_number(row: TableRow, place: int | None) -> bool:
    cell = row[place]
    return isinstance(cell, ExactNumber) or any(sign.isdigit() for sign in shown_text(cell))


def guessed_columns(headings: Sequence[str]) -> dict[str, int]:
    """The columns that headings name, each by its place from 0; the first where two have one name."""
    return {name: places[0] for name, places in _guessed(headings).items()}


def _guessed(headings: Sequence[str]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for place, heading in enumerate(headings):
        name = _column_of(heading)
        if name:
            found.setdefault(name, []).append(place)
    return found


def _column_of(heading: str) -> str:
    """The column that a heading means, however it is spaced; empty for one of no use here."""
    known = _names()
    bare = known.get(_bare(heading))
    if bare or not heading:
        return bare or ""
    name, note = _name_and_note(heading)
    found = known.get(_bare(name), "")
    return "" if found == "price" and _is_a_rate(note) else found


def _is_a_rate(note: str) -> bool:
    """Whether a price is said to be one a kilogram, in thousands or the like, and so not the price of a pack."""
    folded = note.casefold()
    if folded in {"per pack", "a pack", "/pack"}:
        return False
    in_unit = canonical_unit(note) not in {None, "package"}
    return folded.startswith(("per ", "/", "a ")) or any(sign.isdigit() for sign in note) or in_unit


def _names() -> dict[str, str]:
    """Each heading, in English and in the language chosen, and the column it means."""
    return {_bare(_(name)): name for name in COLUMNS} | _english_names()


@functools.cache
def _english_names() -> dict[str, str]:
    return {_bare(heading): name for name, headings in _HEADINGS.items() for heading in headings}


def _bare(heading: str) -> str:
    return re.sub(r"[\W_]+", "", heading).casefold()


def _name_and_note(heading: str) -> tuple[str, str]:
    """`Price (EUR)` as `Price` and `EUR`; a heading without a note as it stands."""
    noted = _NOTED.match(heading)
    return (
        (noted["name"], (noted["bracketed"] or noted["code"] or noted["word"] or "").strip())
        if noted
        else (heading, "")
    )


def _note_of(headings: Sequence[str], place: int | None) -> str:
    return _name_and_note(headings[place])[1] if place is not None and place < len(headings) else ""


def column_letter(place: int) -> str:
    """What a spreadsheet calls the column at a place from 0: A, B, ... Z, AA."""
    letters = ""
    while place >= 0:
        letters = chr(ord("A") + place % _LETTERS) + letters
        place = place // _LETTERS - 1
    return letters


def column_place(asked: str, headings: Sequence[str] = ()) -> int:
    """The place from 0 of a column by its letter or by its heading. Raises UnknownColumnError."""
    if re.fullmatch(r"[A-Za-z]{1,2}", asked):
        place = 0
        for letter in asked.upper():
            place = place * _LETTERS + ord(letter) - ord("A") + 1
        return place - 1
    for place, heading in enumerate(headings):
        if asked and _bare(heading) == _bare(asked):
            return place
    raise UnknownColumnError(asked)
