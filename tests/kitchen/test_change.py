"""A binder is a value; a change makes the next one, and its inverse the one before."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.change import Change, ConflictError, Edit, apply, changed, joined
from binder.kitchen.edits.foods import add_quote, adopt_food, set_pack
from binder.kitchen.edits.recipes import add_line, remove_recipe, remove_step, understood
from binder.kitchen.edits.records import insert, remove, set_fields
from binder.kitchen.edits.shoots import add_build, move_dish, remove_dish, set_dish
from binder.kitchen.food import Food, Measure
from binder.kitchen.integrity import BrokenReferenceError, RecipeLoopError, StillUsedError, UnclearLineError
from binder.kitchen.recipe import Line, Step
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder


def test_a_change_and_its_inverse_lead_back() -> None:
    binder = small_binder()
    change = set_fields("Edit tahini", binder.foods["tahini"], name="sesame paste")
    after = apply(binder, change)
    assert after.foods["tahini"].name == "sesame paste"
    assert apply(after, change.inverse()) == binder


def test_the_binder_before_is_untouched() -> None:
    binder = small_binder()
    before = every_record(binder)
    apply(binder, remove_dish(binder, binder.dishes["dish-spread"]))
    assert every_record(binder) == before


def test_tables_that_a_change_does_not_touch_are_shared() -> None:
    binder = small_binder()
    after = apply(binder, set_fields("Edit", binder.foods["tahini"], staple=True))
    assert after.lines is binder.lines
    assert after.memory is not binder.memory


def test_a_change_on_a_record_changed_meanwhile_is_refused() -> None:
    binder = small_binder()
    mine = set_fields("Rename", binder.foods["tahini"], name="mine")
    theirs = apply(binder, set_fields("Rename", binder.foods["tahini"], name="theirs"))
    with pytest.raises(ConflictError, match="has been changed meanwhile"):
        apply(theirs, mine)


def test_the_same_food_brought_in_twice_is_no_conflict() -> None:
    binder = small_binder()
    change = changed("Add", after=[Food(id="new", name="new")])
    assert apply(apply(binder, change), change) == apply(binder, change)


def test_a_reference_must_lead_somewhere() -> None:
    binder = small_binder()
    with pytest.raises(BrokenReferenceError, match="no such record"):
        apply(binder, insert("Add", binder, Line(id="l", step="spread/1", food="ghost")))


def test_what_is_used_cannot_go_and_says_where_it_is_used() -> None:
    binder = small_binder()
    with pytest.raises(StillUsedError, match="Bean spread"):
        apply(binder, remove("Remove", binder, binder.foods["tahini"]))
    with pytest.raises(StillUsedError, match="Onion flatbread"):
        apply(binder, remove_recipe(binder, binder.recipes["spread"]))


@pytest.mark.parametrize(
    "line",
    [{}, {"food": "tahini", "made": "spread"}, {"food": "tahini", "low": 2, "high": 1}, {"food": "tahini", "low": 2}],
)
def test_a_line_is_of_one_thing_and_its_range_runs_upward(line: dict[str, object]) -> None:
    binder = small_binder()
    with pytest.raises(UnclearLineError):
        apply(binder, changed("Add", after=[Line(id="l", step="spread/1", **line)]))  # type: ignore[arg-type]


def test_a_recipe_cannot_contain_itself_and_the_loop_is_named() -> None:
    binder = small_binder()
    with pytest.raises(RecipeLoopError) as refused:
        apply(binder, changed("Add", after=[Line(id="l", step="spread/1", made="bread", low=1, high=1)]))
    assert set(refused.value.loop) == {"Bean spread", "Onion flatbread"}
    assert refused.value.loop[0] == refused.value.loop[-1]


def test_recipes_may_be_nested_deeper_than_python() -> None:
    from binder.kitchen.recipe import Recipe, Step

    depth = 3000
    records = [Recipe(id=f"r{n}", name=f"r{n}", portions=1) for n in range(depth)]
    steps = [Step(id=f"s{n}", recipe=f"r{n}") for n in range(depth)]
    lines = [Line(id=f"l{n}", step=f"s{n}", made=f"r{n + 1}", low=1, high=1) for n in range(depth - 1)]
    binder = binder_of([*records, *steps, *lines])
    with pytest.raises(RecipeLoopError):
        apply(binder, changed("Close", after=[Line(id="close", step=f"s{depth - 1}", made="r0", low=1, high=1)]))


def test_what_an_owner_owns_goes_with_it_and_siblings_close_up() -> None:
    binder = small_binder()
    after = apply(binder, remove_dish(binder, binder.dishes["dish-spread"]))
    assert not after.builds.where("dish", "dish-spread")
    assert after.dishes["dish-bread"].position == 0


def test_builds_up_to_a_step_that_goes_stop_at_the_step_before() -> None:
    binder = small_binder(Build(id="late", dish="dish-bread", position=2, up_to="bread/2"))
    after = apply(binder, remove_step(binder, binder.steps["bread/2"]))
    assert after.builds["late"].up_to == "bread/1"


def test_a_build_up_to_a_first_step_that_goes_never_grows_to_a_whole_one() -> None:
    binder = small_binder(Step(id="bread/3", recipe="bread", position=2))
    after = apply(binder, remove_step(binder, binder.steps["bread/1"]))
    assert after.builds["bread-swap"].up_to == "bread/2"
    assert after.steps["bread/2"].position == 0


def test_a_dish_of_another_recipe_has_no_build_up_to_a_step_of_the_first() -> None:
    binder = small_binder()
    after = apply(binder, set_dish(binder, binder.dishes["dish-bread"], recipe="spread"))
    assert [build.up_to for build in after.builds.where("dish", "dish-bread")] == [None, None]
    renamed = apply(binder, set_dish(binder, binder.dishes["dish-bread"], name="Bread"))
    assert renamed.builds["bread-swap"].up_to == "bread/1"


def test_moving_numbers_the_siblings_anew() -> None:
    binder = small_binder()
    after = apply(binder, move_dish(binder, binder.dishes["dish-bread"], to=0))
    assert [dish.id for dish in after.dishes.where("shoot", "day")] == ["dish-bread", "dish-spread"]
    assert [dish.position for dish in after.dishes.where("shoot", "day")] == [0, 1]


def test_a_price_of_the_same_day_takes_the_place_of_the_first() -> None:
    binder = small_binder()
    quote = binder.quotes["quote-tahini"]
    after = apply(binder, add_quote(binder, binder.packs["pack-tahini"], price=700, on=quote.on))
    assert [q.price for q in after.quotes.where("pack", "pack-tahini")] == [700]


EDITS = st.sampled_from(["rename", "line", "build", "move", "drop", "step", "adopt"])


@given(st.lists(EDITS, max_size=12), st.data())
def test_any_run_of_edits_undone_in_reverse_gives_the_first_binder(names: list[str], data: st.DataObject) -> None:
    first = binder = small_binder()
    done: list[Change] = []
    for name in names:
        change = _edit(binder, name, data)
        if change is not None:
            binder = apply(binder, change)
            done.append(change)
    for change in reversed(done):
        binder = apply(binder, change.inverse())
    assert binder == first


def _edit(binder: Binder, name: str, data: st.DataObject) -> Change | None:  # noqa: PLR0911 - one edit a branch
    if name == "adopt":
        return adopt_food(binder, "garlic")
    if name == "rename":
        food = binder.foods[data.draw(st.sampled_from(sorted(binder.foods)))]
        return set_fields("Rename", food, name=food.name + "!")
    if name == "line":
        step = binder.steps[data.draw(st.sampled_from(sorted(binder.steps)))]
        return add_line(binder, step, "2 tbsp tahini", at=0)
    dishes = binder.dishes.where("shoot", "day")
    if not dishes:
        return None
    dish = data.draw(st.sampled_from(dishes))
    if name == "build":
        return add_build(binder, dish, BuildKind.SPARE)[0]
    if name == "move":
        return move_dish(binder, dish, to=data.draw(st.integers(-1, 3)))
    if name == "drop":
        return remove_dish(binder, dish)
    return (
        remove_step(
            binder,
            data.draw(st.sampled_from(binder.steps.where("recipe", dish.recipe) or [None])) or binder.steps["spread/1"],
        )
        if binder.steps.where("recipe", dish.recipe)
        else None
    )


def test_a_field_called_label_can_be_set_too() -> None:
    binder = small_binder()
    after = apply(binder, set_pack(binder, binder.packs["pack-tahini"], label="big jar"))
    assert after.packs["pack-tahini"].label == "big jar"


def test_joined_changes_are_one() -> None:
    binder = small_binder()
    one = set_fields("a", binder.foods["tahini"], staple=True)
    other = set_fields("b", binder.foods["flour"], staple=True)
    both = joined("both", [one, other])
    after = apply(binder, both)
    assert after.foods["tahini"].staple
    assert after.foods["flour"].staple
    assert both.edits == (*one.edits, *other.edits)
    assert isinstance(both.edits[0], Edit)
    assert replace(after.foods["flour"], staple=False) == binder.foods["flour"]


@pytest.mark.parametrize("typed", ["2 nests noodles", "2 Nest noodles", "2 nest of noodles"])
def test_a_foods_own_word_is_a_unit_of_a_typed_line_however_it_is_written(typed: str) -> None:
    noodles = Food(id="noodles", name="noodles"), Measure(id="n", food="noodles", unit="Nest", grams=60)
    meant = understood(small_binder(*noodles), typed)
    assert (meant.amount.high, meant.amount.unit, meant.source.key) == (2, "nest", "noodles")
