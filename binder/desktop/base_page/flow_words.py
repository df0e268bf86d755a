"""What the picture of the flow says: for each node its name, weight and what goes in and out of it. Plain Python."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.flow import NodeKind
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.kitchen.wording import _, listed

if TYPE_CHECKING:
    from binder.figures.flow import Band, Flow, Node
    from binder.kitchen.binder import Binder


_SLACK = 1e-9


@dataclass(frozen=True)
class NodeWords:
    """Beside a node: its name, its weight, and where it runs out how much is short. `says` is all there is to say."""

    name: str
    amount: str
    short: str
    says: str

    @property
    def lines(self) -> int:
        """How many lines of text stand beside the node."""
        return 3 if self.short else 2


def node_words(binder: Binder, flow: Flow, *, there_is: float | None = None) -> dict[str, NodeWords]:
    """The words of every node by its key. `there_is` are grams of the base; where they are too few that is said."""
    names = {node.key: node.name for node in flow.nodes}
    return {node.key: _words(binder, flow, node, names, there_is) for node in flow.nodes}


def band_text(binder: Binder, band: Band) -> str:
    """The weight of a band as it arrives."""
    return grams_text(band.arrives, number_style(binder))


def _words(binder: Binder, flow: Flow, node: Node, names: dict[str, str], there_is: float | None) -> NodeWords:
    style = number_style(binder)
    amount = grams_text(node.grams, style) if node.grams else "0 g"
    short = _("runs out: {grams} short").format(grams=grams_text(node.short, style)) if node.short else ""
    if node.kind is NodeKind.BASE and there_is is not None and node.grams > there_is * (1 + _SLACK):
        amount = _("{grams} needed").format(grams=amount)
        short = _("there is {grams}").format(grams=grams_text(there_is, style) if there_is else "0 g")
    parts = [f"{node.name}, {amount}", short, _from(binder, flow, node, names), _into(binder, flow, node, names)]
    return NodeWords(node.name, amount, short, ". ".join(part for part in parts if part))


def _from(binder: Binder, flow: Flow, node: Node, names: dict[str, str]) -> str:
    bands = [band for band in flow.bands if band.target == node.key]
    if not bands:
        return ""
    if node.kind is NodeKind.FORM:
        return _("From {parts}").format(parts=listed(_made(band, names) for band in bands))
    parts = (f"{band_text(binder, band)} {names[band.source]}" for band in bands)
    return _("Takes {parts}").format(parts=listed(parts)) if node.kind is NodeKind.DISH else listed(parts)


def _made(band: Band, names: dict[str, str]) -> str:
    return _("{form} by {conversion}").format(form=names[band.source], conversion=band.name)


def _into(binder: Binder, flow: Flow, node: Node, names: dict[str, str]) -> str:
    bands = [band for band in flow.bands if band.source == node.key]
    return listed(_given(binder, band, names) for band in bands) if bands else ""


def _given(binder: Binder, band: Band, names: dict[str, str]) -> str:
    grams = grams_text(band.leaves, number_style(binder))
    if band.target == NodeKind.LEFT:
        return _("{grams} left over").format(grams=grams)
    return _("{grams} into {target}").format(grams=grams, target=names[band.target])
