"""What to take of a food, in words: a pack, so many of it, and the offer that makes them cost what they do.

The list on screen, on paper, in files and at the command line all say it from here.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from binder.figures.money_words import money
from binder.figures.portion_text import number_style
from binder.figures.weight import COUNTED
from binder.kitchen.amount import Amount
from binder.kitchen.amount_text import amount_text, grams_text
from binder.kitchen.edits.buying import purchases_of
from binder.kitchen.number import in_decimals, in_fractions
from binder.kitchen.units import canonical_unit, is_system_unit, unit_values
from binder.kitchen.wording import _, ngettext

if TYPE_CHECKING:
    from binder.figures.shopping import PackCount
    from binder.kitchen.binder import Binder
    from binder.kitchen.price import Pack, Quote

_THOUSANDS = {"g": (0.001, "kg"), "kg": (1000, "g"), "ml": (0.001, "l"), "l": (1000, "ml")}
"""Units by what as much is in another, as labels like to say it."""


def pack_size(binder: Binder, pack: Pack) -> str:
    """A pack's size as it is typed: `400 g`, `1 bunch`, `6 pieces`."""
    if pack.unit in {"", COUNTED}:
        count = in_fractions(pack.size) or in_decimals(
            pack.size, digits=2, decimal_mark=number_style(binder).decimal_mark
        )
        return ngettext("{count} piece", "{count} pieces", pack.size).format(count=count)
    return amount_text(Amount(pack.size, pack.size, pack.unit), number_style(binder))


def pack_text(binder: Binder, pack: Pack) -> str:
    """A pack's size and label, for whoever stands before the shelf; one alone where it says the other.

    `400 g, jar`, `2 lb bag`, `bunch`, `6, size M`.
    """
    size, label = pack_size(binder, pack), one_line(pack.label)
    if _is_counted(pack) and pack.size == 1:
        return label or (size if pack.unit in {"", COUNTED} else pack.unit)
    if not label or label.casefold() in size.casefold():
        return size
    return label if _says_size(label, size, pack) else f"{size}, {label}"


def _is_counted(pack: Pack) -> bool:
    """Whether it holds so many things, and not a weight or a volume."""
    key = canonical_unit(pack.unit) if pack.unit.strip() else COUNTED
    return key is None or not (key in unit_values() or is_system_unit(key) or key.startswith("("))


def _says_size(label: str, size: str, pack: Pack) -> bool:
    """Whether a label says the size, in fractions or not; of things counted, whether it begins with their number."""
    if _is_counted(pack):
        return size.casefold() in label.casefold() or re.split(r"[\s,]", label)[0] == f"{pack.size:g}"
    sizes = [size, f"{pack.size:g} {pack.unit}"]
    if pack.unit in _THOUSANDS:
        factor, other = _THOUSANDS[pack.unit]
        sizes.append(f"{pack.size * factor:g} {other}")
    return any(one.casefold() in label.casefold() for one in sizes)


def take_words(binder: Binder, taken: PackCount) -> str:
    """`2 × 500 g bag`; at the counter, which sells any weight, `450 g at the counter`."""
    if taken.priced.pack.by_weight:
        return _("{grams} at the counter").format(grams=grams_text(taken.grams, number_style(binder)))
    return _("{count} × {pack}").format(count=taken.count, pack=pack_text(binder, taken.priced.pack))


def offer_words(binder: Binder, taken: PackCount, count: float | None = None) -> str:
    """`3 for $5.00` where so many are taken that the offer counts; empty where not. `count`: if others were bought."""
    quote = taken.priced.quote
    number = taken.count if count is None else count
    if taken.priced.pack.by_weight or not quote.bundle_packs or number < quote.bundle_packs or number != int(number):
        return ""
    return bundle_words(binder, quote)


def bundle_words(binder: Binder, quote: Quote) -> str:
    """The offer on a price, `3 for $5.00`; empty where there is none."""
    if quote.bundle_packs is None or quote.bundle_price is None:
        return ""
    says = _("{count} for {together}")
    return says.format(count=quote.bundle_packs, together=money(binder, quote.bundle_price))


def done_words(binder: Binder, shoot_id: str, food: str, pack: str) -> str:
    """What became of a pack of the list: bought, not to be had, another food instead; empty while it is open."""
    purchases = purchases_of(binder, shoot_id, food)
    instead = [binder.foods[one.instead].name for one in purchases if one.instead is not None]
    if instead:
        return _("{other} instead").format(other=one_line(instead[0]))
    if any(not one.count for one in purchases):
        return not_had()
    return _("bought") if any(one.pack in {None, pack} for one in purchases) else ""


def not_had() -> str:
    """What is written where a food was not to be had."""
    return _("not to be had")


def one_line(text: str) -> str:
    """A name as it stands in a line: without line ends."""
    return " ".join(text.split())
