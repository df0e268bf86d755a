"""The shoot: its base ingredient and caps, the running order as strips, and the builds of the dish chosen."""
