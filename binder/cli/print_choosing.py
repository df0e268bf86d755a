"""What `binder print` was asked for, from the words of its options: what is not known of them is wrong usage."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cli.endings import WrongUsageError
from binder.kitchen.errors import BinderError

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from binder.kitchen.binder import Binder
    from binder.paper.print_choices import PrintChoices
    from binder.paper.sheet_kind import SheetKind

    Known = Callable[[str], object]


def require_known(name: str | None, known: Known) -> None:
    """Raise WrongUsageError for a word that is not known."""
    try:
        if name is not None:
            known(name)
    except BinderError as unknown:
        raise WrongUsageError(unknown.says) from unknown


def sheets_called(only: str | None) -> list[SheetKind] | None:
    """The sheets of `--only`; None where all are meant. Raises WrongUsageError."""
    from binder.paper.sheet_kind import sheet_kind

    try:
        return None if only is None else [sheet_kind(name) for name in only.split(",")]
    except BinderError as unknown:
        raise WrongUsageError(unknown.says) from unknown


def choices_of(
    *,
    metres: float | None,
    style: str | None,
    margin: str | None,
    sheet: str | None,
    backs: str | None,
    labels: str | None,
    used_labels: int,
    together: bool,
    names: str | None,
) -> PrintChoices:
    """The choices that the options stand for. Raises WrongUsageError."""
    from binder.paper.file_names import require_fit
    from binder.paper.label_grid import label_grid
    from binder.paper.paper_size import margin_called, paper_called
    from binder.paper.print_choices import Backs, Look, PrintChoices, backs_called, look_called

    try:
        if names is not None:
            require_fit(names, together=together)
        return PrintChoices(
            metres=metres,
            look=Look.PLAIN if style is None else look_called(style),
            margin=None if margin is None else margin_called(margin),
            sheet=None if sheet is None else paper_called(sheet).key,
            backs=Backs.NONE if backs is None else backs_called(backs),
            labels=None if labels is None else label_grid(labels),
            used_labels=used_labels,
            together=together,
            pattern=names,
        )
    except BinderError as unfit:
        raise WrongUsageError(unfit.says) from unfit


def with_plans(choices: PrintChoices, binder: Binder, shoots: Sequence[str], seconds: float) -> PrintChoices:
    """The choices with a day plan for each shoot that has one within so many seconds."""
    from dataclasses import replace

    from binder.figures.day_plan import day_plan

    if seconds <= 0:
        return choices
    found = {shoot: day_plan(binder, shoot, seconds=seconds) for shoot in shoots}
    return replace(choices, plans={shoot: plan for shoot, plan in found.items() if plan is not None})
