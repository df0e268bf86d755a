"""A pack typed whole is what its cook meant, or is asked for in one sentence."""

from __future__ import annotations

import pytest

from binder.desktop.larder_page.typed_pack import TypedPack, typed_pack
from binder.kitchen.binder import Binder
from binder.kitchen.errors import BinderError


@pytest.mark.parametrize(
    ("text", "pack"),
    [
        ("1 lb for 3.49 at Corner grocer", TypedPack(1.0, "lb", 349, "Corner grocer")),
        ("1 lb for $3.49", TypedPack(1.0, "lb", 349, "")),
        ("1 lb 3.49", TypedPack(1.0, "lb", 349, "")),
        ("1 lb, 3.49", TypedPack(1.0, "lb", 349, "")),
        ("1 lb = $3.49", TypedPack(1.0, "lb", 349, "")),
        ("1 1/2 lb 3.49 at Corner grocer", TypedPack(1.5, "lb", 349, "Corner grocer")),
        ("3.49 for 1 lb", TypedPack(1.0, "lb", 349, "")),
        ("$3.49 for 1 lb at Corner grocer", TypedPack(1.0, "lb", 349, "Corner grocer")),
        ("6 for 3", TypedPack(6.0, "each", 300, "")),
        ("6 each", TypedPack(6.0, "each", None, "")),
        ("1 jar", TypedPack(1.0, "jar", None, "")),
        ("1 (14 oz) can", TypedPack(1.0, "(14 oz) can", None, "")),
    ],
)
def test_a_pack_is_understood_as_people_type_it(chickpeas: Binder, text: str, pack: TypedPack) -> None:
    assert typed_pack(chickpeas, text) == pack


@pytest.mark.parametrize("text", ["3.49", "$3.49", "3.49 $", "12", "3.49 at Corner grocer", "3,49"])
def test_a_number_alone_is_asked_for_with_what_is_missing(chickpeas: Binder, text: str) -> None:
    with pytest.raises(BinderError) as caught:
        typed_pack(chickpeas, text)
    assert caught.value.says.startswith(f"“{text}” ")
    assert caught.value.says.endswith("say how much is in the pack and what it costs, as 1 lb for 3.49.")


@pytest.mark.parametrize("text", ["", "at", "lb", "1 lb for free", "1 lb at"])
def test_what_is_no_pack_is_one_sentence(chickpeas: Binder, text: str) -> None:
    with pytest.raises(BinderError) as caught:
        typed_pack(chickpeas, text)
    assert caught.value.says.endswith(".")
