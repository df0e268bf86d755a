"""The larder: foods with their facts and sources, what their measures weigh, their packs and what those cost when."""
