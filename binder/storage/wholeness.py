"""Records of which some are missing, made to hang together by leaving out what belongs to the missing ones."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.kitchen.binder import TABLE_OF, Binder, binder_of
from binder.kitchen.edits.records import with_values
from binder.kitchen.errors import BinderError
from binder.kitchen.integrity import references_of, require_all_whole, require_no_loop
from binder.kitchen.recipe import Line
from binder.kitchen.record import Record, field_of
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterable

Key = tuple[str, str]


def made_whole(records: Iterable[Record], lost: list[str]) -> Binder:
    """A binder of as many of the records as hang together; what is left out or loosened is added to `lost`."""
    kept = {(TABLE_OF[type(record)], record.id): record for record in records}
    _see_to_settings(kept, lost)
    while _loosened(kept, lost):
        pass
    _leave_out_unclear(kept, lost)
    _leave_out_loops(kept, lost)
    binder = binder_of(kept.values())
    require_all_whole(binder)
    return binder


def _see_to_settings(kept: dict[Key, Record], lost: list[str]) -> None:
    for key in [key for key in kept if key[0] == "settings" and key[1] != SETTINGS_ID]:
        del kept[key]
    if ("settings", SETTINGS_ID) not in kept:
        kept[("settings", SETTINGS_ID)] = Settings(id=SETTINGS_ID, name=_("Salvaged binder"))
        lost.append(_("the settings: measures, currency and language are the program's own"))


def _loosened(kept: dict[Key, Record], lost: list[str]) -> bool:
    """Take out what names a missing record, or have it name none where it may. Whether anything was done."""
    loose = [(record, field) for record in kept.values() for field in _missing(record, kept)]
    for record, field in loose:
        key = (TABLE_OF[type(record)], record.id)
        if key not in kept:
            continue
        if field_of(type(record), field).optional and not isinstance(record, Line):
            kept[key] = with_values(kept[key], **{field: None})
            lost.append(_("the {field} of {record}").format(field=field.replace("_", " "), record=record.called))
        else:
            del kept[key]
            lost.append(_("{record}, as what it names is lost").format(record=record.called))
    return bool(loose)


def _missing(record: Record, kept: dict[Key, Record]) -> list[str]:
    return [
        field
        for field, reference in references_of(type(record))
        if getattr(record, field) is not None and (reference.table, getattr(record, field)) not in kept
    ]


def _leave_out_unclear(kept: dict[Key, Record], lost: list[str]) -> None:
    """Leave out lines that are of nothing or of two things."""
    for key, record in list(kept.items()):
        if isinstance(record, Line) and not _is_clear(record):
            del kept[key]
            lost.append(_("{record}, which is unclear").format(record=record.called))


def _is_clear(line: Line) -> bool:
    one_source = (line.food is None) != (line.made is None)
    return one_source and (line.low is None) == (line.high is None) and (line.low or 0) <= (line.high or 0)


def _leave_out_loops(kept: dict[Key, Record], lost: list[str]) -> None:
    """Take in lines of recipes one by one, but for those that would close a loop."""
    if _has_no_loop(kept):
        return
    made = {key: record for key, record in kept.items() if isinstance(record, Line) and record.made is not None}
    for key in made:
        del kept[key]
    for key, record in made.items():
        kept[key] = record
        if not _has_no_loop(kept):
            del kept[key]
            lost.append(_("{record}, which would make a recipe of itself").format(record=record.called))


def _has_no_loop(kept: dict[Key, Record]) -> bool:
    try:
        require_no_loop(binder_of(kept.values()))
    except BinderError:
        return False
    return True
