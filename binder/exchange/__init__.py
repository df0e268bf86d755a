"""How a binder travels: JSON documents and price lists."""
