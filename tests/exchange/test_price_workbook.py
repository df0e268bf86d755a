"""Price lists from XLSX: the same rows as from CSV, with what a workbook knows beyond that, and nothing worked out."""

from __future__ import annotations

import io
import warnings
from datetime import date, datetime

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl.utils.datetime import CALENDAR_MAC_1904

from binder.exchange.price_list import Fate, PriceList, preview_prices, read_price_list
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import ExactNumber, TableCell, Trouble, UnreadableTableError, UnusableCell, tidied
from binder.exchange.text_safety import plain_cell
from binder.kitchen.change import apply
from tests.exchange.test_price_list import DAY, larder, prices
from tests.exchange.workbooks import by_hand, saved, sheet_of, workbook

HEAD = ("food", "store", "pack size", "unit", "price", "date", "label")


def read(*rows: tuple[object, ...], locale: str = "en_US", currency: str = "USD", **formats: str) -> PriceList:
    content = workbook([HEAD, *rows], formats=formats)
    return read_price_list(larder(locale, currency), content, priced_on=DAY, take_good_rows=True)


def refusal(row: tuple[object, ...], **formats: str) -> str:
    (fate,) = read(row, **formats).rows
    assert fate.fate is Fate.REFUSED
    return fate.says


def test_the_rows_are_those_that_a_csv_file_has() -> None:
    rows = [
        ("Garbanzos", "Corner store", 1, "kg", 3.99, date(2026, 4, 1), None),
        ("garlic", None, 500, "g", 2.1, datetime(2026, 3, 14, 9, 30), "Net"),  # noqa: DTZ001 - a workbook has no zones
        ("garlic", None, "1 braid", None, 6, "2026-03-14", None),
    ]
    text = ",".join(HEAD) + (
        "\nGarbanzos,Corner store,1,kg,3.99,2026-04-01,"
        "\ngarlic,,500,g,2.1,2026-03-14,Net"
        "\ngarlic,,1 braid,,6,2026-03-14,"
    )
    from_book, from_text = read(*rows), read_price_list(larder(), text.encode())
    assert from_book.rows == from_text.rows
    assert from_book.change is not None
    assert from_text.change is not None
    assert prices(apply(larder(), from_book.change)) == prices(apply(larder(), from_text.change))
    assert apply(apply(larder(), from_book.change), from_book.change.inverse()) == larder()


@pytest.mark.parametrize("locale", ["en_US", "de_DE"])
@pytest.mark.parametrize("price", [1.234, 3.5, 1234.5, 0.1 + 0.2, 3.4899999999999998])
def test_a_workbooks_own_number_never_has_a_comma_to_be_misread(price: float, locale: str) -> None:
    found = read(("Garlic", None, 1.125, "kg", price, None, None), locale=locale, currency="EUR")
    binder = apply(larder(locale, "EUR"), found.change)  # type: ignore[arg-type]
    assert prices(binder)[("garlic", 1.125, "kg")] == [(round(price * 100 + 1e-9), DAY)]


def test_a_price_typed_as_text_is_read_as_its_place_writes_it() -> None:
    found = read(("Garlic", None, "1,5", "kg", "1.234,50", None, None), locale="de_DE", currency="EUR")
    binder = apply(larder("de_DE", "EUR"), found.change)  # type: ignore[arg-type]
    assert prices(binder)[("garlic", 1.5, "kg")] == [(123_450, DAY)]


@pytest.mark.parametrize(
    ("row", "why"),
    [
        (
            ("Garlic", None, 1, "kg", "=2*1.5", None, None),
            "its price is a formula, and none is worked out here. Put its value in its place.",
        ),
        (
            ('=HYPERLINK("http://x","Garlic")', None, 1, "kg", 3, None, None),
            "its food is a formula, and none is worked out here. Put its value in its place.",
        ),
        (
            ("Garlic", None, 1, "kg", 3, "=TODAY()", None),
            "its date is a formula, and none is worked out here. Put its value in its place.",
        ),
        (("Garlic", None, 0, "g", 3, None, None), "a pack cannot hold 0 g. Write one size, above zero."),
        (("Garlic", None, -1, "kg", 3, None, None), "“-1 kg” is not an amount: it is below zero."),
        (("Garlic", None, 1, "kg", -3, None, None), "“-3” is not a price: a price is not below zero."),
        (("Garlic", None, 1, "kg", "three", None, None), "“three” is not a price: write a number such as 3.49."),
        (("Garlic", None, 1, "kg", None, None, None), "its price is missing. Add it, or take the row out."),
        (("Garlic", None, 1, "kg", True, None, None), "“TRUE” is not a price: write a number such as 3.49."),
        (
            ("Garlic", None, 1, "kg", date(2026, 3, 4), None, None),
            "its price is a date, 2026-03-04. Type the price anew.",
        ),
        (("Garlic", None, date(2026, 3, 4), None, 3, None, None), "its pack size is a date. Write it as 500 g."),
        (("Garlic", None, 1, "kg", 3, 46_000, None), "“46000” is not a date. Write it as 2026-03-14."),
        (("Garlik", None, 1, "kg", 3, None, None), "no food is called “Garlik”. The nearest: garlic."),
        (("Garlic", None, 1, "kg", 1e300, None, None), "it is more than anything costs."),
    ],
)
def test_a_bad_row_says_what_is_wrong(row: tuple[object, ...], why: str) -> None:
    assert why in refusal(row)


def test_a_date_in_the_future_is_refused() -> None:
    content = workbook([HEAD, ("Garlic", None, 1, "kg", 3, date(2026, 3, 15), None)])
    found = read_price_list(larder(), content, today=DAY)
    assert found.rows[0].says == "its date, 2026-03-15, is still to come. Correct it."


@pytest.mark.parametrize("code", ["[$€-407] #,##0.00", '#,##0.00 "€"', "#,##0.00 [$EUR]", "[$zł-415]#,##0.00"])
def test_a_number_shown_with_another_currency_is_not_taken_for_ones_own(code: str) -> None:
    says = refusal(("Garlic", None, 1, "kg", 3.49, None, None), E2=code)
    assert says.endswith("and the binder reckons in USD. Change it over, or take the row out.")


@pytest.mark.parametrize(
    "code", ['"$"#,##0.00', "[$$-409]#,##0.00", "0.00", '#,##0.00_);[Red]("$"#,##0.00)', "General"]
)
def test_a_number_shown_with_ones_own_currency_is_taken(code: str) -> None:
    assert read(("Garlic", None, 1, "kg", 3.49, None, None), E2=code).refused == ()


def test_an_error_in_a_cell_is_named() -> None:
    rows = '<row r="1"><c r="A1" t="str"><v>food</v></c><c r="B1" t="str"><v>size</v></c><c r="C1" t="str"><v>price</v></c></row>'  # noqa: E501
    rows += '<row r="2"><c r="A2" t="inlineStr"><is><t>Garlic</t></is></c><c r="B2" t="str"><v>1 kg</v></c><c r="C2" t="e"><v>#N/A</v></c></row>'  # noqa: E501
    found = read_price_list(larder(), by_hand(sheet=sheet_of(rows)), priced_on=DAY)
    assert found.rows[0].says == "its price is the error #N/A. Correct it."


def test_notes_beside_the_table_do_not_refuse_its_rows() -> None:
    rows = [("food", "size", "price"), ("Garlic", "1 kg", 3, "ask again in May")]
    assert read_price_list(larder(), workbook(rows), priced_on=DAY).refused == ()


def test_the_first_sheet_in_sight_with_cells_is_read_unless_another_is_named() -> None:
    book = openpyxl.Workbook()
    hidden, empty, wanted = book.active, book.create_sheet("Empty"), book.create_sheet("Prices")
    assert hidden is not None
    hidden.sheet_state = "hidden"
    hidden.append(["soup"])
    for row in (("food", "size", "price"), ("Garlic", "1 kg", 3)):
        wanted.append(row)
    content = saved(book)
    with pytest.raises(UnreadableTableError, match="it is empty"):
        price_table(content, sheet="empty")
    assert price_table(content).sheet == "Prices"
    table = price_table(content, sheet="prices")
    assert (table.sheet, table.sheets) == ("Prices", ("Empty", "Prices", "Sheet"))
    assert preview_prices(larder(), table, priced_on=DAY).refused == ()
    with pytest.raises(
        UnreadableTableError, match="no sheet of it is called “Soups”: it is “Empty”, “Prices” or “Sheet”"
    ):
        price_table(content, sheet="Soups")
    assert empty.title == "Empty"


def test_a_sheet_that_is_a_chart_is_passed_over() -> None:
    book = openpyxl.Workbook()
    cells = book.active
    assert cells is not None
    for row in (("food", "size", "price"), ("Garlic", "1 kg", 3)):
        cells.append(row)
    book.create_chartsheet("Chart", 0)
    table = price_table(saved(book))
    assert (table.sheet, table.sheets) == ("Sheet", ("Sheet",))


def test_rows_keep_their_number_where_others_are_empty() -> None:
    rows = [HEAD, (None,), ("Garlic", None, 1, "kg", 3, None, None)]
    assert read_price_list(larder(), workbook(rows), priced_on=DAY).rows[0].number == 3


def test_texts_in_pieces_are_joined_and_their_pronunciation_is_left_out() -> None:
    texts = "<sst><si><r><t>Gar</t></r><r><t>lic</t></r><rPh sb='0' eb='1'><t>GAHR</t></rPh></si></sst>"
    rows = '<row><c t="s"><v>0</v></c><c t="n"><v>1.50000</v></c><c><v>7E-2</v></c></row>'
    table = price_table(by_hand(sheet=sheet_of(rows), texts=texts))
    assert table.rows[0].cells == ("Garlic", ExactNumber("1.50000"), ExactNumber("0.07"))


def test_elements_may_carry_a_prefix_as_some_programs_write_them() -> None:
    sheet = (
        '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="3">'
        '<x:c r="B3"><x:v>5</x:v></x:c><x:c r="C3" t="inlineStr"><x:is><x:t>salt</x:t></x:is></x:c>'
        "</x:row></x:sheetData></x:worksheet>"
    )
    (row,) = price_table(by_hand(sheet=sheet)).rows
    assert (row.number, row.cells) == (3, ("", ExactNumber("5"), "salt"))


@pytest.mark.parametrize(("since", "serial"), [("1900", 46_095), ("1904", 44_633)])
def test_days_are_counted_from_either_year(since: str, serial: int) -> None:
    book = openpyxl.Workbook()
    if since == "1904":
        book.epoch = CALENDAR_MAC_1904
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = date(2026, 3, 14)
    content = saved(book)
    assert str(serial).encode() in _part(content, "xl/worksheets/sheet1.xml")
    assert price_table(content).rows[0].cells == (DAY,)


def _part(content: bytes, name: str) -> bytes:
    import zipfile

    return zipfile.ZipFile(io.BytesIO(content)).read(name)


CELLS = st.one_of(
    st.none(),
    st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn")), max_size=12).filter(
        lambda text: not text.startswith("=") and "_x" not in text
    ),
    st.integers(-(10**12), 10**12),
    st.floats(-1e12, 1e12, allow_nan=False).map(lambda value: float(f"{value:.12g}")),
    st.dates(date(1900, 3, 1), date(9999, 12, 30)),
    st.booleans(),
    st.just("=1+1"),
)


@given(st.lists(st.lists(CELLS, min_size=1, max_size=6), min_size=1, max_size=6))
def test_every_cell_is_what_openpyxl_reads(rows: list[list[object]]) -> None:
    content = workbook(rows)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        sheet = openpyxl.load_workbook(io.BytesIO(content)).worksheets[0]
    theirs = {cell.coordinate: _as_ours(cell.value) for row in sheet.iter_rows() for cell in row}
    try:
        found = price_table(content).rows
    except UnreadableTableError:
        found = ()
    ours: dict[str, TableCell] = dict.fromkeys(theirs, "")
    for row in found:
        ours |= {f"{'ABCDEF'[place]}{row.number}": cell for place, cell in enumerate(row.cells)}
    assert {key: _comparable(cell) for key, cell in ours.items()} == theirs


def _as_ours(value: object) -> object:
    if value is None:
        return ""
    if isinstance(value, str):
        return Trouble.FORMULA if value.startswith("=") else plain_cell(tidied(value))
    if isinstance(value, bool):
        return str(value).upper()
    return value.date() if isinstance(value, datetime) else float(value)  # type: ignore[arg-type]


def _comparable(cell: TableCell) -> object:
    if isinstance(cell, ExactNumber):
        return float(cell.text)
    return cell.trouble if isinstance(cell, UnusableCell) else cell
