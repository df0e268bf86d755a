"""What whoever prints asks for, as it stands in the fields of the page, and the choices it is. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _
from binder.paper.file_names import require_fit
from binder.paper.label_grid import label_grid
from binder.paper.paper_size import PAPERS, margin_called
from binder.paper.print_choices import FURTHEST_METRES, NEAREST_METRES, Backs, Look, PrintChoices
from binder.paper.sheet_kind import SheetKind

if TYPE_CHECKING:
    from collections.abc import Mapping

    from binder.figures.day_plan import DayPlan

TIMED = frozenset(
    {
        SheetKind.STATIONS,
        SheetKind.MISE_TIMES,
        SheetKind.RUNNING_ORDER,
        SheetKind.PEOPLE,
        SheetKind.CALL,
        SheetKind.PREP,
    }
)
"""The sheets that take times from the plan of the day."""


class UnreadNumberError(BinderError):
    """Text in a field for a number that holds none."""

    def __init__(self, field: str, typed: str, example: str) -> None:
        says = _("{field}: “{typed}” is no number. Write it as {example}.")
        super().__init__(says.format(field=field, typed=typed[:40], example=example))


@dataclass(frozen=True)
class Wishes:
    """Keys and text as chosen and typed; empty where it is to be as is usual. `used_labels` is a count."""

    paper: str = ""
    read_from: str = ""
    look: str = Look.PLAIN.value
    margin: str = ""
    sheet: str = ""
    backs: str = Backs.NONE.value
    labels: str = ""
    used_labels: str = ""
    pattern: str = ""
    together: bool = False


_KEPT = ("read_from", "look", "margin", "sheet", "backs", "labels")
"""What is the same the next time: how this kitchen prints. Labels that are gone belong to one sheet of labels."""


def kept_of(wishes: Wishes) -> dict[str, str]:
    """What is kept of wishes until the window is opened again."""
    return {name: getattr(wishes, name) for name in _KEPT}


def wishes_kept(kept: Mapping[str, str]) -> Wishes:
    """The wishes that were kept; the usual ones where they cannot be had any more."""
    known: dict[str, Any] = {name: kept[name] for name in _KEPT if name in kept}
    wishes = replace(Wishes(), **known)
    try:
        choices_of(wishes, {})
    except (BinderError, ValueError):
        return Wishes()
    return wishes


def choices_of(wishes: Wishes, plans: Mapping[str, DayPlan]) -> PrintChoices:
    """The choices that wishes stand for, with the day plans there are. Raises BinderError for what cannot be had."""
    if wishes.pattern:
        require_fit(wishes.pattern, together=wishes.together)
    return PrintChoices(
        metres=_metres(wishes.read_from),
        look=Look(wishes.look),
        margin=margin_called(wishes.margin) if wishes.margin else None,
        sheet=wishes.sheet or None,
        backs=Backs(wishes.backs),
        labels=label_grid(wishes.labels) if wishes.labels else None,
        used_labels=_count(wishes.used_labels),
        together=wishes.together,
        pattern=wishes.pattern or None,
        plans=plans,
    )


def _metres(typed: str) -> float | None:
    plain = typed.strip().casefold().removesuffix("m").strip().replace(",", ".")
    if not plain:
        return None
    try:
        return float(plain)
    except ValueError:
        raise UnreadNumberError(_("Read from"), typed, "0.6 m") from None


def _count(typed: str) -> int:
    plain = typed.strip()
    if not plain:
        return 0
    if not plain.isdecimal():
        raise UnreadNumberError(_("Labels gone from the first sheet"), typed, "5")
    return min(int(plain[:6]), _MOST_USED)


_MOST_USED = 10_000


def in_short(wishes: Wishes) -> str:
    """What differs from the usual, in a few words; empty where nothing does."""
    said = []
    if wishes.read_from:
        said.append(_("read from {metres} m").format(metres=wishes.read_from.strip().removesuffix("m").strip()))
    if wishes.look == Look.ON_CAMERA.value:
        said.append(_("on-camera style"))
    if wishes.margin:
        said.append(_("margin {margin}").format(margin=wishes.margin))
    if wishes.sheet:
        said.append(_("several on {paper}").format(paper=PAPERS[wishes.sheet].name))
    if wishes.backs != Backs.NONE.value:
        said.append(_("on both sides"))
    if wishes.labels:
        said.append(_("labels {measures}").format(measures=wishes.labels))
    return " · ".join(said)


def distances() -> tuple[str, ...]:
    """Distances to choose from, in metres; others may be typed."""
    steps = (NEAREST_METRES, 0.6, 0.8, 1.0, 1.5, 2.0, 2.5, FURTHEST_METRES)
    return tuple(f"{metres:g} m" for metres in steps)
