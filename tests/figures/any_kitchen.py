"""Binders to break figures with: whatever records allow, tiny to absurd, half of them near to what a cook writes."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from random import Random
from typing import TYPE_CHECKING, TypeVar

from hypothesis import strategies as st

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import Addition, Conversion, CostSplit, Outcome
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from binder.kitchen.shoot import Build, BuildKind, CapBasis, Dish, Shoot

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from binder.kitchen.record import Record

T = TypeVar("T")

UNITS = (
    *["g"] * 8,
    "kg",
    "lb",
    "ml",
    "cup",
    "tbsp",
    "",
    "each",
    "clove",
    "nest",
    "portion",
    "batch",
    "bunch",
    "smidgen",
)
MEASURED = ("each", "medium", "cloves", "nest", "bunch", "us cup", "cup", "us tbsp")


def any_kitchens() -> st.SearchStrategy[Binder]:
    """Binders with one shoot, called `day`."""
    return st.builds(lambda seed, wild: kitchen_of(Random(seed), wild=wild), st.integers(0, 2**32), st.booleans())


@dataclass
class _Dice:
    random: Random
    wild: bool

    def of(self, choices: Sequence[T]) -> T:
        return self.random.choice(choices)

    def one_in(self, count: int) -> bool:
        return self.random.randrange(count) == 0

    def number(self, least: float = 1e-6, most: float = 1e7) -> float:
        """Mostly what a cook writes; of wild kitchens also every power of ten and the limits themselves."""
        if not self.wild or not self.one_in(4):
            return round(self.random.uniform(max(least, 0.1), min(most, 900)), 2)
        return self.of([least, most, min(most, max(least, 10 ** self.random.uniform(-6, 7)))])

    def maybe(self, value: T) -> T | None:
        return None if self.one_in(3) else value


def kitchen_of(random: Random, *, wild: bool) -> Binder:
    """The kitchen that the dice throw."""
    dice = _Dice(random, wild)
    foods = [f"f{number}" for number in range(random.randint(1, 9))]
    steps = {f"r{number}": [f"r{number}/{at}" for at in range(random.randint(0, 3))] for number in range(5)}
    currency, locale = dice.of(["USD", "EUR", "JPY", "KWD"]), dice.of(["en_US", "de_DE", "ar_EG"])
    return binder_of(
        [
            Settings(id=SETTINGS_ID, name="any", measures=dice.of(list(Measures)), currency=currency, locale=locale),
            *_foods(dice, foods),
            *_prices(dice, foods),
            *_conversions(dice, foods),
            *_recipes(dice, foods, steps),
            *_shoot(dice, foods, steps),
        ]
    )


def _foods(dice: _Dice, foods: Sequence[str]) -> Iterator[Record]:
    for food in foods:
        yield Food(
            id=food,
            name=f"food {food}",
            form_of=dice.of([None, None, foods[0]]) if food != foods[0] else None,
            density=dice.of([None, 1.0, 0.01, 25.0]),
            trim_yield=dice.of([1.0, 0.9, dice.number(1e-6, 1.0)]),
            free=dice.one_in(8),
            staple=dice.one_in(5),
            good_from_days=dice.of([None, None, 2, 36_600 if dice.wild else 3]),
            keeps_days=dice.of([None, None, 0, 4]),
            allergens=dice.of([(), ("wheat",), ("sesame", "milk")]),
            doneness=dice.of(["", "", "poultry", "unheard of"]),
        )
        for unit in dice.random.sample(MEASURED, dice.random.randint(0, 3)):
            said = dice.of(["", "", "chopped"])
            yield Measure(id=f"{food}/{unit}", food=food, unit=unit, preparation=said, grams=dice.number())


def _prices(dice: _Dice, foods: Sequence[str]) -> Iterator[Record]:
    stores = ["near", "far"]
    for store in stores:
        yield Store(id=store, name=store, trip_cost=dice.of([0, 0, 300]), avoided=dice.of([0, 0, 50]))
    for number in range(2 * len(foods)):
        seller, counter = dice.of([None, *stores]), dice.one_in(6)
        pack = f"pack{number}"
        food, unit = foods[number % len(foods)], dice.of(UNITS)
        yield Pack(id=pack, food=food, store=seller, size=dice.number(), unit=unit, by_weight=counter)
        for quote in range(dice.random.randint(0, 3)):
            price = dice.of([dice.random.randint(0, 900), 0, 10**13 if dice.wild else 1])
            day = date(2026, 1, dice.random.randint(1, 3))
            yield Quote(id=f"{pack}/{quote}", pack=pack, price=price, on=day, pinned=dice.one_in(5))


def _conversions(dice: _Dice, foods: Sequence[str]) -> Iterator[Record]:
    for number in range(dice.random.randint(0, len(foods))):
        key, at = f"c{number}", dice.random.randrange(len(foods))
        later = foods if dice.one_in(9) else foods[at + 1 :]  # of any forms there may be loops
        yield Conversion(
            id=key,
            takes=foods[at],
            name=key,
            lead_minutes=dice.of([0.0, 90.0, 527_040.0 if dice.wild else 60.0]),
            least_grams=dice.maybe(dice.number()) if dice.one_in(3) else None,
            batch_grams=dice.maybe(dice.number()) if dice.one_in(3) else None,
            split=dice.of(list(CostSplit)),
        )
        for place, form in enumerate(dice.random.sample(later, min(len(later), dice.random.randint(0, 3)))):
            ratio, share = dice.number(1e-6, 100), dice.of([None, 0.0, 0.3, 1.0])
            yield Outcome(id=f"{key}/{place}", conversion=key, position=place, form=form, ratio=ratio, cost_share=share)
        for place in range(dice.random.randint(0, 2)):
            food = dice.of(foods[: at + 1])
            yield Addition(id=f"{key}/+{place}", conversion=key, food=food, ratio=dice.number(1e-6, 100))


def _recipes(dice: _Dice, foods: Sequence[str], steps: dict[str, list[str]]) -> Iterator[Record]:
    for number, (recipe, own) in enumerate(steps.items()):
        portions, grams = dice.of([4.0, 4.0, None, dice.number()]), dice.maybe(dice.number())
        yield Recipe(id=recipe, name=recipe, portions=portions, grams=grams, millilitres=dice.maybe(dice.number()))
        for place, step in enumerate(own):
            heat, celsius = dice.of([None, Heat.CORE]), dice.of([None, 74.0])
            waits, filmed = dice.of([0.0, 60.0]), not dice.one_in(3)
            yield Step(
                id=step,
                recipe=recipe,
                position=place,
                heat=heat,
                celsius=celsius,
                waiting_minutes=waits,
                on_camera=filmed,
            )
            for at in range(dice.random.randint(0, 3)):
                yield _line(
                    dice, foods, f"{step}/{at}", step, at, f"r{dice.random.randrange(number)}" if number else ""
                )


def _line(dice: _Dice, foods: Sequence[str], key: str, step: str, at: int, inner: str) -> Line:
    low, high = sorted((dice.of([0.0, dice.number(0.0)]), dice.number(0.0)))
    made = inner if inner and dice.one_in(3) else None
    taste, said = dice.one_in(6), dice.of(["", "chopped"])
    return Line(
        id=key,
        step=step,
        position=at,
        food=None if made else dice.of(foods),
        made=made,
        low=None if taste else low,
        high=None if taste else high,
        unit=dice.of(UNITS),
        preparation=said,
        to_taste=taste,
    )


def _shoot(dice: _Dice, foods: Sequence[str], steps: dict[str, list[str]]) -> Iterator[Record]:
    yield Shoot(
        id="day",
        name="day",
        on=dice.of([None, date(2026, 12, 3)]),
        call=dice.maybe(time(8)),
        base=dice.of([None, foods[0], foods[0]]),
        base_amount=dice.of([0.0, dice.number(0.0)]),
        base_unit=dice.of(UNITS),
        cap=dice.of([None, 0, 100]),
        budget=dice.of([None, 0, 1000]),
        spares=dice.of([0, 2]),
        cap_basis=dice.of(list(CapBasis)),
        waste_value=dice.of([0.0, 0.5]),
        most_stores=dice.of([None, None, 1, 2]),
    )
    for number in range(dice.random.randint(0, 3)):
        dish, recipe, portions = f"d{number}", dice.of(list(steps)), dice.of([4.0, dice.number()])
        yield Dish(id=dish, shoot="day", position=number, recipe=recipe, portions=portions, cap=dice.of([None, 0, 50]))
        for place in range(dice.random.randint(0, 3)):
            foreign = dice.one_in(9)
            ends = [None, *steps[dice.of(list(steps)) if foreign else recipe]]
            yield Build(
                id=f"{dish}/{place}",
                dish=dish,
                position=place,
                kind=dice.of(list(BuildKind)),
                up_to=dice.of(ends),
                portions=dice.of([None, None, 1.0, dice.number()]),
            )
