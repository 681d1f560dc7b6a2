"""Artifacts to output/, whole or not at all: the only room that writes there."""
