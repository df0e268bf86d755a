"""Builds proposed, and how many more takes there could be."""

from __future__ import annotations

from dataclasses import replace

from binder.desktop.latest import Latest
from binder.desktop.sheet.cell import Mark, Tone
from binder.desktop.sheet.sheet import Sight
from binder.desktop.shoot_page.dish_figures import DishFigures, add_proposed, dish_figures
from binder.desktop.shoot_page.more_takes import MoreTakes
from binder.desktop.shoot_page.proposed import ProposedBuilds
from binder.figures.missing import Place
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.food import Food
from binder.kitchen.recipe import Line
from binder.kitchen.shoot import BuildKind
from tests.desktop.sheets import cell_called, is_even
from tests.kitchen_binder import small_binder


def asking(grams: float = 1000, spares: int = 1) -> Binder:
    """The spread waits an hour after its first step; its swap-out goes to the end instead."""
    small = small_binder()
    return small_binder(
        replace(small.shoots["day"], base_amount=grams, base_unit="g", spares=spares),
        replace(small.steps["spread/1"], waiting_minutes=60),
        replace(small.builds["spread-swap"], up_to=None),
    )


def latest(binder: Binder, *, stale: bool = False) -> Latest[DishFigures]:
    return Latest(dish_figures(binder, "dish-spread"), stale)


def test_each_proposed_build_says_why() -> None:
    binder = asking()
    sheet, sight = ProposedBuilds(latest(binder)), Sight(binder, "day", "dish-spread")
    assert [[cell.text for cell in row.cells[1:]] for row in sheet.rows(sight)] == [
        ["swap-out", "1 Blend", "Step 1 waits 60 min, longer than the 4 min the camera stays."],
        ["beauty", "the end", "A finished one for the closing shot."],
        ["spare", "the end", "The shoot asks for 1 spare of each dish."],
    ]
    assert is_even(sheet, sight)


def test_they_are_added_in_one_change_and_a_users_own_stay() -> None:
    binder = asking()
    own = binder.builds.where("dish", "dish-spread")
    change = add_proposed(binder, "dish-spread")
    assert change is not None
    assert change.label == "Add the proposed builds of Bean spread"
    after = apply(binder, change)
    builds = after.builds.where("dish", "dish-spread")
    assert builds[: len(own)] == own
    assert [build.kind for build in builds[len(own) :]] == [BuildKind.SWAP_OUT, BuildKind.BEAUTY, BuildKind.SPARE]
    assert [build.position for build in builds] == list(range(len(builds)))
    assert apply(after, change.inverse()) == binder
    assert add_proposed(after, "dish-spread") is None


def test_what_the_base_does_not_suffice_for_is_left_out_with_the_reason() -> None:
    binder = asking(grams=650)
    figures = latest(binder)
    refused = [offered.refused for offered in (figures.value.offered if figures.value else ())]
    assert refused[:2] == ["", ""]
    assert refused[2].startswith("There is not enough cooked beans left for one more of dish 1")
    change = add_proposed(binder, "dish-spread")
    assert change is not None
    kinds = [build.kind for build in apply(binder, change).builds.where("dish", "dish-spread")]
    assert kinds.count(BuildKind.SPARE) == 0
    row = ProposedBuilds(figures).rows(Sight(binder, "day", "dish-spread"))[2]
    assert row.cells[3].mark is Mark.SHORT


def test_a_swap_out_that_leaves_the_base_short_says_so() -> None:
    binder = asking(grams=400)
    row = ProposedBuilds(latest(binder)).rows(Sight(binder, "day", "dish-spread"))[0]
    assert row.cells[3].text.endswith("With it the base is 100 g short.")


def test_more_takes_whole_and_from_each_step() -> None:
    binder = small_binder()
    sheet, sight = MoreTakes(latest(binder)), Sight(binder, "day", "dish-spread")
    shown = [[cell.text for cell in row.cells] for row in sheet.rows(sight)]
    assert shown[0] == ["the whole dish", "2", "tahini", "$6.00", ""]
    assert shown[1] == ["from step 1 Blend", "2", "tahini", "$6.00", "2"]
    # Oil: 500 ml of density 0.9 are 450 g, 1½ builds' worth of 26.6 g promised.
    assert shown[2][:3] == ["from step 2 Dress", str(int((450 - 1.5 * 26.6161766) / 26.6161766)), "olive oil"]
    assert cell_called(sheet, sight, "whole", "limit").leads_to == Place("foods", "tahini")
    assert is_even(sheet, sight)


def test_what_is_not_known_leads_to_where_it_is_mended() -> None:
    binder = small_binder(
        Food(id="sumac", name="sumac"), Line(id="x", step="spread/2", food="sumac", low=1, high=1, unit="bunch")
    )
    cell = cell_called(MoreTakes(latest(binder)), Sight(binder, "day", "dish-spread"), "whole", "limit")
    assert cell.mark is Mark.UNKNOWN
    assert "sumac" in cell.text
    assert cell.leads_to is not None


def test_stale_takes_are_quiet() -> None:
    binder = small_binder()
    sheet = MoreTakes(latest(binder, stale=True))
    assert cell_called(sheet, Sight(binder, "day", "dish-spread"), "whole", "possible").tone is Tone.QUIET


def test_figures_of_another_dish_are_not_shown() -> None:
    binder = small_binder()
    assert MoreTakes(latest(binder)).rows(Sight(binder, "day", "dish-bread")) == []
    assert ProposedBuilds(latest(binder)).rows(Sight(binder, "day", "dish-bread")) == []
