"""The builds that the steps of a dish ask for and that it has not, each with the reason."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.desktop.pictures.pans import Pan, Pans
from binder.desktop.sheet.cell import Cell, Column, Mark, Row, Tone
from binder.desktop.sheet.sheet import PlainSheet
from binder.desktop.shoot_page.builds import step_title
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.shoot import BuildKind
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from binder.desktop.sheet.sheet import Sight
    from binder.desktop.shoot_page.dish_figures import LatestDish, Offered
    from binder.kitchen.binder import Binder


class ProposedBuilds(PlainSheet):
    """The subject is a dish."""

    def __init__(self, latest: LatestDish) -> None:
        self._latest = latest

    @property
    def name(self) -> str:
        return _("Proposed builds")

    @property
    def columns(self) -> tuple[Column, ...]:
        return (
            Column("pan", "", characters=4),
            Column("kind", "", characters=9),
            Column("up_to", "", characters=14, stretch=2),
            Column("why", "", characters=20, stretch=5),
        )

    def rows(self, sight: Sight) -> list[Row]:
        figures, dish = self._latest.value, sight.binder.dishes.get(sight.subject or "")
        if figures is None or dish is None or figures.whole.dish != dish.id:
            return []
        return [_row(sight.binder, offered, at) for at, offered in enumerate(figures.offered)]


def _row(binder: Binder, offered: Offered, at: int) -> Row:
    proposal = offered.proposal
    step = binder.steps.get(proposal.up_to or "")
    steps = len(binder.steps.where("recipe", binder.dishes[proposal.dish].recipe)) or 1
    filled = 1.0 if step is None else (step.position + 1) / steps
    tone = Tone.QUIET if offered.refused else Tone.INK
    cells = (
        Cell(picture=Pans((Pan(filled, small=proposal.kind is BuildKind.TASTING),)), spoken=" "),
        Cell(_(proposal.kind.value), tone=tone),
        Cell(step_title(step) if step is not None else _("the end"), tone=tone),
        _why(binder, offered),
    )
    return Row(f"proposed:{at}", cells, lines=1.6, wraps=True)


def _why(binder: Binder, offered: Offered) -> Cell:
    if offered.refused:
        return Cell(offered.refused, mark=Mark.SHORT)
    if not offered.short:
        return Cell(offered.proposal.why, tone=Tone.QUIET)
    grams = grams_text(offered.short, number_style(binder))
    says = _("{why} With it the base is {grams} short.").format(why=offered.proposal.why, grams=grams)
    return Cell(says, tone=Tone.QUIET, mark=Mark.SHORT)
