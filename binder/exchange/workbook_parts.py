"""The parts of an XLSX file, read as they stream by and with caps, so that no file unfolds into more than it should.

A zip bomb is refused by what its parts say they unfold to (zipfile reads no byte beyond that), entities of XML by their
declaration: a part with a DOCTYPE is none that a spreadsheet wrote. Parts are never unpacked to the disk, and only
those that hold cells, texts and formats are looked at.
"""

from __future__ import annotations

import io
import zipfile
import zlib
from contextlib import contextmanager
from typing import IO, TYPE_CHECKING, Any
from xml.parsers import expat

from binder.exchange.table_cell import UnreadableTableError
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

MOST_BYTES = 128 * 1024 * 1024
"""What one part may unfold to; 100,000 rows of ten cells are some 40 MB."""

MOST_RATIO = 200
"""How many times its packed size a large part may unfold to; what a spreadsheet writes is 10 to 50 times."""

MOST_TAGS = 8_000_000
"""Tags that begin or end an element; 100,000 rows of ten cells have four to six million."""

DEEPEST = 40
"""Elements within each other; a workbook has fewer than ten."""

_DAMAGE = (expat.ExpatError, zipfile.BadZipFile, zlib.error, EOFError, OSError, RuntimeError, ValueError)
"""What is raised where the bytes of a part are not what a spreadsheet wrote."""

_MOST_PARTS = 5000
_SMALL = 1024 * 1024
_CHUNK = 64 * 1024
_ENCRYPTED = 1


class StopReadingError(Exception):
    """Raised by a handler that has seen all it wants of a part."""


class WorkbookParts:
    """The parts of a workbook by name. Raises UnreadableTableError, here and in every method."""

    def __init__(self, content: bytes) -> None:
        try:
            self._archive = zipfile.ZipFile(io.BytesIO(content))
        except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError) as error:
            raise damaged() from error
        parts = self._archive.infolist()
        if len(parts) > _MOST_PARTS or sum(part.compress_size for part in parts) > len(content):
            raise unfolds_too_far()
        self._parts = {part.filename: part for part in parts}

    def has(self, name: str) -> bool:
        """Whether there is a part of that name."""
        return name in self._parts

    def stream(self, name: str, reader: PartReader, *, progress: Callable[[float], None] | None = None) -> None:
        """Have a reader see each element of a part as it starts and ends, and the text between."""
        part = self._safe_part(name)
        parser = _parser(reader)
        try:
            with _damage_named():
                source = self._archive.open(part)
            with source:
                _feed(source, reader.fed_by(parser.Parse), part.file_size, progress)
        except StopReadingError:
            pass
        finally:
            _let_go(parser)

    def _safe_part(self, name: str) -> zipfile.ZipInfo:
        part = self._parts.get(name)
        if part is None:
            raise damaged()
        if part.flag_bits & _ENCRYPTED:
            raise UnreadableTableError(_("it has a password. Save it without one."))
        if part.compress_type not in {zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED}:
            raise damaged()
        unfolds = part.file_size > MOST_RATIO * max(1, part.compress_size)
        if part.file_size > MOST_BYTES or (unfolds and part.file_size > _SMALL):
            raise unfolds_too_far()
        return part


@contextmanager
def _damage_named() -> Iterator[None]:
    """Raise UnreadableTableError for whatever the bytes of a damaged part make of themselves."""
    try:
        yield
    except _DAMAGE as error:
        raise damaged() from error


def _feed(
    source: IO[bytes], feed: Callable[[bytes, bool], object], size: int, progress: Callable[[float], None] | None
) -> None:
    """Feed a part to its parser; what `progress` raises is not taken for damage."""
    tags = 0
    more = True
    while more:
        with _damage_named():
            chunk = source.read(_CHUNK)
            more = bool(chunk)
            tags += chunk.count(b"<")
            if tags > MOST_TAGS:
                raise unfolds_too_far()
            feed(chunk, not more)
        if progress:
            progress(min(1.0, source.tell() / max(1, size)))


def _parser(reader: PartReader) -> Any:  # noqa: ANN401 - expat names no type
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler, parser.EndElementHandler = reader.start, reader.end
    parser.CharacterDataHandler = reader.say
    parser.StartDoctypeDeclHandler = _refuse_declarations
    return parser


class PartReader:
    """Sees the elements of a part by their names without a prefix. To be derived from."""

    def __init__(self) -> None:
        self._depth = 0

    def fed_by(self, parse: Callable[[bytes, bool], object]) -> Callable[[bytes, bool], object]:
        """What the part's bytes are fed to, and whether they are the last: the parser, or what stands before it."""
        return parse

    def start(self, element: str, attributes: dict[str, str]) -> None:
        """Expat tells of an element's start."""
        self._depth += 1
        if self._depth > DEEPEST:
            raise unfolds_too_far()
        self.started(element.rpartition(":")[2], attributes)

    def end(self, element: str) -> None:
        """Expat tells of an element's end."""
        self._depth -= 1
        self.ended(element.rpartition(":")[2])

    def say(self, text: str) -> None:
        """Expat tells of text in the element that started last."""

    def started(self, element: str, attributes: dict[str, str]) -> None:
        """An element starts."""

    def ended(self, element: str) -> None:
        """An element ends."""


def _let_go(parser: Any) -> None:  # noqa: ANN401
    """Handlers and parser hold each other; without them both go at once."""
    parser.StartElementHandler = parser.EndElementHandler = parser.CharacterDataHandler = None


def _refuse_declarations(*_declared: object) -> None:
    raise UnreadableTableError(_("it declares entities, which no spreadsheet does. Save it anew from one."))


def unfolds_too_far() -> UnreadableTableError:
    """A part larger, or deeper, than any price list's."""
    return UnreadableTableError(_("it unfolds to far more than a price list. Save it anew, with nothing else in it."))


def damaged() -> UnreadableTableError:
    """A file that begins like a workbook and is none that can be read."""
    return UnreadableTableError(_("it is a damaged workbook, or of another kind. Save it anew as .xlsx or .csv."))
