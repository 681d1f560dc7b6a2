"""Everything computed so far, as pages to read."""
