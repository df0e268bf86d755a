"""What can be read of a damaged binder file, into a new file, with word of what was lost.

The damaged file is not touched. Rows that SQLite can still reach are taken where they are whole records. What is
missing of a table is looked up in the journal, which has each record as it last was. Then what belongs to something
lost is left out, until the rest hangs together.
"""

from __future__ import annotations

import tempfile
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import read_whole
from binder.kitchen.wording import _, ngettext
from binder.storage.contents import Contents
from binder.storage.file_errors import BusyFileError
from binder.storage.file_header import is_open_here
from binder.storage.journal import Entry, entry_of_row
from binder.storage.new_file import create_file
from binder.storage.raw_rows import RawTable, mended_header, raw_tables
from binder.storage.rows import record_of_row
from binder.storage.schema import JOURNAL, SEAL, TABLES
from binder.storage.seal import seal_of
from binder.storage.wholeness import made_whole

if TYPE_CHECKING:
    from collections.abc import Iterable

    from binder.kitchen.binder import Binder
    from binder.kitchen.record import Record

_MOST_BYTES = 1024**3
_UNREADABLE = "\ufffd"

Key = tuple[str, str]
"""A record by table and id."""


class NothingToSalvageError(BinderError):
    """A file of which no record can be read."""

    def __init__(self, path: Path) -> None:
        self.path = path
        super().__init__(_("Nothing can be read of “{file}”. Open a backup of it.").format(file=path.name))


@dataclass
class _Found:
    """What has been gathered so far, and what is known to be lost."""

    records: dict[Key, Record] = field(default_factory=dict)
    lost: list[str] = field(default_factory=list)


def salvage(path: Path, into: Path, *, replace: bool = False) -> tuple[str, ...]:
    """Save what can be read of `path` into a new file, without its history. Returns what was lost, in words.

    Raises UnreadableFileError, BusyFileError where the file is open here, NothingToSalvageError, and as `create_file`.
    """
    binder, lost = read_damaged(path)
    create_file(into, Contents(binder), replace=replace)
    return lost


def read_damaged(path: Path) -> tuple[Binder, tuple[str, ...]]:
    """What can be read of a file, and what was lost. Raises as `salvage`."""
    tables = _raw_copy(path)
    found = _Found()
    for name in TABLES:
        _take_table(name, tables[name], found)
    entries = list(_entries(tables["journal"]))
    _take_from_journal(tables, entries, found)
    if not found.records:
        raise NothingToSalvageError(path)
    _doubt(tables["seal"], entries, found)
    binder = made_whole(found.records.values(), found.lost)
    if entries:
        found.lost.append(_("the history of changes"))
    return binder, tuple(found.lost)


def _raw_copy(path: Path) -> dict[str, RawTable]:
    """The rows of a copy, so that the file itself stays as it is; its journal goes along, for SQLite to play back."""
    if is_open_here(path):
        raise BusyFileError(path)
    content = read_whole(path, most=_MOST_BYTES)
    journal = path.with_name(f"{path.name}-journal")
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy"
        copy.write_bytes(mended_header(content))
        if journal.is_file():
            copy.with_name("copy-journal").write_bytes(read_whole(journal, most=_MOST_BYTES))
        return raw_tables(copy, {**TABLES, "journal": JOURNAL, "seal": SEAL})


def _take_table(name: str, table: RawTable, found: _Found) -> None:
    refused = 0
    for row in table.rows.values():
        try:
            record = record_of_row(name, row)
        except (BinderError, TypeError, ValueError):
            refused += 1
            continue
        found.records[(name, record.id)] = record
        if any(_UNREADABLE in value for value in row.values() if isinstance(value, str)):
            found.lost.append(_("a part of the text of {record}").format(record=record.called))
    if refused:
        table.whole = False
        lost = ngettext("{count} of the {table}", "{count} of the {table}", refused)
        found.lost.append(lost.format(count=refused, table=_words(name)))
    elif not table.whole:
        found.lost.append(_("perhaps some of the {table}").format(table=_words(name)))


def _words(table: str) -> str:
    return table.replace("_", " ")


def _entries(table: RawTable) -> Iterable[Entry]:
    for _number, row in sorted(table.rows.items()):
        try:
            yield entry_of_row(row)
        except (TypeError, ValueError):
            table.whole = False


def _take_from_journal(tables: dict[str, RawTable], entries: list[Entry], found: _Found) -> None:
    """Fill the gaps of tables that are not whole with records as the journal last has them."""
    last: dict[Key, Record | None] = {}
    for entry in entries:
        try:
            change = entry.change()
        except BinderError:
            continue
        last |= {(edit.table, edit.id): edit.after for edit in change.edits}
    for key, record in last.items():
        if record is not None and key not in found.records and not tables[key[0]].whole:
            found.records[key] = record
            if not tables["journal"].whole:
                found.lost.append(_("perhaps the latest changes of {record}").format(record=record.called))


def _doubt(seal: RawTable, entries: list[Entry], found: _Found) -> None:
    """Where nothing seems lost and yet the seal is broken, some value is not what was written."""
    sealed = [row.get("sum") for row in seal.rows.values()]
    if not found.lost and sealed != [seal_of(found.records.values(), entries)]:
        found.lost.append(_("the certainty that every value is what was written; look them over"))
