"""A price list brought in: which column is what, what becomes of each row, and one change for all of it."""
