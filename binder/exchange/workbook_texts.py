"""The texts of a workbook's cells: those that cells share, and those that stand in a cell itself."""

from __future__ import annotations

import functools
import re

from binder.exchange.table_cell import tidied
from binder.exchange.text_safety import plain_cell
from binder.exchange.workbook_parts import PartReader
from binder.kitchen.turns import give_way

LONGEST_TEXT = 32_767
"""Characters; a spreadsheet's cell holds no more."""


class TextReader(PartReader):
    """Gathers what stands in elements `t`, but not how it is pronounced (`rPh`)."""

    def __init__(self) -> None:
        super().__init__()
        self._pieces: list[str] = []
        self._length = 0
        self._wanted = self._pronounced = False

    def started(self, element: str, attributes: dict[str, str]) -> None:  # noqa: ARG002 - only its name matters here
        """Text begins, or how a text is pronounced."""
        self._pronounced = self._pronounced or element == "rPh"
        self._wanted = element == "t" and not self._pronounced

    def ended(self, element: str) -> None:
        """Text ends, or its pronunciation."""
        self._wanted = False
        self._pronounced = self._pronounced and element != "rPh"

    def say(self, text: str) -> None:
        """Text, or what stands between."""
        if self._wanted and self._length < LONGEST_TEXT:
            self._pieces.append(text)
            self._length += len(text)

    def taken(self) -> str:
        """What was gathered since it was last asked for."""
        text = "".join(self._pieces)[:LONGEST_TEXT]
        self._pieces.clear()
        self._length = 0
        return kept_text(text)


class SharedTexts(TextReader):
    """The texts that cells refer to by their number."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []

    def ended(self, element: str) -> None:
        """A shared text ends with `si`."""
        super().ended(element)
        if element == "si":
            give_way()
            self.texts.append(self.taken())


@functools.lru_cache(maxsize=1024)
def kept_text(text: str) -> str:
    """A cell's text: characters written as `_x000D_` (ECMA-376 part 1, 22.9.2.19, from memory) read, and tidied."""
    if "_x" in text:
        text = re.sub(r"_x([0-9A-Fa-f]{4})_", lambda found: chr(int(found[1], 16)), text)
    return plain_cell(tidied(text))
