"""The collector is paused and comes back, whatever happens."""

from __future__ import annotations

import gc

import pytest

from binder.kitchen.bulk import uncollected


def test_the_collector_comes_back_whatever_happens() -> None:
    with uncollected():
        assert not gc.isenabled()
        with uncollected():
            assert not gc.isenabled()
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(KeyError), uncollected():
        raise KeyError
    assert gc.isenabled()
