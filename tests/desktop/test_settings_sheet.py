"""The binder's own settings."""

from __future__ import annotations

import pytest

from binder.desktop.settings_sheet import SettingsSheet
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.settings import AllergenScheme, Measures, SafetyRules
from tests.desktop.sheets import after_typing, is_even

SETTINGS, SIGHT = SettingsSheet(), Sight(Binder())


@pytest.mark.parametrize(
    ("row", "text", "value"),
    [
        ("name", "Beans", "Beans"),
        ("measures", "metric", Measures.METRIC),
        ("currency", "eur", "EUR"),
        ("locale", "de-DE", "de_DE"),
        ("allergens", "the four", AllergenScheme.EU_FOURTEEN),
        ("safety", "FDA", SafetyRules.FDA_FOOD_CODE),
        ("notes", "ours", "ours"),
    ],
)
def test_typing_edits_a_setting(row: str, text: str, value: object) -> None:
    assert getattr(after_typing(SETTINGS, SIGHT, row, "value", text).settings, row) == value


@pytest.mark.parametrize(
    ("row", "text"), [("currency", "BEANS"), ("locale", "nowhere"), ("measures", "feet"), ("name", "")]
)
def test_what_cannot_be_is_refused(row: str, text: str) -> None:
    with pytest.raises(BinderError):
        SETTINGS.edit(SIGHT, row, "value", text)


def test_what_is_shown_for_editing_is_understood_when_nothing_is_changed() -> None:
    for row in SETTINGS.rows(SIGHT):
        edit = row.cells[1].edit
        assert edit is not None
        assert SETTINGS.edit(SIGHT, row.key, "value", edit).empty
    assert is_even(SETTINGS, SIGHT)
