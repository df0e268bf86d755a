"""Tables of cells: what presenters say, how it is painted, and how a cell is edited in place."""
