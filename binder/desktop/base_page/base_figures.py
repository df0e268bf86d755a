"""Everything the page of the base shows of a shoot, gathered, so that it can be worked out beside the window."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from binder.figures.base import BaseBalance, base_balance
from binder.figures.base_cost import BaseCost, base_cost
from binder.figures.base_network import Network, network_of
from binder.figures.base_repairs import Bottleneck, Repair, base_repairs, bottleneck
from binder.figures.flow import Flow, base_flow
from binder.figures.leads import Lead, shoot_leads

if TYPE_CHECKING:
    from binder.desktop.latest import Latest
    from binder.figures.missing import Missing
    from binder.kitchen.binder import Binder

    LatestFigures = Latest["BaseFigures"]


@dataclass(frozen=True)
class BaseFigures:
    """The figures of a shoot's base. Grams, minor currency units."""

    balance: BaseBalance | None
    bottleneck: Bottleneck | None
    repairs: tuple[Repair, ...]
    flow: Flow
    cost: BaseCost | Missing | None
    leads: tuple[Lead, ...]


def base_figures(binder: Binder, shoot: str) -> BaseFigures:
    """The figures of a shoot."""
    return BaseFigures(
        balance=base_balance(binder, shoot),
        bottleneck=bottleneck(binder, shoot),
        repairs=base_repairs(binder, shoot),
        flow=base_flow(binder, shoot),
        cost=base_cost(binder, shoot),
        leads=shoot_leads(binder, shoot),
    )


def is_quick(binder: Binder, shoot: str) -> bool:
    """Whether the figures of a shoot are there within a frame: where every form is made in one way."""
    base = binder.shoots[shoot].base
    network = network_of(binder, base) if base is not None else None
    return not isinstance(network, Network) or network.one_way
