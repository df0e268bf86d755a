"""The one family of errors a user may see: each is built from data and says what, where and how to mend it."""

from __future__ import annotations


class BinderError(Exception):
    """Something the user can mend. `str()` is one sentence or two: what is wrong, where, how to mend it."""

    def __init__(self, says: str) -> None:
        super().__init__(says)
        self.says = says
