"""What does not fit is said in one sentence: where it stands, what is wrong, what it takes."""

from __future__ import annotations

import copy
import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.exchange.json_document import from_json
from binder.exchange.json_reading import NewerDocumentError, UnfitDocumentError
from binder.exchange.json_strict import BrokenJsonError
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import RecipeLoopError

DOCUMENT: dict[str, Any] = {
    "format": "binder",
    "version": 1,
    "settings": {"name": "Chickpea day"},
    "foods": [
        {
            "id": "chickpeas",
            "name": "Chickpeas",
            "packs": [{"size": 1, "unit": "kg", "quotes": [{"price": 3, "on": "2026-03-14"}]}],
        }
    ],
    "recipes": [
        {"id": "dip", "name": "Dip", "steps": [{"lines": [{"food": "chickpeas"}]}]},
        {
            "id": "stew",
            "name": "Harissa stew",
            "steps": [{"celsius": 95}, {"lines": [{"food": "chickpeas", "low": 1, "high": 2}]}],
        },
    ],
    "shoots": [{"id": "day", "name": "Day one", "call": "07:30", "dishes": [{"recipe": "stew", "portions": 4}]}],
}

PACK = ("foods", 0, "packs", 0)
STEW = ("recipes", 1)
LINE = (*STEW, "steps", 1, "lines", 0)


def changed_document(way: tuple[str | int, ...], value: object) -> str:
    """The document with the value at `way` put in place (or, for `...`, taken out)."""
    document = copy.deepcopy(DOCUMENT)
    place: Any = document
    for piece in way[:-1]:
        place = place[piece]
    if value is ...:
        del place[way[-1]]
    else:
        place[way[-1]] = value
    return json.dumps(document)


def says(text: str | bytes) -> str:
    with pytest.raises(BinderError) as caught:
        from_json(text)
    return str(caught.value)


def test_the_document_itself_is_read() -> None:
    binder = from_json(json.dumps(DOCUMENT))
    assert binder.lines["stew/2/1"].high == 2.0
    assert binder.dishes["day/1"].recipe == "stew"


SECTIONS = (
    "produce, meat, fish, dairy and eggs, bakery, grains and pulses, tins and jars, oils and vinegars, "
    "spices and seasonings, baking, nuts and seeds, frozen, drinks"
)
IN_FOOD = "foods › 1 “Chickpeas”"
IN_PACK = f"{IN_FOOD} › packs › 1"
IN_QUOTE = f"{IN_PACK} › quotes › 1"
IN_STEW = "recipes › 2 “Harissa stew”"
IN_LINE = f"{IN_STEW} › steps › 2 › lines › 1"
NOT_KNOWN = "is not known here. Correct it, or take it out."
TOO_DEEP = "lists and objects stand deeper in one another than in any binder. Choose the right file."
MEND_LINK = "Correct it, or add the record."
NO_DATE = "it takes a date, as in “2026-03-14”."

VALUES: list[tuple[tuple[str | int, ...], object, str]] = [
    ((*PACK, "size"), 0, f"{IN_PACK} › size: it cannot be 0; it takes a number above 0 up to 10,000,000."),
    ((*PACK, "size"), -1, f"{IN_PACK} › size: it cannot be -1; it takes a number above 0 up to 10,000,000."),
    ((*PACK, "size"), ..., f"{IN_PACK}: “size” is missing; it takes a number above 0 up to 10,000,000."),
    (
        (*PACK, "quotes", 0, "price"),
        3.5,
        f"{IN_QUOTE} › price: it cannot be 3.5; it takes a number from 0 to 10,000,000,000,000.",
    ),
    ((*PACK, "quotes", 0, "on"), "14.3.2026", f'{IN_QUOTE} › on: it cannot be "14.3.2026"; {NO_DATE}'),
    ((*PACK, "quotes", 0, "on"), "2026-02-30", f'{IN_QUOTE} › on: it cannot be "2026-02-30"; {NO_DATE}'),
    (
        ("shoots", 0, "call"),
        "25:00",
        'shoots › 1 “Day one” › call: it cannot be "25:00"; it takes a time of day, or nothing, as in “07:30”.',
    ),
    (
        (*STEW, "steps", 1, "celsius"),
        "hot",
        f'{IN_STEW} › steps › 2 › celsius: it cannot be "hot"; it takes a number from -200 to 1,000, or nothing.',
    ),
    (
        ("foods", 0, "section"),
        "greens",
        f'foods › 1 “Chickpeas” › section: it cannot be "greens"; it takes one of {SECTIONS}.',
    ),
    (("foods", 0, "staple"), 1, "foods › 1 “Chickpeas” › staple: it cannot be 1; it takes yes or no."),
    (("foods", 0, "name"), None, "foods › 1 › name: it cannot be null; it takes 1 to 300 characters."),
    (("foods", 0, "name"), "", 'foods › 1 › name: it cannot be ""; it takes 1 to 300 characters.'),
    (
        ("foods", 0, "other_names"),
        [["x"]],
        f"{IN_FOOD} › other_names: it cannot be a list of lists or objects; it takes at most 200 short words.",
    ),
    (
        ("foods", 0, "notes"),
        {},
        "foods › 1 “Chickpeas” › notes: it cannot be an object; it takes at most 20000 characters.",
    ),
]

SHAPES: list[tuple[tuple[str | int, ...], object, str]] = [
    (
        (*STEW, "steps", 0, "celcius"),
        95,
        f"{IN_STEW} › steps › 1: “celcius” is not known here; the nearest is “celsius”. Correct it, or take it out.",
    ),
    ((*STEW, "steps", 0, "recipe"), "dip", f"{IN_STEW} › steps › 1: “recipe” {NOT_KNOWN}"),
    ((*STEW, "steps"), {}, f"{IN_STEW} › steps: it cannot be an object; it takes a list in [ ]."),
    ((*STEW, "steps", 0), [], f"{IN_STEW} › steps › 1: it cannot be []; it takes an object in {{ }}."),
    (("settings",), ..., "“settings” is missing. Add it."),
    (("settings", "id"), "x", f"settings: “id” {NOT_KNOWN}"),
    (("format",), "menu", "this is not a binder: it takes “format”: “binder” at the top. Choose another file."),
    (("version",), "1", 'version: it cannot be "1"; it takes 1.'),
    (("version",), True, "version: it cannot be true; it takes 1."),
    (("version",), 0, "version: it cannot be 0; it takes 1."),
    (("drinks",), [], f"“drinks” {NOT_KNOWN}"),
]

LINKS: list[tuple[tuple[str | int, ...], object, str]] = [
    (
        (*LINE, "food"),
        "chickpea",
        f"{IN_LINE} › food: no foods have the id “chickpea”; the nearest is “chickpeas”. {MEND_LINK}",
    ),
    ((*LINE, "made"), "dip", f"{IN_LINE}: a line is of one food or of one recipe. Name one of them."),
    ((*LINE, "low"), 3, f"{IN_LINE}: a range of amounts runs from the smaller to the larger. Turn it round."),
    ((*STEW, "id"), "dip", f"{IN_STEW} › id: the id “dip” is taken already, at recipes › 1 “Dip”. Give it another."),
]


@pytest.mark.parametrize(("way", "value", "sentence"), [*VALUES, *SHAPES, *LINKS])
def test_a_sentence_says_where_what_and_what_it_takes(way: tuple[str | int, ...], value: object, sentence: str) -> None:
    assert says(changed_document(way, value)) == sentence


def test_the_files_name_comes_first() -> None:
    with pytest.raises(UnfitDocumentError) as caught:
        from_json(changed_document(("settings", "name"), 5), called="day.json")
    assert str(caught.value) == "day.json › settings › name: it cannot be 5; it takes 1 to 300 characters."
    assert caught.value.where == ("day.json", "settings", "name")


def test_a_newer_document_names_the_way_out() -> None:
    with pytest.raises(NewerDocumentError) as caught:
        from_json(changed_document(("version",), 2), called="day.json")
    assert str(caught.value) == "day.json has version 2, and this program reads up to 1. Update the program."


def test_a_loop_of_recipes_is_named() -> None:
    with pytest.raises(RecipeLoopError, match="Harissa stew → Harissa stew"):
        from_json(changed_document((*LINE, "food"), None).replace('"food": null', '"made": "stew"'))


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (
            '{"format": "binder",\n "version" 1}',
            "Line 2, column 12: this is no JSON (a colon is missing). Mend it there.",
        ),
        ("", "Line 1, column 1: this is no JSON (the text ends too early). Mend it there."),
        ('{"format": "bin', "Line 1, column 12: this is no JSON (a text is not closed). Mend it there."),
        ('{"a": 1,}', "Line 1, column 9: this is no JSON (a key in double quotes is missing). Mend it there."),
        ("{} {}", "Line 1, column 4: this is no JSON (there is more after the end). Mend it there."),
        (b'{"a":\n "\xe9"}', "Line 2, column 3: this is not UTF-8. Save the file as UTF-8."),
        (b"\xff\xfe{\x00}\x00", "Line 1, column 1: this is not UTF-8. Save the file as UTF-8."),
        (b"\x89PNG\r\n\x1a\n", "Line 1, column 1: this is not UTF-8. Save the file as UTF-8."),
        (
            "[" * 200_000,
            f"Line 1, column 1: {TOO_DEEP}",
        ),
        ('{"format": "binder", "format": "x"}', "the key “format” stands there twice. Take one out."),
        ("[]", "it cannot be []; it takes an object in { }."),
        ("NaN", "it cannot be NaN; it takes an object in { }."),
    ],
)
def test_broken_text_is_named_by_line_and_column(text: str | bytes, sentence: str) -> None:
    assert says(text) == sentence


def test_broken_text_knows_its_place() -> None:
    with pytest.raises(BrokenJsonError) as caught:
        from_json('{\n\n"a" "b"}', called="day.json")
    assert (caught.value.line, caught.value.column) == (3, 5)
    assert str(caught.value).startswith("day.json, line 3, column 5: ")


def test_a_key_that_stands_twice_deep_inside_is_found() -> None:
    text = json.dumps(DOCUMENT).replace('"celsius": 95', '"celsius": 95, "celsius": 96')
    assert says(text) == "recipes › 2 “Harissa stew” › steps › 1: the key “celsius” stands there twice. Take one out."


@pytest.mark.parametrize(
    "number", ["NaN", "Infinity", "-Infinity", "1e999", "-1", "1e308", "9" * 5000, str(2**63), '"1,5"', '"½"']
)
def test_a_number_that_no_kitchen_has_is_refused(number: str) -> None:
    text = json.dumps(DOCUMENT).replace('"size": 1', f'"size": {number}')
    sentence = says(text)
    assert sentence.startswith("foods › 1 “Chickpeas” › packs › 1 › size: it cannot be ")
    assert len(sentence) < 200


@pytest.mark.parametrize(
    ("number", "kept"), [("-0.0", 0.0), ("1e-320", 1e-320), ("2.0", 2.0), ("2", 2.0), ("1E1", 10.0)]
)
def test_a_number_that_fits_is_kept_exactly(number: str, kept: float) -> None:
    text = json.dumps(DOCUMENT).replace('"low": 1, "high": 2', f'"low": {number}, "high": {number}')
    assert from_json(text).lines["stew/2/1"].high == kept


def test_a_whole_number_with_a_fraction_part_is_whole() -> None:
    text = json.dumps(DOCUMENT).replace('"price": 3', '"price": 3.0')
    assert from_json(text).quotes["chickpeas/1/1"].price == 3


@pytest.mark.parametrize("text", ["\ud800", "a\u0000b", "\u202e", "e\u0301", "a\r\nb", "👩🏽‍🍳"])
def test_any_text_is_kept_as_records_keep_it(text: str) -> None:
    document = copy.deepcopy(DOCUMENT)
    document["foods"][0]["notes"] = f"note {text}"
    binder = from_json(json.dumps(document))
    assert binder.foods["chickpeas"].notes.encode().decode().startswith("note ")


def test_a_name_that_is_far_too_long_is_shown_short() -> None:
    sentence = says(changed_document(("foods", 0, "name"), "x" * 10_000))
    assert len(sentence) < 200
    assert sentence.startswith("foods › 1 “xxx")


def test_an_implied_id_that_grows_too_long_asks_for_one() -> None:
    document = copy.deepcopy(DOCUMENT)
    document["recipes"][0]["id"] = "d" * 200
    assert says(json.dumps(document)).startswith("recipes › 1 “Dip” › steps › 1 › id: it cannot be ")


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=5),
    lambda parts: st.lists(parts, max_size=3) | st.dictionaries(st.text(max_size=5), parts, max_size=3),
    max_leaves=8,
)


def ways(value: object, way: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [found for key, part in parts for found in ((*way, key), *ways(part, (*way, key)))]


def read_or_refused(content: str | bytes) -> str:
    """What is said of a document; empty where it is read."""
    try:
        from_json(content)
    except BinderError as error:
        return str(error)
    return ""


@given(st.sampled_from(ways(DOCUMENT)), JSON_VALUES | st.just(...))
def test_anything_anywhere_is_read_or_refused_in_a_sentence(way: tuple[str | int, ...], value: object) -> None:
    said = read_or_refused(changed_document(way, value))
    assert said == "" or said.endswith(".")
    assert "\n" not in said


@given(st.binary(max_size=60) | st.text(max_size=60))
def test_anything_at_all_is_refused_in_a_sentence(content: bytes | str) -> None:
    assert says(content).endswith(".")
