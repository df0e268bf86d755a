"""An answer for people: text and tables that read well at 80 columns, in a pipe and without colour.

What a thing is, is said by a word and a shape; colour only repeats it. No number is ever cut: a table that needs more
room than there is takes it.
"""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from binder.cli.columns import PARTS, Column, fitted, folded, heading_lines, row_lines
from binder.cli.endings import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from rich.console import Console

_WIDEST_PARAGRAPH = 100
_COLOURS = {r"◣( \w+)?": "red", r"△( \w+)?|◌": "yellow"}
"""What a colour repeats, where there is colour."""


def _console() -> Console:
    from rich.console import Console

    return Console(file=sys.stdout, markup=False, emoji=False, highlight=False)


def _print(lines: Iterable[str], *, strong: bool = False) -> None:
    """Print lines that are folded already; as plain text where there is no colour."""
    from rich.text import Text

    console = _console()
    text = Text("\n".join(lines), style="bold" if strong else "")
    if console.color_system is None:
        sys.stdout.write(f"{text.plain}\n")
        return
    for pattern, colour in _COLOURS.items():
        text.highlight_regex(pattern, colour)
    console.print(text, soft_wrap=True)


def _room() -> int:
    """Cells for a paragraph."""
    return min(_console().width, _WIDEST_PARAGRAPH)


def say(text: str = "", *, strong: bool = False) -> None:
    """A paragraph, folded to the width there is."""
    _print(folded(one_line(text), _room()), strong=strong)


def say_parts(parts: Iterable[str]) -> None:
    """A heading of several parts, folded between them."""
    _print(folded(one_line(PARTS.joint.join(parts)), _room(), PARTS), strong=True)


def say_marked(mark: str, text: str) -> None:
    """A sentence after its mark, further lines standing under the sentence."""
    first, *others = folded(one_line(text), _room() - len(mark) - 1)
    _print([f"{mark} {first}", *(" " * (len(mark) + 1) + line for line in others)])


def show_table(columns: Sequence[Column], rows: Iterable[Sequence[str]]) -> None:
    """A table with a line of headings."""
    show_grouped(columns, [("", list(rows))])


def show_grouped(columns: Sequence[Column], groups: Sequence[tuple[str, Sequence[Sequence[str]]]]) -> None:
    """One table in groups, each under its name."""
    tidied = [(one_line(name), [[one_line(text) for text in row] for row in rows]) for name, rows in groups]
    widths = fitted(columns, [row for _name, rows in tidied for row in rows], _console().width)
    _print(heading_lines(columns, widths))
    for index, (name, rows) in enumerate(tidied):
        if name:
            _print([""] * min(index, 1) + [name], strong=True)
        if rows:
            _print(line for row in rows for line in row_lines(columns, row, widths))
