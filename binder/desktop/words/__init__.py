"""Figures and times in words, and words as people type them, for the pages of the window."""
