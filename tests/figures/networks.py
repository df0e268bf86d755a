"""Random networks of forms for the tests of the balance."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from binder.figures.base_network import Network, Process


@st.composite
def networks(
    draw: st.DrawFn, *, most_forms: int = 15, batches: bool = True, least_ratio: float = 0.1
) -> tuple[Network, dict[str, float]]:
    """A network of 2 to 15 forms with co-products, second ways and forms added to others, and a demand in grams."""
    ratios = st.floats(least_ratio, 3.0).map(lambda ratio: round(ratio, 3))
    count = draw(st.integers(2, most_forms))
    forms = tuple(f"f{number}" for number in range(count))
    processes: list[Process] = []
    reached = 1
    while reached < count:
        outcomes = min(draw(st.integers(1, 3)), count - reached)
        gives = tuple((forms[reached + at], draw(ratios)) for at in range(outcomes))
        takes, adds = draw(st.integers(0, reached - 1)), draw(st.integers(-3, reached - 1))
        process = _process(draw, len(processes), forms[takes], gives, batches=batches)
        processes.append(process if adds < 0 else replace(process, adds=((forms[adds], draw(ratios)),)))
        reached += outcomes
    for _second in range(draw(st.integers(0, 3))):
        target = draw(st.integers(1, count - 1))
        source = forms[draw(st.integers(0, target - 1))]
        processes.append(_process(draw, len(processes), source, ((forms[target], draw(ratios)),), batches=batches))
    wanted = {form: draw(st.one_of(st.just(0.0), st.floats(1.0, 500.0))) for form in forms}
    return Network(forms[0], forms, _from_dishes_back(processes)), wanted


def _process(
    draw: st.DrawFn, number: int, takes: str, gives: tuple[tuple[str, float], ...], *, batches: bool
) -> Process:
    least = draw(st.sampled_from([None, None, 50.0, 200.0])) if batches else None
    batch = draw(st.sampled_from([None, None, None, 100.0])) if batches else None
    return Process(f"p{number}", takes, gives, least, batch)


def _from_dishes_back(processes: list[Process]) -> tuple[Process, ...]:
    """Forms are numbered from the base on, so a process taking a later form stands nearer the dishes."""
    return tuple(sorted(processes, key=lambda process: -max(int(form[1:]) for form, _share in process.inputs)))
