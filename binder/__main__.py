"""`python -m binder` is the command `binder`."""

from __future__ import annotations

from binder.cli.main import main

if __name__ == "__main__":
    main()
