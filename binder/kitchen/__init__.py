"""What exists: the records of a binder and their vocabulary.

Pure Python: no files but the reference tables, no Qt, no SQL.
"""
