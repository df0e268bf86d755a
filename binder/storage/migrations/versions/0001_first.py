"""The first schema: every table written out, so that it stays what it was when the records go on."""

from __future__ import annotations

from typing import Any, NamedTuple

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

_REAL: Any = sa.Double().with_variant(sa.REAL(), "sqlite")
_WHOLE: Any = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


class _Part(NamedTuple):
    """A column with its condition and the table it links to."""

    column: sa.Column[Any]
    condition: str = ""
    linked: str = ""


def _key() -> _Part:
    return _Part(sa.Column("id", sa.Text(), primary_key=True, nullable=False), "length(id) BETWEEN 1 AND 200")


def _text(name: str, least: int, most: int, *, optional: bool = False) -> _Part:
    column = sa.Column(name, sa.Text(), nullable=optional)
    return _Part(column, f"length({name}) BETWEEN {least} AND {most}")


def _plain(name: str, *, optional: bool = False) -> _Part:
    return _Part(sa.Column(name, sa.Text(), nullable=optional))


def _one_of(name: str, *choices: str, optional: bool = False) -> _Part:
    listed = ", ".join(f"'{choice}'" for choice in choices)
    return _Part(sa.Column(name, sa.Text(), nullable=optional), f"{name} IN ({listed})")


def _yes_or_no(name: str, *, optional: bool = False) -> _Part:
    return _Part(sa.Column(name, sa.Integer(), nullable=optional), f"{name} IN (0, 1)")


def _real(name: str, least: str, most: str, *, optional: bool = False) -> _Part:
    return _Part(sa.Column(name, _REAL, nullable=optional), f"{name} {least} AND {name} {most}")


def _whole(name: str, least: str, most: str, *, optional: bool = False) -> _Part:
    return _Part(sa.Column(name, _WHOLE, nullable=optional), f"{name} {least} AND {name} {most}")


def _link(name: str, linked: str, *, optional: bool = False) -> _Part:
    return _Part(sa.Column(name, sa.Text(), nullable=optional), linked=linked)


def _constraint(table: str, part: _Part) -> sa.Constraint | None:
    name = part.column.name
    if part.condition:
        return sa.CheckConstraint(part.condition, name=f"ck_{table}_{name}")
    if part.linked:
        return sa.ForeignKeyConstraint(
            [name], [f"{part.linked}.id"], name=f"fk_{table}_{name}", deferrable=True, initially="DEFERRED"
        )
    return None


def _make(table: str, *parts: _Part) -> None:
    constraints = (_constraint(table, part) for part in parts)
    op.create_table(table, *(part.column for part in parts), *(each for each in constraints if each is not None))
    for part in parts:
        if part.linked:
            op.create_index(f"ix_{table}_{part.column.name}", table, [part.column.name])


def upgrade() -> None:
    """Make the tables."""
    _make_records()
    _make(
        "journal",
        _Part(sa.Column("sequence", _WHOLE, primary_key=True, autoincrement=False, nullable=False)),
        _one_of("kind", "edit", "undo", "redo"),
        _Part(sa.Column("of", _WHOLE)),
        _Part(sa.Column("made_on", _WHOLE, nullable=False), "sequence = made_on + 1"),
        _plain("label"),
        _plain("edits"),
        _plain("at"),
        _plain("author"),
    )
    _make("seal", _Part(sa.Column("id", sa.Text(), primary_key=True, nullable=False), "id = 'binder'"), _plain("sum"))


def _make_records() -> None:
    _make(
        "settings",
        _key(),
        _text("name", 1, 300),
        _one_of("measures", "us customary", "metric", "imperial"),
        _text("currency", 3, 3),
        _text("locale", 2, 20),
        _one_of("allergens", "us nine", "eu fourteen"),
        _one_of("safety", "usda_fsis", "fda_food_code"),
        _text("notes", 0, 20000),
    )
    _make(
        "foods",
        _key(),
        _text("name", 1, 300),
        _plain("other_names"),
        _one_of(
            "section",
            "produce",
            "meat",
            "fish",
            "dairy and eggs",
            "bakery",
            "grains and pulses",
            "tins and jars",
            "oils and vinegars",
            "spices and seasonings",
            "baking",
            "nuts and seeds",
            "frozen",
            "drinks",
        ),
        _one_of("keeping", "cupboard", "cool", "chilled", "frozen"),
        _whole("good_from_days", ">= 0", "<= 36600", optional=True),
        _whole("keeps_days", ">= 0", "<= 36600", optional=True),
        _whole("order_days", ">= 0", "<= 36600", optional=True),
        _yes_or_no("temperature_control"),
        _plain("allergens"),
        _text("doneness", 0, 300),
        _real("density", ">= 0.01", "<= 25.0", optional=True),
        _real("trim_yield", "> 0.0", "<= 1.0"),
        _text("yield_source", 0, 300),
        _yes_or_no("staple"),
        _yes_or_no("free"),
        _link("form_of", "foods", optional=True),
        _text("notes", 0, 20000),
        _text("source", 0, 300),
    )
    _make(
        "measures",
        _key(),
        _link("food", "foods"),
        _text("unit", 1, 300),
        _text("preparation", 0, 300),
        _real("grams", "> 0.0", "<= 10000000.0"),
        _text("source", 0, 300),
    )
    _make(
        "stores",
        _key(),
        _text("name", 1, 300),
        _whole("trip_cost", ">= 0", "<= 10000000000000"),
        _whole("avoided", ">= 0", "<= 10000000000000"),
        _plain("sections"),
        _text("notes", 0, 300),
    )
    _make(
        "packs",
        _key(),
        _link("food", "foods"),
        _link("store", "stores", optional=True),
        _text("label", 0, 300),
        _real("size", "> 0.0", "<= 10000000.0"),
        _text("unit", 0, 300),
        _yes_or_no("by_weight"),
        _real("least", ">= 0.0", "<= 10000000.0"),
        _whole("deposit", ">= 0", "<= 10000000000000"),
        _yes_or_no("on_sale"),
    )
    _make(
        "quotes",
        _key(),
        _link("pack", "packs"),
        _whole("price", ">= 0", "<= 10000000000000"),
        _plain("on"),
        _yes_or_no("pinned"),
        _whole("bundle_packs", ">= 2", "<= 100", optional=True),
        _whole("bundle_price", ">= 0", "<= 10000000000000", optional=True),
        _text("source", 0, 300),
    )
    _make(
        "conversions",
        _key(),
        _link("takes", "foods"),
        _text("name", 1, 300),
        _text("text", 0, 20000),
        _real("hands_on_minutes", ">= 0.0", "<= 527040.0"),
        _real("lead_minutes", ">= 0.0", "<= 527040.0"),
        _plain("equipment"),
        _plain("hazards"),
        _real("least_grams", "> 0.0", "<= 10000000.0", optional=True),
        _real("batch_grams", "> 0.0", "<= 10000000.0", optional=True),
        _one_of("split", "by weight", "all to the first", "by shares"),
        _text("source", 0, 300),
    )
    _make(
        "outcomes",
        _key(),
        _link("conversion", "conversions"),
        _whole("position", ">= 0", "<= 1000000"),
        _link("form", "foods"),
        _real("ratio", "> 0.0", "<= 100.0"),
        _real("cost_share", ">= 0.0", "<= 1.0", optional=True),
        _text("source", 0, 300),
    )
    _make(
        "additions",
        _key(),
        _link("conversion", "conversions"),
        _whole("position", ">= 0", "<= 1000000"),
        _link("food", "foods"),
        _real("ratio", "> 0.0", "<= 100.0"),
    )
    _make(
        "trials",
        _key(),
        _link("conversion", "conversions"),
        _plain("on"),
        _real("taken", "> 0.0", "<= 10000000.0"),
        _text("notes", 0, 300),
    )
    _make(
        "trial_outcomes",
        _key(),
        _link("trial", "trials"),
        _link("form", "foods"),
        _real("grams", ">= 0.0", "<= 10000000.0"),
    )
    _make(
        "recipes",
        _key(),
        _text("name", 1, 300),
        _real("portions", "> 0.0", "<= 10000000.0", optional=True),
        _real("grams", "> 0.0", "<= 10000000.0", optional=True),
        _real("millilitres", "> 0.0", "<= 10000000.0", optional=True),
        _text("introduction", 0, 20000),
        _text("notes", 0, 20000),
    )
    _make(
        "steps",
        _key(),
        _link("recipe", "recipes"),
        _whole("position", ">= 0", "<= 1000000"),
        _text("title", 0, 300),
        _text("text", 0, 20000),
        _real("hands_on_minutes", ">= 0.0", "<= 527040.0"),
        _real("waiting_minutes", ">= 0.0", "<= 527040.0"),
        _text("station", 0, 300),
        _plain("equipment"),
        _one_of("heat", "oven", "pan", "oil", "core", "chill", optional=True),
        _real("celsius", ">= -200.0", "<= 1000.0", optional=True),
        _plain("hazards"),
        _yes_or_no("on_camera"),
        _real("hold_minutes", ">= 0.0", "<= 527040.0", optional=True),
        _one_of("uses", "oven", "burners", "fryer", "fridge", "freezer", "tool", optional=True),
        _whole("places", ">= 1", "<= 1000"),
        _text("skill", 0, 300),
    )
    _make(
        "lines",
        _key(),
        _link("step", "steps"),
        _whole("position", ">= 0", "<= 1000000"),
        _link("food", "foods", optional=True),
        _link("made", "recipes", optional=True),
        _real("low", ">= 0.0", "<= 10000000.0", optional=True),
        _real("high", ">= 0.0", "<= 10000000.0", optional=True),
        _text("unit", 0, 300),
        _text("preparation", 0, 300),
        _yes_or_no("to_taste"),
        _yes_or_no("garnish"),
        _text("note", 0, 300),
    )
    _make(
        "shoots",
        _key(),
        _text("name", 1, 300),
        _plain("on", optional=True),
        _plain("call", optional=True),
        _text("zone", 0, 300),
        _link("base", "foods", optional=True),
        _real("base_amount", ">= 0.0", "<= 10000000.0"),
        _text("base_unit", 0, 300),
        _whole("cap", ">= 0", "<= 10000000000000", optional=True),
        _whole("budget", ">= 0", "<= 10000000000000", optional=True),
        _real("wait_limit", ">= 0.0", "<= 527040.0"),
        _whole("spares", ">= 0", "<= 20"),
        _one_of("cap_basis", "used cost", "used cost, staples free", "whole packs over portions"),
        _whole("most_stores", ">= 1", "<= 50", optional=True),
        _real("waste_value", ">= 0.0", "<= 1.0"),
        _real("contingency", ">= 0.0", "<= 1.0"),
        _whole("quote_days", ">= 0", "<= 36600"),
        _yes_or_no("prices_taxed"),
        _plain("wrap", optional=True),
        _real("reset_minutes", ">= 0.0", "<= 527040.0"),
        _yes_or_no("may_reorder"),
        _plain("prep_from"),
        _plain("prep_until"),
        _yes_or_no("hot_set"),
        _text("notes", 0, 20000),
    )
    _make(
        "dishes",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _link("recipe", "recipes"),
        _text("name", 0, 300),
        _real("portions", "> 0.0", "<= 10000000.0"),
        _whole("cap", ">= 0", "<= 10000000000000", optional=True),
        _real("camera_minutes", ">= 0.0", "<= 527040.0", optional=True),
        _text("notes", 0, 20000),
    )
    _make(
        "builds",
        _key(),
        _link("dish", "dishes"),
        _whole("position", ">= 0", "<= 1000000"),
        _one_of("kind", "hero", "swap-out", "spare", "beauty", "tasting"),
        _link("up_to", "steps", optional=True),
        _real("portions", "> 0.0", "<= 10000000.0", optional=True),
        _one_of("state", "planned", "under way", "ready", "used", "spoiled"),
        _text("waits", 0, 300),
    )
    _make(
        "pantry_items",
        _key(),
        _link("shoot", "shoots"),
        _link("food", "foods"),
        _real("amount", "> 0.0", "<= 10000000.0"),
        _text("unit", 0, 300),
    )
    _make(
        "trips",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _link("store", "stores"),
        _plain("on"),
    )
    _make(
        "purchases",
        _key(),
        _link("shoot", "shoots"),
        _link("food", "foods"),
        _link("pack", "packs", optional=True),
        _real("count", ">= 0.0", "<= 10000000.0"),
        _whole("planned", ">= 0", "<= 10000000000000", optional=True),
        _whole("paid", ">= 0", "<= 10000000000000", optional=True),
        _plain("on", optional=True),
        _link("instead", "foods", optional=True),
        _text("note", 0, 300),
    )
    _make(
        "budget_lines",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _text("name", 1, 300),
        _text("heading", 0, 300),
        _real("quantity", ">= 0.0", "<= 10000000.0"),
        _whole("rate", ">= 0", "<= 10000000000000"),
        _whole("committed", ">= 0", "<= 10000000000000", optional=True),
        _whole("actual", ">= 0", "<= 10000000000000", optional=True),
        _yes_or_no("taxed"),
    )
    _make(
        "tax_rates",
        _key(),
        _link("shoot", "shoots"),
        _one_of(
            "section",
            "produce",
            "meat",
            "fish",
            "dairy and eggs",
            "bakery",
            "grains and pulses",
            "tins and jars",
            "oils and vinegars",
            "spices and seasonings",
            "baking",
            "nuts and seeds",
            "frozen",
            "drinks",
            optional=True,
        ),
        _real("rate", ">= 0.0", "<= 1.0"),
    )
    _make(
        "claims",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _text("says", 0, 20000),
        _one_of(
            "kind",
            "a portion costs under",
            "an amount costs about",
            "everything costs under",
            "everything comes from what there is of the base",
            "a dish takes no more minutes than",
        ),
        _link("dish", "dishes", optional=True),
        _link("recipe", "recipes", optional=True),
        _real("amount", ">= 0.0", "<= 10000000.0"),
        _text("unit", 0, 300),
        _real("target", ">= 0.0", "<= 10000000.0"),
        _real("tolerance", ">= 0.0", "<= 10000000.0"),
    )
    _make(
        "people",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _text("name", 1, 300),
        _text("role", 0, 300),
        _plain("skills"),
        _yes_or_no("on_camera"),
        _plain("arrives", optional=True),
        _plain("leaves", optional=True),
    )
    _make(
        "appliances",
        _key(),
        _link("shoot", "shoots"),
        _whole("position", ">= 0", "<= 1000000"),
        _text("name", 1, 300),
        _one_of("kind", "oven", "burners", "fryer", "fridge", "freezer", "tool"),
        _whole("places", ">= 1", "<= 1000"),
        _real("change_minutes", ">= 0.0", "<= 527040.0"),
        _real("tolerance", ">= 0.0", "<= 100.0"),
    )
    _make(
        "fixed_events",
        _key(),
        _link("shoot", "shoots"),
        _text("name", 1, 300),
        _plain("at"),
        _real("minutes", ">= 0.0", "<= 527040.0"),
        _yes_or_no("stops_work"),
    )
    _make(
        "pins",
        _key(),
        _link("shoot", "shoots"),
        _link("dish", "dishes", optional=True),
        _link("build", "builds", optional=True),
        _link("step", "steps", optional=True),
        _link("conversion", "conversions", optional=True),
        _plain("on"),
        _plain("at"),
        _yes_or_no("done"),
    )
