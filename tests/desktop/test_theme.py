"""Both palettes can be read: contrast as WCAG 2.2 asks for (1.4.3 text 4.5, 1.4.11 parts of controls 3)."""

from __future__ import annotations

from itertools import product

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette

from binder.desktop.appearance import tokens_wanted
from binder.desktop.theme import DARK, LIGHT, Appearance, Tokens, contrast, palette_of, tokens_for

_BOTH = pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])
_TEXT = ("ink", "quiet", "accent", "warning", "stop")
_GROUNDS = ("ground", "raised", "tint")


def test_contrast_is_one_for_the_same_and_twenty_one_for_black_on_white() -> None:
    assert contrast("#777777", "#777777") == pytest.approx(1)
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


@_BOTH
@pytest.mark.parametrize(("text", "ground"), [*product(_TEXT, _GROUNDS)])
def test_every_text_can_be_read_on_every_ground(tokens: Tokens, text: str, ground: str) -> None:
    assert contrast(getattr(tokens, text), getattr(tokens, ground)) >= 4.5


@_BOTH
def test_text_on_the_accent_can_be_read(tokens: Tokens) -> None:
    assert contrast(tokens.on_accent, tokens.accent) >= 4.5


@_BOTH
@pytest.mark.parametrize(
    ("part", "ground"), [*product(("edge", "accent", "stop", "warning", "ink"), ("ground", "raised"))]
)
def test_edges_of_fields_and_shapes_of_states_stand_out(tokens: Tokens, part: str, ground: str) -> None:
    assert contrast(getattr(tokens, part), getattr(tokens, ground)) >= 3


@_BOTH
def test_bars_stand_out_from_their_track(tokens: Tokens) -> None:
    assert contrast(tokens.accent, tokens.faint) >= 3


@_BOTH
@pytest.mark.parametrize(
    ("text", "ground"),
    [
        (QPalette.ColorRole.Text, QPalette.ColorRole.Base),
        (QPalette.ColorRole.WindowText, QPalette.ColorRole.Window),
        (QPalette.ColorRole.ButtonText, QPalette.ColorRole.Button),
        (QPalette.ColorRole.HighlightedText, QPalette.ColorRole.Highlight),
        (QPalette.ColorRole.PlaceholderText, QPalette.ColorRole.Base),
        (QPalette.ColorRole.Link, QPalette.ColorRole.Base),
        (QPalette.ColorRole.ToolTipText, QPalette.ColorRole.ToolTipBase),
    ],
)
def test_what_qt_paints_itself_can_be_read(
    tokens: Tokens, text: QPalette.ColorRole, ground: QPalette.ColorRole
) -> None:
    palette = palette_of(tokens)
    assert contrast(palette.color(text).name(), palette.color(ground).name()) >= 4.5


@_BOTH
def test_a_widget_finds_the_tokens_of_its_palette(tokens: Tokens) -> None:
    assert tokens_for(palette_of(tokens)) is tokens


@pytest.mark.parametrize(
    ("chosen", "system", "wanted"),
    [
        (Appearance.LIGHT, Qt.ColorScheme.Dark, LIGHT),
        (Appearance.DARK, Qt.ColorScheme.Light, DARK),
        (Appearance.SYSTEM, Qt.ColorScheme.Dark, DARK),
        (Appearance.SYSTEM, Qt.ColorScheme.Light, LIGHT),
        (Appearance.SYSTEM, Qt.ColorScheme.Unknown, LIGHT),
    ],
)
def test_the_choice_comes_before_the_system(chosen: Appearance, system: Qt.ColorScheme, wanted: Tokens) -> None:
    assert tokens_wanted(chosen, system) is wanted
