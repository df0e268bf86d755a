"""What the window remembers from one day to the next: its shape, its appearance and the binders opened last."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QSettings

from binder.desktop.theme import Appearance
from binder.desktop.typeface import BODY_POINTS
from binder.kitchen.paths import user_settings_folder

if TYPE_CHECKING:
    from collections.abc import Mapping

    from PySide6.QtWidgets import QMainWindow

_VERSION = 1
_MOST_RECENT = 9
_POINTS_RANGE = (8.0, 24.0)


class WindowSettings:
    """Settings in an ini file of the user's own folder, or of a folder given."""

    def __init__(self, folder: Path | None = None) -> None:
        path = (folder or user_settings_folder()) / "window.ini"
        self._kept = QSettings(str(path), QSettings.Format.IniFormat)

    @property
    def appearance(self) -> Appearance:
        """Light, dark or as the system."""
        kept = str(self._kept.value("appearance", ""))
        return Appearance(kept) if kept in set(Appearance) else Appearance.SYSTEM

    @appearance.setter
    def appearance(self, appearance: Appearance) -> None:
        self._kept.setValue("appearance", appearance.value)

    @property
    def points(self) -> float:
        """The size of the body's text in points."""
        try:
            kept = float(str(self._kept.value("points", BODY_POINTS)))
        except ValueError:
            return BODY_POINTS
        least, most = _POINTS_RANGE
        return min(max(kept, least), most) if math.isfinite(kept) else BODY_POINTS

    @points.setter
    def points(self, points: float) -> None:
        self._kept.setValue("points", str(points))

    @property
    def checks_folded(self) -> bool:
        """Whether the checks are folded away."""
        return str(self._kept.value("checks_folded", "no")) == "yes"

    @checks_folded.setter
    def checks_folded(self, folded: bool) -> None:
        self._kept.setValue("checks_folded", "yes" if folded else "no")

    @property
    def print_wishes(self) -> dict[str, str]:
        """How cards were printed last, by the names of the fields; nothing where it cannot be read."""
        try:
            kept = json.loads(str(self._kept.value("print_wishes", "{}")))
        except ValueError:
            return {}
        return (
            {str(name): text for name, text in kept.items() if isinstance(text, str)} if isinstance(kept, dict) else {}
        )

    @print_wishes.setter
    def print_wishes(self, wishes: Mapping[str, str]) -> None:
        self._kept.setValue("print_wishes", json.dumps(dict(wishes)))

    @property
    def recent(self) -> list[Path]:
        """The binders opened last, the newest first, those that are still there."""
        kept = str(self._kept.value("recent", ""))
        return [Path(line) for line in kept.split("\n") if line and Path(line).exists()][:_MOST_RECENT]

    def remember(self, path: Path) -> None:
        """Put a binder at the head of the recent ones."""
        full = path.resolve()
        paths = [full, *(other for other in self.recent if other != full)]
        self._kept.setValue("recent", "\n".join(str(one) for one in paths[:_MOST_RECENT]))

    def keep_shape(self, window: QMainWindow) -> None:
        """Remember where and how large a window is."""
        self._kept.setValue("shape", window.saveGeometry())
        self._kept.setValue("version", _VERSION)
        self._kept.sync()

    def restore_shape(self, window: QMainWindow) -> bool:
        """Give a window the shape that was kept; False where none fits."""
        shape = self._kept.value("shape")
        known = str(self._kept.value("version", "")) == str(_VERSION)
        return known and isinstance(shape, QByteArray) and window.restoreGeometry(shape)
