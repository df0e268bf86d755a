"""What must hold between records: every reference leads somewhere, a line has one source, no recipe contains itself."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, Protocol

from binder.kitchen.binder import RECORD_TYPES, TABLE_OF, Binder
from binder.kitchen.errors import BinderError
from binder.kitchen.recipe import Line, Step
from binder.kitchen.record import Record, fields_of
from binder.kitchen.settings import SETTINGS_ID
from binder.kitchen.shapes import Reference
from binder.kitchen.turns import in_turns
from binder.kitchen.wording import _, listed, ngettext

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence


class _Edit(Protocol):
    @property
    def before(self) -> Record | None: ...
    @property
    def after(self) -> Record | None: ...


class BrokenReferenceError(BinderError):
    """A record that names another which is not there."""

    def __init__(self, *, record: Record, field: str, target: str, table: str) -> None:
        super().__init__(
            _(
                "{record} names {target} as its {field}, and there is no such record among the {table}. "
                "Add it first, or choose another."
            ).format(record=record.called, target=repr(target), field=field, table=table)
        )


class StillUsedError(BinderError):
    """A record that cannot go because others use it."""

    def __init__(self, *, record: Record, users: Sequence[str]) -> None:
        self.users = tuple(users)
        more = len(users) - 3
        shown = (
            [*users[:3], ngettext("{count} more", "{count} more", more).format(count=more)] if more > 0 else list(users)
        )
        super().__init__(
            _("{record} cannot be removed: it is used in {users}. Take it out there first.").format(
                record=record.called, users=listed(shown)
            )
        )


class RecipeLoopError(BinderError):
    """A recipe that would contain itself; `loop` names the recipes on the way round."""

    def __init__(self, loop: Sequence[str]) -> None:
        self.loop = tuple(loop)
        super().__init__(
            _("A recipe cannot be made from itself: {loop}. Take one of these lines out.").format(loop=" → ".join(loop))
        )


class UnclearLineError(BinderError):
    """A line that is neither of a food nor of a recipe, or of both, or whose amounts make no range."""

    def __init__(self, line: Line, why: str) -> None:
        self.line, self.why = line, why
        super().__init__(_("{record}: {why}").format(record=line.called, why=why))


_references: dict[type[Record], tuple[tuple[str, Reference], ...]] = {}


def references_of(record_type: type[Record]) -> tuple[tuple[str, Reference], ...]:
    """The fields of a record type that name another record."""
    if record_type not in _references:
        fields = fields_of(record_type)
        _references[record_type] = tuple(
            (field.name, field.shape) for field in fields if isinstance(field.shape, Reference)
        )
    return _references[record_type]


@functools.cache
def references_to(table: str) -> tuple[tuple[str, str, Reference], ...]:
    """The fields, as (table, field, reference), that name records of `table`."""
    return tuple(
        (source, field, reference)
        for source, record_type in RECORD_TYPES.items()
        for field, reference in references_of(record_type)
        if reference.table == table
    )


def require_whole(binder: Binder, edits: Iterable[_Edit]) -> None:
    """Check what `edits` touched in `binder`, the value they led to. Raises the errors of this module."""
    recipes_touched = False
    for edit in in_turns(edits):
        if edit.after is None:
            _require_unused(binder, edit.before)
        else:
            _require_references(binder, edit.after)
            recipes_touched = recipes_touched or isinstance(edit.after, Line | Step)
    if SETTINGS_ID not in binder.table("settings") or len(binder.table("settings")) != 1:
        raise BinderError(_("A binder has one record of settings. Put it back."))
    if recipes_touched:
        require_no_loop(binder)


def require_all_whole(binder: Binder) -> None:
    """Check a whole binder that came from outside."""
    for name in RECORD_TYPES:
        for record in in_turns(binder.table(name).values()):
            _require_references(binder, record)
    require_whole(binder, ())
    require_no_loop(binder)


def _require_unused(binder: Binder, gone: Record | None) -> None:
    if gone is None:
        return
    users = [user for user, _field in users_of(binder, gone)]
    if users:
        raise StillUsedError(record=gone, users=[where_is(binder, user) for user in users])


def users_of(binder: Binder, record: Record) -> list[tuple[Record, str]]:
    """The records that name `record`, each with the field that does."""
    return [
        (user, field)
        for table, field, _reference in references_to(TABLE_OF[type(record)])
        for user in binder.table(table).where(field, record.id)
    ]


def where_is(binder: Binder, record: Record) -> str:
    """A record as a sentence names its place: a line or a step by its recipe, a dish by its shoot."""
    for field, reference in references_of(type(record)):
        if reference.owner:
            owner = binder.find(reference.table, getattr(record, field))
            return where_is(binder, owner) if owner else record.called
    return record.called


def _require_references(binder: Binder, record: Record) -> None:
    for field, reference in references_of(type(record)):
        target = getattr(record, field)
        if target is not None and target not in binder.table(reference.table):
            raise BrokenReferenceError(record=record, field=field, target=target, table=reference.table)
    if isinstance(record, Line):
        _require_clear(record)


def _require_clear(line: Line) -> None:
    if (line.food is None) == (line.made is None):
        raise UnclearLineError(line, _("a line is of one food or of one recipe. Name one of them."))
    if (line.low is None) != (line.high is None) or (line.low or 0) > (line.high or 0):
        raise UnclearLineError(line, _("a range of amounts runs from the smaller to the larger. Turn it round."))


def require_no_loop(binder: Binder) -> None:
    """Raise RecipeLoopError where a recipe reaches itself through its lines."""
    made_from = _made_from(binder)
    settled: set[str] = set()
    for start in made_from:
        _walk(start, made_from, settled, binder)


def _made_from(binder: Binder) -> dict[str, list[str]]:
    gathered: dict[str, list[str]] = {}
    for line in binder.lines.values():
        if line.made is not None and line.step in binder.steps:
            gathered.setdefault(binder.steps[line.step].recipe, []).append(line.made)
    return gathered


def _walk(start: str, made_from: dict[str, list[str]], settled: set[str], binder: Binder) -> None:
    """Depth first with a stack of its own: a chain of recipes may be deeper than Python's."""
    trail: list[tuple[str, int]] = [(start, 0)]
    on_trail = {start}
    while trail:
        recipe, next_one = trail[-1]
        parts = made_from.get(recipe, [])
        if recipe in settled or next_one == len(parts):
            settled.add(recipe)
            on_trail.discard(recipe)
            trail.pop()
            continue
        trail[-1] = (recipe, next_one + 1)
        part = parts[next_one]
        if part in on_trail:
            names = [step[0] for step in trail]
            loop = [*names[names.index(part) :], part]
            raise RecipeLoopError([binder.recipes[key].name if key in binder.recipes else key for key in loop])
        if part not in settled:
            on_trail.add(part)
            trail.append((part, 0))
