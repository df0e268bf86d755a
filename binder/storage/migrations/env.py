"""Alembic's entry: runs the migrations on the connection and in the transaction that `storage.upgrade` gives it."""

from __future__ import annotations

from alembic import context

context.configure(connection=context.config.attributes["connection"], transactional_ddl=True)
context.run_migrations()
