"""Backups of binder files: one a day, made when the binder is opened, the last few kept in the user's own folder."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from binder.desktop.document_bridge import Document

KEPT = 9
"""So many days back; older backups go."""

_NAMED = "%Y-%m-%d %H.%M"


class Backups:
    """The backups in one folder, each binder's in a folder of its own, named after its file and where that lies."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def of(self, path: Path) -> list[Path]:
        """The backups of a binder file, the newest first."""
        return sorted(self._place(path).glob("*.binder"), reverse=True)

    def make(self, document: Document, now: datetime) -> Path | None:
        """Back a document up unless it has been today; gives the file written. Raises the errors of storage."""
        if document.path is None:
            return None
        before = self.of(document.path)
        if any(one.stem.startswith(f"{now:%Y-%m-%d}") for one in before):
            return None
        place = self._place(document.path)
        place.mkdir(parents=True, exist_ok=True)
        made = place / f"{now.strftime(_NAMED)}.binder"
        document.save_copy_as(made)
        for old in self.of(document.path)[KEPT:]:
            old.unlink()
        return made

    def _place(self, path: Path) -> Path:
        full = path.resolve()
        return self._folder / f"{full.stem[:60]}-{hashlib.sha256(str(full).encode()).hexdigest()[:10]}"
