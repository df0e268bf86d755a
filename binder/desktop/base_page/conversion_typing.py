"""What is typed of a conversion: its facts, and its parts typed whole: `0.8 cooking liquid`, `with 3 water`."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.desktop.dishes_page.step_facts import typed_hazards
from binder.desktop.larder_page.food_measures import typed_grams
from binder.desktop.sheet.sheet import NotEditableError, Remedy
from binder.desktop.words.typed import (
    Reading,
    UnreadableError,
    comma,
    typed_choice,
    typed_minutes,
    typed_number,
    typed_words,
    words_for,
)
from binder.figures.base_network import base_forms
from binder.kitchen.change import Change, apply, joined
from binder.kitchen.conversion import CostSplit, Outcome
from binder.kitchen.edits.base import (
    add_addition,
    add_conversion,
    add_form,
    add_outcome,
    set_addition,
    set_conversion,
    set_outcome,
)
from binder.kitchen.edits.foods import adopt_food
from binder.kitchen.line_text import UnknownFoodError
from binder.kitchen.name_book import name_book, singular_words
from binder.kitchen.number import NUMBER_PATTERN, parse_number
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Sequence

    from binder.kitchen.binder import Binder
    from binder.kitchen.conversion import Addition, Conversion
    from binder.kitchen.errors import BinderError
    from binder.kitchen.food import Food

_PART = re.compile(rf"^(?P<ratio>{NUMBER_PATTERN})\s*(?:g\s+)?(?P<name>[^\W\d_].*)$")


def edit_conversion(binder: Binder, conversion: Conversion, part: str, column: str, text: str) -> Change:
    """A fact of the conversion itself; `part` names the row: `conversions`, `text` or `limits`."""
    values: dict[tuple[str, str], tuple[str, Reading]] = {
        ("conversions", "name"): ("name", text.strip),
        ("conversions", "food"): ("takes", lambda: _form_called(binder, conversion, text).id),
        ("conversions", "hands_on"): ("hands_on_minutes", lambda: typed_minutes(binder, text)),
        ("conversions", "lead"): ("lead_minutes", lambda: typed_minutes(binder, text)),
        ("conversions", "split"): ("split", lambda: typed_choice(text, words_for(CostSplit))),
        ("text", "name"): ("equipment", lambda: typed_words(text)),
        ("text", "food"): ("text", text.strip),
        ("limits", "food"): ("least_grams", lambda: _typed_limit(binder, text)),
        ("limits", "ratio"): ("batch_grams", lambda: _typed_limit(binder, text)),
        ("limits", "hands_on"): ("hazards", lambda: typed_hazards(text, conversion.hazards)),
    }
    if (part, column) not in values:
        raise NotEditableError
    field, read = values[part, column]
    return set_conversion(conversion, **{field: read()})


def _typed_limit(binder: Binder, text: str) -> float | None:
    """Grams; None where the text is empty."""
    return typed_grams(binder, text) if text.strip() else None


def edit_part(binder: Binder, part: Outcome | Addition, column: str, text: str) -> Change:
    """A yield, a cost share, or how much goes in."""
    if column == "split" and isinstance(part, Outcome):
        return set_outcome(binder, part, cost_share=_typed_share(binder, text))
    if column != "ratio":
        raise NotEditableError
    ratio = _typed_ratio(binder, text)
    if isinstance(part, Outcome):
        return set_outcome(binder, part, ratio=ratio, source=_("the binder's own"))
    return set_addition(binder, part, ratio=ratio)


def _typed_ratio(binder: Binder, text: str) -> float:
    """Grams for a gram taken: `1.05`, or `105 %`."""
    plain = text.strip()
    ratio = typed_number(binder, plain.removesuffix("%").strip()) / (100 if plain.endswith("%") else 1)
    if ratio <= 0:
        raise UnreadableError(text, _("something must come of it: write grams for a gram taken, such as 0.8."))
    return ratio


def _typed_share(binder: Binder, text: str) -> float | None:
    """A part of the cost of `40`, `40 %`; None where the text is empty: the rest is divided by weight."""
    plain = text.strip().removesuffix("%").strip()
    if not plain:
        return None
    share = typed_number(binder, plain) / 100
    if share > 1:
        raise UnreadableError(text, _("a share is at most 100 %."))
    return share


def _form_called(binder: Binder, conversion: Conversion, text: str) -> Food:
    base = binder.foods[conversion.takes].form_of or conversion.takes
    return typed_choice(text, {binder.foods[form].name: binder.foods[form] for form in base_forms(binder, base)})


def typed_conversion(base: Food, text: str) -> Change:
    """A conversion by what is done; it takes the base until another form is chosen."""
    if not text.strip():
        raise UnreadableError(text, _("write what is done, such as Soak overnight."))
    return add_conversion(base, text.strip(), {})[0]


def typed_part(binder: Binder, conversion: Conversion, text: str) -> Change:
    """`0.8 cooking liquid` comes of it; `with 3 water` goes in besides. Raises UnknownFoodError for a new name."""
    goes_in, ratio, name = _read(binder, text)
    if goes_in:
        return _goes_in(binder, conversion, ratio, name, text)
    base = binder.foods[conversion.takes].form_of or conversion.takes
    forms = [binder.foods[form] for form in base_forms(binder, base) if form != base]
    form = _matching(forms, name)
    if form is None:
        raise UnknownFoodError(text, name, [one.name for one in forms])
    if any(one.form == form.id for one in binder.outcomes.where("conversion", conversion.id)):
        raise UnreadableError(text, _("{form} comes of it already: change its yield.").format(form=form.name))
    return add_outcome(binder, conversion, form, ratio)


def _read(binder: Binder, text: str) -> tuple[bool, float, str]:
    """Whether it goes in, how many grams for a gram taken, and of what."""
    plain = " ".join(text.split())
    goes_in = plain.casefold().startswith(_("with").casefold() + " ")
    if goes_in:
        plain = plain[len(_("with")) :].strip()
    found = _PART.match(plain)
    if found is None:
        raise UnreadableError(
            text, _("write grams for a gram taken, and of what: 0.8 cooking liquid, or with 3 water.")
        )
    return goes_in, parse_number(found["ratio"], decimal_comma=comma(binder)), found["name"].strip()


def _matching(foods: Sequence[Food], name: str) -> Food | None:
    """The food called so, or the only one whose name has all the words."""
    wanted = set(singular_words(name))
    exact = [food for food in foods if set(singular_words(food.name)) == wanted]
    having = [food for food in foods if wanted and wanted <= set(singular_words(food.name))]
    found = exact or having
    return found[0] if len(found) == 1 else None


def _goes_in(binder: Binder, conversion: Conversion, ratio: float, name: str, text: str) -> Change:
    known = name_book(binder).find(name)
    if known is None or known.is_recipe:
        raise UnknownFoodError(text, name, name_book(binder).nearest(name))
    if known.in_binder:
        return add_addition(binder, conversion, binder.foods[known.key], ratio)
    adopted = adopt_food(binder, known.key)
    grown = apply(binder, adopted)
    added = add_addition(grown, conversion, grown.foods[known.key], ratio)
    return joined(added.label, [adopted, added])


def food_remedies(
    binder: Binder, base: Food, conversion: Conversion, text: str, error: BinderError
) -> Sequence[Remedy]:
    """For a name that is not known: the names it may mean, and a new form of the base."""
    if not isinstance(error, UnknownFoodError):
        return ()
    near = [Remedy(known, text=text.replace(error.name, known, 1)) for known in error.nearest]
    goes_in, ratio, name = _read(binder, text)
    if goes_in:
        return near
    made, form = add_form(binder, base, name)
    outcome = add_outcome(apply(binder, made), conversion, form, ratio)
    title = _("Add the form “{form}”").format(form=name)
    return [*near, Remedy(title, change=joined(outcome.label, [made, outcome]))]
