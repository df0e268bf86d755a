"""Whether what a file holds hangs together: tables, links, records, what must hold between them, and the seal."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING

from sqlalchemy.exc import DBAPIError

from binder.kitchen.bulk import uncollected
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import require_all_whole
from binder.kitchen.wording import _, listed
from binder.storage.contents import Contents, read_contents, seal_holds
from binder.storage.file_errors import DamagedFileError, FileTroubleError, in_sentences
from binder.storage.file_facts import broken_links
from binder.storage.structure import strange_things, structure_of

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    import sqlalchemy as sa


@contextmanager
def damage_named(path: Path) -> Iterator[None]:
    """Whatever goes wrong while a file is read that is not yet trusted is its damage, not a fault of the program."""
    try:
        with in_sentences(path):
            yield
    except FileTroubleError:
        raise
    except (BinderError, DBAPIError, KeyError, TypeError, ValueError) as error:
        raise DamagedFileError(path, str(getattr(error, "orig", error)).rstrip(".")) from error


def checked_contents(connection: sa.Connection, path: Path) -> Contents:
    """What a file holds, within a transaction and `damage_named`, if it hangs together."""
    strange = strange_things(structure_of(connection))
    if strange:
        raise DamagedFileError(
            path, _("its tables are not those of a binder: {tables}").format(tables=listed(strange[:3]))
        )
    broken = broken_links(connection)
    if broken:
        raise DamagedFileError(path, _("a link in {table} leads nowhere").format(table=broken[0]))
    with uncollected():
        contents = read_contents(connection)
        require_all_whole(contents.binder)
        if not seal_holds(connection, contents):
            raise DamagedFileError(path, _("its records do not add up to their seal"))
        return contents
