"""What is seen: the PySide6 window, its pages, item models and delegates."""
