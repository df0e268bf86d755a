"""No words of the picture lie on others, whatever the flow and however wide the window."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.base_page.flow_places import Box, Measured, Picture, inked, picture_of
from binder.desktop.base_page.flow_words import NodeWords, band_text, node_words
from binder.figures.flow import Band, Flow, Node, NodeKind, base_flow
from binder.kitchen.binder import Binder
from tests.kitchen_binder import small_binder
from tests.large_shoot import Size, large_shoot


def measured(letter: float = 6.0) -> Measured:
    return Measured(line=15.0, width_of=lambda text: letter * len(text), bar=10.0, last_column=200.0)


def drawn(binder: Binder, flow: Flow, width: float, by: Measured) -> tuple[Picture, dict[str, NodeWords]]:
    words = node_words(binder, flow)
    amounts = {place: band_text(binder, band) for place, band in enumerate(flow.bands)}
    return picture_of(flow, words, amounts, width=width, by=by), words


def require_readable(picture: Picture, words: dict[str, NodeWords], width: float, by: Measured) -> None:
    texts = [inked(one, words[one.node.key], by) for one in picture.nodes]
    texts += [number.box for number in picture.numbers]
    for one, other in itertools.combinations(texts, 2):
        assert not one.meets(other), (one, other)
    for node, box in itertools.product(picture.nodes, texts):
        assert not node.bar.meets(box)
    for box in texts:
        assert box.top >= -0.01
        assert box.bottom <= picture.height + 0.01
        assert box.right <= width + 0.01


@st.composite
def flows(draw: st.DrawFn) -> Flow:
    """One to fifteen forms in up to five columns, up to eight dishes, and what is left."""
    forms, dishes = draw(st.integers(1, 15)), draw(st.integers(1, 8))
    names, grams = st.text("abcdefghij ", min_size=1, max_size=40), st.floats(0.5, 5000)
    nodes, bands = [Node("base", NodeKind.BASE, draw(names), 0, draw(grams), None)], []
    columns = {"base": 0}
    for at in range(forms):
        source = draw(st.sampled_from([key for key, column in columns.items() if column < 4]))
        key, made = f"f{at}", draw(grams)
        columns[key] = columns[source] + 1
        short = draw(st.sampled_from([0.0, 0.0, 0.0, 12.0]))
        nodes.append(Node(key, NodeKind.FORM, draw(names), columns[key], made, None, short))
        bands.append(Band(source, key, made * draw(st.floats(0.3, 2)), made, "Cook"))
        bands.append(Band(key, f"d{draw(st.integers(0, dishes - 1))}", made * 0.8, made * 0.8))
        bands.append(Band(key, NodeKind.LEFT, made * 0.2, made * 0.2))
    last = max(columns.values()) + 1
    nodes += [Node(f"d{at}", NodeKind.DISH, draw(names), last, 0.0, None) for at in range(dishes)]
    nodes.append(Node(NodeKind.LEFT, NodeKind.LEFT, "left over", last, 0.0, None))
    return Flow(tuple(nodes), tuple(bands))


@given(flows(), st.floats(320, 1800), st.floats(3, 12))
def test_words_never_lie_on_words_or_bars(flow: Flow, width: float, letter: float) -> None:
    by = measured(letter)
    picture, words = drawn(small_binder(), flow, width, by)
    require_readable(picture, words, width, by)


def test_the_largest_shoot_is_readable_too() -> None:
    binder, by = large_shoot(Size(kilograms=130.0)), measured()
    flow = base_flow(binder, "day")
    assert len(flow.nodes) > 50
    picture, words = drawn(binder, flow, 900.0, by)
    require_readable(picture, words, 900.0, by)


def test_one_form_used_as_it_is_bought_is_a_picture() -> None:
    flow = Flow(
        (Node("base", NodeKind.BASE, "beans", 0, 500.0, None), Node("d", NodeKind.DISH, "1 Salad", 1, 500.0, None)),
        (Band("base", "d", 500.0, 500.0),),
    )
    by = measured()
    picture, words = drawn(small_binder(), flow, 700.0, by)
    require_readable(picture, words, 700.0, by)
    assert [one.bar.left for one in picture.nodes] == [0.0, 490.0]


def test_numbers_stand_on_bands_that_say_more_than_the_node() -> None:
    picture, _words = drawn(small_binder(), base_flow(small_binder(), "day"), 1200.0, measured())
    assert "600 g" in {number.text for number in picture.numbers}
    assert "1 kg" not in {number.text for number in picture.numbers}


def test_no_flow_no_picture() -> None:
    assert drawn(small_binder(), Flow((), ()), 800.0, measured())[0].height == 0


def test_boxes_that_only_touch_do_not_meet() -> None:
    assert not Box(0, 0, 10, 10).meets(Box(10, 0, 5, 5))
    assert Box(0, 0, 10, 10).meets(Box(9, 9, 5, 5))
