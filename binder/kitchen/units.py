"""Units a cook writes, each with its dimension and its grams or millilitres: the one place that converts units.

Values and their sources stand in `resources/reference/units.csv`. A bare `cup`, `pint` or `tbsp` means the binder's own
system of measures; `us cup` or `imperial pint` says which.
"""

from __future__ import annotations

import csv
import difflib
import functools
import re
from dataclasses import dataclass
from enum import StrEnum

from binder.kitchen.errors import BinderError
from binder.kitchen.number import UnreadableNumberError, parse_number
from binder.kitchen.paths import reference_folder
from binder.kitchen.settings import Measures
from binder.kitchen.shapes import SMALLEST_AMOUNT
from binder.kitchen.wording import _, listed


class Dimension(StrEnum):
    """What a unit measures."""

    WEIGHT = "weight"
    VOLUME = "volume"
    PIECE = "piece"


@dataclass(frozen=True)
class Unit:
    """A unit by its key. `factor` is grams or millilitres per one; for pieces it is 1."""

    key: str
    dimension: Dimension
    factor: float


class UnknownUnitError(BinderError):
    """A unit that no one knows; `nearest` are the three most like it."""

    def __init__(self, text: str, nearest: tuple[str, ...]) -> None:
        self.text, self.nearest = text, nearest
        super().__init__(
            _("No unit is called “{text}”. The nearest are {nearest}.").format(
                text=text[:60], nearest=listed(nearest, joined_by=_("or"))
            )
        )


_PREFIX = {Measures.US_CUSTOMARY: "us", Measures.METRIC: "metric", Measures.IMPERIAL: "imperial"}

_SPELLINGS: dict[str, tuple[str, ...]] = {
    "g": ("gram", "grams", "gm", "gms", "gr", "gramme", "grammes"),
    "kg": ("kilo", "kilos", "kilogram", "kilograms", "kgs"),
    "mg": ("milligram", "milligrams"),
    "oz": ("ounce", "ounces", "ozs"),
    "lb": ("lbs", "pound", "pounds", "#"),
    "ml": ("millilitre", "millilitres", "milliliter", "milliliters", "mls", "cc"),
    "cl": ("centilitre", "centilitres", "centiliter", "centiliters"),
    "dl": ("decilitre", "decilitres", "deciliter", "deciliters"),
    "l": ("litre", "litres", "liter", "liters", "ltr"),
    "cup": ("cups", "c"),
    "tbsp": ("tbsps", "tablespoon", "tablespoons", "tbs", "tbl", "tblsp"),
    "tsp": ("tsps", "teaspoon", "teaspoons"),
    "fl oz": ("fluid ounce", "fluid ounces", "floz", "fl ounce", "fl ounces"),
    "pint": ("pints", "pt", "pts"),
    "quart": ("quarts", "qt", "qts"),
    "gallon": ("gallons", "gal", "gals"),
    "pinch": ("pinches",),
    "dash": ("dashes",),
}
_CASED = {"T": "tbsp", "Tb": "tbsp", "Tbs": "tbsp", "t": "tsp", "C": "cup"}
"""A cook's T and t differ by case only, so these are looked up before case is folded."""

_SYSTEM_UNITS = {"cup", "tbsp", "tsp", "fl oz", "pint", "quart", "gallon"}

_PIECES: dict[str, tuple[str, ...]] = {
    "each": ("ea", "whole", "piece", "pieces", "pc", "pcs", "unit", "units"),
    "small": (),
    "medium": ("med",),
    "large": ("lg",),
    "clove": ("cloves",),
    "slice": ("slices",),
    "stick": ("sticks",),
    "bunch": ("bunches",),
    "head": ("heads",),
    "stalk": ("stalks",),
    "rib": ("ribs",),
    "sprig": ("sprigs",),
    "leaf": ("leaves",),
    "ear": ("ears",),
    "fillet": ("fillets",),
    "can": ("cans",),
    "tin": ("tins",),
    "jar": ("jars",),
    "bottle": ("bottles",),
    "packet": ("packets", "pkt", "sachet", "sachets"),
    "package": ("packages", "pkg", "pack", "packs"),
    "bag": ("bags",),
    "box": ("boxes",),
    "tub": ("tubs",),
    "carton": ("cartons",),
    "loaf": ("loaves",),
    "sheet": ("sheets",),
    "ball": ("balls",),
    "bulb": ("bulbs",),
    "handful": ("handfuls",),
    "knob": ("knobs",),
    "cube": ("cubes",),
    "portion": ("portions", "serving", "servings"),
    "batch": ("batches",),
}
_CONTAINER = re.compile(r"^\((?P<size>[\d.,/ ½¼¾⅓⅔⅛]+)\s*(?P<unit>[^)]+)\)\s*(?P<word>\S.*)$")


def _folded_spellings() -> dict[str, str]:
    known = {key: key for key in (*_SPELLINGS, *_PIECES)}
    for table in (_SPELLINGS, _PIECES):
        known |= {spelling: key for key, spellings in table.items() for spelling in spellings}
    return known


@functools.cache
def _known() -> dict[str, str]:
    return _folded_spellings()


@functools.cache
def unit_values() -> dict[str, tuple[Dimension, float, str]]:
    """Every unit of the reference table: key to dimension, grams or millilitres per one, and source."""
    with (reference_folder() / "units.csv").open(encoding="utf-8", newline="") as table:
        return {
            row["key"]: (Dimension(row["dimension"]), float(row["grams_or_millilitres"]), row["source"])
            for row in csv.DictReader(table)
        }


def canonical_unit(text: str) -> str | None:
    """The key of a cook's spelling: `Tbsp.` is `tbsp`, and a container keeps its size, `(14 oz) can`; None: unknown."""
    plain = " ".join(text.strip().split())
    if plain.rstrip(".") in _CASED:
        return _CASED[plain.rstrip(".")]
    container = _CONTAINER.match(plain)
    if container:
        return _canonical_container(container["size"], container["unit"], container["word"])
    folded = plain.casefold().rstrip(".").replace("fl. ", "fl ")
    return _known().get(folded) or (folded if folded in unit_values() else None) or _with_system(folded)


def _with_system(folded: str) -> str | None:
    system, _space, rest = folded.partition(" ")
    key = f"{system} {_known().get(rest, rest)}"
    return key if key in unit_values() else None


def _canonical_container(size: str, unit: str, word: str) -> str | None:
    inner, outer = canonical_unit(unit), canonical_unit(word)
    return f"({size.strip()} {inner}) {outer}" if inner and outer and _held(size) >= SMALLEST_AMOUNT else None


def _held(size: str) -> float:
    """How many of its inner unit a container holds; 0 where that is no number."""
    try:
        return parse_number(size)
    except UnreadableNumberError:
        return 0.0


@functools.lru_cache(maxsize=4096)
def unit(text: str, measures: Measures, *, pieces: frozenset[str] = frozenset()) -> Unit:
    """The unit `text` means in a system of measures; nothing means a plain count.

    `pieces` are words of the food's own (`knob`, `nest`). Raises UnknownUnitError with the three nearest names.
    """
    key = canonical_unit(text) if text.strip() else "each"
    if key is None:
        folded = _singular(text.strip().casefold(), pieces)
        if folded not in pieces:
            raise UnknownUnitError(text, nearest_units(text, pieces))
        return Unit(folded, Dimension.PIECE, 1.0)
    if key.startswith("("):
        return _container(key, measures)
    return _plain(key, measures)


def _singular(word: str, pieces: frozenset[str]) -> str:
    endings = (word, word.removesuffix("s"), word.removesuffix("es"), word.removesuffix("ves") + "f")
    return next((ending for ending in endings if ending in pieces), word)


def _plain(key: str, measures: Measures) -> Unit:
    if key in _PIECES:
        return Unit(key, Dimension.PIECE, 1.0)
    absolute = f"{_PREFIX[measures]} {key}" if key in _SYSTEM_UNITS else key
    dimension, factor, _source = unit_values()[absolute]
    return Unit(key, dimension, factor)


def _container(key: str, measures: Measures) -> Unit:
    found = _CONTAINER.match(key)
    assert found is not None  # noqa: S101 - canonical_unit made the key
    inner = _plain(found["unit"], measures)
    return Unit(key, inner.dimension, inner.factor * _held(found["size"]))


@functools.lru_cache(maxsize=4096)
def nearest_units(text: str, pieces: frozenset[str] = frozenset()) -> tuple[str, ...]:
    """The three known unit names most like `text`, as a cook would write them."""
    words = {**_known(), **{piece: piece for piece in pieces}}
    ranked = sorted(words, key=lambda word: -difflib.SequenceMatcher(None, text.casefold(), word).ratio())
    return tuple(dict.fromkeys(words[word] for word in ranked))[:3]


def is_system_unit(key: str) -> bool:
    """Whether a bare `key` means different sizes in different systems of measures."""
    return key in _SYSTEM_UNITS


def source_of(key: str, measures: Measures) -> str:
    """Where the value of a weight or volume unit comes from."""
    absolute = f"{_PREFIX[measures]} {key}" if key in _SYSTEM_UNITS else key
    return unit_values()[absolute][2]


def is_unit_word(word: str) -> bool:
    """Whether `word` alone is a unit or one's spelling."""
    return bool(word) and canonical_unit(word) is not None
