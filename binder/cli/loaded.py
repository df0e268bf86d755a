"""The binder in the file that a command is given. A database is only reached for where the file is one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.exchange.loading import load_binder

if TYPE_CHECKING:
    from pathlib import Path

    from binder.kitchen.binder import Binder


def loaded(file: Path) -> Binder:
    """The binder in a `.binder` file or a JSON document; the file stays as it is. Raises the errors of loading."""
    return load_binder(file, stored=_stored)


def _stored(file: Path) -> Binder:
    from binder.storage.binder_file import read_binder

    return read_binder(file)
