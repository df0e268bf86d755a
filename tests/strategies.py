"""Hypothesis strategies: any binder that hangs together, any record, any change that fits a binder.

    @given(binders())
    def test_...(binder: Binder) -> None: ...

Binders are referentially whole, have all tables from empty to a few records an owner, use every field of every record
between its limits, and their texts are in several scripts. They shrink toward the empty binder.
"""

from __future__ import annotations

import functools
from dataclasses import replace
from datetime import date, time
from enum import StrEnum
from typing import TYPE_CHECKING, Any, TypeVar

from hypothesis import strategies as st

from binder.kitchen.binder import RECORD_TYPES, TABLE_OF, Binder, binder_of, every_record
from binder.kitchen.change import Change, Edit, changed
from binder.kitchen.edits.records import remove
from binder.kitchen.integrity import references_of, users_of
from binder.kitchen.recipe import Line
from binder.kitchen.record import Field, fields_of
from binder.kitchen.settings import SETTINGS_ID
from binder.kitchen.shapes import Number, Reference, Text, Words, tidy

if TYPE_CHECKING:
    from hypothesis.strategies import DrawFn, SearchStrategy

    from binder.kitchen.record import Record

T = TypeVar("T")

HARD_TEXTS = (
    "Ragoût de pois chiches",
    "e\u0301\u0302 on one letter",
    "حمص بالطحينة",
    "חומוס 3 כוסות",
    "鷹嘴豆 ヒヨコマメ 병아리콩",
    "👩🏽‍🍳🥘",
    "\u202eright to left override",
    "zero\u200bwidth\u2060joined",
    "<b>bold</b> & <img src='x'/>",
    "=1+1",
    "-5",
    "@home",
    "“quoted”, 'single' and \"double\"",
    "back\\slash / stroke",
    "two\nlines\tand a tab",
    "line\u2028separator",
    "Robert'); DROP TABLE foods;--",
    "١٢٣ ½ ⅓ ° ☐ ✓ →",
    "null",
    "1e5",
    " spaces ",
    "\ufeffmark",
    "\U0010ffff",
)
"""Texts that have broken programs before, each one a cook could paste."""

BELIEVABLE: dict[str, tuple[str, ...]] = {
    "currency": ("USD", "EUR", "GBP", "JPY", "KWD"),
    "locale": ("en_US", "de_DE", "fr_FR", "ja_JP", "ar_EG"),
    "unit": ("g", "kg", "oz", "ml", "cup", "tbsp", "tsp", "clove", "bunch", "(14 oz) can", "each"),
    "base_unit": ("g", "kg", "lb"),
}
"""Fields whose texts mean something to figures and to paper; units are any text as well."""


@functools.cache
def texts(most: int, *, least: int = 0) -> SearchStrategy[str]:
    """Text as a record keeps it: tidied, `least` to `most` characters, in any script."""
    drawn = st.one_of(st.sampled_from(HARD_TEXTS), st.text(max_size=min(most, 12)))
    return drawn.map(lambda text: tidy(text)[:most]).map(tidy).filter(lambda text: least <= len(text) <= most)


@functools.cache
def numbers(shape: Number) -> SearchStrategy[float]:
    """Floats of a shape: its limits, whole numbers, fractions, the very small."""
    floats = st.floats(shape.least, shape.most, exclude_min=shape.open_below, allow_nan=False)
    whole = st.integers(int(shape.least) + shape.open_below, max(1, int(min(shape.most, 1000)))).map(float)
    return st.one_of(whole, floats).filter(shape.fits)


@functools.cache
def values(field: Field) -> SearchStrategy[Any]:
    """Values that a field takes, references apart."""
    value = st.sampled_from(BELIEVABLE[field.name]) if field.name in BELIEVABLE else _values(field)
    if field.name in {"unit", "base_unit"}:
        value |= _values(field)
    return st.none() | value if field.optional else value


def _values(field: Field) -> SearchStrategy[Any]:
    shape = field.shape
    if isinstance(shape, Text):
        return texts(shape.most, least=shape.least)
    if isinstance(shape, Words):
        return st.lists(texts(shape.most_each, least=1), max_size=3).map(tuple)
    if isinstance(shape, Number):
        return st.integers(int(shape.least), int(shape.most)) if field.kind is int else numbers(shape)
    if issubclass(field.kind, StrEnum):
        return st.sampled_from(list(field.kind))
    plain: dict[type, SearchStrategy[Any]] = {bool: st.booleans(), date: st.dates(), time: st.times()}
    return plain[field.kind]


def _filled(draw: DrawFn, record_type: type[Record], given: dict[str, Any], *, sparse: bool) -> Record:
    """A record with `given` values and others drawn; a sparse one keeps most of its defaults, as real ones do."""
    drawn = dict(given)
    open_fields = [
        field for field in fields_of(record_type) if field.name not in given and not isinstance(field.shape, Reference)
    ]
    every = 2 ** len(open_fields) - 1
    chosen = draw(st.integers(0, every)) & draw(st.integers(0, every)) if sparse else every
    for place, field in enumerate(open_fields):
        if field.required or chosen >> place & 1:
            drawn[field.name] = draw(values(field))
    return record_type(**drawn)


def _id(draw: DrawFn, taken: dict[str, Record], implied: str) -> str:
    """An id not taken: as a document would imply it, readable, or any text."""
    kind = draw(st.integers(0, 3))
    key = implied if kind < 2 else draw(st.text("abz/2_", min_size=1, max_size=6) if kind == 2 else texts(200, least=1))
    return key if key not in taken else f"{key[:150]}~{len(taken)}"


@st.composite
def binders(draw: DrawFn, *, most: int = 2) -> Binder:
    """Any binder that hangs together; at most `most` records an owner, and twice as many that stand by themselves."""
    sparse = draw(st.booleans())
    tables: dict[str, dict[str, Record]] = {table: {} for table in RECORD_TYPES}
    settings = _filled(draw, RECORD_TYPES["settings"], {"id": SETTINGS_ID}, sparse=sparse)
    tables["settings"][SETTINGS_ID] = settings
    for table, record_type in list(RECORD_TYPES.items())[1:]:
        owner_table = next(
            (reference.table for _field, reference in references_of(record_type) if reference.owner), None
        )
        owners: list[Record | None] = list(tables[owner_table].values()) if owner_table else [None]
        for owner in owners:
            count = draw(st.integers(0, most if owner else 2 * most))
            for index in range(count):
                _add(draw, tables, table, owner, index, sparse=sparse)
    return binder_of(record for records in tables.values() for record in records.values())


def _add(
    draw: DrawFn, tables: dict[str, dict[str, Record]], table: str, owner: Record | None, index: int, *, sparse: bool
) -> None:
    record_type = RECORD_TYPES[table]
    given: dict[str, Any] = {}
    for name, reference in references_of(record_type):
        if reference.owner and owner is not None:
            given[name] = owner.id
            continue
        optional = next(field.optional for field in fields_of(record_type) if field.name == name)
        targets = [*([None] if optional else []), *tables[reference.table]]
        if not targets:
            return
        given[name] = draw(st.sampled_from(targets))
    if record_type is Line and not _is_clear(draw, tables, given):
        return
    if hasattr(record_type, "position") and draw(st.integers(0, 4)):
        given["position"] = index
    given["id"] = _id(draw, tables[table], f"{owner.id}/{index + 1}"[:200] if owner else f"{table}_{index}")
    record = _filled(draw, record_type, given, sparse=sparse)
    tables[table][record.id] = record


def _is_clear(draw: DrawFn, tables: dict[str, dict[str, Record]], given: dict[str, Any]) -> bool:
    """Give a line one source, recipes only from before its own, and a range that runs upward; False if it has none."""
    recipes = list(tables["recipes"])
    own: Any = tables["steps"][given["step"]]
    earlier = recipes[: recipes.index(own.recipe)]
    sources = [*(("food", key) for key in tables["foods"]), *(("made", key) for key in earlier)]
    if not sources:
        return False
    name, key = draw(st.sampled_from(sources))
    given |= {"food": None, "made": None, name: key}
    amounts = draw(st.none() | st.lists(numbers(Number(0, 1e7)), min_size=2, max_size=2).map(sorted))
    low, high = amounts or (None, None)
    given |= {"low": high if draw(st.booleans()) else low, "high": high}
    return True


@st.composite
def changes(draw: DrawFn, binder: Binder) -> Change:
    """A change that `binder` takes: a field set, a food or a store added, or a record that none uses taken out."""
    label = draw(texts(30, least=1))
    kind = draw(st.integers(0, 3))
    if kind == 0:
        table = draw(st.sampled_from(["foods", "stores"]))
        key = _id(draw, dict(binder.table(table)), f"new_{table}")
        return changed(label, after=[_filled(draw, RECORD_TYPES[table], {"id": key}, sparse=True)])
    if kind == 1:
        loose = [record for record in every_record(binder) if record.id != SETTINGS_ID and not users_of(binder, record)]
        if loose:
            return remove(label, binder, draw(st.sampled_from(loose)))
    record = draw(st.sampled_from(every_record(binder)))
    free = [field for field in fields_of(type(record)) if _is_free(field, record)]
    field = draw(st.sampled_from(free))
    change: Any = {field.name: draw(values(field))}
    return Change(label, (Edit(before=record, after=replace(record, **change)),))


def _is_free(field: Field, record: Record) -> bool:
    """Whether any value of a field leaves the binder whole."""
    linked = isinstance(field.shape, Reference) or field.name == "id"
    return not linked and not (TABLE_OF[type(record)] == "lines" and field.name in {"low", "high"})
