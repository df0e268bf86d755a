"""What is said of pages before they are printed: how many, and what is wrong with which. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.desktop.sheet.cell import Mark
from binder.kitchen.wording import _, listed, ngettext
from binder.paper.preflight import FaultKind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.paper.preflight import Fault
    from binder.paper.press import Printed


@dataclass(frozen=True)
class Verdict:
    """A shape, a sentence, the faults named one by one, and what is said of those that are too many for it."""

    mark: Mark
    says: str
    faults: tuple[Fault, ...] = ()
    more: str = ""


_MOST_NAMED = 4


def verdict_of(printed: Printed) -> Verdict:
    """What is said of laid-out pages."""
    pages = ngettext("{count} page", "{count} pages", printed.pages).format(count=printed.pages)
    faults = sorted(printed.faults, key=lambda fault: (not is_grave(fault), fault.page))
    if not faults:
        return Verdict(Mark.WITHIN, _("{pages}, nothing is wrong with them").format(pages=pages))
    mark = Mark.OVER if is_grave(faults[0]) else Mark.WARN
    says = ngettext(
        "{pages}; one thing is not right before they are printed:",
        "{pages}; {count} things are not right before they are printed:",
        len(faults),
    ).format(pages=pages, count=len(faults))
    return Verdict(mark, says, tuple(faults[:_MOST_NAMED]), _more(faults[_MOST_NAMED:]))


def is_grave(fault: Fault) -> bool:
    """Whether a fault makes a page unfit to use: a sign shown by its number does not."""
    return fault.kind is not FaultKind.NO_PICTURE


def fault_text(fault: Fault) -> str:
    """A fault with its page."""
    return _("Page {page}: {fault}").format(page=fault.page, fault=fault.says)


def _more(faults: Sequence[Fault]) -> str:
    if not faults:
        return ""
    pages = listed([str(page) for page in sorted({fault.page for fault in faults})])
    says = ngettext("and {count} more, on page {pages}", "and {count} more, on pages {pages}", len(faults))
    return says.format(count=len(faults), pages=pages)


def marks_of(printed: Printed) -> dict[int, Mark]:
    """The pages with faults by their number, with the shape of the gravest."""
    marks: dict[int, Mark] = {}
    for fault in printed.faults:
        grave = is_grave(fault) or marks.get(fault.page) is Mark.OVER
        marks[fault.page] = Mark.OVER if grave else Mark.WARN
    return marks
