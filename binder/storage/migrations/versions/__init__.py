"""The migrations, each named for the schema version that it leads to."""
