"""The colours of the window: two sets of tokens, light and dark, and the palettes made of them.

Views take colours from here only, by `tokens_for`. Contrast of every pair that meets on screen is computed by a test.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtGui import QColor, QPalette

_MIDDLE_LIGHTNESS = 128


class Appearance(StrEnum):
    """What the user chose: paper, chalkboard, or whatever the system says."""

    LIGHT = "light"
    DARK = "dark"
    SYSTEM = "system"


@dataclass(frozen=True)
class Tokens:
    """Colours by what they are for, as #RRGGBB. `ground` lies behind, `raised` is the page, `tint` a selected row."""

    name: str
    ground: str
    raised: str
    line: str
    edge: str
    ink: str
    quiet: str
    faint: str
    accent: str
    on_accent: str
    tint: str
    warning: str
    stop: str

    def colour(self, token: str) -> QColor:
        """One token as Qt takes it."""
        return QColor(getattr(self, token))


LIGHT = Tokens(
    name="light",
    ground="#FAF8F4",
    raised="#FFFFFF",
    line="#D9D3C7",
    edge="#8B8577",
    ink="#22252A",
    quiet="#5A5F67",
    faint="#ECE7DD",
    accent="#1F5E63",
    on_accent="#FFFFFF",
    tint="#E6F0EF",
    warning="#8A5A00",
    stop="#9E2A2B",
)
DARK = Tokens(
    name="dark",
    ground="#1B1C1E",
    raised="#25272A",
    line="#3C4046",
    edge="#868C95",
    ink="#ECE8E1",
    quiet="#A9AEB6",
    faint="#34373C",
    accent="#7CC4C8",
    on_accent="#14201F",
    tint="#23383B",
    warning="#E6B45C",
    stop="#F0908C",
)


def tokens_for(palette: QPalette) -> Tokens:
    """The tokens a widget with this palette paints with."""
    lightness = palette.color(QPalette.ColorRole.Window).lightness()
    return LIGHT if lightness >= _MIDDLE_LIGHTNESS else DARK


def palette_of(tokens: Tokens) -> QPalette:
    """The Qt palette made of the tokens."""
    palette = QPalette()
    for role, token in _ROLES.items():
        palette.setColor(role, tokens.colour(token))
    for role in (
        QPalette.ColorRole.Text,
        QPalette.ColorRole.WindowText,
        QPalette.ColorRole.ButtonText,
        QPalette.ColorRole.HighlightedText,
    ):
        palette.setColor(QPalette.ColorGroup.Disabled, role, tokens.colour("edge"))
    palette.setColor(QPalette.ColorGroup.Disabled, QPalette.ColorRole.Highlight, tokens.colour("faint"))
    return palette


_ROLES = {
    QPalette.ColorRole.Window: "ground",
    QPalette.ColorRole.Base: "raised",
    QPalette.ColorRole.AlternateBase: "ground",
    QPalette.ColorRole.Button: "raised",
    QPalette.ColorRole.ToolTipBase: "raised",
    QPalette.ColorRole.Text: "ink",
    QPalette.ColorRole.WindowText: "ink",
    QPalette.ColorRole.ButtonText: "ink",
    QPalette.ColorRole.BrightText: "ink",
    QPalette.ColorRole.ToolTipText: "ink",
    QPalette.ColorRole.PlaceholderText: "quiet",
    QPalette.ColorRole.Highlight: "accent",
    QPalette.ColorRole.Accent: "accent",
    QPalette.ColorRole.HighlightedText: "on_accent",
    QPalette.ColorRole.Link: "accent",
    QPalette.ColorRole.LinkVisited: "accent",
    QPalette.ColorRole.Light: "raised",
    QPalette.ColorRole.Midlight: "line",
    QPalette.ColorRole.Mid: "line",
    QPalette.ColorRole.Dark: "line",
    QPalette.ColorRole.Shadow: "edge",
}


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it (from memory)."""
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    channels = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)  # noqa: PLR2004
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
