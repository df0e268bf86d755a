"""Published worked examples of kitchen arithmetic, done by the program's own figures.

Sources: [AFRS] US Department of Defense, Armed Forces Recipe Service, TM 10-412 (2003), General Information; [NAVY]
US Navy, Mess Management Specialist, NAVEDTRA 14163; [BC] BCcampus, Basic Kitchen and Food Service Management; [OW]
Open Washington Pressbooks, Bakery and Business Math; [HOLT] lecture notes MTH 81, Applying Yield Percent; [FSM]
FSM2025 Supplement, Appendix A; [VCC] Vancouver Community College, Culinary Math; [OP] Ontario Pork, Costing for
Foodservice; [CTAHR] University of Hawaii, ET-2; [HTF] course notes HTF 255; [MID] Math Mid-term Review Worksheet;
[FBG] USDA Food Buying Guide method.
"""

from __future__ import annotations

import math
from datetime import date

import pytest

from binder.figures.cost import recipe_lines_cost
from binder.figures.missing import Missing
from binder.figures.price import PricedPack, chosen_pack
from binder.figures.recipe_use import recipe_uses
from binder.figures.scaling import in_units_of, rounded_ounces, scale_factor
from binder.figures.shopping import cheapest_packs
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from binder.kitchen.units import unit

US = Measures.US_CUSTOMARY
OUNCE = unit("oz", US).factor
POUND = unit("lb", US).factor


def one_food(
    trim_yield: float = 1.0,
    *,
    edible: float = 1.0,
    edible_unit: str = "lb",
    portions: float = 1,
    pack: tuple[float, str, int] | None = None,
    measures: tuple[tuple[str, float], ...] = (),
) -> Binder:
    """A recipe of one line, and perhaps one pack with its price."""
    records = [
        Settings(id=SETTINGS_ID, name="worked example"),
        Food(id="f", name="f", trim_yield=trim_yield),
        *(Measure(id=f"m-{name}", food="f", unit=name, grams=grams) for name, grams in measures),
        Recipe(id="r", name="r", portions=portions),
        Step(id="s", recipe="r"),
        Line(id="l", step="s", food="f", low=edible, high=edible, unit=edible_unit),
    ]
    if pack:
        size, pack_unit, price = pack
        records.append(Pack(id="p", food="f", size=size, unit=pack_unit))
        records.append(Quote(id="q", pack="p", price=price, on=date(2026, 1, 1)))
    return binder_of(records)


def purchased(binder: Binder) -> float:
    """Grams as purchased for the one line."""
    (use,) = recipe_uses(binder, "r")
    assert not isinstance(use.purchased, Missing)
    return use.purchased


def portion_cost(binder: Binder) -> float:
    """Minor units a portion for the one line."""
    lines = recipe_lines_cost(binder, "r")
    assert not isinstance(lines, Missing)
    assert lines[0].cost is not None
    return lines[0].cost


def factor(recipe: Recipe, count: float, unit_text: str = "portion") -> float:
    found = scale_factor(
        binder_of([Settings(id=SETTINGS_ID, name="b"), recipe]), recipe.id, count=count, unit=unit_text
    )
    assert not isinstance(found, Missing)
    return found


def test_scaling_by_portions() -> None:
    hundred = Recipe(id="r", name="r", portions=100)
    assert factor(hundred, 348) == pytest.approx(3.48)  # example 1 [AFRS]
    assert 1.25 * factor(hundred, 348) == pytest.approx(4.35)
    assert factor(Recipe(id="r", name="r", portions=25), 60) == pytest.approx(2.4)  # example 8 [BC]
    assert pytest.approx(5.22) == 2 * 2.61  # example 6 [NAVY]
    assert factor(hundred, 348 * 3 / 4) == pytest.approx(2.61)  # example 5 [AFRS]


def test_scaling_to_what_there_is() -> None:
    # Example 4 [AFRS]: 102 lb in hand, 30 lb a batch.
    assert factor(Recipe(id="r", name="r", grams=30 * POUND), 102, "lb") == pytest.approx(3.40)


@pytest.mark.parametrize(
    ("decimal", "ounces"),
    [
        (0.12, 0),
        (0.13, 0.25),
        (0.37, 0.25),
        (0.38, 0.5),
        (0.62, 0.5),
        (0.63, 0.75),
        (0.87, 0.75),
        (0.88, 1),
        (5.60, 5.5),
    ],
)
def test_decimal_ounces_round_as_the_card_says(decimal: float, ounces: float) -> None:
    assert rounded_ounces(decimal) == ounces  # examples 1 and 3 [AFRS]


def test_a_volume_is_broken_into_units_from_the_largest_down() -> None:
    # Example 7 [NAVY]: 19.98 gal is 19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp, rounded to the quarter teaspoon at the end.
    gallon = unit("gallon", US).factor
    broken = in_units_of(3.33 * 6 * gallon, ("gallon", "quart", "pint", "cup", "tbsp", "tsp"), US)
    assert broken == (("gallon", 19), ("quart", 3), ("pint", 1), ("cup", 1), ("tbsp", 10), ("tsp", 2.75))


@pytest.mark.parametrize(
    ("edible", "edible_unit", "trim_yield", "expected", "expected_unit", "places"),
    [
        (32, "oz", 0.78, 41.03, "oz", 2),  # 12 [OW]
        (800, "oz", 0.56, 1428.57, "oz", 2),  # 13 [HOLT]; the page misprints 1428.27
        (800, "oz", 0.56, 89.29, "lb", 2),
        (30, "lb", 0.875, 34.29, "lb", 2),  # 14 [HOLT]
        (5, "lb", 0.81, 6.17, "lb", 2),  # 16 [FSM]
        (20, "lb", 0.79, 25.3, "lb", 1),  # 18
        (3, "lb", 1 / 1.19, 3.57, "lb", 2),  # 20 and 21 [AFRS], factor 1.19
        (2.85, "lb", 0.95, 3.00, "lb", 2),  # 10 [OW]
        (4350, "g", 0.87, 5000, "g", 0),  # 11 [OW]
        (17.6, "lb", 0.88, 20, "lb", 1),  # 19
        (800, "g", 0.80, 1000, "g", 0),  # 9 [BC]
        (16.92, "lb", 0.47, 36, "lb", 2),  # 17 [FSM]
    ],
)
def test_as_purchased_from_edible_portion(
    edible: float, edible_unit: str, trim_yield: float, expected: float, expected_unit: str, places: int
) -> None:
    grams = purchased(one_food(trim_yield, edible=edible, edible_unit=edible_unit))
    assert round(grams / unit(expected_unit, US).factor, places) == pytest.approx(expected)


def test_portions_obtainable_round_down() -> None:
    assert math.floor(58.88 / 1.5) == 39  # 15 [HOLT]: 8 heads of 8 oz at 92 %
    assert round(8 * 8 * 0.92, 2) == pytest.approx(58.88)


@pytest.mark.parametrize(
    ("bought", "left", "percent"), [(19, 14, 73.7), (40, 25, 62.5), (125, 28, 22.4), (1605, 1468, 91.5)]
)
def test_a_measured_yield(bought: float, left: float, percent: float) -> None:
    # 22, 24, 25 [MID]; 26 [BC] printed as 92 %, exactly 91.5 %.
    assert round(left / bought * 100, 1) == percent


@pytest.mark.parametrize(
    ("pack", "trim_yield", "edible", "edible_unit", "minor", "places"),
    [
        ((20, "lb", 1050), 1.0, 1, "lb", 52.5, 1),  # 29 [VCC]: flour, $0.525 a pound
        ((10, "lb", 560), 0.75, 10, "lb", 746.667, 0),  # 28 [VCC]: 5.60 x 1.333 = 7.465, rounded factor
        ((5, "kg", 2500), 0.75, 1, "kg", 666.667, 2),  # 30 [OP]: pork loin, $6.67 a usable kilogram
        ((10, "lb", 500), 0.20, 1, "lb", 250, 2),  # 31 [CTAHR]: taro, $2.50 a pound
        ((10, "lb", 2000), 0.70, 4, "oz", 71.4, 1),  # 32 [HTF]: $0.714; the course rounds a part of a penny up
        ((64, "oz", 895), 1.0, 4, "oz", 55.94, 2),  # 37 [MID]: cream, $0.56
        ((1, "lb", 250), 1.0, 21, "lb", 5250, 0),  # 39 [MID]: pork shoulder, $52.50
        ((1, "lb", 155), 1.0, 4.625, "lb", 716.875, 3),  # 34 [FSM]: spinach, $7.17
        ((1, "gallon", 430), 1.0, 3, "cup", 80.625, 3),  # 34 [FSM]: milk, $0.81
    ],
)
def test_cost_of_the_edible_portion(
    pack: tuple[float, str, int], trim_yield: float, edible: float, edible_unit: str, minor: float, places: int
) -> None:
    measures = (("us cup", 244.0),) if pack[1] == "gallon" else ()  # USDA SR28, NDB 01077: a cup of whole milk, 244 g
    binder = one_food(trim_yield, edible=edible, edible_unit=edible_unit, pack=pack, measures=measures)
    assert round(portion_cost(binder), places) == pytest.approx(minor, abs=0.5 * 10**-places)


def test_things_bought_by_the_piece() -> None:
    egg = (("each", 50.0),)  # USDA SR28, NDB 01123: a large egg without its shell
    dozen = one_food(0.88, edible=7, edible_unit="", pack=(12, "each", 450), measures=egg)
    assert portion_cost(dozen) == pytest.approx(262.5)  # 33 [FSM]: $0.375 each, 7 eggs $2.63
    case = one_food(0.88, edible=3, edible_unit="", pack=(360, "each", 7200), measures=egg)
    assert portion_cost(case) == pytest.approx(60)  # 36 [MID]
    lemons = one_food(0.5, edible=1, edible_unit="", pack=(140, "each", 4800), measures=(("each", 58.0),))
    assert portion_cost(lemons) == pytest.approx(34.286, abs=0.001)  # 35 [MID]


def test_an_egg_bake_for_fifty() -> None:
    # 34 [FSM]: 7.17 + 16.80 + 28.13 + 0.81 = 52.91; $1.06 a serving. The source rounds each line first.
    lines = [4.625 * 155, 3 * 560, 75 * 37.5, 3 * 430 / 16]
    assert sum(lines) / 50 == pytest.approx(105.8, abs=0.1)


@pytest.mark.parametrize(
    ("need", "count"),
    [(89.29, 90), (34.29, 35), (30.74, 31), (27.6, 28), (39.1, 40), (60.8, 61)],  # 13, 14 [HOLT]; 44 to 47 [FBG]
)
def test_packs_to_buy_round_up(need: float, count: int) -> None:
    pack = Pack(id="p", food="f", size=1, unit="lb")
    (only,) = cheapest_packs(
        [PricedPack(pack, Quote(id="q", pack="p", price=100, on=date(2026, 1, 1)), POUND)], need * POUND
    )
    assert only.count == count


def test_portions_from_a_batch_round_down() -> None:
    assert math.floor(0.75 * unit("gallon", US).factor / (2 * unit("fl oz", US).factor) + 1e-9) == 48  # 40 [MID]


def test_a_price_is_of_the_pack_chosen() -> None:
    priced = chosen_pack(one_food(pack=(20, "lb", 1050)), "f")
    assert not isinstance(priced, Missing)
    assert priced.per_gram * POUND == pytest.approx(52.5)
    assert priced.per_gram * OUNCE == pytest.approx(52.5 / 16)
