"""A presenter of a table: what it shows of a binder and which change an edit of it is. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from binder.figures.missing import Place
from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.sheet.cell import Column, Row
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change


@dataclass(frozen=True)
class Sight:
    """What is looked at: a binder, the shoot chosen, and the record that a part of a page is about."""

    binder: Binder
    shoot: str | None = None
    subject: str | None = None


@dataclass(frozen=True)
class CellName:
    """A cell by the key of its row and the id of its column."""

    row: str
    column: str


@dataclass(frozen=True)
class Remedy:
    """A way out of text that was not understood: other text to try, or a change that settles it."""

    title: str
    text: str | None = None
    change: Change | None = None


class Sheet(Protocol):
    """One table. Rows are named by their keys, columns by their ids."""

    @property
    def name(self) -> str:
        """What the table is called, for those who hear it."""

    @property
    def columns(self) -> tuple[Column, ...]:
        """Its columns from left to right."""

    def columns_for(self, sight: Sight) -> tuple[Column, ...]:
        """The same columns with the heads they have in a sight, where a head names what that chooses."""

    def rows(self, sight: Sight) -> list[Row]:
        """What it shows."""

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        """The change that typing `text` into a cell is. Raises BinderError where it cannot be."""

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        """What typed text is taken to mean, shown while it is typed; empty where that is plain."""

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        """Whole texts that what is typed so far may become, besides the choices of the cell."""

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        """Ways out of the error that `edit` raised."""

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        """The change that takes rows out; None where nothing can be."""

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        """The change that puts a row before another (None: at the end); None where it cannot go there."""

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        """The change that moves a row one place up (-1) or down (1); None where it cannot move."""


class NotEditableError(BinderError):
    """An edit of a cell that only shows a figure."""

    def __init__(self) -> None:
        super().__init__(_("This is worked out from other figures. Change those it comes from."))


class PlainSheet:
    """What most tables share: the same heads always, nothing to explain while typing, nothing to remove or move."""

    @property
    def columns(self) -> tuple[Column, ...]:
        raise NotImplementedError

    def columns_for(self, sight: Sight) -> tuple[Column, ...]:
        return self.columns

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        raise NotEditableError

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        return ""

    def offers(self, sight: Sight, row: str, column: str, text: str) -> Sequence[str]:
        return ()

    def remedies(self, sight: Sight, cell: CellName, text: str, error: BinderError) -> Sequence[Remedy]:
        return ()

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        return None

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        return None

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        return None


def record_of(key: str) -> Place:
    """The record that a row's key names."""
    table, _colon, record = key.partition(":")
    return Place(table, record)
