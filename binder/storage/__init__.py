"""Where a binder lives: the binder file, its journal and its migrations."""
