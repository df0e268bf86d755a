"""The shelf of real files: binder files through storage, JSON documents through exchange."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from binder.desktop.backups import Backups
from binder.desktop.shelf import shipped_samples
from binder.kitchen.paths import user_settings_folder

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from binder.desktop.document_bridge import Document
    from binder.kitchen.binder import Binder


class KeptShelf:
    """Storage and exchange are imported when they are first used: a window comes up without them."""

    def __init__(self, backups: Path | None = None) -> None:
        self._backups = Backups(backups or user_settings_folder() / "backups")

    def prepare(self) -> None:
        import binder.exchange.json_document
        import binder.storage.document  # noqa: F401 - loaded for those who open

    def open(self, path: Path) -> Document:
        if path.suffix == ".json":
            from binder.exchange.json_document import read_json

            return self.unkept(read_json(path))
        from binder.storage.document import OpenDocument

        return OpenDocument.open(path)

    def read_damaged(self, path: Path) -> tuple[Document, Sequence[str]]:
        from binder.storage.salvage import read_damaged

        binder, lost = read_damaged(path)
        return self.unkept(binder), lost

    def make(self, path: Path, binder: Binder) -> Document:
        from binder.storage.document import OpenDocument

        return OpenDocument.create(path, binder, replace=True)

    def unkept(self, binder: Binder) -> Document:
        from binder.storage.document import OpenDocument

        return OpenDocument.in_memory(binder)

    def export_json(self, binder: Binder, path: Path) -> None:
        from binder.exchange.json_document import write_json

        write_json(binder, path)

    def back_up(self, document: Document) -> None:
        self._backups.make(document, datetime.now())  # noqa: DTZ005 - the clock on the wall names the file

    def backups(self, path: Path) -> list[Path]:
        return self._backups.of(path)

    def open_backup(self, path: Path) -> Document:
        kept = self.open(path)
        try:
            return self.unkept(kept.binder)
        finally:
            kept.close()

    def samples(self) -> list[Path]:
        return shipped_samples()
