"""Rows of a sheet as spreadsheets mostly write them, found by their pattern and spared the parser of XML.

The parser calls Python five times a cell; a pattern finds all cells of a row at once. A row that is in any way
otherwise, with a formula, an entity or an element of another kind, goes to the parser as it stands, and so does all
that is not a row. After a comment, CDATA or an instruction everything does: what looks like a row may be part of them.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

PlainCell = tuple[str, str, str, str, str, str]
"""A cell: the letters of its column, the number of its style, its kind, its value, the text in it; each may be empty
but the letters. And of a row that is not plain the rest, which is empty in all that is ever handed on."""

_LONGEST_ROW = 1024 * 1024
"""Bytes; a row of 256 columns has some 15,000. What has no end by then goes to the parser, which keeps none of it."""

_ROW_ENDS = b"</row>"

_NOT_THE_LAST = False
"""What a parser is told of bytes that others follow."""

_BEGINS_IN_UTF_8 = re.compile(
    rb"""(?:\xef\xbb\xbf)?(?:<\?xml\ version=["']1\.0["'](?:\ encoding=["'](?i:utf-8)["'])?
    (?:\ standalone=["'](?:yes|no)["'])?\s*\?>)?\s*<[A-Za-z][^?!]*""",
    re.VERBOSE,
)
"""Up to the first row: an element, in UTF-8, without a declaration, a comment or an instruction."""

_TEXT = r"[^<>&\x00-\x1f\x7f-\x9f\ufffe\uffff]*+"
_CELL = (
    rf'<c r="([A-Z]{{1,3}})[0-9]{{1,7}}"(?: s="([0-9]{{1,6}})")?(?: t="([A-Za-z]{{1,9}})")?'
    rf'(?:/>|></c>|><v>({_TEXT})</v></c>|><is><t(?: xml:space="preserve")?>({_TEXT})</t></is></c>)'
)
_CELLS = re.compile(rf"{_CELL}|(.+)", re.DOTALL)
"""The cells of a row, and in a group by itself all that follows what is none."""

_ATTRIBUTES = r'(?: (?!r=)[A-Za-z][A-Za-z0-9:]*="[^"<>&]*")*+'
_ROW_BEGINS = re.compile(rf'\s*<row r="([0-9]{{1,7}})"{_ATTRIBUTES}>')


class PlainRows:
    """Stands before a parser of XML: hands plain rows to `take`, by their number and cells, and the rest to `parse`.

    Both see what is theirs in the order in which it stands. `parse` is told whether its bytes are the last.
    """

    def __init__(self, parse: Callable[[bytes, bool], object], take: Callable[[str, list[PlainCell]], None]) -> None:
        self._parse, self._take = parse, take
        self._kept = b""
        self._looks = True
        self._has_begun = False

    def feed(self, chunk: bytes, is_last: bool) -> None:  # noqa: FBT001 - as a parser of XML is fed
        """Take the next bytes of the sheet. Raises what `parse` and `take` raise, and ValueError for no UTF-8."""
        self._kept += chunk
        if not self._has_begun:
            self._begin()
        if self._looks and self._has_begun:
            self._hand_on_rows()
        self._looks = self._looks and len(self._kept) <= _LONGEST_ROW
        if is_last or not self._looks:
            kept, self._kept = self._kept, b""
            self._parse(kept, is_last)

    def _begin(self) -> None:
        at = self._kept.find(b"<row")
        if at >= 0:
            self._has_begun = True
            self._looks = self._looks and _BEGINS_IN_UTF_8.fullmatch(self._kept, 0, at) is not None
            if self._looks:
                self._parse(self._kept[:at], _NOT_THE_LAST)
                self._kept = self._kept[at:]

    def _hand_on_rows(self) -> None:
        """Hand on all rows that have ended; what is kept is part of one."""
        end = self._kept.rfind(_ROW_ENDS) + len(_ROW_ENDS)
        if end >= len(_ROW_ENDS):
            rows, self._kept = self._kept[:end].decode(), self._kept[end:]
            self._hand_on(rows)

    def _hand_on(self, rows: str) -> None:
        at = 0
        while at < len(rows):
            ends = rows.index("</row>", at)
            begun = _ROW_BEGINS.match(rows, at, ends) if self._looks else None
            cells = _CELLS.findall(rows, begun.end(), ends) if begun else []
            if begun and not (cells and cells[-1][-1]):
                self._take(begun[1], cells)
                at = ends + len("</row>")
            else:
                at = self._hand_to_parser(rows, at, ends + len("</row>"))

    def _hand_to_parser(self, rows: str, at: int, end: int) -> int:
        """One row, or all that is left where it holds what others may stand in; gives where the next begins."""
        self._looks = self._looks and not re.search("<[?!]", rows[at:end])
        end = end if self._looks else len(rows)
        self._parse(rows[at:end].encode(), _NOT_THE_LAST)
        return end
