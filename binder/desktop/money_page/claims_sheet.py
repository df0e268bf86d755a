"""Sentences to be said on camera: what each is held against, how it stands, and the sum behind it. Plain Python."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.money_page.claim_guess import guessed_terms
from binder.desktop.money_page.claim_rows import SUM, claim_rows
from binder.desktop.money_page.claim_terms import (
    kind_text,
    target_words,
    typed_about,
    typed_kind,
    typed_target,
)
from binder.desktop.sheet.cell import NOTHING, Align, Cell, Column, Row
from binder.desktop.sheet.sheet import NotEditableError, PlainSheet, record_of
from binder.desktop.words.typed import UnreadableError
from binder.kitchen.claim import Claim
from binder.kitchen.edits.money import add_claim, move_claim, remove_claim, set_claim
from binder.kitchen.edits.records import remove
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.desktop.money_page.money_figures import LatestJudged
    from binder.desktop.sheet.sheet import Sight
    from binder.kitchen.change import Change
    from binder.kitchen.shoot import Shoot

ADD_CLAIM = "add:claim"
_WIDTH = 8


class ClaimsSheet(PlainSheet):
    """`unfolded` are the claims whose sums are shown beneath them."""

    def __init__(self, latest: LatestJudged) -> None:
        self._latest = latest
        self.unfolded: set[str] = set()

    @property
    def name(self) -> str:
        return _("Claims")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("number", "", characters=2.5, align=Align.RIGHT),
            Column("says", _("to be said on camera, and what it is held against"), characters=22, stretch=4),
            Column("about", "", characters=15, stretch=3),
            Column("target", "", characters=9, align=Align.RIGHT),
            Column("lowest", _("lowest"), characters=10, align=Align.RIGHT, tip=_("At the lowest prices of today")),
            Column("chosen", _("chosen"), characters=10, align=Align.RIGHT, tip=_("At the prices chosen")),
            Column("highest", _("highest"), characters=10, align=Align.RIGHT, tip=_("At the highest prices on record")),
            Column("margin", _("margin"), characters=23, align=Align.RIGHT, tip=_("At the prices chosen")),
        )

    def rows(self, sight: Sight) -> list[Row]:
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if shoot is None:
            return []
        found = {one.claim: one for one in self._latest.value.claims} if self._latest.value else {}
        rows: list[Row] = []
        for claim in sight.binder.claims.where("shoot", shoot.id):
            finding, unfolded = found.get(claim.id), claim.id in self.unfolded
            rows += claim_rows(sight.binder, claim, finding, stale=self._latest.stale, unfolded=unfolded)
        return [*rows, _adding()]

    def edit(self, sight: Sight, row: str, column: str, text: str) -> Change:
        binder = sight.binder
        if row == ADD_CLAIM and sight.shoot is not None:
            return _added(sight, binder.shoots[sight.shoot], text)
        claim = claim_of(sight, row)
        if claim is None:
            raise NotEditableError
        if record_of(row).table == "claims":
            if not text.strip():
                raise UnreadableError(text, _("write the sentence that is said."))
            return set_claim(claim, says=text.strip())
        typed = {"says": typed_kind, "about": typed_about, "target": typed_target}
        if column not in typed:
            raise NotEditableError
        return typed[column](binder, claim, text)

    def understood(self, sight: Sight, row: str, column: str, text: str) -> str:
        shoot = sight.binder.shoots.get(sight.shoot or "")
        if row != ADD_CLAIM or shoot is None or not text.strip():
            return ""
        claim = _guessed(sight, shoot, text)
        parts = [kind_text(claim.kind), target_words(sight.binder, claim)]
        return _("held against: {terms}").format(terms=" ".join(part for part in parts if part))

    def remove(self, sight: Sight, rows: Sequence[str]) -> Change | None:
        claims = {claim.id: claim for row in rows if (claim := claim_of(sight, row)) is not None}
        if len(claims) == 1:
            return remove_claim(sight.binder, next(iter(claims.values())))
        label = ngettext("Remove {count} claim", "Remove {count} claims", len(claims)).format(count=len(claims))
        return remove(label, sight.binder, *claims.values()) if claims else None

    def move_before(self, sight: Sight, row: str, before: str | None) -> Change | None:
        claim, target = claim_of(sight, row), claim_of(sight, before or "")
        if claim is None:
            return None
        others = [other.id for other in sight.binder.claims.where("shoot", claim.shoot) if other.id != claim.id]
        to = others.index(target.id) if target is not None and target.id in others else len(others)
        return move_claim(sight.binder, claim, to=to)

    def move_by(self, sight: Sight, row: str, by: int) -> Change | None:
        claim = claim_of(sight, row)
        return None if claim is None else move_claim(sight.binder, claim, to=max(0, claim.position + by))

    def turn(self, claim: str) -> None:
        """Show the sum of a claim beneath it, or fold it away."""
        self.unfolded ^= {claim}


def claim_of(sight: Sight, row: str) -> Claim | None:
    """The claim that a row belongs to."""
    place = record_of(row)
    return sight.binder.claims.get(place.id.partition("#")[0]) if place.table in {"claims", "terms", SUM} else None


def _guessed(sight: Sight, shoot: Shoot, text: str) -> Claim:
    fields = guessed_terms(sight.binder, shoot, text)
    return Claim(id="guess", shoot=shoot.id, says=text.strip(), **fields)  # type: ignore[arg-type]


def _added(sight: Sight, shoot: Shoot, text: str) -> Change:
    if not text.strip():
        raise UnreadableError(text, _("write the sentence that is said, such as Every plate under $1.75."))
    fields = guessed_terms(sight.binder, shoot, text)
    kind = fields.pop("kind")
    return add_claim(sight.binder, shoot, text.strip(), kind, **fields)[0]  # type: ignore[arg-type]


def _adding() -> Row:
    cell = Cell(edit="", placeholder=_("Add a sentence to be said on camera, such as Every plate under $1.75"))
    cells = (NOTHING, cell, *(NOTHING,) * (_WIDTH - 2))
    return Row(ADD_CLAIM, cells, spans=((1, 4),), rule=False, adds=True, gap=1)
