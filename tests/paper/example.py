"""Binders to print in tests: one as a kitchen would have it, and one that tries to break every page."""

from __future__ import annotations

from datetime import date, time

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food, Measure, Section
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from binder.kitchen.shoot import Build, BuildKind, Dish, Shoot

SHOOT = "day"


def full_binder(*others: Record) -> Binder:
    """Two dishes and a spice paste from one bag of chickpeas; with other records in place of, or beside, its own."""
    parts = (_foods(), _prices(), _forms(), _paste(), _stew(), _salad(), _shoot())
    records = {(type(record), record.id): record for part in (*parts, others) for record in part}
    return binder_of(records.values())


def metric_binder() -> Binder:
    """The same kitchen in grams, litres and euros."""
    return full_binder(
        Settings(id=SETTINGS_ID, name="Kichererbsen", measures=Measures.METRIC, currency="EUR", locale="de_DE")
    )


def _foods() -> list[Record]:
    return [
        Settings(id=SETTINGS_ID, name="One bag of chickpeas"),
        Food(id="chickpeas", name="chickpeas, dried", section=Section.GRAINS_AND_PULSES),
        Food(id="soaked", name="chickpeas, soaked", form_of="chickpeas"),
        Food(id="cooked", name="chickpeas, cooked", form_of="chickpeas", temperature_control=True),
        Food(id="liquid", name="cooking liquid", form_of="chickpeas", density=1.0),
        Food(id="onion", name="yellow onion", trim_yield=0.88),
        Food(id="garlic", name="garlic", trim_yield=0.86),
        Food(id="tomato", name="plum tomatoes, tinned", section=Section.TINS_AND_JARS, density=1.03),
        Food(id="oil", name="olive oil", section=Section.OILS_AND_VINEGARS, density=0.91, staple=True),
        Food(id="cumin", name="cumin seed", section=Section.SPICES_AND_SEASONINGS),
        Food(id="chilli", name="dried red chilli", section=Section.SPICES_AND_SEASONINGS),
        Food(id="salt", name="fine salt", section=Section.SPICES_AND_SEASONINGS, staple=True, density=1.2),
        Food(id="yogurt", name="whole-milk yogurt", section=Section.DAIRY_AND_EGGS, allergens=("milk",), density=1.03),
        Food(id="tahini", name="tahini", section=Section.TINS_AND_JARS, allergens=("sesame",)),
        Food(id="lemon", name="lemon"),
        Food(id="parsley", name="flat parsley", trim_yield=0.6),
        Food(id="chicken", name="chicken thighs, boned", section=Section.MEAT, doneness="poultry"),
        Food(id="water", name="water", density=1.0, free=True),
        Measure(id="m1", food="onion", unit="us cup", preparation="chopped", grams=160),
        Measure(id="m2", food="onion", unit="each", grams=150),
        Measure(id="m3", food="garlic", unit="clove", grams=5),
        Measure(id="m4", food="cumin", unit="us tsp", grams=2.1),
        Measure(id="m5", food="tahini", unit="us tbsp", grams=15),
        Measure(id="m6", food="lemon", unit="each", grams=84),
        Measure(id="m7", food="parsley", unit="us cup", preparation="chopped", grams=60),
        Measure(id="m8", food="cooked", unit="us cup", grams=164),
    ]


def _prices() -> list[Record]:
    prices = [
        ("chickpeas", "1 kg bag", 1000, "g", 459),
        ("onion", "3 lb net", 3, "lb", 349),
        ("garlic", "3 heads", 150, "g", 189),
        ("tomato", "28 oz tin", 28, "oz", 279),
        ("oil", "500 ml bottle", 500, "ml", 899),
        ("cumin", "jar", 45, "g", 329),
        ("chilli", "bag", 50, "g", 399),
        ("salt", "box", 737, "g", 129),
        ("yogurt", "32 oz tub", 32, "oz", 469),
        ("tahini", "16 oz jar", 16, "oz", 749),
        ("lemon", "", 1, "each", 79),
        ("chicken", "tray", 900, "g", 899),
    ]
    records: list[Record] = [Store(id="market", name="Quayside Market"), Store(id="corner", name="Corner Larder")]
    for at, (food, label, size, unit, price) in enumerate(prices):
        store = "corner" if at % 3 == 2 else "market"
        records.append(Pack(id=f"pack-{food}", food=food, store=store, label=label, size=size, unit=unit))
        records.append(Quote(id=f"quote-{food}", pack=f"pack-{food}", price=price, on=date(2026, 11, 2)))
    return records


def _forms() -> list[Record]:
    return [
        Conversion(
            id="soak",
            takes="chickpeas",
            name="Soak",
            text="Cover by a hand's breadth and leave in the refrigerator overnight.",
            hands_on_minutes=5,
            lead_minutes=720,
            hazards=("soaking",),
        ),
        Outcome(id="soak/1", conversion="soak", form="soaked", ratio=2.1),
        Addition(id="soak/2", conversion="soak", food="water", ratio=3.0),
        Conversion(
            id="cook",
            takes="soaked",
            name="Cook",
            text="Simmer in fresh water until soft but whole; cool in the liquid.",
            hands_on_minutes=10,
            lead_minutes=90,
            equipment=("12 quart pot",),
        ),
        Outcome(id="cook/1", conversion="cook", form="cooked", ratio=1.1),
        Outcome(id="cook/2", conversion="cook", position=1, form="liquid", ratio=0.9),
        Addition(id="cook/3", conversion="cook", food="salt", ratio=0.01),
    ]


def _lines(step: str, *lines: tuple[str, float, str, str]) -> list[Record]:
    return [
        Line(
            id=f"{step}/{at}", step=step, position=at, food=food, low=count, high=count, unit=unit, preparation=prepared
        )
        for at, (food, count, unit, prepared) in enumerate(lines)
    ]


def _paste() -> list[Record]:
    return [
        Recipe(id="paste", name="Charred chilli paste", portions=8, grams=160),
        Step(
            id="paste/1",
            recipe="paste",
            title="Char and grind",
            text="Char the chillies over the flame until they blister. Grind with cumin, garlic, oil and salt.",
            hands_on_minutes=15,
            station="stove",
            hazards=("open_flame",),
            on_camera=False,
        ),
        *_lines(
            "paste/1",
            ("chilli", 30, "g", "stemmed"),
            ("cumin", 2, "tsp", "toasted"),
            ("garlic", 4, "clove", "peeled"),
            ("oil", 4, "tbsp", ""),
        ),
    ]


def _stew() -> list[Record]:
    steps = [
        Step(
            id="stew/1",
            recipe="stew",
            title="Soften the onion",
            text="Warm the oil, add the onion with a pinch of salt and cook until it is golden at the edges.",
            hands_on_minutes=12,
            station="stove",
            equipment=("wide braising pan",),
            heat=Heat.PAN,
            celsius=150,
        ),
        Step(
            id="stew/2",
            recipe="stew",
            position=1,
            title="Brown the chicken",
            text="Skin side down and untouched until it lets go of the pan, then turn once.",
            hands_on_minutes=8,
            station="stove",
            hazards=("raw_poultry",),
        ),
        Step(
            id="stew/3",
            recipe="stew",
            position=2,
            title="Simmer",
            text="Stir in the paste, then tomatoes, chickpeas and their liquid. Simmer until it coats a spoon.",
            hands_on_minutes=5,
            waiting_minutes=40,
            station="stove",
            heat=Heat.CORE,
            celsius=74,
            hold_minutes=30,
        ),
        Step(
            id="stew/4",
            recipe="stew",
            position=3,
            title="Finish",
            text="Spoon yogurt over, scatter parsley, carry it to the front while it steams.",
            hands_on_minutes=3,
            station="front",
        ),
    ]
    return [
        Recipe(id="stew", name="Chickpea and chicken stew with charred chilli", portions=4),
        *steps,
        *_lines("stew/1", ("oil", 3, "tbsp", ""), ("onion", 1.5, "cup", "chopped"), ("garlic", 3, "clove", "sliced")),
        *_lines("stew/2", ("chicken", 600, "g", "patted dry")),
        *_lines("stew/3", ("tomato", 2, "cup", "crushed"), ("cooked", 3, "cup", "drained"), ("liquid", 1, "cup", "")),
        Line(id="stew/3/9", step="stew/3", position=9, made="paste", low=40, high=40, unit="g"),
        *_lines("stew/4", ("yogurt", 0.5, "cup", "")),
        Line(
            id="stew/4/8",
            step="stew/4",
            position=8,
            food="parsley",
            low=2,
            high=3,
            unit="tbsp",
            garnish=True,
            preparation="chopped",
        ),
        Line(id="stew/4/9", step="stew/4", position=9, food="salt", to_taste=True),
    ]


def _salad() -> list[Record]:
    return [
        Recipe(id="salad", name="Warm chickpea salad", portions=2),
        Step(
            id="salad/1",
            recipe="salad",
            text="Toss everything but the parsley while the chickpeas are warm.",
            hands_on_minutes=6,
            station="front",
        ),
        *_lines("salad/1", ("cooked", 250, "g", "warm"), ("tahini", 3, "tbsp", ""), ("lemon", 1, "each", "juiced")),
    ]


def _shoot() -> list[Record]:
    return [
        Shoot(
            id=SHOOT,
            name="Episode four",
            on=date(2026, 12, 3),
            call=time(8, 0),
            base="chickpeas",
            base_amount=1,
            base_unit="kg",
            cap=275,
            budget=7500,
        ),
        Dish(id="dish-stew", shoot=SHOOT, recipe="stew", portions=4),
        Dish(id="dish-salad", shoot=SHOOT, position=1, recipe="salad", portions=2, cap=150),
        Build(id="b1", dish="dish-stew"),
        Build(id="b2", dish="dish-stew", position=1, kind=BuildKind.SWAP_OUT, up_to="stew/3", waits="low oven, lid on"),
        Build(id="b3", dish="dish-stew", position=2, kind=BuildKind.SWAP_OUT, up_to="stew/1", waits="front left ring"),
        Build(id="b4", dish="dish-salad"),
    ]


UNBROKEN = "x" * 300
HOSTILE_NAMES = (
    "<b>Bold</b> & <img src='red.png'/> stew &#x41; <para>",
    UNBROKEN,
    "🍜🫘👩‍🍳 noodles with\tbeans\n\nand a second line",
    "חומוס עם 2 לימונים (חריף)",
    "حمص بالليمون ١٢",
    "花椒鹰嘴豆",
    "e\u0301" * 40 + " Z\u0351\u036b\u0343alg\u033ao",
    "\u202edessert\u202c \ufffe\ue000 end",
    "W" * 300,
)


def hostile_binder() -> Binder:
    """Names and texts that try to leave their box, to be read as markup, or to have no picture."""
    records: list[Record] = [
        Settings(id=SETTINGS_ID, name=HOSTILE_NAMES[0]),
        Shoot(id=SHOOT, name=HOSTILE_NAMES[2], cap=10**9, base="f0", base_amount=3, base_unit="kg"),
        Store(id="store", name=HOSTILE_NAMES[3]),
    ]
    for at, name in enumerate(HOSTILE_NAMES):
        food = Food(id=f"f{at}", name=name, allergens=("milk", "wheat", "a made-up <i>thing</i>"), doneness="poultry")
        records += [food, *_hostile_recipe(at, name)]
        records += [Pack(id=f"p{at}", food=food.id, store="store", label=name, size=9_999_999, unit="kg")] * (at % 2)
        records += [Quote(id=f"q{at}", pack=f"p{at}", price=10**12 + at, on=date(2026, 11, 2))] * (at % 2)
    return binder_of(records)


def _hostile_recipe(at: int, name: str) -> list[Record]:
    recipe = f"r{at}"
    long_text = ("y" * 3_000, "word " * 600, name * 8)[at % 3]
    hazards = ("hot_oil", "raw_poultry", "cooling", "steam", "sharp_blade") if at % 2 else ()
    records: list[Record] = [
        Recipe(id=recipe, name=name, portions=3 if at != 4 else None),
        Step(
            id=f"{recipe}/1",
            recipe=recipe,
            title=name,
            text=long_text,
            station=name,
            equipment=(name[:190],) * 3,
            heat=Heat.OIL,
            celsius=-200.0,
            hands_on_minutes=527_000,
            hazards=hazards,
            hold_minutes=3,
        ),
        Step(id=f"{recipe}/2", recipe=recipe, position=1, text=name),
        Step(id=f"{recipe}/3", recipe=recipe, position=199),
        Dish(id=f"d{at}", shoot=SHOOT, position=at * 77_777, recipe=recipe, portions=9_999.0, notes=name * 3),
        Build(id=f"b{at}", dish=f"d{at}", waits=name),
        Build(
            id=f"c{at}", dish=f"d{at}", position=1, kind=BuildKind.SWAP_OUT, up_to=f"{recipe}/2", waits=name, portions=1
        ),
    ]
    for number in range(12):
        line = f"{recipe}/1/{number}"
        records.append(
            Line(
                id=line,
                step=f"{recipe}/1",
                position=number,
                food=f"f{number % len(HOSTILE_NAMES)}",
                low=1,
                high=9_999_999.0,
                unit=("kg", "furlong", "")[number % 3],
                preparation=name,
                note=name,
            )
        )
    return records
