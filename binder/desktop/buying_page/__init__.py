"""Buying: the list by trip and section with its ticks, what is at home already, the days to go, and the stores."""
