"""Which tables of a binder nest in which: a record that another owns stands inside its owner in a JSON document."""

from __future__ import annotations

from binder.kitchen.binder import RECORD_TYPES
from binder.kitchen.edits.records import owner_field
from binder.kitchen.integrity import references_of

TOP_LISTS = ("stores", "foods", "conversions", "recipes", "shoots")
"""The lists of a document, what others name first."""

SETTINGS = "settings"
"""The one table of one record, which a document has as an object."""


def _parts() -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = {table: [] for table in RECORD_TYPES}
    for table, record_type in RECORD_TYPES.items():
        for field, reference in references_of(record_type):
            if reference.owner:
                found[reference.table].append((table, field))
    return {table: tuple(parts) for table, parts in found.items()}


PARTS = _parts()
"""For each table the tables nested in it, as (table, field that names the owner)."""

OWNER_FIELDS = {table: owner_field(record_type) for table, record_type in RECORD_TYPES.items()}
"""For each table the field that names the owner; None where a record stands by itself."""


def implied_id(owner: str, index: int) -> str:
    """The id of an owned record that a document gives none: its owner's, and its place in the list from 1."""
    return f"{owner}/{index + 1}"


assert {SETTINGS, *TOP_LISTS} == {table for table, field in OWNER_FIELDS.items() if field is None}  # noqa: S101
