"""The locale a binder asks for, where there is one."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from babel.core import Locale


@functools.lru_cache(maxsize=100)
def known_locale(tag: str) -> Locale:
    """The locale of a tag such as `de_DE` where CLDR knows it, else US English."""
    from babel.core import Locale, UnknownLocaleError

    try:
        return Locale.parse(tag)
    except (UnknownLocaleError, ValueError):
        return Locale("en", "US")
