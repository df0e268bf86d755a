"""The five recipes of the chickpea day, as they are typed."""

from __future__ import annotations

from dataclasses import dataclass, field

_TYPED = """
# Silky hummus with lemon | 4
Blend | cold prep | 8 | 0 |  |  | sharp_blade
  Blend the warm chickpeas with tahini, lemon juice, garlic and a splash of the cooking liquid until the paste
  is pale and holds a soft peak, about four minutes.
- 400 g chickpeas, cooked
- 1/3 cup tahini
- 1 lemon, juiced
- 1 clove garlic
- 1/4 cup chickpea cooking liquid
- 3/4 tsp salt
Swirl | plating | 3 | 0 |  |  |
  Spoon into a shallow bowl, draw a well with the back of the spoon, and fill it with oil.
- 2 tbsp extra-virgin olive oil
- 1/2 tsp smoked paprika
- flat-leaf parsley, to garnish
# Herb fritters | 4
Grind | cold prep | 10 | 0 |  |  | sharp_blade
  Pulse the soaked chickpeas with onion, herbs and spices to a coarse, damp crumb that holds when pressed.
- 300 g chickpeas, soaked
- 1/2 cup chopped onion
- 1 cup flat-leaf parsley, leaves
- 1 cup cilantro, leaves
- 2 cloves garlic
- 1 tsp cumin seed, toasted
- 1 tsp coriander seed, toasted
- 1 tsp salt
- 1/2 tsp baking soda
Rest | fridge | 1 | 30 | chill | 4 |
  Cover and chill.
Fry | stove | 12 | 0 | oil | 175 | hot_oil
  Shape into small ovals and fry in batches until deep brown all over.
- 1 1/2 cups frying oil
Dress | plating | 3 | 0 |  |  |
  Pile up, scatter with salt flakes, and serve with lemon and tahini.
- 2 tbsp tahini
- 1/2 lemon
- sea salt flakes, to taste
# Smoky tomato stew | 4
Sweat | stove | 5 | 12 |  |  |
  Cook the onion and carrot in oil over low heat until soft and sweet.
- 2 tbsp extra-virgin olive oil
- 1 cup chopped onion
- 2 carrot, diced
- 3 cloves garlic, sliced
Simmer | stove | 4 | 35 |  |  | hot_liquid
  Add paprika, tomatoes, chickpeas and liquid. Simmer until the sauce coats a spoon.
- 1 tbsp smoked paprika
- 1 lb tomatoes, plum, chopped
- 450 g chickpeas, cooked
- 1 cup chickpea cooking liquid
- 1 tsp salt
Finish | stove | 3 | 2 |  |  |
  Fold in the spinach, wait until it slumps, and sharpen with vinegar.
- 4 cups spinach
- 1 tbsp red wine vinegar
# Oven-crisp chickpeas | 6
Dry | cold prep | 5 | 20 |  |  |
  Roll the chickpeas dry in a cloth. Whatever is wet will steam and not crisp.
- 350 g chickpeas, cooked
Roast | oven | 4 | 35 | oven | 200 | hot_oven
  Toss with oil and roast, shaking the tray twice, until they rattle.
- 2 tbsp extra-virgin olive oil
- 1 tsp cumin seed, ground
- 3/4 tsp salt
Season | plating | 1 | 0 |  |  |
  Season while hot.
- 1 tsp smoked paprika
- 1/4 tsp black pepper
# Chocolate mousse from the cooking liquid | 6
Melt | stove | 4 | 15 |  |  | hot_liquid
  Melt the chocolate over barely simmering water and let it cool to body heat.
- 200 g dark chocolate, chopped
Whip | cold prep | 8 | 0 |  |  |
  Whip the chilled cooking liquid with cream of tartar to stiff peaks, raining in the sugar.
- 1 cup chickpea cooking liquid, chilled
- 1/4 tsp cream of tartar
- 1/4 cup sugar
Fold and set | fridge | 6 | 180 | chill | 4 |
  Fold in the chocolate in three goes, fill glasses, and chill until set.
- sea salt flakes, to taste
"""
"""A recipe and its portions; of each step title, station, minutes hands-on and waiting, heat, degrees and hazards."""


@dataclass
class TypedStep:
    """A step before it is a record."""

    title: str
    station: str
    hands_on: float
    waiting: float
    heat: str
    celsius: float | None
    hazards: tuple[str, ...]
    text: str = ""
    lines: list[str] = field(default_factory=list)


def typed_recipes() -> dict[str, tuple[float, list[TypedStep]]]:
    """Portions and steps of each recipe by its name."""
    found: dict[str, tuple[float, list[TypedStep]]] = {}
    steps: list[TypedStep] = []
    for line in _TYPED.strip().splitlines():
        if line.startswith("# "):
            name, portions = line[2:].split(" | ")
            steps = []
            found[name] = (float(portions), steps)
        elif line.startswith("- "):
            steps[-1].lines.append(line[2:])
        elif line.startswith("  "):
            steps[-1].text = f"{steps[-1].text} {line.strip()}".strip()
        else:
            title, station, hands_on, waiting, heat, celsius, hazards = (part.strip() for part in line.split("|"))
            degrees = float(celsius) if celsius else None
            carried = tuple(hazard for hazard in hazards.split(", ") if hazard)
            steps.append(TypedStep(title, station, float(hands_on), float(waiting), heat, degrees, carried))
    return found
