"""What follows from a binder: pure functions from a Binder to figures. No Qt, no SQL, no files."""
