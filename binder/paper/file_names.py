"""The names of printed files: from a pattern of the user's, fit for any disk."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

from binder.kitchen.errors import BinderError
from binder.kitchen.wording import _, listed
from binder.paper.sheet_kind import FILE_NAMES

if TYPE_CHECKING:
    from binder.kitchen.binder import Binder
    from binder.paper.sheet_kind import SheetKind

FIELDS = ("binder", "shoot", "date", "sheet")
"""What a pattern may hold, each in braces."""

_FIELD = re.compile(r"\{(\w*)\}")

_MOST = 40
_MOST_IN_ALL = 120
"""Characters of one part of a name and of the whole."""


class UnfitPatternError(BinderError):
    """A pattern that cannot name files."""

    def __init__(self, pattern: str) -> None:
        fields = listed(f"{{{field}}}" for field in FIELDS)
        says = _("“{pattern}” names no files. Use {fields}, and {sheet} so that sheets have names of their own.")
        super().__init__(says.format(pattern=pattern[:60], fields=fields, sheet="{sheet}"))


class FilesOfOneNameError(BinderError):
    """Two sheets that would have the same name."""

    def __init__(self, name: str) -> None:
        says = _("Two sheets would both be called “{name}”. Put {shoot} into the pattern of their names.")
        super().__init__(says.format(name=name[:60], shoot="{shoot}"))


def require_fit(pattern: str, *, together: bool) -> None:
    """Raise UnfitPatternError for a pattern that can name no files."""
    rest = _FIELD.sub("", pattern)
    unknown = set(_FIELD.findall(pattern)) - set(FIELDS)
    unnamed = not _fit(_FIELD.sub("x", pattern)) or ("{sheet}" not in pattern and not together)
    if unnamed or unknown or "{" in rest or "}" in rest:
        raise UnfitPatternError(pattern)


def file_name(binder: Binder, shoot_id: str, kind: SheetKind, pattern: str | None = None) -> str:
    """`station-cards.pdf`; where the binder has several shoots the shoot's name goes before it, fit for any disk.

    A `pattern` such as `{date}-{sheet}` names it otherwise. Raises UnfitPatternError.
    """
    if pattern is not None:
        require_fit(pattern, together=False)
    return f"{_filled(binder, shoot_id, FILE_NAMES[kind], pattern)}.pdf"


def together_name(binder: Binder, shoot_id: str | None, pattern: str | None = None) -> str:
    """The name of one file with everything in it; `shoot_id` None where it holds several shoots."""
    if pattern is None and (shoot_id is None or len(binder.shoots) == 1):
        return "print-set.pdf"
    if pattern is not None:
        require_fit(pattern, together=True)
    return f"{_filled(binder, shoot_id or next(iter(binder.shoots)), 'print-set', pattern)}.pdf"


def _filled(binder: Binder, shoot_id: str, sheet: str, pattern: str | None) -> str:
    shoot = binder.shoots[shoot_id]
    if pattern is None:
        pattern = "{sheet}" if len(binder.shoots) == 1 else "{shoot}-{sheet}"
    values = {
        "binder": safe_name(binder.settings.name) or "binder",
        "shoot": safe_name(shoot.name) or safe_name(shoot_id) or "shoot",
        "date": shoot.on.isoformat() if shoot.on else "no-date",
        "sheet": sheet,
    }
    pattern = re.sub(r"\.pdf$", "", pattern, flags=re.IGNORECASE)
    return _fit(_FIELD.sub(lambda field: values[field.group(1)], pattern)) or sheet


def _fit(name: str) -> str:
    """A name without what a disk refuses: only letters, figures, hyphens, underscores and points within."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    fit = re.sub(r"[^A-Za-z0-9._-]+", "-", plain).strip("-._")[:_MOST_IN_ALL].strip("-._")
    return f"{fit}-" if _RESERVED.fullmatch(fit) else fit


_RESERVED = re.compile(r"(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\..*)?", re.IGNORECASE)
"""Names that Windows keeps for devices, whatever ending they have. From memory."""


def safe_name(name: str) -> str:
    """A name as every disk takes it: ASCII letters, figures and hyphens, at most 40 characters."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().casefold()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:_MOST].strip("-")
