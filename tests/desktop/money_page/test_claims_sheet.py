"""Claims: typed, held against a figure, judged at three levels of prices, their sums unfolded."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.claim_rows import SUM
from binder.desktop.money_page.claims_sheet import ADD_CLAIM, ClaimsSheet
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.claim import Claim, ClaimKind
from binder.kitchen.edits.money import set_claim
from binder.kitchen.edits.records import remove
from binder.kitchen.errors import BinderError
from tests.desktop.money_page.latest import DAY, judged_of
from tests.desktop.sheets import cell_called, is_even, row_called


def shown(binder: Binder) -> ClaimsSheet:
    return ClaimsSheet(judged_of(binder))


def with_claim(binder: Binder, says: str) -> Binder:
    sheet = shown(binder)
    return apply(binder, sheet.edit(Sight(binder, DAY), ADD_CLAIM, "says", says))


def last(binder: Binder) -> Claim:
    return binder.claims.where("shoot", DAY)[-1]


@pytest.fixture
def said(chickpeas: Binder) -> Binder:
    """A claim that does not hold: the stew is at $1.83."""
    return with_claim(chickpeas, "Every plate under $1.75")


def typed(binder: Binder, column: str, text: str) -> Claim:
    sheet = shown(binder)
    change = sheet.edit(Sight(binder, DAY), f"terms:{last(binder).id}", column, text)
    return last(apply(binder, change))


def test_a_sentence_is_typed_and_held_against_what_it_says(said: Binder) -> None:
    sheet, sight, key = shown(said), Sight(said, DAY), last(said).id
    assert cell_called(sheet, sight, f"claims:{key}", "says").text == "Every plate under $1.75"
    terms = row_called(sheet, sight, f"terms:{key}").cells
    assert [cell.text for cell in terms] == [
        "",
        "a portion costs under",
        "every dish",
        "$1.75",
        "$1.83",
        "$1.83",
        "$1.83",
        "$0.08 too much, 4.3%",
    ]
    verdict = cell_called(sheet, sight, f"claims:{key}", "margin")
    assert (verdict.text, verdict.mark, verdict.tone) == ("does not hold", Mark.OVER, Tone.STOP)
    assert is_even(sheet, sight)


def test_what_a_sentence_would_be_held_against_is_said_while_it_is_typed(chickpeas: Binder) -> None:
    sheet, sight = shown(chickpeas), Sight(chickpeas, DAY)
    says = sheet.understood(sight, ADD_CLAIM, "says", "Every plate under $1.75")
    assert says == "held against: a portion costs under $1.75, every dish"
    assert sheet.understood(sight, ADD_CLAIM, "says", "  ") == ""


def test_a_claim_that_holds_says_so_with_its_margin(chickpeas: Binder) -> None:
    held = with_claim(chickpeas, "Every plate under $2")
    terms = row_called(shown(held), Sight(held, DAY), f"terms:{last(held).id}").cells
    assert all(cell.mark is Mark.WITHIN for cell in terms[4:7])
    assert terms[7].text == "$0.17 to spare, 8.7%"
    assert cell_called(shown(held), Sight(held, DAY), f"claims:{last(held).id}", "margin").text == "holds"


def test_the_sum_unfolds_beneath_and_adds_up(said: Binder) -> None:
    sheet, sight, key = shown(said), Sight(said, DAY), last(said).id
    link = cell_called(sheet, sight, f"{SUM}:{key}", "margin")
    assert link.text == "show the sum"
    assert link.leads_to is not None
    sheet.turn(link.leads_to.id)
    rows = [row for row in sheet.rows(sight) if row.key.startswith(f"{SUM}:{key}#")]
    texts = [row.cells[5].text for row in rows]
    parts = [0 if text == "under $0.01" else round(float(text.lstrip("$")) * 100) for text in texts]
    assert len(rows) > 5
    assert sum(parts[:-1]) == parts[-1] == 183
    assert rows[-1].cells[1].text == "Smoky tomato stew"
    sheet.turn(key)
    assert not [row for row in sheet.rows(sight) if row.key.startswith(f"{SUM}:{key}#")]


@pytest.mark.parametrize(
    ("column", "text", "fields"),
    [
        ("says", "an amount", {"kind": ClaimKind.AMOUNT_ABOUT, "unit": "tbsp", "dish": None}),
        ("says", "everything costs", {"kind": ClaimKind.ALL_UNDER, "target": 9000.0}),
        ("says", "everything comes", {"kind": ClaimKind.ALL_FROM_BASE, "target": 0.0}),
        ("says", "a dish takes", {"kind": ClaimKind.MINUTES_UNDER, "target": 30.0}),
        ("says", "a portion", {"kind": ClaimKind.PORTION_UNDER, "target": 175.0}),
        ("about", "herb", {"dish": "dish_2"}),
        ("about", "every dish", {"dish": None}),
        ("target", "1.50", {"target": 150.0}),
    ],
)
def test_what_it_is_held_against_is_chosen_or_typed(
    said: Binder, column: str, text: str, fields: dict[str, object]
) -> None:
    claim = typed(said, column, text)
    assert {name: getattr(claim, name) for name in fields} == fields


def test_an_amount_of_any_recipe_is_held_about_a_price(said: Binder) -> None:
    about = apply(said, set_claim(last(said), kind=ClaimKind.AMOUNT_ABOUT, recipe="herb_fritters", unit="tbsp"))
    claim = typed(about, "about", "2 tsp of Silky hummus with lemon")
    assert (claim.recipe, claim.amount, claim.unit) == ("silky_hummus_with_lemon", 2.0, "tsp")
    assert typed(about, "target", "0.12 ± 15 %").tolerance == pytest.approx(0.15)
    assert typed(about, "target", "0.12 ± 5").tolerance == pytest.approx(0.05)
    assert typed(about, "target", "0.12").tolerance == pytest.approx(0.1)
    for wrong in ("a spoonful", "2 tsp of Moon cake"):
        with pytest.raises(BinderError):
            typed(about, "about", wrong)


def test_minutes_are_typed_as_times(said: Binder) -> None:
    timed = apply(said, set_claim(last(said), kind=ClaimKind.MINUTES_UNDER, target=30.0))
    assert typed(timed, "target", "1 h 15").target == 75
    assert cell_called(shown(timed), Sight(timed, DAY), f"terms:{last(timed).id}", "target").text == "30 min"


def test_the_base_itself_says_what_it_is_held_against(chickpeas: Binder) -> None:
    bag = with_claim(chickpeas, "All from one bag")
    sheet, sight, key = shown(bag), Sight(bag, DAY), last(bag).id
    target = cell_called(sheet, sight, f"terms:{key}", "target")
    assert (target.text, target.edit) == ("1000 g", None)
    assert cell_called(sheet, sight, f"terms:{key}", "lowest").text == ""
    with pytest.raises(BinderError):
        typed(bag, "target", "900")
    with pytest.raises(BinderError):
        typed(bag, "about", "herb fritters")


def test_figures_are_not_typed_and_a_sentence_is_not_emptied(said: Binder) -> None:
    sheet, sight, key = shown(said), Sight(said, DAY), last(said).id
    for column in ("lowest", "margin"):
        with pytest.raises(NotEditableError):
            sheet.edit(sight, f"terms:{key}", column, "1")
    with pytest.raises(BinderError):
        sheet.edit(sight, f"claims:{key}", "says", "  ")
    with pytest.raises(BinderError):
        sheet.edit(sight, ADD_CLAIM, "says", "")
    edited = apply(said, sheet.edit(sight, f"claims:{key}", "says", "Every plate for pennies"))
    assert (last(edited).says, last(edited).target) == ("Every plate for pennies", 175.0)


def test_claims_are_moved_and_removed_by_any_of_their_rows(said: Binder) -> None:
    both = with_claim(said, "All from one bag")
    first, second = both.claims.where("shoot", DAY)
    sheet, sight = shown(both), Sight(both, DAY)
    for change in (
        sheet.move_by(sight, f"terms:{first.id}", 1),
        sheet.move_before(sight, f"claims:{second.id}", f"claims:{first.id}"),
    ):
        assert change is not None
        assert [one.id for one in apply(both, change).claims.where("shoot", DAY)] == [second.id, first.id]
    gone = sheet.remove(sight, [f"claims:{first.id}", f"terms:{first.id}", f"{SUM}:{first.id}#3"])
    assert gone is not None
    assert gone.label == "Remove a claim"
    assert list(apply(both, gone).claims) == [second.id]
    assert sheet.remove(sight, [ADD_CLAIM]) is None
    assert sheet.move_by(sight, ADD_CLAIM, 1) is None


def test_before_it_is_judged_a_claim_says_that_it_is_being_worked_out(said: Binder) -> None:
    latest = judged_of(said)
    latest.value = None
    latest.stale = True
    sheet = ClaimsSheet(latest)
    assert cell_called(sheet, Sight(said, DAY), f"claims:{last(said).id}", "margin").text == "being worked out"
    assert is_even(sheet, Sight(said, DAY))


def test_a_claim_that_is_not_known_leads_to_what_is_missing(said: Binder) -> None:

    lacking = apply(said, remove("x", said, said.packs["pack_tomatoes_plum"]))
    sheet, sight, key = shown(lacking), Sight(lacking, DAY), last(lacking).id
    assert cell_called(sheet, sight, f"claims:{key}", "margin").mark is Mark.UNKNOWN
    words = cell_called(sheet, sight, f"{SUM}:{key}", "says")
    assert words.leads_to is not None
    assert words.leads_to.id == "tomatoes_plum"
