"""The least base that meets a demand for forms, and how far the base goes.

Where every form comes of one process, the runs follow one from another and need no program: each process runs as much
as the outcome most wanted of it asks, from the dishes back to the base, and no less would do. Where a form can be
reached by two ways, `base_program` chooses between them, and with it the solver is first loaded.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.figures.base_network import Network, Runs

if TYPE_CHECKING:
    from collections.abc import Mapping

_HALVINGS = 50
"""Enough to come to the last bit of a float."""


def least_base(network: Network, wanted: Mapping[str, float]) -> Runs:
    """The runs that meet `wanted` (grams by form) with the least base. Forms nothing gives are left out of account.

    Raises UnsolvedError, as all that a program with two ways to a form answers may.
    """
    if network.one_way:
        return _followed_back(network, wanted)
    from binder.figures.base_program import program_of

    return program_of(network).runs(wanted)


def least_grams(network: Network, wanted: Mapping[str, float], *, batches: bool = True) -> float:
    """The least grams of base that meet `wanted` (grams by form), sooner than by `least_base`.

    Without `batches` as if any amount could be run: never more, and sooner still.
    """
    if network.one_way:
        return _followed_back(network, wanted, batches=batches).base
    from binder.figures.base_program import program_of

    return program_of(network, whole=batches).least(wanted)


def furthest(
    network: Network, wanted: Mapping[str, float], more: Mapping[str, float], *, base: float, most: float
) -> float:
    """How many times `more` (grams by form), up to `most`, can be met beside `wanted` from `base` grams of base.

    0 where not even `wanted` can be met.
    """
    if not network.one_way:
        from binder.figures.base_program import program_of

        return program_of(network).furthest(wanted, more, base=base, most=most)

    def fits(times: float) -> bool:
        asked = {**wanted, **{form: wanted.get(form, 0.0) + grams * times for form, grams in more.items()}}
        return _followed_back(network, asked).base <= base

    low, high = 0.0, most
    if fits(most):
        return most
    for _halving in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


def worth(network: Network, wanted: Mapping[str, float]) -> dict[str, float]:
    """Grams of base that the last gram wanted of each form takes, batches aside.

    So much less wanted frees no more base than its worth: the least base grows ever faster with what is wanted.
    """
    if not network.one_way:
        from binder.figures.base_program import program_of

        return program_of(network, whole=False).worth(wanted)
    needed, most_wanted = dict(wanted), {}
    for process in network.processes:
        asks = ((needed.get(form, 0.0) / ratio, form, ratio) for form, ratio in process.gives)
        run, form, ratio = max(asks, default=(0.0, process.takes, 1.0))
        most_wanted[process.key] = (form, ratio)
        for part, share in process.inputs:
            needed[part] = needed.get(part, 0.0) + share * run
    found = {network.base: 1.0}
    for process in reversed(network.processes):
        form, ratio = most_wanted[process.key]
        found[form] = sum(share * found.get(part, 0.0) for part, share in process.inputs) / ratio
    return found


def _followed_back(network: Network, wanted: Mapping[str, float], *, batches: bool = True) -> Runs:
    needed = dict(wanted)
    grams: dict[str, float] = {}
    for process in network.processes:
        most = max((needed.get(form, 0.0) / ratio for form, ratio in process.gives), default=0.0)
        run = process.allowed(most) if batches else most
        if run > 0:
            grams[process.key] = run
            for part, share in process.inputs:
                needed[part] = needed.get(part, 0.0) + share * run
    return Runs(grams, needed.get(network.base, 0.0))


def made_forms(network: Network, runs: Runs) -> dict[str, float]:
    """Grams of each form that the runs give, the base itself aside."""
    made: dict[str, float] = {}
    for process in network.processes:
        for form, ratio in process.gives:
            made[form] = made.get(form, 0.0) + ratio * runs.grams.get(process.key, 0.0)
    return made


def taken_forms(network: Network, runs: Runs) -> dict[str, float]:
    """Grams of each form that the runs take on into others."""
    taken: dict[str, float] = {}
    for process in network.processes:
        grams = runs.grams.get(process.key, 0.0)
        for part, share in process.inputs if grams > 0 else ():
            taken[part] = taken.get(part, 0.0) + share * grams
    return taken
