"""A recipe's steps and lines: what they show, and what typing, removing and moving there do."""

from __future__ import annotations

import pytest

from binder.desktop.dishes_page.recipe_body import ADD_STEP, NOTES, RecipeBody, cell_of_step
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.day import ApplianceKind
from binder.kitchen.edits.records import remove
from binder.kitchen.errors import BinderError
from binder.kitchen.recipe import Heat, Step
from binder.kitchen.record import fields_of
from tests.desktop.sheets import after_typing, cell_called, is_even, row_called

BODY = RecipeBody()


@pytest.fixture
def fritters(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "herb_fritters")


def lines_of(binder: Binder, step: str) -> list[str]:
    return [line.food or "" for line in binder.lines.where("step", step)]


def key_of_line(sight: Sight, step: str, at: int) -> str:
    return f"lines:{sight.binder.lines.where('step', step)[at].id}"


def typed_at(sight: Sight, step: str, field: str) -> str:
    """What a fact's cell shows."""
    at = cell_of_step(step, field)
    return cell_called(BODY, sight, at.row, at.column).text


def test_a_step_is_facts_a_paragraph_its_lines_and_room_for_the_next(fritters: Sight) -> None:
    keys = [row.key.partition(":")[0] for row in BODY.rows(fritters)]
    first = keys[: keys.index("add-line") + 1]
    assert first == ["steps", "more", "text", *["lines"] * 9, "add-line"]
    assert keys[-2:] == ["add", NOTES]
    assert is_even(BODY, fritters)


def test_facts_are_short(fritters: Sight) -> None:
    shown = {
        column.id: cell.text
        for column, cell in zip(BODY.columns, row_called(BODY, fritters, "steps:herb_fritters_2").cells, strict=True)
    }
    assert shown["number"] == "3"
    assert shown["title"] == "Fry"
    assert shown["hands_on_minutes"] == "12 min"
    assert shown["station"] == "stove"
    assert shown["heat"] == "oil 347 °F"
    assert shown["weight"] == "on camera"
    labels = [cell.label for cell in row_called(BODY, fritters, "more:herb_fritters_2").cells if cell.edit is not None]
    assert labels == ["tools", "caution", "takes", "skill", "fit to film"]
    assert typed_at(fritters, "herb_fritters_2", "hazards") == "Hot oil"


def test_the_margin_has_weight_cost_and_share(fritters: Sight) -> None:
    key = key_of_line(fritters, "herb_fritters_0", 1)
    weight, cost, share = row_called(BODY, fritters, key).cells[-3:]
    assert cell_called(BODY, fritters, key, "title").text == "½ cup onion, chopped"
    assert (weight.text, weight.unit) == ("89", "g")
    assert cost.text == "$0.05"
    assert (share.text, share.unit) == ("4", "%")


def test_shares_of_a_portion_come_to_a_hundred(fritters: Sight) -> None:
    shares = [row.cells[-1].text for row in BODY.rows(fritters) if row.key.startswith("lines:")]
    known = [int(share) for share in shares if share.isdigit()]
    assert sum(known) == pytest.approx(100, abs=len(shares))


def test_a_line_without_an_amount_is_not_counted(fritters: Sight) -> None:
    key = key_of_line(fritters, "herb_fritters_3", 2)
    assert row_called(BODY, fritters, key).cells[-2].text == "to taste"


def test_a_missing_price_leads_to_the_food(fritters: Sight) -> None:
    binder = apply(fritters.binder, remove("", fritters.binder, fritters.binder.quotes["quote_onion"]))
    sight = Sight(binder, "day", "herb_fritters")
    cost = row_called(BODY, sight, key_of_line(sight, "herb_fritters_0", 1)).cells[-2]
    assert cost.text == "not known"
    assert cost.mark is Mark.UNKNOWN
    assert cost.leads_to == Place("foods", "onion")


def test_what_is_shown_for_editing_is_understood_when_nothing_is_changed(chickpeas: Binder) -> None:
    for recipe in chickpeas.recipes:
        sight = Sight(chickpeas, "day", recipe)
        for row in BODY.rows(sight):
            for column, cell in zip(BODY.columns, row.cells, strict=True):
                if cell.edit:
                    assert BODY.edit(sight, row.key, column.id, cell.edit).empty, (row.key, column.id, cell.edit)


@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        ("Deep-fry", "title", "Deep-fry"),
        ("Fry it.", "text", "Fry it."),
        ("1 h 10", "hands_on_minutes", 70.0),
        ("", "waiting_minutes", 0.0),
        (" fryer ", "station", "fryer"),
        ("oil 350", "celsius", 176.6667),
        ("oven 200 °C", "heat", Heat.OVEN),
        ("spider, wire rack", "equipment", ("spider", "wire rack")),
        ("hot oil, Sharp blade", "hazards", ("hot_oil", "sharp_blade")),
        ("", "hazards", ()),
        ("off", "on_camera", False),
        ("10 min", "hold_minutes", 10.0),
        ("2 days", "hold_minutes", 2880.0),
        ("", "hold_minutes", None),
        ("fryer", "uses", ApplianceKind.FRYER),
        ("burners × 2", "places", 2),
        ("3", "places", 3),
        ("", "uses", None),
        ("pastry", "skill", "pastry"),
    ],
)
def test_typing_edits_a_step(fritters: Sight, text: str, field: str, value: object) -> None:
    at = cell_of_step("herb_fritters_2", field)
    binder = after_typing(BODY, fritters, at.row, at.column, text)
    assert getattr(binder.steps["herb_fritters_2"], field) == value


def test_every_fact_of_a_step_has_a_cell(fritters: Sight) -> None:
    for field in {field.name for field in fields_of(Step)} - {"id", "recipe", "position"}:
        at = cell_of_step("herb_fritters_2", field)
        assert cell_called(BODY, fritters, at.row, at.column).edit is not None, field


def test_what_a_step_takes_is_an_appliance_and_a_count(fritters: Sight) -> None:
    at = cell_of_step("herb_fritters_2", "uses")
    binder = after_typing(BODY, fritters, at.row, at.column, "burners 2")
    assert typed_at(Sight(binder, "day", "herb_fritters"), "herb_fritters_2", "uses") == "burners × 2"
    for text in ("moon 2", "2 burners and more", "fr"):
        with pytest.raises(BinderError):
            BODY.edit(fritters, at.row, at.column, text)


def test_a_hazard_no_one_knows_is_refused_with_those_there_are(fritters: Sight) -> None:
    with pytest.raises(BinderError, match="Hot oil"):
        BODY.edit(fritters, "more:herb_fritters_2", "hands_on_minutes", "dragons")


def test_a_line_is_typed_anew_and_an_empty_one_is_taken_out(fritters: Sight) -> None:
    key = key_of_line(fritters, "herb_fritters_0", 1)
    binder = after_typing(BODY, fritters, key, "title", "2 cups minced onion")
    line = binder.lines.where("step", "herb_fritters_0")[1]
    assert (line.low, line.unit, line.preparation) == (2.0, "cup", "minced")
    assert len(lines_of(after_typing(BODY, fritters, key, "title", " "), "herb_fritters_0")) == 8


def test_a_step_and_notes_are_written(fritters: Sight) -> None:
    binder = after_typing(BODY, fritters, ADD_STEP, "title", "Serve at once.")
    assert [step.text for step in binder.steps.where("recipe", "herb_fritters")][-1] == "Serve at once."
    assert after_typing(BODY, fritters, NOTES, "title", "From the test kitchen.").recipes["herb_fritters"].notes


def test_steps_and_lines_are_removed_together(fritters: Sight) -> None:
    rows = [
        "steps:herb_fritters_0",
        "more:herb_fritters_0",
        "text:herb_fritters_0",
        key_of_line(fritters, "herb_fritters_0", 0),
        key_of_line(fritters, "herb_fritters_3", 0),
    ]
    change = BODY.remove(fritters, rows)
    assert change is not None
    binder = apply(fritters.binder, change)
    assert [step.title for step in binder.steps.where("recipe", "herb_fritters")] == ["Rest", "Fry", "Dress"]
    assert len(binder.lines.where("step", "herb_fritters_3")) == 2
    assert apply(binder, change.inverse()) == fritters.binder


def test_lines_side_by_side_are_removed_together(fritters: Sight) -> None:
    change = BODY.remove(fritters, [key_of_line(fritters, "herb_fritters_0", at) for at in (0, 1, 8)])
    assert change is not None
    left = apply(fritters.binder, change).lines.where("step", "herb_fritters_0")
    assert [line.position for line in left] == list(range(6))


def test_a_build_up_to_what_goes_stays_the_smallest_it_can_be(fritters: Sight) -> None:
    """Never a whole dish, which would be bought for."""
    assert fritters.binder.builds["dish_2_swap"].up_to == "herb_fritters_0"
    for rows in (["text:herb_fritters_0"], ["steps:herb_fritters_0", key_of_line(fritters, "herb_fritters_3", 0)]):
        change = BODY.remove(fritters, rows)
        assert change is not None
        assert apply(fritters.binder, change).builds["dish_2_swap"].up_to == "herb_fritters_1"
    both = BODY.remove(fritters, ["text:herb_fritters_0", "text:herb_fritters_1"])
    assert both is not None
    assert apply(fritters.binder, both).builds["dish_2_swap"].up_to == "herb_fritters_2"


def test_a_line_moves_over_the_edge_of_its_step(fritters: Sight) -> None:
    last = key_of_line(fritters, "herb_fritters_0", 8)
    change = BODY.move_by(fritters, last, 1)
    assert change is not None
    binder = apply(fritters.binder, change)
    assert lines_of(binder, "herb_fritters_1") == ["baking_soda"]
    back = BODY.move_by(Sight(binder, "day", "herb_fritters"), last, -1)
    assert back is not None
    assert lines_of(apply(binder, back), "herb_fritters_0")[-1] == "baking_soda"


def test_a_line_is_dropped_before_another_in_any_step(fritters: Sight) -> None:
    moved = key_of_line(fritters, "herb_fritters_0", 0)
    change = BODY.move_before(fritters, moved, key_of_line(fritters, "herb_fritters_3", 1))
    assert change is not None
    binder = apply(fritters.binder, change)
    assert lines_of(binder, "herb_fritters_3") == ["tahini", "chickpeas_soaked", "lemon", "sea_salt_flakes"]
    within = BODY.move_before(fritters, moved, key_of_line(fritters, "herb_fritters_0", 3))
    assert within is not None
    assert lines_of(apply(fritters.binder, within), "herb_fritters_0")[:3] == [
        "onion",
        "flat_leaf_parsley",
        "chickpeas_soaked",
    ]


def test_a_step_is_dropped_before_another_or_at_the_end(fritters: Sight) -> None:
    change = BODY.move_before(fritters, "steps:herb_fritters_3", "text:herb_fritters_1")
    assert change is not None
    titles = [step.title for step in apply(fritters.binder, change).steps.where("recipe", "herb_fritters")]
    assert titles == ["Grind", "Dress", "Rest", "Fry"]
    last = BODY.move_before(fritters, "steps:herb_fritters_0", ADD_STEP)
    assert last is not None
    assert apply(fritters.binder, last).steps["herb_fritters_0"].position == 3
