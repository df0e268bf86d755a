"""No workbook unfolds into more than a price list, and whatever is wrong with one is a sentence."""

from __future__ import annotations

import io
import random
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from binder.exchange import workbook_parts
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import UnreadableTableError
from tests.exchange.workbooks import PARTS, by_hand, sheet_of, workbook, zipped

LAUGHS = (
    '<!DOCTYPE worksheet [<!ENTITY a "ha">'
    + "".join(
        f'<!ENTITY {after} "{f"&{before};" * 10}">' for before, after in zip("abcdefghi", "bcdefghij", strict=True)
    )
    + "]>"
)
OUTSIDE = '<!DOCTYPE worksheet [<!ENTITY a SYSTEM "file:///etc/passwd">]>'


def laughing(declared: str) -> bytes:
    return by_hand(sheet=declared + sheet_of("<row><c t='inlineStr'><is><t>&a;</t></is></c></row>"))


BOMBS: dict[str, Callable[[], bytes]] = {
    "a sheet of blanks": lambda: by_hand(sheet=sheet_of(" " * 50_000_000)),
    "texts of one letter": lambda: by_hand(texts="<sst><si><t>" + "a" * 50_000_000 + "</t></si></sst>"),
    "a sheet larger than any": lambda: by_hand(sheet=sheet_of(" " * (workbook_parts.MOST_BYTES + 1))),
    "elements within each other": lambda: by_hand(sheet="<a>" * 200_000),
    "cells within each other": lambda: by_hand(sheet=sheet_of("<row>" + "<c>" * 200_000)),
    "rows within each other": lambda: by_hand(sheet=sheet_of("<row>" * 200_000)),
    "values within each other": lambda: by_hand(sheet=sheet_of("<row><c>" + "<v>" * 200_000)),
    "entities": lambda: laughing(LAUGHS),
    "entities in the texts": lambda: by_hand(texts=LAUGHS + "<sst><si><t>&j;</t></si></sst>"),
    "entities in UTF-16": lambda: by_hand(sheet=(LAUGHS + sheet_of("")).encode("utf-16")),
    "a file from outside": lambda: laughing(OUTSIDE),
    "more rows than any": lambda: by_hand(sheet=sheet_of('<row r="1048576"><c><v>1</v></c></row>')),
    "a row beyond all counting": lambda: by_hand(sheet=sheet_of(f'<row r="{"9" * 5000}"><c><v>1</v></c></row>')),
    "a row of more cells than there are columns": lambda: by_hand(
        method=zipfile.ZIP_STORED, sheet=sheet_of("<row>" + '<c r="A1"><v>1</v></c>' * 1_000_000 + "</row>")
    ),
    "a column beyond all counting": lambda: by_hand(sheet=sheet_of('<row><c r="AAAA1"><v>1</v></c></row>')),
}


@pytest.mark.parametrize("bomb", BOMBS.values(), ids=BOMBS)
def test_a_bomb_is_refused_at_once(bomb: Callable[[], bytes]) -> None:
    content = bomb()
    begun = time.process_time()
    with pytest.raises(UnreadableTableError, match="This is no price list: "):
        price_table(content)
    assert time.process_time() - begun < 2


READ_IN_LITTLE_ROOM = """
import pathlib, resource, sys
from binder.exchange.price_table import price_table
resource.setrlimit(resource.RLIMIT_AS, (250 * 1024**2,) * 2)
(row,) = price_table(pathlib.Path(sys.argv[1]).read_bytes()).rows
print(len(row.cells[0]))
"""


@pytest.mark.skipif(sys.platform == "win32", reason="a system without limits on memory")
@pytest.mark.parametrize(("kind", "text"), [("inlineStr", "<is><t>{}</t></is>"), ("str", "<v>{}</v>")])
def test_a_text_without_end_takes_no_memory(tmp_path: Path, kind: str, text: str) -> None:
    """A part of 60 MB, packed so that no ratio gives it away, in a process that has room for little more than that."""
    cell = f'<c t="{kind}">{text.format("x" * 60_000_000)}</c>'
    path = tmp_path / "long.xlsx"
    path.write_bytes(by_hand(method=zipfile.ZIP_STORED, sheet=sheet_of(f"<row>{cell}</row>")))
    done = subprocess.run(
        [sys.executable, "-c", READ_IN_LITTLE_ROOM, path], capture_output=True, text=True, check=False
    )
    assert (done.stderr, done.stdout) == ("", "32767\n")


def test_parts_that_share_their_bytes_are_refused() -> None:
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w") as archive:
        archive.writestr("xl/workbook.xml", b"x" * 10_000)
        archive.filelist *= 100
    with pytest.raises(UnreadableTableError, match="unfolds to far more"):
        price_table(written.getvalue())


def test_what_progress_raises_is_not_taken_for_damage() -> None:
    def stop(_share: float) -> None:
        raise RuntimeError("enough")

    with pytest.raises(RuntimeError, match="enough"):
        price_table(workbook([(number,) for number in range(5000)]), progress=stop)


def test_cells_beyond_the_last_column_of_use_are_left_out() -> None:
    table = price_table(by_hand(sheet=sheet_of('<row><c r="A1"><v>1</v></c><c r="XFD1"><v>2</v></c></row>')))
    assert len(table.rows[0].cells) == 1


def test_a_part_that_says_it_is_smaller_than_it_is_is_damaged() -> None:
    content = bytearray(by_hand(sheet=sheet_of("<row><c><v>1</v></c></row>" * 1000)))
    archive = zipfile.ZipFile(io.BytesIO(bytes(content)))
    size = archive.getinfo("xl/worksheets/sheet1.xml").file_size
    while (at := content.find(size.to_bytes(4, "little"))) >= 0:
        content[at : at + 4] = (100).to_bytes(4, "little")
    with pytest.raises(UnreadableTableError, match="damaged"):
        price_table(bytes(content))


def test_a_password_is_asked_to_be_taken_off() -> None:
    content = bytearray(by_hand())
    for magic, offset in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        at = -1
        while (at := content.find(magic, at + 1)) >= 0:
            content[at + offset] |= 1
    with pytest.raises(UnreadableTableError, match="it has a password"):
        price_table(bytes(content))
    with pytest.raises(UnreadableTableError, match="with a password, or of an old kind"):
        price_table(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(2000))


def test_a_zip_of_something_else_is_no_workbook() -> None:
    for parts in (
        {"mimetype": "application/vnd.oasis.opendocument.spreadsheet", "content.xml": "<a/>"},
        {"inner.zip": zipped({"a": "b"})},
        {},
        {**PARTS, "_rels/.rels": PARTS["_rels/.rels"].replace("xl/workbook.xml", "../../../etc/passwd")},
        {**PARTS, "_rels/.rels": PARTS["_rels/.rels"].replace('Id="r1"', 'Id="r1" TargetMode="External"')},
        {**PARTS, "xl/workbook.xml": "<workbook><sheets/></workbook>"},
        {**PARTS, "xl/workbook.xml": "not even XML"},
    ):
        with pytest.raises(UnreadableTableError):
            price_table(zipped(parts) if parts else b"PK\x03\x04 is all there is")


def test_a_truncated_or_scribbled_workbook_is_read_or_refused_in_a_sentence() -> None:
    whole = workbook([("food", "size", "price"), *((f"food {number}", number, 1.5) for number in range(50))])
    for end in range(0, len(whole), 97):
        content = whole[:end]
        if content.startswith(b"PK\x03\x04"):
            with pytest.raises(UnreadableTableError):
                price_table(content)
    chance = random.Random(1)
    for _attempt in range(400):
        scribbled = bytearray(whole)
        for _byte in range(chance.randint(1, 6)):
            scribbled[chance.randrange(len(scribbled))] = chance.randrange(256)
        with suppress(UnreadableTableError):
            price_table(bytes(scribbled))


def test_wrong_values_in_the_parts_are_a_damaged_workbook() -> None:
    for rows in (
        '<row r="x"><c><v>1</v></c></row>',
        '<row><c r="1A"><v>1</v></c></row>',
        '<row><c t="s"><v>7</v></c></row>',
        '<row><c t="s"><v>-1</v></c></row>',
        '<row><c t="s"><v>seven</v></c></row>',
        "<row><c><v>seven</v></c></row>",
        '<row><c s="x"><v>1</v></c></row>',
        "<row><c><v>1</v></c>",
    ):
        with pytest.raises(UnreadableTableError, match="damaged"):
            price_table(by_hand(sheet=sheet_of(rows) if rows.endswith("</row>") else "<worksheet>" + rows))
