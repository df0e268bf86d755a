"""What a table on screen is made of: columns, rows and cells, in plain Python, as presenters give them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.figures.missing import Place


class Tone(StrEnum):
    """How loudly a cell speaks."""

    INK = "ink"
    QUIET = "quiet"
    LINK = "accent"
    WARNING = "warning"
    STOP = "stop"


class Mark(StrEnum):
    """A state as a shape: open ring, solid wedge, dashed ring, short broken bar, and none."""

    NONE = ""
    WITHIN = "within"
    OVER = "over"
    UNKNOWN = "not known"
    SHORT = "short"
    WARN = "wants a look"
    NOTE = "worth knowing"


class Align(StrEnum):
    """How a column is set: words at the left, numbers at the right, numbers with a unit on their decimal mark."""

    LEFT = "left"
    RIGHT = "right"
    DECIMAL = "decimal"


class Size(StrEnum):
    """How large a cell's text is set."""

    SMALL = "small"
    BODY = "body"
    STRONG = "strong"
    HEADING = "heading"
    TITLE = "title"


@dataclass(frozen=True)
class Cell:
    """One cell. `unit` is set smaller after the text, `under` on a second line, `label` before it; all are quiet.

    `edit` is what its editor begins with, None where it is not edited; `placeholder` stands in an empty cell; `choices`
    are offered while it is edited. A text that `folds` goes on below where it is too long, in the middle of its row,
    which is as high as that takes. `leads_to` makes the text a link. `picture` is drawn by the painter of its type.
    """

    text: str = ""
    unit: str = ""
    under: str = ""
    label: str = ""
    edit: str | None = None
    placeholder: str = ""
    choices: tuple[str, ...] = ()
    paragraph: bool = False
    folds: bool = False
    tone: Tone = Tone.INK
    size: Size = Size.BODY
    mark: Mark = Mark.NONE
    tip: str = ""
    leads_to: Place | None = None
    picture: object = None
    spoken: str = ""

    @property
    def says(self) -> str:
        """What a screen reader says."""
        if self.spoken:
            return self.spoken
        shown = f"{self.text} {self.unit}".strip() or self.placeholder
        state = _(self.mark.value) if self.mark else ""
        return ", ".join(part for part in (self.label, shown, state, self.under) if part)


NOTHING = Cell()
"""An empty cell."""


@dataclass(frozen=True)
class Column:
    """A column: `characters` wide at least, in digits of the body, and taking `stretch` parts of what is left over.

    A decimal column keeps room for so many `decimals` and, after them, for a unit as wide as `unit_room`.
    """

    id: str
    title: str
    characters: float = 8.0
    stretch: int = 0
    align: Align = Align.LEFT
    decimals: int = 0
    unit_room: str = ""
    tip: str = ""


@dataclass(frozen=True)
class Row:
    """A row by its key. `spans` names cells that reach over their right neighbours: (column, how many columns).

    `lines` is the height in lines of text where no cell wraps; `gap` adds space above, in steps; `rule` a line below.
    `adds` marks the row in which a new record is begun.
    """

    key: str
    cells: tuple[Cell, ...]
    place: Place | None = None
    spans: tuple[tuple[int, int], ...] = ()
    lines: float = 1.6
    gap: float = 0.0
    rule: bool = True
    wraps: bool = False
    adds: bool = False


def key_of(place: Place) -> str:
    """The key of the row that shows a record."""
    return f"{place.table}:{place.id}"
