"""Mise en place: what starts on days before, then what is set out for each build and in all, by station or by hour."""
