"""Which page shows a record, and what a change leads to. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.missing import Place
from binder.kitchen.edits.records import owner_field
from binder.kitchen.integrity import references_of

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.kitchen.change import Change, Edit
    from binder.kitchen.record import Record

PAGE_OF = {
    "shoots": "shoot",
    "dishes": "shoot",
    "builds": "shoot",
    "recipes": "dishes",
    "steps": "dishes",
    "lines": "dishes",
    "foods": "larder",
    "measures": "larder",
    "packs": "larder",
    "quotes": "larder",
    "stores": "buying",
    "conversions": "base",
    "outcomes": "base",
    "additions": "base",
    "trials": "base",
    "trial_outcomes": "base",
    "people": "day",
    "appliances": "day",
    "fixed_events": "day",
    "pins": "day",
    "trips": "buying",
    "purchases": "buying",
    "pantry_items": "buying",
    "budget_lines": "money",
    "tax_rates": "money",
    "claims": "money",
    "settings": "settings",
}
"""The page that a record of a table is edited on."""


def place_of_change(binder: Binder, change: Change) -> Place | None:
    """Where to look after a change was done or undone: the record it left, or the owner of the one it took out.

    Where the owner is shown on another page it is the record taken out, so that its page is the one looked at.
    """
    there = [edit for edit in change.edits if edit.after is not None]
    new = [edit for edit in there if edit.before is None]
    changed = [edit for edit in there if edit.before is not None and not _only_moved(edit)]
    moved = [edit for edit in there if edit.before is not None and _only_moved(edit)]
    gone = [edit for edit in change.edits if edit.after is None]
    for edit in (*_roots(new), *changed):
        return Place(edit.table, edit.id)
    for edit in gone:
        owner = _owner(binder, edit.before)
        if owner is not None:
            return owner if _share_a_page(owner.table, edit.table) else Place(edit.table, edit.id)
    return Place(moved[0].table, moved[0].id) if moved else None


def _share_a_page(owner: str, part: str) -> bool:
    return PAGE_OF.get(part, PAGE_OF.get(owner)) == PAGE_OF.get(owner)


def changed_fields(change: Change, place: Place) -> tuple[str, ...]:
    """The fields of a record that a change made different, in its own order; none where it was made or taken out."""
    edit = next((edit for edit in change.edits if (edit.table, edit.id) == (place.table, place.id)), None)
    if edit is None or edit.before is None or edit.after is None:
        return ()
    before, after = vars(edit.before), vars(edit.after)
    return tuple(name for name, value in after.items() if value != before[name])


def _roots(new: list[Edit]) -> list[Edit]:
    """New records that no other new record owns; foods that only came along with a line are the last."""
    made = {edit.id for edit in new}
    roots = [edit for edit in new if _owner_id(edit.after) not in made]
    return sorted(roots, key=lambda edit: edit.table in {"foods", "stores"})


def _owner_id(record: Record | None) -> str | None:
    field = owner_field(type(record)) if record is not None else None
    return getattr(record, field) if field else None


def _only_moved(edit: Edit) -> bool:
    before, after = edit.before, edit.after
    return _bare(before) == _bare(after)


def _bare(record: Record | None) -> dict[str, object]:
    return {key: value for key, value in vars(record).items() if key != "position"} if record is not None else {}


def _owner(binder: Binder, record: Record | None) -> Place | None:
    """The record that owns another, as far up as one is left in the binder."""
    if record is None:
        return None
    field = owner_field(type(record))
    if field is None:
        return None
    table = next(reference.table for name, reference in references_of(type(record)) if name == field)
    owner = getattr(record, field)
    return Place(table, owner) if owner in binder.table(table) else None


def shown_record(binder: Binder, place: Place, *tables: str) -> str | None:
    """The id of the record of one of `tables` that owns a place, or is it: the recipe of a line."""
    table, key = place.table, place.id
    while table not in tables:
        record = binder.find(table, key)
        owner = _owner(binder, record)
        if owner is None:
            return None
        table, key = owner.table, owner.id
    return key if key in binder.table(table) else None
