"""The budget: groups with their sums, the producer's own lines typed in place, dragged and removed."""

from __future__ import annotations

from datetime import date

import pytest

from binder.desktop.money_page.budget_sheet import ADD_BUDGET_LINE, BudgetSheet
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import add_budget_line, set_tax
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.money_page.latest import DAY, budget_of
from tests.desktop.sheets import after_typing, cell_called, is_even


def shown(binder: Binder) -> BudgetSheet:
    return BudgetSheet(budget_of(binder))


def text(binder: Binder, key: str, column: str) -> str:
    return cell_called(shown(binder), Sight(binder, DAY), key, column).text


@pytest.fixture
def costed(chickpeas: Binder) -> Binder:
    """The chickpea day with gas, paid dearer than was planned, and hands that are only planned."""
    day = chickpeas.shoots[DAY]
    grown = apply(chickpeas, add_budget_line(chickpeas, day, "gas", quantity=2, rate=450, committed=900, actual=960)[0])
    return apply(grown, add_budget_line(grown, grown.shoots[DAY], "hands", heading="Hands", quantity=6, rate=2200)[0])


def line_key(binder: Binder, name: str) -> str:
    return next(f"budget_lines:{line.id}" for line in binder.budget_lines.values() if line.name == name)


def test_food_stands_dish_by_dish_under_its_sum(chickpeas: Binder) -> None:
    assert text(chickpeas, "sum:food", "planned") == "$91.22"
    assert text(chickpeas, "dishes:dish_1", "planned") == "$6.11"
    assert text(chickpeas, "left over in packs:Left over in packs", "planned") == "$53.31"
    assert text(chickpeas, "total", "planned") == "$91.22"
    assert is_even(shown(chickpeas), Sight(chickpeas, DAY))


def test_the_shown_rows_add_up_to_the_sums_shown(costed: Binder) -> None:
    def cents(key: str, column: str) -> int:
        return round(float(text(costed, key, column).lstrip("$") or 0) * 100)

    rows = shown(costed).rows(Sight(costed, DAY))
    food = [row.key for row in rows if row.key.startswith(("dishes:", "left over", "rest of"))]
    assert sum(cents(key, "planned") for key in food) == cents("sum:food", "planned")
    own = [row.key for row in rows if row.key.startswith("budget_lines:")]
    assert sum(cents(key, "planned") for key in own) == cents("sum:own", "planned") == 14_100
    assert cents("total", "planned") == cents("sum:food", "planned") + 14_100


def test_over_and_under_are_words_and_shapes(costed: Binder) -> None:
    over = cell_called(shown(costed), Sight(costed, DAY), line_key(costed, "gas"), "over")
    assert (over.text, over.mark, over.tone) == ("$0.60 over", Mark.OVER, Tone.STOP)
    assert text(costed, line_key(costed, "hands"), "over") == ""
    assert text(costed, "sum:own", "actual") == "$9.60"
    assert text(costed, "sum:own", "over") == "$0.60 over"


@pytest.mark.parametrize(
    ("column", "typed", "field", "value"),
    [
        ("name", " gas cartridges ", "name", "gas cartridges"),
        ("heading", "Gas and power", "heading", "Gas and power"),
        ("quantity", "3½", "quantity", 3.5),
        ("rate", "5.10", "rate", 510),
        ("committed", "", "committed", None),
        ("actual", "$10", "actual", 1000),
        ("taxed", "n", "taxed", False),
    ],
)
def test_every_cell_of_a_line_is_typed_in_place(
    costed: Binder, column: str, typed: str, field: str, value: object
) -> None:
    key = line_key(costed, "gas")
    after = after_typing(shown(costed), Sight(costed, DAY), key, column, typed)
    assert getattr(after.budget_lines[key.partition(":")[2]], field) == value


def test_what_is_worked_out_is_not_typed(costed: Binder) -> None:
    sheet, sight = shown(costed), Sight(costed, DAY)
    for key in ("dishes:dish_1", "sum:food", "total"):
        assert cell_called(sheet, sight, key, "planned").edit is None
        with pytest.raises(NotEditableError):
            sheet.edit(sight, key, "planned", "1")


def test_a_line_is_added_removed_and_moved(costed: Binder) -> None:
    sheet, sight = shown(costed), Sight(costed, DAY)
    after = after_typing(sheet, sight, ADD_BUDGET_LINE, "name", "plates, 12 × 3")
    assert [line.name for line in after.budget_lines.where("shoot", DAY)] == ["gas", "hands", "plates"]
    gas, hands = line_key(costed, "gas"), line_key(costed, "hands")
    for move in (sheet.move_by(sight, gas, 1), sheet.move_before(sight, hands, gas)):
        assert move is not None
        moved = apply(costed, move).budget_lines.where("shoot", DAY)
        assert [line.name for line in moved] == ["hands", "gas"]
    assert sheet.move_before(sight, "dishes:dish_1", gas) is None
    removed = sheet.remove(sight, [gas, "sum:own", hands])
    assert removed is not None
    assert not apply(costed, removed).budget_lines
    assert sheet.remove(sight, ["dishes:dish_1", ADD_BUDGET_LINE]) is None


def test_tax_is_a_part_of_the_sum_only_where_it_is_added(costed: Binder) -> None:
    taxed = apply(costed, set_tax(costed, costed.shoots[DAY], None, 0.07))
    assert text(taxed, "tax:Tax of 7%", "name") == "Tax of 7%, contained in the prices"
    assert text(taxed, "total", "planned") == text(costed, "total", "planned")
    added = apply(taxed, set_shoot(taxed.shoots[DAY], prices_taxed=False))
    assert text(added, "tax:Tax of 7%", "name") == "Tax of 7%"
    assert text(added, "total", "planned") > text(costed, "total", "planned")


def test_a_price_that_is_missing_is_said_and_never_counted_as_nothing(chickpeas: Binder) -> None:
    without = apply(chickpeas, remove("Remove a pack", chickpeas, chickpeas.packs["pack_tahini"]))
    total = cell_called(shown(without), Sight(without, DAY), "total", "quantity")
    assert total.mark is Mark.UNKNOWN
    assert total.text.startswith("not known; $")
    assert total.leads_to is not None
    assert total.leads_to.id == "tahini"


def test_prices_say_of_when_they_are_and_which_are_too_old(chickpeas: Binder) -> None:
    assert text(chickpeas, "note:prices", "name") == (
        "Prices as of Oct 12, 2026 to Oct 20, 2026. None will be older than 60 days."
    )
    day = chickpeas.shoots[DAY]
    strict = apply(chickpeas, set_shoot(day, quote_days=24))
    assert day.on == date(2026, 11, 6)
    old = [row for row in shown(strict).rows(Sight(strict, DAY)) if row.key.startswith("note:old:")]
    assert old
    assert all(row.cells[0].mark is Mark.WARN and row.cells[0].leads_to is not None for row in old)
    assert f"{len(old)} will be older than 24 days:" in text(strict, "note:prices", "name")


def test_stale_figures_are_quiet(chickpeas: Binder) -> None:
    latest = budget_of(chickpeas)
    latest.stale = True
    cell = cell_called(BudgetSheet(latest), Sight(chickpeas, DAY), "total", "planned")
    assert cell.tone is Tone.QUIET


def test_nothing_is_shown_before_figures_are_there(chickpeas: Binder) -> None:
    latest = budget_of(chickpeas)
    latest.value = None
    assert BudgetSheet(latest).rows(Sight(chickpeas, DAY)) == []


def test_a_name_too_long_for_its_column_is_seen_whole(costed: Binder) -> None:
    for key in (line_key(costed, "hands"), "dishes:dish_1"):
        assert cell_called(shown(costed), Sight(costed, DAY), key, "name").folds
