"""What is set out together: a line of a dish, for those of its builds that need it there, or then. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from binder.figures.demand import dish_batches
from binder.figures.mise import mise_list
from binder.figures.missing import Missing
from binder.figures.portion_text import SetOut, set_out
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from datetime import datetime

    from binder.figures.mise import MiseItem, PerBuild
    from binder.kitchen.binder import Binder

    Starts = Mapping[tuple[str | None, str], datetime]


@dataclass(frozen=True)
class Portion:
    """A line of mise for some builds: what each takes, and all of them together. `at`: when they need it."""

    item: MiseItem
    builds: tuple[PerBuild, ...]
    total: SetOut
    at: datetime | None = None

    @property
    def key(self) -> str:
        """The key of its row: the line, the dish and the moment."""
        moment = self.at.isoformat() if self.at is not None else ""
        return f"mise:{self.item.line}|{self.item.number or 0}|{moment}"


def line_of(row: str) -> str:
    """The id of the line that a row shows."""
    return row.partition(":")[2].rsplit("|", 2)[0]


def by_station(binder: Binder, shoot: str) -> list[tuple[str, list[Portion]]]:
    """What is made ahead first, then the stations in the order in which the dishes use them."""
    whole = [Portion(item, item.builds, item.total) for item in mise_list(binder, shoot)]
    return [(station, list(items)) for station, items in groupby(whole, key=lambda one: one.item.station)]


def by_hour(binder: Binder, shoot: str, starts: Starts) -> list[tuple[datetime | None, list[Portion]]]:
    """By the hour in which the step that uses it begins; what has no time comes last."""
    portions = sorted(
        (portion for item in mise_list(binder, shoot) for portion in _by_moment(binder, item, starts)),
        key=lambda one: (one.at is None, one.at.timestamp() if one.at else 0.0, one.item.number or 0),
    )
    return [(hour, list(items)) for hour, items in groupby(portions, key=lambda one: _hour(one.at))]


def _hour(at: datetime | None) -> datetime | None:
    return at.replace(minute=0, second=0, microsecond=0) if at is not None else None


def _by_moment(binder: Binder, item: MiseItem, starts: Starts) -> Iterator[Portion]:
    """A line once for all builds that use it at the same moment."""
    step = binder.lines[item.line].step
    moments: dict[datetime | None, list[PerBuild]] = {}
    for build in item.builds:
        moments.setdefault(starts.get((build.build or None, step)), []).append(build)
    for at, builds in moments.items():
        total = item.total if len(builds) == len(item.builds) else _together(binder, item, builds)
        yield Portion(item, tuple(builds), total, at)


def _together(binder: Binder, item: MiseItem, builds: list[PerBuild]) -> SetOut:
    """What some of the builds take in all."""
    batches = dish_batches(binder, item.dish)
    keys = {build.build for build in builds}
    counts = () if isinstance(batches, Missing) else (one.count for one in batches if one.build.id in keys)
    return set_out(binder, binder.lines[item.line], sum(counts))


def each_text(portion: Portion, *, to_taste: bool) -> str:
    """`3 × 180 g`, or each build with its own amount: `hero 180 g, spare 90 g`; where it is not all, whose it is."""
    amounts = [build.amount.weight or build.amount.measure for build in portion.builds]
    if len(set(amounts)) > 1:
        pairs = zip(portion.builds, amounts, strict=True)
        return ", ".join(f"{_(build.kind)} {amount}" for build, amount in pairs)
    each = amounts[0] if len(amounts) == 1 or to_taste else f"{len(amounts)} × {amounts[0]}"
    if len(portion.builds) == len(portion.item.builds):
        return each
    return f"{listed(dict.fromkeys(_(build.kind) for build in portion.builds))} {each}"
