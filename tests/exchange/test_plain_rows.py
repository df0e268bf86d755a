"""Plain rows are read past the parser, and no reader ever tells: the rows are those that the parser alone gives."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from binder.exchange import sheet_rows, workbook_parts
from binder.exchange.plain_rows import PlainCell, PlainRows
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import UnreadableTableError
from tests.exchange.workbooks import by_hand, sheet_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from binder.exchange.table_cell import TableRow

PLAIN = '<row r="2" spans="1:2"><c r="A2" t="s"><v>0</v></c><c r="B2" s="1"><v>3.49</v></c><c r="C2"/></row>'
OTHERWISE = (
    '<row r="3"><c r="A3"><f>1+1</f><v>2</v></c></row>',
    '<row r="3"><c r="A3" t="str"><v>salt &amp; pepper</v></c></row>',
    '<row r="3"><c r="A3" t="inlineStr"><is><r><t>in </t></r><r><t>pieces</t></r></is></c></row>',
    "<row><c><v>5</v></c></row>",
    '<row r="3"/>',
    '<x:row r="3"><x:c r="A3"><x:v>5</x:v></x:c></x:row>',
    '<row r="3" r="4"><c r="A3"><v>5</v></c></row>',
    "<row r='3'><c t='n' r='A3'><v>5</v></c></row>",
    '<row r="3"><c r="A3"><v>5</c></row>',
    '<row r="3"><c r="A3" t="inlineStr"><is><t>a tab\tand a\nline</t></is></c></row>',
)
HIDING = (
    "<!-- {0}{0} -->",
    "<row><c t='inlineStr'><is><t><![CDATA[{0}{0}]]></t></is></c></row>",
    "<?note {0}{0}?>",
    "{0}",
)


def seen(sheet: bytes, size: int) -> tuple[list[str], list[list[PlainCell]], bytes]:
    """Which rows were taken, their cells, and what was left to the parser, with the sheet fed piece by piece."""
    numbers: list[str] = []
    cells: list[list[PlainCell]] = []
    left: list[bytes] = []

    def take(number: str, row: list[PlainCell]) -> None:
        numbers.append(number)
        cells.append(row)

    plain = PlainRows(lambda piece, _last: left.append(piece), take)
    for at in range(0, len(sheet), size):
        plain.feed(sheet[at : at + size], False)
    plain.feed(b"", True)
    return numbers, cells, b"".join(left)


@pytest.mark.parametrize("size", [1, 7, 64, 10_000])
def test_plain_rows_are_taken_and_all_else_is_left_as_it_stands(size: int) -> None:
    sheet = sheet_of(PLAIN + OTHERWISE[0] + PLAIN + "\n  " + PLAIN)
    numbers, cells, left = seen(sheet.encode(), size)
    assert numbers == ["2", "2", "2"]
    assert cells[0] == [("A", "", "s", "0", "", ""), ("B", "1", "", "3.49", "", ""), ("C", "", "", "", "", "")]
    assert left.decode() == sheet.replace("\n  ", "").replace(PLAIN, "")


@pytest.mark.parametrize("row", OTHERWISE)
def test_a_row_that_is_otherwise_is_left_to_the_parser(row: str) -> None:
    numbers, _cells, left = seen(sheet_of(row + PLAIN).encode(), 10_000)
    assert row.encode() in left
    assert numbers in ([], ["2"])


@pytest.mark.parametrize("hiding", HIDING[:3])
def test_after_what_may_hide_rows_none_is_taken(hiding: str) -> None:
    sheet = sheet_of(PLAIN + hiding.format("x") + PLAIN * 2).encode()
    numbers, _cells, left = seen(sheet, 10_000)
    assert numbers == ["2"]
    assert left == sheet.replace(PLAIN.encode(), b"", 1)


@pytest.mark.parametrize(
    "head",
    [
        '<?xml version="1.0" encoding="ISO-8859-1"?><worksheet><sheetData>',
        "<?xml version='1.0' standalone='yes' encoding='utf-16'?><worksheet><sheetData>",
        "<!DOCTYPE worksheet><worksheet><sheetData>",
        "<!-- about --><worksheet><sheetData>",
        "",
    ],
)
def test_a_sheet_that_begins_otherwise_is_left_to_the_parser_whole(head: str) -> None:
    sheet = (head + PLAIN).encode()
    assert seen(sheet, 50) == ([], [], sheet)


def test_a_row_without_end_is_not_kept() -> None:
    numbers, _cells, left = seen(b"<worksheet><sheetData>" + PLAIN.encode() + b"<row>" * 1_000_000, 64 * 1024)
    assert (numbers, len(left)) == (["2"], 5_000_022)


def rows_of(content: bytes) -> tuple[TableRow, ...] | str:
    try:
        return price_table(content).rows
    except UnreadableTableError as error:
        return error.says


def rows_by_the_parser(content: bytes) -> tuple[TableRow, ...] | str:
    def past_nothing(_reader: object, parse: Callable[[bytes, bool], object]) -> Callable[[bytes, bool], object]:
        return parse

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sheet_rows._SheetReader, "fed_by", past_nothing)
        return rows_of(content)


TEXTS = st.text(st.characters(codec="utf-8"), max_size=6)
CELLS = st.builds(
    '<c r="{}{}"{}{}>{}</c>'.format,
    st.sampled_from(["A", "B", "ZZ", "XFD", "a", ""]),
    st.integers(0, 99),
    st.sampled_from(["", ' s="0"', ' s="7"', ' s="x"']),
    st.sampled_from(["", ' t="s"', ' t="n"', ' t="str"', ' t="e"', ' t="b"', ' t="d"', ' t="inlineStr"']),
    st.one_of(
        st.builds("<v>{}</v>".format, st.one_of(TEXTS, st.sampled_from(["0", "1", "2026-03-14", "1e3"]))),
        st.builds("<is><t>{}</t></is>".format, TEXTS),
        st.just(""),
    ),
)
ROWS = st.one_of(
    st.builds(
        '<row r="{}">{}</row>'.format, st.integers(0, 120_000), st.lists(CELLS, min_size=1, max_size=4).map("".join)
    ),
    st.sampled_from([PLAIN, *OTHERWISE]),
)
SHEETS = st.lists(
    st.builds(lambda hiding, row: hiding.format(row), st.sampled_from(HIDING), st.sampled_from([PLAIN, *OTHERWISE[:6]]))
)


@given(st.lists(ROWS, max_size=5).map("".join), st.integers(1, 300))
@example("<!-- " + PLAIN + " -->" + PLAIN, 40)
@example("<row r='1'><c><v>1</v></c></row><?x " + PLAIN + "?>" + PLAIN, 40)
def test_the_rows_are_those_that_the_parser_alone_gives(rows: str, size: int) -> None:
    content = by_hand(sheet=sheet_of(rows), texts="<sst><si><t>Garlic</t></si></sst>")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(workbook_parts, "_CHUNK", size)
        assert rows_of(content) == rows_by_the_parser(content)


@given(SHEETS.map("".join), st.integers(1, 300))
def test_rows_that_are_hidden_stay_so(rows: str, size: int) -> None:
    content = by_hand(sheet=sheet_of(rows), texts="<sst><si><t>Garlic</t></si></sst>")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(workbook_parts, "_CHUNK", size)
        assert rows_of(content) == rows_by_the_parser(content)
