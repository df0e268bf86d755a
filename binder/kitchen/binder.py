"""A binder is a value: a handful of tables. An edit is a change, and a change makes the next value."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any

from binder.kitchen.budget import BudgetLine, TaxRate
from binder.kitchen.buying import PantryItem, Purchase, Trip
from binder.kitchen.claim import Claim
from binder.kitchen.conversion import Addition, Conversion, Outcome, Trial, TrialOutcome
from binder.kitchen.day import Appliance, FixedEvent, Person, Pin
from binder.kitchen.food import Food, Measure
from binder.kitchen.price import Pack, Quote, Store
from binder.kitchen.recipe import Line, Recipe, Step
from binder.kitchen.record import Record
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Build, Dish, Shoot
from binder.kitchen.table import Table

RECORD_TYPES: Mapping[str, type[Record]] = {
    "settings": Settings,
    "foods": Food,
    "measures": Measure,
    "stores": Store,
    "packs": Pack,
    "quotes": Quote,
    "conversions": Conversion,
    "outcomes": Outcome,
    "additions": Addition,
    "trials": Trial,
    "trial_outcomes": TrialOutcome,
    "recipes": Recipe,
    "steps": Step,
    "lines": Line,
    "shoots": Shoot,
    "dishes": Dish,
    "builds": Build,
    "pantry_items": PantryItem,
    "trips": Trip,
    "purchases": Purchase,
    "budget_lines": BudgetLine,
    "tax_rates": TaxRate,
    "claims": Claim,
    "people": Person,
    "appliances": Appliance,
    "fixed_events": FixedEvent,
    "pins": Pin,
}
"""The tables of a binder, owners before what they own."""

EVERY_TABLE = frozenset(RECORD_TYPES)
"""What a figure depends on that says nothing else."""

TABLE_OF: Mapping[type[Record], str] = {record_type: table for table, record_type in RECORD_TYPES.items()}
"""The table that records of a type are kept in."""


class Memory:
    """Figures already worked out, filed by the tables they depend on: a change forgets just those."""

    def __init__(self, shelves: Mapping[frozenset[str], dict[object, Any]] | None = None) -> None:
        self._shelves = dict(shelves or {})

    def shelf(self, tables: frozenset[str]) -> dict[object, Any]:
        """Results of figures that depend on just these tables, by figure and arguments."""
        shelf = self._shelves.get(tables)
        if shelf is None:
            shelf = self._shelves[tables] = {}
        return shelf

    def without(self, changed: Iterable[str]) -> Memory:
        """What may be kept when some tables have changed."""
        touched = frozenset(changed)
        # Taken as a list first: another thread, working out figures of this binder, may put up a shelf meanwhile.
        return Memory({tables: shelf for tables, shelf in list(self._shelves.items()) if not tables & touched})


@dataclass(frozen=True)
class Binder:
    """One document. Two binders are equal when their tables are; `memory` holds figures already worked out."""

    settings_table: Table[Settings] = field(default_factory=lambda: Table([Settings(id=SETTINGS_ID, name="Binder")]))
    foods: Table[Food] = field(default_factory=Table)
    measures: Table[Measure] = field(default_factory=Table)
    stores: Table[Store] = field(default_factory=Table)
    packs: Table[Pack] = field(default_factory=Table)
    quotes: Table[Quote] = field(default_factory=Table)
    conversions: Table[Conversion] = field(default_factory=Table)
    outcomes: Table[Outcome] = field(default_factory=Table)
    additions: Table[Addition] = field(default_factory=Table)
    trials: Table[Trial] = field(default_factory=Table)
    trial_outcomes: Table[TrialOutcome] = field(default_factory=Table)
    recipes: Table[Recipe] = field(default_factory=Table)
    steps: Table[Step] = field(default_factory=Table)
    lines: Table[Line] = field(default_factory=Table)
    shoots: Table[Shoot] = field(default_factory=Table)
    dishes: Table[Dish] = field(default_factory=Table)
    builds: Table[Build] = field(default_factory=Table)
    pantry_items: Table[PantryItem] = field(default_factory=Table)
    trips: Table[Trip] = field(default_factory=Table)
    purchases: Table[Purchase] = field(default_factory=Table)
    budget_lines: Table[BudgetLine] = field(default_factory=Table)
    tax_rates: Table[TaxRate] = field(default_factory=Table)
    claims: Table[Claim] = field(default_factory=Table)
    people: Table[Person] = field(default_factory=Table)
    appliances: Table[Appliance] = field(default_factory=Table)
    fixed_events: Table[FixedEvent] = field(default_factory=Table)
    pins: Table[Pin] = field(default_factory=Table)
    memory: Memory = field(default_factory=Memory, compare=False, repr=False)

    def __hash__(self) -> int:
        return id(self)

    @property
    def settings(self) -> Settings:
        """What holds for the whole binder."""
        return self.settings_table[SETTINGS_ID]

    def table(self, name: str) -> Table[Any]:
        """The table called `name`; KeyError where there is none."""
        if name not in RECORD_TYPES:
            raise KeyError(name)
        table: Table[Any] = getattr(self, _attribute(name))
        return table

    def find(self, table: str, key: str) -> Record | None:
        """The record of `table` with that id, or None."""
        record: Record | None = self.table(table).get(key)
        return record

    def with_tables(self, tables: Mapping[str, Table[Any]]) -> Binder:
        """The binder with some tables put in place of its own, remembering only what does not depend on them."""
        changed = {_attribute(name): table for name, table in tables.items()}
        return replace(self, memory=self.memory.without(tables), **changed)


def _attribute(table: str) -> str:
    return "settings_table" if table == "settings" else table


def binder_of(records: Iterable[Record]) -> Binder:
    """A binder of these records. Nothing is checked beyond the records themselves: see `integrity`."""
    gathered: dict[str, list[Record]] = {}
    for record in records:
        gathered.setdefault(TABLE_OF[type(record)], []).append(record)
    return Binder().with_tables({name: Table(group) for name, group in gathered.items()})


def every_record(binder: Binder) -> list[Record]:
    """All records, table by table, owners first, each table by id."""
    return [binder.table(name)[key] for name in RECORD_TYPES for key in sorted(binder.table(name))]


assert {_attribute(name) for name in RECORD_TYPES} == {f.name for f in fields(Binder)} - {"memory"}  # noqa: S101
