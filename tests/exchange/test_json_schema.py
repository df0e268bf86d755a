"""The published schema is current, is a schema, and says yes and no as reading does."""

from __future__ import annotations

import json

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from binder.exchange.json_document import document_of, from_json
from binder.exchange.json_reading import UnfitDocumentError
from binder.exchange.json_schema import document_schema, schema_path, schema_text
from binder.kitchen.binder import Binder
from tests.exchange.test_json_reading import DOCUMENT, changed_document, ways
from tests.strategies import binders

VALIDATOR = Draft202012Validator(document_schema())

WAYS_OF_FIELDS: list[tuple[str | int, ...]] = [
    ("settings", "currency"),
    ("settings", "measures"),
    ("foods", 0, "density"),
    ("foods", 0, "keeps_days"),
    ("foods", 0, "other_names"),
    ("foods", 0, "staple"),
    ("foods", 0, "packs", 0, "size"),
    ("foods", 0, "packs", 0, "quotes", 0, "price"),
    ("recipes", 1, "steps", 0, "heat"),
    ("recipes", 1, "steps", 0, "celsius"),
    ("recipes", 1, "steps", 0, "unknown"),
    ("shoots", 0, "dishes", 0, "portions"),
]

VALUES: list[object] = [
    *(..., None, True, False, 0, 1, -1, 1.5, 2.0, 25, 1e7, 1e7 + 1, 1e13, 1e13 + 1, -200, -200.5, 36_600, 36_601),
    *(
        "",
        "x",
        "USD",
        "oven",
        "OVEN",
        "metric",
        "x" * 301,
        [],
        ["a"],
        [""],
        ["x" * 201],
        [1],
        ["a"] * 201,
        {},
        {"a": 1},
    ),
]


def test_the_published_schema_is_current() -> None:
    assert schema_path().read_text(encoding="utf-8") == schema_text(), "run: python -m binder.exchange.json_schema"


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(json.loads(schema_text()))


@given(binders())
@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_written_fits_the_schema(binder: Binder) -> None:
    VALIDATOR.validate(document_of(binder))


@given(st.sampled_from(WAYS_OF_FIELDS), st.sampled_from(VALUES))
@settings(max_examples=300)
def test_the_schema_and_reading_agree_on_every_value(way: tuple[str | int, ...], value: object) -> None:
    assume(value is not ... or way in ways(DOCUMENT))
    text = changed_document(way, value)
    try:
        from_json(text)
        fits = True
    except UnfitDocumentError:
        fits = False
    assert VALIDATOR.is_valid(json.loads(text)) == fits
