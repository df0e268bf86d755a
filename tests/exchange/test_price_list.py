"""A price list becomes one change or none, and each row says what became of it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.exchange.price_list import Fate, PriceList, preview_prices, read_price_list
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import UnreadableTableError
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


NEEDED = "it needs food, pack size and price, each with its heading. Name it so, or say which column it is."
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
    assert (row.fate, row.says) == (Fate.CHANGED, "Chickpeas, dried, 1 kg: $3.79 on Mar 14, 2026; it was $3.49")
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


@pytest.mark.parametrize("cell", ["free", "-1", "1e5", "NaN", "inf", "3.49.1,2", "١٢", "99999999999999999999", "=1+1"])
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
            f"none of its columns is called “pack size”; {NEEDED}",
        ),
        (
            b"food,size,Pack size,price\n",
            "it has two columns for the pack size, “size” and “Pack size”. Take one out, or say which it is.",
        ),
        (b"%PDF-1.7\n", "it is a page, a picture or another document. Save its table as .csv or .xlsx."),
        (b'[{"food": "Garlic"}]', "it is a page, a picture or another document. Save its table as .csv or .xlsx."),
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


@pytest.mark.parametrize(
    ("row", "currency", "other"),
    [
        ("Garlic,,1,kg,3.49 €,,", "USD", "€"),
        ("Garlic,,1,kg,EUR 3.49,,", "USD", "EUR"),
        ("Garlic,,1,kg,CA$3.49,,", "USD", "CA$"),
        ("Garlic,,1,kg,$3.49 CAD,,", "USD", "CAD"),
        ("Garlic,,1,kg,$3.49,,", "EUR", "$"),
        ("Garlic,,1,kg,£3.49,,", "EUR", "£"),
    ],
)
def test_a_price_in_another_currency_is_not_taken_for_ones_own(row: str, currency: str, other: str) -> None:
    assert refusal(row, larder(currency=currency)) == (
        f"its price is in {other}, and the binder reckons in {currency}. Change it over, or take the row out."
    )


def test_two_currencies_in_one_file_are_told_apart_row_by_row() -> None:
    text = "food,pack size,price,currency\nGarlic,1 kg,3,USD\nGarlic,2 kg,3,eur\nGarlic,3 kg,3,\nGarlic,4 kg,$3,US$\n"
    found = read(text, take_good_rows=True)
    assert [row.fate for row in found.rows] == [Fate.NEW, Fate.REFUSED, Fate.NEW, Fate.NEW]
    assert "its price is in eur, and the binder reckons in USD" in found.rows[1].says


@pytest.mark.parametrize("heading", ["price (EUR)", "Price €", "price in EUR", "Price [€]"])
def test_a_heading_that_names_another_currency_refuses_every_row_under_it(heading: str) -> None:
    found = read(f"food,pack size,{heading}\nGarlic,1 kg,3\n")
    assert "and the binder reckons in USD" in found.rows[0].says
    own = read_price_list(larder(currency="EUR"), f"food,pack size,{heading}\nGarlic,1 kg,3\n".encode(), priced_on=DAY)
    assert own.refused == ()


def test_a_unit_in_the_heading_holds_for_the_sizes_without_one() -> None:
    binder = imported("food,size (g),price\nGarlic,500,2\nGarlic,1 kg,3\n")
    assert {key for key in prices(binder) if key[0] == "garlic"} == {("garlic", 500.0, "g"), ("garlic", 1.0, "kg")}


def test_columns_may_be_chosen_by_hand_where_the_headings_say_nothing() -> None:
    content = b"Ware;Gr\xf6\xdfe;Preis\nGarlic;500 g;2,10\n"
    table = price_table(content)
    with pytest.raises(UnreadableTableError, match="none of its columns is called “food”, “pack size” or “price”"):
        preview_prices(larder(), table, priced_on=DAY)
    found = preview_prices(
        larder("de_DE", "EUR"), table, columns={"food": 0, "pack size": 1, "price": 2}, priced_on=DAY
    )
    assert [(row.number, row.fate) for row in found.rows] == [(2, Fate.NEW)]


def test_a_list_without_headings_begins_with_its_first_row() -> None:
    table = price_table(b"Garlic,500 g,2.10\nGarlic,1 kg,4\n")
    found = preview_prices(larder(), table, columns={"food": 0, "pack size": 1, "price": 2}, priced_on=DAY)
    assert [row.number for row in found.rows] == [1, 2]
    assert found.refused == ()


def test_a_guessed_column_may_be_left_out() -> None:
    table = price_table(b"food,pack size,price,label\nGarlic,500 g,2.10,Net\n")
    (edit, *_others) = preview_prices(larder(), table, columns={"label": None}, priced_on=DAY).change.edits  # type: ignore[union-attr]
    assert getattr(edit.after, "label", None) == ""


def test_titles_above_the_headings_are_left_out() -> None:
    found = read("Prices of spring;;\n;;\nfood;pack size;price\nGarlic;500 g;2.10\n")
    assert [(row.number, row.fate) for row in found.rows] == [(4, Fate.NEW)]


def test_a_preview_changes_nothing_and_says_which_columns_it_took() -> None:
    binder = larder()
    found = preview_prices(binder, price_table((HEAD + "Garlic,,1,kg,1,,\n").encode()), priced_on=DAY)
    assert binder == larder()
    assert found.layout.places == {"food": 0, "store": 1, "pack size": 2, "unit": 3, "price": 4, "date": 5, "label": 6}
    assert found.counts == {Fate.NEW: 1}


def test_a_new_pack_is_said_to_be_new() -> None:
    rows = read(
        HEAD + "Chickpeas, dried,Corner store,1,kg,4,2026-04-01,\n".replace("Chickpeas, dried", "Garbanzos")
    ).rows
    assert rows[0].says == "Chickpeas, dried, 1 kg: $4.00 on Apr 1, 2026"
    assert read(HEAD + "Garlic,,500,g,2,,\n").rows[0].says == "Garlic, 500 g: $2.00 on Mar 14, 2026; a new pack"


def test_progress_goes_from_nothing_to_nearly_all_and_may_stop_the_reading() -> None:
    content = (HEAD + "Garlic,,1,kg,1,,\n" * 3000).encode()
    told: list[float] = []
    read_price_list(larder(), content, priced_on=DAY, progress=told.append)
    assert told == sorted(told)
    assert 0 <= told[0] < 0.5 < told[-1] <= 1

    class EnoughError(Exception):
        pass

    def stop(share: float) -> None:
        if share > 0.6:
            raise EnoughError

    with pytest.raises(EnoughError):
        read_price_list(larder(), content, priced_on=DAY, progress=stop)


def test_many_labels_of_one_pack_size_take_no_longer_than_many_sizes() -> None:
    rows = "".join(f"Garlic,,1,kg,1,,label {number}\n" for number in range(20_000))
    found = read(HEAD + rows)
    assert found.counts == {Fate.NEW: 20_000}
    assert found.change is not None
    assert len({edit.id for edit in found.change.edits}) == 40_000


def test_a_list_longer_than_any_price_list_is_refused() -> None:
    with pytest.raises(UnreadableTableError, match="more than 100,000 rows"):
        read_price_list(larder(), b"food,pack size,price\n" + b"Garlic,1 kg,1\n" * 100_000)


def test_a_row_says_what_was_read_and_not_what_was_written() -> None:
    rows = read(HEAD + "Garlic,,2x500,g,3.4999,,\nGarlic,,1,dozen,$6,4 March 2026,\n").rows
    assert [row.says for row in rows] == [
        "Garlic, 1000 g: $3.50 on Mar 14, 2026, rounded; a new pack",
        "Garlic, 12 pieces: $6.00 on Mar 4, 2026; a new pack",
    ]


def test_a_list_of_headings_alone_says_so() -> None:
    assert read(HEAD).summary() == "The list has headings and no rows under them: nothing is taken."


def test_a_price_whose_comma_has_become_a_label_is_not_taken() -> None:
    text = "food,pack size,price,label\nGarlic,1 kg,3,49\nGarlic,2 kg,1,234.50\n"
    assert [row.says for row in read(text).rows] == [
        "its price, 3, and label, 49, may be one price. Put 3,49 in quotation marks.",
        "its price, 1, and label, 234.50, may be one price. Put 1,234.50 in quotation marks.",
    ]
    assert read(text.replace(",", ";")).rows[0].fate is Fate.NEW
    assert read("food,pack size,label,price\nGarlic,1 kg,49,3\n").refused == ()


def test_a_unit_said_twice_is_one_unit() -> None:
    assert ("garlic", 500.0, "g") in prices(imported("food,pack size,unit,price\nGarlic,500 g,g,3\n"))


def test_dates_are_read_in_the_order_their_list_shows() -> None:
    text = "food,pack size,price,date\nGarlic,1 kg,3,13/03/2026\nGarlic,2 kg,3,03/04/2026\n"
    assert prices(imported(text))[("garlic", 2.0, "kg")] == [(300, date(2026, 4, 3))]
    told = "food,pack size,price,date (DD/MM/YYYY)\nGarlic,2 kg,3,03/04/2026\n"
    assert prices(imported(told))[("garlic", 2.0, "kg")] == [(300, date(2026, 4, 3))]


def test_a_date_before_any_price_list_is_refused() -> None:
    assert refusal("Garlic,,1,kg,3,0026-03-14,") == "its date, 0026-03-14, is too long ago. Correct it."


@pytest.mark.parametrize("heading", ["price (euros)", "price (cents)", "price in pence", "price (Canadian dollars)"])
def test_a_heading_that_names_money_in_words_is_heeded(heading: str) -> None:
    assert "and the binder reckons in USD" in read(f"food,pack size,{heading}\nGarlic,1 kg,3\n").rows[0].says


@pytest.mark.parametrize("heading", ["price (dollars)", "price in US dollars", "price (net)", "cost"])
def test_a_heading_that_names_ones_own_money_or_none_is_taken(heading: str) -> None:
    assert read(f"food,pack size,{heading}\nGarlic,1 kg,3\n").refused == ()


@pytest.mark.parametrize("heading", ["price per lb", "price (1000s)", "price (per 100 g)"])
def test_a_price_that_is_not_of_a_pack_is_no_price_column(heading: str) -> None:
    with pytest.raises(UnreadableTableError, match="none of its columns is called “price”"):
        read(f"food,pack size,{heading}\nGarlic,1 kg,3\n")


def test_as_much_in_another_unit_is_the_same_pack() -> None:
    text = HEAD + "Garbanzos,Corner store,1000,g,3.79,2026-04-01,\nGarlic,,16,oz,2,,\nGarlic,,1,lb,2,2026-04-01,\n"
    assert prices(imported(text)) == {
        ("chickpeas", 1.0, "kg"): [(349, DAY), (379, date(2026, 4, 1))],
        ("garlic", 16.0, "oz"): [(200, DAY), (200, date(2026, 4, 1))],
    }
    assert len(imported(HEAD + "Garlic,,1,braid,2,,\nGarlic,,1,each,2,,\n").packs) == 3


def test_a_pack_in_the_unit_of_the_row_comes_before_one_of_as_much() -> None:
    both = [*larder().foods.values(), *larder().settings_table.values()]
    packs = [
        Pack(id="kilo", food="garlic", size=1.0, unit="kg"),
        Pack(id="grams", food="garlic", size=1000.0, unit="g"),
    ]
    found = read("food,pack size,price\nGarlic,1000 g,2\n", binder_of([*both, *packs]))
    assert found.change is not None
    assert [getattr(edit.after, "pack", None) for edit in found.change.edits] == ["grams"]


def test_one_amount_in_two_units_with_two_prices_is_refused() -> None:
    found = read(HEAD + "Garlic,,1,kg,2,,\nGarlic,,1000,g,3,,\n")
    assert found.refused[0].says == "row 2 has another price for the same pack and day. Take one of them out."
