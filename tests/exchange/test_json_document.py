"""A binder travels as one JSON document: nothing is lost, the bytes are stable, and people can read it."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from binder.exchange.json_document import document_of, from_json, read_json, to_json, write_json
from binder.kitchen.binder import RECORD_TYPES, Binder, binder_of
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.whole_file import FileInTheWayError, UnreadableFileError, UnwritableFileError
from tests.strategies import binders

STEW = binder_of(
    [
        Settings(id=SETTINGS_ID, name="Chickpea day", currency="EUR"),
        Store(id="corner", name="Corner store"),
        Food(id="chickpeas", name="Chickpeas", other_names=("garbanzos",)),
        Measure(id="chickpeas/1", food="chickpeas", unit="us cup", grams=200.0),
        Pack(id="big_bag", food="chickpeas", store="corner", size=1.0, unit="kg"),
        Quote(id="big_bag/1", pack="big_bag", price=349, on=date(2026, 3, 14)),
        Recipe(id="stew", name="Harissa stew", portions=4.0),
        Step(id="stew/1", recipe="stew", position=0, text="Soak.", waiting_minutes=720.0),
        Step(id="simmer", recipe="stew", position=1, text="Simmer.", celsius=95.5),
        Line(id="stew/1/1", step="stew/1", food="chickpeas", low=250.0, high=250.0, unit="g"),
        Line(id="simmer/1", step="simmer", position=3, food="chickpeas", to_taste=True),
    ]
)


def test_a_binder_comes_back_equal_and_its_bytes_are_stable() -> None:
    tried: set[str] = set()

    @given(binders())
    @settings(suppress_health_check=[HealthCheck.too_slow])
    def come_back(binder: Binder) -> None:
        text = to_json(binder)
        again = from_json(text.encode())
        assert again == binder
        assert to_json(again) == text
        tried.update(table for table in RECORD_TYPES if len(binder.table(table)))

    come_back()
    assert tried == set(RECORD_TYPES)


def test_a_document_reads_as_a_person_would_write_it() -> None:
    assert to_json(STEW) == (
        "{\n"
        '  "format": "binder",\n'
        '  "version": 1,\n'
        '  "settings": {"name": "Chickpea day", "currency": "EUR"},\n'
        '  "stores": [\n'
        '    {"id": "corner", "name": "Corner store"}\n'
        "  ],\n"
        '  "foods": [\n'
        "    {\n"
        '      "id": "chickpeas",\n'
        '      "name": "Chickpeas",\n'
        '      "other_names": ["garbanzos"],\n'
        '      "measures": [\n'
        '        {"unit": "us cup", "grams": 200}\n'
        "      ],\n"
        '      "packs": [\n'
        "        {\n"
        '          "id": "big_bag",\n'
        '          "store": "corner",\n'
        '          "size": 1,\n'
        '          "unit": "kg",\n'
        '          "quotes": [\n'
        '            {"price": 349, "on": "2026-03-14"}\n'
        "          ]\n"
        "        }\n"
        "      ]\n"
        "    }\n"
        "  ],\n"
        '  "conversions": [],\n'
        '  "recipes": [\n'
        "    {\n"
        '      "id": "stew",\n'
        '      "name": "Harissa stew",\n'
        '      "portions": 4,\n'
        '      "steps": [\n'
        "        {\n"
        '          "text": "Soak.",\n'
        '          "waiting_minutes": 720,\n'
        '          "lines": [\n'
        '            {"food": "chickpeas", "low": 250, "high": 250, "unit": "g"}\n'
        "          ]\n"
        "        },\n"
        "        {\n"
        '          "id": "simmer",\n'
        '          "text": "Simmer.",\n'
        '          "celsius": 95.5,\n'
        '          "lines": [\n'
        '            {"position": 3, "food": "chickpeas", "to_taste": true}\n'
        "          ]\n"
        "        }\n"
        "      ]\n"
        "    }\n"
        "  ],\n"
        '  "shoots": []\n'
        "}\n"
    )


def test_ids_that_the_place_in_the_list_says_come_back() -> None:
    assert from_json(to_json(STEW)) == STEW


def test_the_order_of_records_in_memory_does_not_show() -> None:
    turned = binder_of(reversed([record for name in RECORD_TYPES for record in STEW.table(name).values()]))
    assert to_json(turned) == to_json(STEW)


def test_a_file_is_written_whole_and_read_back(tmp_path: Path) -> None:
    path = tmp_path / "stew.json"
    write_json(STEW, path)
    assert path.read_bytes() == to_json(STEW).encode()
    assert read_json(path) == STEW
    assert [entry.name for entry in tmp_path.iterdir()] == ["stew.json"]


def test_a_byte_order_mark_does_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "stew.json"
    path.write_bytes(b"\xef\xbb\xbf" + to_json(STEW).encode())
    assert read_json(path) == STEW


def test_a_file_that_is_there_is_replaced_only_when_asked(tmp_path: Path) -> None:
    path = tmp_path / "stew.json"
    path.write_text("mine")
    with pytest.raises(FileInTheWayError, match=r"stew\.json"):
        write_json(STEW, path, replace=False)
    assert path.read_text() == "mine"
    write_json(STEW, path)
    assert read_json(path) == STEW


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(UnwritableFileError, match=r"“stew\.json” cannot be written: the file or its folder"):
        write_json(STEW, tmp_path / "none" / "stew.json")


@pytest.mark.parametrize("name", ["none.json", ".", "a\0b"])
def test_what_is_no_file_is_one_sentence(tmp_path: Path, name: str) -> None:
    with pytest.raises(UnreadableFileError):
        read_json(tmp_path / name)


def test_json_knows_no_more_than_json() -> None:
    assert json.loads(to_json(STEW)) == document_of(STEW)
