"""A disk of captures -> logs, rigs, sites and draft entries."""
