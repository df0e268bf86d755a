"""A price list becomes one change or none, and each row says what became of it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.exchange.price_list import Fate, PriceList, read_price_list
from binder.exchange.price_table import UnreadableTableError
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.change import apply
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.settings import SETTINGS_ID, Settings

DAY = date(2026, 3, 14)


def larder(locale: str = "en_US", currency: str = "USD") -> Binder:
    return binder_of(
        [
            Settings(id=SETTINGS_ID, name="Binder", locale=locale, currency=currency),
            Food(id="chickpeas", name="Chickpeas, dried", other_names=("Garbanzos",)),
            Food(id="garlic", name="Garlic"),
            Measure(id="garlic/1", food="garlic", unit="braid", grams=400.0),
            Food(id="pepper", name="Pepper"),
            Food(id="bell", name="Bell pepper", other_names=("Pepper",)),
            Store(id="corner", name="Corner store"),
            Pack(id="bag", food="chickpeas", store="corner", size=1.0, unit="kg", label="Big bag"),
            Quote(id="bag/1", pack="bag", price=349, on=DAY),
        ]
    )


ALL_COLUMNS = "food, store, pack size, unit, price, date and label"
HEAD = "food,store,pack size,unit,price,date,label\n"


def read(text: str, binder: Binder | None = None, *, take_good_rows: bool = False) -> PriceList:
    return read_price_list(binder or larder(), text.encode(), take_good_rows=take_good_rows, priced_on=DAY)


def prices(binder: Binder) -> dict[tuple[str, float, str], list[tuple[int, date]]]:
    """What each pack costs, by food, size and unit."""
    return {
        (pack.food, pack.size, pack.unit): sorted(
            (quote.price, quote.on) for quote in binder.quotes.where("pack", pack.id)
        )
        for pack in binder.packs.values()
    }


def imported(text: str, binder: Binder | None = None) -> Binder:
    binder = binder or larder()
    found = read(text, binder)
    assert found.refused == ()
    assert found.change is not None
    return apply(binder, found.change)


def refusal(row: str, binder: Binder | None = None) -> str:
    """Why the one row of a list is refused."""
    found = read(HEAD + row, binder)
    assert found.change is None
    (fate,) = found.refused
    assert fate.number == 2
    return fate.says


def test_rows_become_packs_and_prices_in_one_change() -> None:
    text = HEAD + (
        "Garbanzos,Corner store,1,kg,3.99,2026-04-01,\n"
        "garlic,,500,g,$2.10,,Net\n"
        "GARLIC,,500,g,2.20,2026-04-01,net\n"
        "garlic,,1 braid,,6,,\n"
    )
    binder = imported(text)
    assert prices(binder) == {
        ("chickpeas", 1.0, "kg"): [(349, DAY), (399, date(2026, 4, 1))],
        ("garlic", 500.0, "g"): [(210, DAY), (220, date(2026, 4, 1))],
        ("garlic", 1.0, "braid"): [(600, DAY)],
    }
    found = read(text)
    assert found.change is not None
    assert found.change.label == "Import 4 prices"
    assert found.summary() == "4 prices are taken."
    assert apply(apply(larder(), found.change), found.change.inverse()) == larder()


def test_importing_twice_changes_nothing_the_second_time() -> None:
    text = HEAD + "Garlic,,500,g,2.10,,\nChickpeas, ,2,lb,4,,\n".replace("Chickpeas", "garbanzos")
    binder = imported(text)
    again = read(text, binder)
    assert [row.fate for row in again.rows] == [Fate.SAME, Fate.SAME]
    assert again.change is None


def test_a_second_price_of_the_same_day_takes_the_firsts_place() -> None:
    text = HEAD + "Garbanzos,corner STORE,1,kg,3.79,2026-03-14,\n"
    (row,) = read(text).rows
    assert (row.fate, row.says) == (Fate.CHANGED, "Chickpeas, dried, 1 kg; it was $3.49")
    assert prices(imported(text)) == {("chickpeas", 1.0, "kg"): [(379, DAY)]}


@pytest.mark.parametrize(
    ("row", "why"),
    [
        ("Garlik,,1,kg,1,,", "no food is called “Garlik”. The nearest: garlic. Correct it, or add the food first."),
        (",,1,kg,1,,", "its food is missing. Add it."),
        ("Pepper,,1,kg,1,,", "more than one food is called “Pepper”. Rename one of them."),
        (
            "Garlic,Corner stop,1,kg,1,,",
            "no store is called “Corner stop”. The nearest: corner store. Correct it, or add the store first.",
        ),
        ("Garlic,,0,g,1,,", "a pack cannot hold 0 g. Write one size, above zero."),
        ("Garlic,,1-2,kg,1,,", "a pack cannot hold 1-2 kg. Write one size, above zero."),
        ("Garlic,,,,1,,", "its pack size is missing. Add it."),
        ("Garlic,,1,kg,,,", "its price is missing. Add it, or take the row out."),
        ("Garlic,,1,kg,1,2026-02-30,", "“2026-02-30” is not a date. Write it as 2026-03-14."),
        ("Garlic,,1,kg,1,,,extra", "it has more cells than the header. Take the ones too many out."),
    ],
)
def test_a_bad_row_says_what_is_wrong_and_how_to_mend_it(row: str, why: str) -> None:
    assert refusal(row) == why


@pytest.mark.parametrize(
    "cell", ["free", "-1", "3.49 €", "1e5", "NaN", "inf", "3.49.1,2", "١٢", "99999999999999999999", "=1+1"]
)
def test_a_price_that_is_none_refuses_the_row(cell: str) -> None:
    assert "is not a price" in refusal(f'Garlic,,1,kg,"{cell}",,')


@pytest.mark.parametrize("cell", ["much", "-1", "nan", "1e400", "99999999999"])
def test_a_size_that_is_none_refuses_the_row(cell: str) -> None:
    assert refusal(f"Garlic,,{cell},kg,1,,").endswith(".")


def test_a_unit_no_one_knows_names_the_nearest() -> None:
    assert "No unit is called “kgg”" in refusal("Garlic,,1,kgg,1,,")


def test_a_price_without_a_day_needs_one() -> None:
    found = read_price_list(larder(), (HEAD + "Garlic,,1,kg,1,,\n").encode())
    assert found.refused[0].says == "its date is missing. Add it, as 2026-03-14."


def test_a_price_of_tomorrow_is_refused_where_today_is_known() -> None:
    content = (HEAD + "Garlic,,1,kg,1,2026-03-15,\n").encode()
    assert read_price_list(larder(), content).refused == ()
    found = read_price_list(larder(), content, today=DAY)
    assert found.refused[0].says == "its date, 2026-03-15, is still to come. Correct it."


def test_nothing_is_half_imported_unless_asked() -> None:
    text = HEAD + "Garlic,,1,kg,1,,\n\nGarlik,,1,kg,1,,\nGarlic,,2,kg,2,,\n"
    strict, lenient = read(text), read(text, take_good_rows=True)
    assert strict.change is None
    assert [(row.number, row.fate) for row in strict.rows] == [(2, Fate.NEW), (4, Fate.REFUSED), (5, Fate.NEW)]
    assert strict.rows == lenient.rows
    assert strict.summary() == (
        "0 prices are taken. 1 row is refused. Row 4: no food is called “Garlik”. The nearest: garlic. "
        "Correct it, or add the food first."
    )
    assert lenient.summary().startswith("2 prices are taken. 1 row is refused.")
    assert lenient.change is not None
    assert len(apply(larder(), lenient.change).packs) == 3


def test_a_refused_row_leaves_no_pack_behind() -> None:
    found = read(HEAD + "Garlic,,1,kg,1,,\nGarlic,,1,kg,2,,\nGarlic,,9,kg,free,,\n", take_good_rows=True)
    assert [row.fate for row in found.rows] == [Fate.NEW, Fate.REFUSED, Fate.REFUSED]
    assert found.rows[1].says == "row 2 has another price for the same pack and day. Take one of them out."
    assert found.change is not None
    assert [(edit.table, getattr(edit.after, "price", None)) for edit in found.change.edits] == [
        ("packs", None),
        ("quotes", 100),
    ]


@pytest.mark.parametrize(
    "content",
    [
        b"Food;STORE; Pack Size ;Unit;Price;Date;Label\nGarlic;;500;g;2.10;;\n",
        b"price\tfood\tpack_size\tunit\n2.10\tGarlic\t500\tg\n",
        b"\xef\xbb\xbffood,size,price\r\nGarlic,500 g,2.10\r\n",
        b'"food","pack-size","price","colour"\n"Garlic","500 g","$2.10","white"\n',
        b"sep=|\nfood|packsize|price\nGarlic|500g|2.10\n",
        b"\n\nfood,pack size,price\n\nGarlic,500 g,2.10",
        b'food,pack size,price\nGarlic,\'500 g,"2,10"\n'.replace(b"'500", b"500"),
    ],
)
def test_any_spreadsheets_way_of_writing_is_read(content: bytes) -> None:
    found = read_price_list(larder(), content, priced_on=DAY)
    assert found.refused == ()
    assert found.change is not None
    assert prices(apply(larder(), found.change))[("garlic", 500.0, "g")] == [(210, DAY)]


@pytest.mark.parametrize(
    ("cell", "locale", "currency", "minor"),
    [
        ("3,49", "de_DE", "EUR", 349),
        ("1.234,50", "de_DE", "EUR", 123_450),
        ('"1,234.50"', "en_US", "USD", 123_450),
        ("3,49 €", "de_DE", "EUR", 349),
        ("349", "ja_JP", "JPY", 349),
        ("1.234", "en_US", "KWD", 1234),
    ],
)
def test_a_price_is_read_as_its_place_writes_it(cell: str, locale: str, currency: str, minor: int) -> None:
    separator = ";" if not cell.startswith('"') else ","
    text = "food,pack size,unit,price\nGarlic,1,kg,".replace(",", separator) + cell + "\n"
    binder = imported(text, larder(locale, currency))
    assert prices(binder)[("garlic", 1.0, "kg")] == [(minor, DAY)]


def test_western_bytes_are_read_where_utf_8_does_not_fit() -> None:
    binder = binder_of([*larder().foods.values(), *larder().settings_table.values(), Food(id="p", name="Piment fumé")])
    for encoding in ("utf-8", "cp1252", "latin-1"):
        content = "food,pack size,price\nPIMENT FUMÉ,50 g,2\n".encode(encoding)
        assert read_price_list(binder, content, priced_on=DAY).refused == ()


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (b"", "it is empty. Choose another file."),
        (b"\n \n,,\n", "it is empty. Choose another file."),
        (
            b"food,price\nGarlic,1\n",
            f"its first row must name the columns {ALL_COLUMNS}, and pack size is not among them. Add it.",
        ),
        (b"food,size,Pack size,price\n", "it has two columns called pack size. Take one out."),
        (b'food,pack size,price\n"Garlic,1 kg,1\n', "a quotation mark is opened and not closed. Close it."),
        (b'food,pack size,price\n"Garlic"x,1 kg,1\n', "line 2 has a quotation mark in the middle of a cell. Mend it."),
        (
            b"food,pack size,price\n" + b"x" * 200_000,
            "line 2 has a cell far too long; a quotation mark may be missing. Mend it.",
        ),
    ],
)
def test_what_is_no_price_list_is_one_sentence(content: bytes, why: str) -> None:
    with pytest.raises(UnreadableTableError) as caught:
        read_price_list(larder(), content)
    assert str(caught.value) == f"This is no price list: {why}"


@given(st.lists(st.lists(st.text(max_size=8), max_size=8), max_size=5))
def test_any_cells_at_all_are_taken_or_refused(rows: list[list[str]]) -> None:
    quoted = ("\n".join(",".join('"' + cell.replace('"', '""') + '"' for cell in row) for row in rows)).encode(
        "utf-8", "replace"
    )
    found = read_price_list(larder(), HEAD.encode() + quoted, priced_on=DAY)
    for row in found.rows:
        assert row.says
    if found.change:
        apply(larder(), found.change)


def test_our_own_guard_against_formulas_is_taken_off_again() -> None:
    binder = binder_of([*larder().foods.values(), *larder().settings_table.values(), Food(id="e", name="=Egg")])
    assert read(HEAD + "'=Egg,,1,each,1,,\n", binder).refused == ()
