"""What a document is made of by its outline, a card or a station each, and how often each is printed. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

MOST_COPIES = 99


@dataclass(frozen=True)
class Stretch:
    """An entry of the outline with its pages, counted from 0, the last not among them."""

    title: str
    first: int
    end: int

    @property
    def pages(self) -> range:
        """Its pages."""
        return range(self.first, self.end)


def stretches(outline: Sequence[tuple[str, int]], count: int, whole: str) -> tuple[Stretch, ...]:
    """The entries of an outline, as titles and first pages, over all pages; one called `whole` where there is none.

    Entries that begin on one leaf, as several cards on a sheet do, are printed together.
    """
    starts: dict[int, list[str]] = {}
    for title, page in sorted(outline, key=lambda entry: entry[1]):
        starts.setdefault(page, []).append(title)
    if not starts or min(starts) > 0:
        starts[0] = [whole, *starts.get(0, [])]
    firsts = sorted(starts)
    ends = (*firsts[1:], count)
    return tuple(
        Stretch(", ".join(starts[first]), first, end) for first, end in zip(firsts, ends, strict=True) if first < end
    )


def printing_order(parts: Sequence[Stretch], copies: Mapping[str, int]) -> tuple[int, ...]:
    """The pages in the order they are printed: each part whole, as often as wanted, once where nothing is said."""
    return tuple(page for part in parts for _copy in range(copies.get(part.title, 1)) for page in part.pages)
