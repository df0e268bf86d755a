"""Whatever file a command is given: one line that says what, where and how to mend it, and the file as it was."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from binder.exchange.json_document import document_of
from tests.cli.conftest import Run, written
from tests.kitchen_binder import small_binder

Bad = Callable[[Path], object]


def document(edit: Callable[[dict[str, Any]], object]) -> Bad:
    """Write the small binder's document with something wrong in it."""

    def write(path: Path) -> None:
        parts = json.loads(json.dumps(document_of(small_binder())))
        edit(parts)
        path.write_text(json.dumps(parts), encoding="utf-8")

    return write


def first_line(parts: dict[str, Any]) -> dict[str, Any]:
    line: dict[str, Any] = parts["recipes"][0]["steps"][0]["lines"][0]
    return line


def newer(path: Path) -> None:
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version = 999")
    connection.commit()
    connection.close()


def of_another_program(path: Path) -> None:
    path.unlink()
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE notes (text)")
    connection.commit()
    connection.close()


def shortened(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:5000])


def scribbled(path: Path) -> None:
    content = bytearray(path.read_bytes())
    content[len(content) // 2 :] = b"\xff" * (len(content) - len(content) // 2)
    path.write_bytes(content)


BAD_FILES: dict[str, Bad] = {
    "empty": lambda path: path.write_bytes(b""),
    "text": lambda path: path.write_text("soup of the day", encoding="utf-8"),
    "a picture": lambda path: path.write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(200)),
    "truncated": shortened,
    "damaged": scribbled,
    "of another program": of_another_program,
    "of a newer version": newer,
}

BAD_DOCUMENTS: dict[str, Bad] = {
    "cut off": lambda path: path.write_text('{"format": "binder", "recipes": [', encoding="utf-8"),
    "a list": lambda path: path.write_text("[]", encoding="utf-8"),
    "another format": document(lambda parts: parts.update(format="soup")),
    "newer": document(lambda parts: parts.update(version=99)),
    "an unknown key": document(lambda parts: parts.update(soups=[])),
    "a negative amount": document(lambda parts: first_line(parts).update(low=-1, high=-1)),
    "an infinite amount": document(lambda parts: first_line(parts).update(high=float("inf"))),
    "an absurd amount": document(lambda parts: first_line(parts).update(low=1e300, high=1e300)),
    "an amount that is no number": document(lambda parts: first_line(parts).update(low=float("nan"))),
    "a name of 10,000 characters": document(lambda parts: parts["foods"][0].update(name="x" * 10_000)),
    "a food that is not there": document(lambda parts: first_line(parts).update(food="unicorn")),
    "a price as text": document(lambda parts: parts["foods"][0]["packs"][0]["quotes"][0].update(price="four")),
    "not UTF-8": lambda path: path.write_bytes(b'{"format": "\xff\xfe"}'),
    "deeply nested": lambda path: path.write_text("[" * 100_000, encoding="utf-8"),
}


def require_one_line(run: Run, path: Path, out: Path) -> None:
    before = path.read_bytes()
    printing, exporting = ["print", path, "--out", out], ["export", path, "--to", out / "x.json"]
    for command in (["cost", path], ["check", path, "--json"], printing, exporting):
        result = run(*command)
        assert result.exit_code == 3
        assert result.stdout == ""
        assert result.stderr.count("\n") == 1
        assert path.name in result.stderr
        assert "Traceback" not in result.stderr
        assert len(result.stderr) < 500
    assert path.read_bytes() == before
    assert not out.exists()


@pytest.mark.parametrize("bad", BAD_FILES.values(), ids=BAD_FILES)
def test_a_bad_binder_file_is_one_line(run: Run, bean_file: Path, tmp_path: Path, bad: Bad) -> None:
    bad(bean_file)
    require_one_line(run, bean_file, tmp_path / "out")
    assert [one.name for one in tmp_path.iterdir()] == [bean_file.name]


@pytest.mark.parametrize("bad", BAD_DOCUMENTS.values(), ids=BAD_DOCUMENTS)
def test_a_bad_document_is_one_line(run: Run, bean_day: Path, tmp_path: Path, bad: Bad) -> None:
    bad(bean_day)
    require_one_line(run, bean_day, tmp_path / "out")


@pytest.mark.parametrize("bad", BAD_DOCUMENTS.values(), ids=BAD_DOCUMENTS)
def test_a_bad_document_makes_no_binder_file(run: Run, bean_day: Path, tmp_path: Path, bad: Bad) -> None:
    bad(bean_day)
    result = run("import", bean_day, "--into", tmp_path / "made.binder")
    assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (3, "", 1)
    assert [one.name for one in tmp_path.iterdir()] == [bean_day.name]


@pytest.mark.parametrize("bad", BAD_FILES.values(), ids=BAD_FILES)
def test_prices_do_not_go_into_a_bad_file(run: Run, bean_file: Path, tmp_path: Path, bad: Bad) -> None:
    bad(bean_file)
    before = bean_file.read_bytes()
    prices = tmp_path / "prices.csv"
    prices.write_text("food,pack size,price,date\ntahini,300 g,6.49,2026-11-20\n", encoding="utf-8")
    result = run("import", prices, "--into", bean_file)
    assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (3, "", 1)
    assert bean_file.read_bytes() == before


def test_a_folder_and_a_name_that_is_none_are_one_line(run: Run, tmp_path: Path) -> None:
    for path in (tmp_path, tmp_path / "no such.binder", tmp_path / "no" / "folder.json"):
        result = run("cost", path)
        assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (3, "", 1)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"soup,of,the,day\n1,2,3,4\n",
        b'food,pack size,price\n"tahini,1,2\n',
        b"\x00\x01\x02\xff",
        b"food,food,pack size,price\n",
    ],
)
def test_what_is_no_price_list_is_one_line(run: Run, bean_file: Path, tmp_path: Path, content: bytes) -> None:
    before = bean_file.read_bytes()
    prices = tmp_path / "prices.csv"
    prices.write_bytes(content)
    result = run("import", prices, "--into", bean_file)
    assert result.exit_code == 3
    assert result.stderr.count("\n") == 1
    assert bean_file.read_bytes() == before


def test_markup_in_a_dish_name_is_printed_as_it_stands(run: Run, tmp_path: Path) -> None:
    name = "<b>Beans</b> <img src='x'/> &amp; [red]co[/red]"
    dish = replace(small_binder().dishes["dish-spread"], name=name)
    file = written(small_binder(dish), tmp_path / "marked.json")
    assert run("print", file, "--out", tmp_path / "out", "--only", "costs").exit_code == 0
    text = " ".join(PdfReader(tmp_path / "out" / "costs.pdf").pages[0].extract_text().split())
    assert name in text
    assert name in " ".join(run("check", file).stdout.split())
