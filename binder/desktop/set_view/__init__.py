"""The day on the set: a screen read from three metres, ticked with one key or a tap."""
