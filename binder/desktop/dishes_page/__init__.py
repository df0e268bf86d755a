"""Dishes: the recipes, and the one chosen as a cook writes it, with what each line weighs and costs in the margin."""
