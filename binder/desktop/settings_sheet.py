"""The binder's own settings as a table of two columns. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Cell, Column, Row, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.words.typed import UnreadableError, typed_choice
from binder.kitchen.edits.records import set_fields
from binder.kitchen.money import minor_digits
from binder.kitchen.settings import AllergenScheme, Measures, SafetyRules
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from enum import StrEnum

    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.change import Change


class SettingsSheet(PlainSheet):
    """One row a setting."""

    columns = (Column("setting", "", characters=22), Column("value", "", characters=26, stretch=1))

    @property
    def name(self) -> str:
        return _("Settings of this binder")

    def rows(self, sight: Sight) -> list[Row]:
        settings = sight.binder.settings
        return [
            _row("name", _("name"), settings.name),
            _chosen("measures", _("a cup and a spoon are"), settings.measures),
            _row("currency", _("currency"), settings.currency, tip=_("A code of ISO 4217, such as USD or EUR")),
            _row(
                "locale",
                _("numbers and dates as in"),
                settings.locale,
                tip=_("A language and a country, such as en_US or de_DE"),
            ),
            _chosen("allergens", _("allergens named"), settings.allergens),
            _chosen("safety", _("safe temperatures by"), settings.safety),
            _row("notes", _("notes"), settings.notes),
        ]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        kinds: dict[str, type[StrEnum]] = {"measures": Measures, "allergens": AllergenScheme, "safety": SafetyRules}
        value: object = typed_choice(text, _named(kinds[row])) if row in kinds else text.strip()
        if row == "currency":
            value = text.strip().upper()
            minor_digits(str(value))
        if row == "locale":
            value = _known_locale(text)
        return set_fields(_("Edit the settings of the binder"), sight.binder.settings, **{row: value})


def _known_locale(text: str) -> str:
    from babel.core import Locale, UnknownLocaleError

    try:
        return str(Locale.parse(text.strip().replace("-", "_")))
    except (UnknownLocaleError, ValueError) as error:
        raise UnreadableError(text, _("write a language and a country, such as en_US.")) from error


def _row(key: str, label: str, value: str, *, choices: tuple[str, ...] = (), tip: str = "") -> Row:
    name = Cell(label, tone=Tone.QUIET)
    return Row(key, (name, Cell(value, edit=value, choices=choices, placeholder="–", tip=tip)), lines=1.7)


def _chosen(key: str, label: str, value: StrEnum) -> Row:
    named = _named(type(value))
    shown = next(name for name, one in named.items() if one is value)
    return _row(key, label, shown, choices=tuple(named))


def _named(kind: type[StrEnum]) -> dict[str, StrEnum]:
    """The values of a setting by what they are called on screen."""
    names = {
        Measures.US_CUSTOMARY: _("US customary"),
        Measures.METRIC: _("metric"),
        Measures.IMPERIAL: _("imperial"),
        AllergenScheme.US_NINE: _("the nine of the FDA"),
        AllergenScheme.EU_FOURTEEN: _("the fourteen of EU 1169/2011"),
        SafetyRules.USDA_FSIS: _("USDA FSIS, for homes"),
        SafetyRules.FDA_FOOD_CODE: _("FDA Food Code, for retail"),
    }
    return {names[value]: value for value in kind}
