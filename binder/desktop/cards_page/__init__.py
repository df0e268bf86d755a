"""The sheets of the print set as they will be printed: preview, print, save."""
