"""Plain functions that build a Change: the only way anything in a binder is edited."""
