"""Faces for scripts that Source Sans lacks: another installed one that has the sign, where the system offers one."""

from __future__ import annotations

import functools
import os
import sys
import unicodedata
from pathlib import Path
from typing import TYPE_CHECKING

from reportlab.pdfbase.ttfonts import TTFError

from binder.paper.typeface import has, registered

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.paper.typeface import Face

_WIDE_FACES = (
    "DejaVuSans.ttf",
    "NotoSans-Regular.ttf",
    "segoeui.ttf",
    "arial.ttf",
    "Arial Unicode.ttf",
    "DroidSansFallbackFull.ttf",
    "seguisym.ttf",
    "NotoSansSymbols2-Regular.ttf",
    "NotoEmoji-Regular.ttf",
    "FreeSans.ttf",
    "unifont.ttf",
)
"""TrueType files with many scripts, as Linux, Windows and macOS have them, in the order they are asked. From memory."""

_FOLDERS = {
    "win32": (r"%WINDIR%\Fonts", r"%LOCALAPPDATA%\Microsoft\Windows\Fonts"),
    "darwin": ("/System/Library/Fonts", "/Library/Fonts", "~/Library/Fonts"),
}
_UNIX_FOLDERS = ("/usr/share/fonts", "/usr/local/share/fonts", "~/.local/share/fonts", "~/.fonts")


@functools.cache
def spare_face(code: int) -> str | None:
    """The registered name of an installed face that has a code point; None where no face that we know of has it."""
    for name in (*_WIDE_FACES, *_of_script(code)):
        face = _installed(name)
        if face is not None and has(face, code):
            return face.fontName
    return None


def _of_script(code: int) -> Iterator[str]:
    """The Noto face of a sign's script, which the sign's Unicode name begins with: `THAI CHARACTER KO KAI`."""
    words = unicodedata.name(chr(code), "").split()
    if words:
        yield f"NotoSans{words[0].title()}-Regular.ttf"


@functools.cache
def _installed(file_name: str) -> Face | None:
    """The face of a font file, registered; None where it is not installed or cannot be embedded."""
    path = _font_files().get(file_name.casefold())
    if path is None:
        return None
    try:
        return registered(f"spare-{path.stem}", str(path))
    except (TTFError, OSError, ValueError, KeyError, IndexError):
        return None  # a damaged font file, or one without TrueType outlines, is as good as none


@functools.cache
def _font_files() -> Mapping[str, Path]:
    """Every installed TrueType file by its name in small letters."""
    folders = (Path(os.path.expandvars(name)).expanduser() for name in _FOLDERS.get(sys.platform, _UNIX_FOLDERS))
    found = (path for folder in folders if folder.is_dir() for path in sorted(folder.rglob("*.[tT][tT][fF]")))
    return {path.name.casefold(): path for path in found}
