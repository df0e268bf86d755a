"""Records of which some are missing become a binder that hangs together, and what was left out is said."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.food import Food
from binder.kitchen.integrity import require_all_whole
from binder.kitchen.recipe import Line, Recipe, Step
from binder.storage.wholeness import made_whole
from tests.storage.samples import stew_day
from tests.strategies import binders


def test_nothing_is_left_out_of_what_hangs_together() -> None:
    lost: list[str] = []
    assert made_whole(every_record(stew_day()), lost) == stew_day()
    assert lost == []


def test_what_names_a_lost_record_goes_with_it_or_lets_go_of_it() -> None:
    lost: list[str] = []
    whole = made_whole([record for record in every_record(stew_day()) if record.id != "chickpeas"], lost)
    assert lost == [
        "measure “chickpeas/1”, as what it names is lost",
        "pack “bag”, as what it names is lost",
        "line “stew/1/1”, as what it names is lost",
        "the base of shoot “Day one”",
        "quote “bag/1”, as what it names is lost",
    ]
    assert set(whole.recipes) == {"stew"}
    assert whole.shoots["day"].base is None


def test_settings_are_made_anew_where_they_are_lost() -> None:
    lost: list[str] = []
    whole = made_whole([Food(id="salt", name="Salt")], lost)
    assert whole.settings.name == "Salvaged binder"
    assert lost == ["the settings: measures, currency and language are the program's own"]


def test_loops_and_unclear_lines_are_left_out() -> None:
    recipes = [Recipe(id=key, name=key) for key in ("a", "b")]
    steps = [Step(id=f"{key}/1", recipe=key) for key in ("a", "b")]
    lines = [
        Line(id="a1", step="a/1", made="b"),
        Line(id="b1", step="b/1", made="a"),
        Line(id="b2", step="b/1"),
        Line(id="b3", step="b/1", made="a", low=2.0, high=1.0),
    ]
    lost: list[str] = []
    whole = made_whole([*every_record(Binder()), *recipes, *steps, *lines], lost)
    assert set(whole.lines) == {"a1"}
    assert lost == [
        "line “b2”, which is unclear",
        "line “b3”, which is unclear",
        "line “b1”, which would make a recipe of itself",
    ]


@given(binders(), st.randoms(use_true_random=False))
@settings(max_examples=20, suppress_health_check=[HealthCheck.too_slow])
def test_whatever_is_missing_the_rest_hangs_together(binder: Binder, random: object) -> None:
    records = every_record(binder)
    kept = [record for record in records if random.random() < 0.7]  # type: ignore[attr-defined]
    lost: list[str] = []
    whole = made_whole(kept, lost)
    require_all_whole(whole)
    assert lost or whole == binder_of(kept)
