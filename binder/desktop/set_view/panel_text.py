"""What a panel on the set says: a heading and lines. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass

from binder.desktop.sheet.cell import Mark


@dataclass(frozen=True)
class PanelLine:
    """One line; `solid` ones stand on a ground of ink: they ring."""

    text: str
    solid: bool = False
    mark: Mark = Mark.NONE


@dataclass(frozen=True)
class PanelText:
    """What a panel says. `hint` is the key that presses it; empty where there is nothing to press."""

    heading: str
    lines: tuple[PanelLine, ...] = ()
    hint: str = ""
