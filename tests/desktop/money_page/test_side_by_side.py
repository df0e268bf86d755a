"""Two shoots of one binder beside each other."""

from __future__ import annotations

import pytest

from binder.desktop.latest import Latest
from binder.desktop.money_page.side_by_side import SideBySide, others_of, sides
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import add_budget_line, set_tax
from binder.kitchen.edits.shoots import add_dish, add_shoot, set_shoot
from tests.desktop.money_page.latest import DAY
from tests.desktop.sheets import cell_called, is_even


@pytest.fixture
def two(chickpeas: Binder) -> Binder:
    """The chickpea day, and another with the stew alone."""
    change, shoot = add_shoot(chickpeas, "Second day")
    grown = apply(chickpeas, change)
    grown = apply(grown, add_dish(grown, shoot, grown.recipes["smoky_tomato_stew"])[0])
    return apply(grown, add_budget_line(grown, shoot, "gas", rate=700)[0])


def shown(binder: Binder) -> SideBySide:
    return SideBySide(Latest(sides(binder, DAY, "second_day")))


def row_of(binder: Binder, name: str) -> list[str]:
    rows = shown(binder).rows(Sight(binder, DAY))
    return next([cell.text for cell in row.cells] for row in rows if row.cells[0].text == name)


def test_lines_of_one_name_stand_in_one_row(two: Binder) -> None:
    assert row_of(two, "Herb fritters")[2:] == ["–", "−$10.73"]
    assert row_of(two, "gas") == ["gas", "–", "$7.00", "+$7.00"]
    assert [column.title for column in shown(two).columns_for(Sight(two, DAY))][1:3] == [
        two.shoots[DAY].name,
        "Second day",
    ]
    assert is_even(shown(two), Sight(two, DAY))


def test_the_difference_in_all_is_that_of_the_rows(two: Binder) -> None:
    known = apply(two, set_shoot(two.shoots["second_day"], base="chickpeas_dried", base_amount=1.0, base_unit="kg"))
    rows = [row for row in shown(known).rows(Sight(known, DAY)) if not row.key.startswith("heading")]

    def cents(text: str) -> int:
        return 0 if text in {"alike", "–"} else round(float(text.replace("$", "").replace("−", "-")) * 100)

    differences = [cents(row.cells[3].text) for row in rows]
    assert sum(differences[:-1]) == differences[-1] != 0


def test_tax_that_prices_contain_is_said_to_be_contained(two: Binder) -> None:
    taxed = apply(two, set_tax(two, two.shoots[DAY], None, 0.07))
    assert row_of(taxed, "Tax of 7%, contained in the prices")[2] == "–"
    added = apply(taxed, set_shoot(taxed.shoots[DAY], prices_taxed=False))
    assert row_of(added, "Tax of 7%")[2] == "–"


def test_the_other_shoots_are_offered_by_their_days(two: Binder) -> None:
    assert others_of(two, DAY) == [("second_day", "Second day")]
    assert others_of(two, "second_day") == [(DAY, two.shoots[DAY].name)]
    assert cell_called(shown(two), Sight(two, DAY), "total", "left").text == "$91.22"
