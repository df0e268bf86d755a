"""The binder's own settings: which measures, which money, which language, whose rules."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from binder.kitchen.record import Record
from binder.kitchen.shapes import LongText, Name, Text


class Measures(StrEnum):
    """Which cup, spoon, pint and ounce a recipe means."""

    US_CUSTOMARY = "us customary"
    METRIC = "metric"
    IMPERIAL = "imperial"


class AllergenScheme(StrEnum):
    """Whose list of allergens the cards name."""

    US_NINE = "us nine"
    EU_FOURTEEN = "eu fourteen"


class SafetyRules(StrEnum):
    """Whose safe temperatures the cards show."""

    USDA_FSIS = "usda_fsis"
    FDA_FOOD_CODE = "fda_food_code"


SETTINGS_ID = "binder"
"""The id of the one record in the table of settings."""


@dataclass(frozen=True, kw_only=True)
class Settings(Record):
    """What holds for the whole binder. `locale` is a language tag as `en_US`; `currency` an ISO 4217 code."""

    name: Name
    measures: Measures = Measures.US_CUSTOMARY
    currency: Annotated[str, Text(most=3, least=3)] = "USD"
    locale: Annotated[str, Text(most=20, least=2)] = "en_US"
    allergens: AllergenScheme = AllergenScheme.US_NINE
    safety: SafetyRules = SafetyRules.USDA_FSIS
    notes: LongText = ""
