"""A binder from a file of either kind, told by what is in it and not by its name."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.json_document import read_json
from binder.kitchen.errors import BinderError
from binder.kitchen.whole_file import read_start
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from binder.kitchen.binder import Binder

_DATABASE_MAGIC = b"SQLite format 3\x00"
_JSON_STARTS = (b"{", b"\xef\xbb\xbf")
_LOOKED_AT = 4096


class NoBinderError(BinderError):
    """A file that is no binder of any kind."""

    def __init__(self, path: Path) -> None:
        self.path = path
        super().__init__(
            _("“{file}” is neither a binder file nor a binder's JSON document. Choose another file.").format(
                file=path.name
            )
        )


def load_binder(path: Path, *, stored: Callable[[Path], Binder]) -> Binder:
    """The binder in a `.binder` file, which `stored` reads (`storage.binder_file.read_binder`), or in a JSON document.

    Raises UnreadableFileError, NoBinderError, and as `read_json` and `stored`.
    """
    start = read_start(path, _LOOKED_AT)
    if start.startswith(_DATABASE_MAGIC):
        return stored(path)
    if start.lstrip().startswith(_JSON_STARTS) or path.suffix.casefold() == ".json":
        return read_json(path)
    raise NoBinderError(path)
