"""How a file of an older version becomes one of this version: Alembic's migrations, one file a step."""
