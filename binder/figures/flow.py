"""The flow of the base ingredient from what is bought through its forms to the dishes, as nodes and bands in grams."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from binder.figures.base import base_balance
from binder.figures.base_network import Network, network_of
from binder.figures.base_repairs import bottleneck
from binder.figures.memory import remembered
from binder.figures.missing import Missing, Place
from binder.kitchen.edits.shoots import dish_name
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from binder.figures.base import BaseBalance
    from binder.kitchen.binder import Binder

_WORTH_SHOWING = 0.5
"""Grams; less than half a gram of anything is a rounding, not a flow."""


class NodeKind(StrEnum):
    """What a node of the flow stands for."""

    BASE = "base"
    FORM = "form"
    DISH = "dish"
    LEFT = "left over"


@dataclass(frozen=True)
class Node:
    """A form, a dish or what is left: how many grams pass through it, where a click leads, and grams it is `short`."""

    key: str
    kind: NodeKind
    name: str
    column: int
    grams: float
    place: Place | None
    short: float = 0.0


@dataclass(frozen=True)
class Band:
    """Weight that goes from one node to another: grams as it leaves and as it arrives (soaking gains, roasting loses).

    Nodes are named by their keys; `name` is the conversion's, empty where a dish takes the form or it is left.
    """

    source: str
    target: str
    leaves: float
    arrives: float
    name: str = ""


@dataclass(frozen=True)
class Flow:
    """Nodes in columns from left to right, and the bands between them."""

    nodes: tuple[Node, ...]
    bands: tuple[Band, ...]

    @property
    def columns(self) -> int:
        """How many columns there are."""
        return 1 + max((node.column for node in self.nodes), default=-1)


@remembered
def base_flow(binder: Binder, shoot_id: str) -> Flow:
    """The flow of a shoot's base ingredient; empty where it has none or nothing uses it."""
    balance = base_balance(binder, shoot_id)
    network = network_of(binder, balance.base) if balance else None
    if balance is None or network is None or isinstance(network, Missing) or not balance.needed:
        return Flow((), ())
    depths = _depths(network, balance)
    bands = [*_made(binder, network, balance), *_used(balance), *_left(balance)]
    last = max(depths.values(), default=0) + 1
    nodes = [
        *_form_nodes(binder, shoot_id, balance, depths),
        *_dish_nodes(binder, balance, last),
        *_left_node(bands, last),
    ]
    return Flow(tuple(nodes), tuple(bands))


def _depths(network: Network, balance: BaseBalance) -> dict[str, int]:
    """How many conversions each form is from the base, by the longest way."""
    runs = {run.conversion for run in balance.runs}
    depths = {network.base: 0}
    for process in reversed(network.processes):
        if process.key in runs:
            after = 1 + max(depths.get(form, 0) for form, _share in process.inputs)
            for form, _ratio in process.gives:
                depths[form] = max(depths.get(form, 0), after)
    return depths


def _form_nodes(binder: Binder, shoot_id: str, balance: BaseBalance, depths: Mapping[str, int]) -> Iterator[Node]:
    short = bottleneck(binder, shoot_id)
    for form in balance.forms:
        if form.form in depths:
            is_base = form.form == balance.base
            grams = max(balance.there_is or 0.0, form.made) if is_base else form.made
            lacks = short.short if short is not None and short.form == form.form else 0.0
            kind = NodeKind.BASE if is_base else NodeKind.FORM
            yield Node(form.form, kind, form.name, depths[form.form], grams, Place("foods", form.form), lacks)


def _dish_nodes(binder: Binder, balance: BaseBalance, column: int) -> Iterator[Node]:
    for key, needs in balance.by_dish.items():
        grams = sum(needs.values())
        if grams >= _WORTH_SHOWING:
            dish = binder.dishes[key]
            name = f"{dish.position + 1} {dish_name(binder, dish)}"
            yield Node(_dish_key(key), NodeKind.DISH, name, column, grams, Place("dishes", key))


def _dish_key(dish: str) -> str:
    """A dish's node; a food may have the dish's id."""
    return f"dishes/{dish}"


def _left_node(bands: list[Band], column: int) -> Iterator[Node]:
    grams = sum(band.arrives for band in bands if band.target == NodeKind.LEFT)
    if grams >= _WORTH_SHOWING:
        yield Node(NodeKind.LEFT, NodeKind.LEFT, _("left over"), column, grams, None)


def _made(binder: Binder, network: Network, balance: BaseBalance) -> Iterator[Band]:
    runs = {run.conversion: run.grams for run in balance.runs}
    for process in reversed(network.processes):
        grams = runs.get(process.key, 0.0)
        out, into = (sum(ratio for _form, ratio in each) for each in (process.gives, process.inputs))
        for part, share in process.inputs if grams >= _WORTH_SHOWING else ():
            for form, ratio in process.gives:
                leaves, arrives = grams * share * ratio / out, grams * ratio * share / into
                yield Band(part, form, leaves, arrives, binder.conversions[process.key].name)


def _used(balance: BaseBalance) -> Iterator[Band]:
    for dish, needs in balance.by_dish.items():
        for form, grams in needs.items():
            if grams >= _WORTH_SHOWING:
                yield Band(form, _dish_key(dish), grams, grams)


def _left(balance: BaseBalance) -> Iterator[Band]:
    for form in balance.forms:
        grams = max(0.0, balance.left or 0.0) if form.form == balance.base else form.left
        if grams >= _WORTH_SHOWING:
            yield Band(form.form, NodeKind.LEFT, grams, grams)
