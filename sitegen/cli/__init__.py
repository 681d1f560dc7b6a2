"""Words in, exit status out: the only room that prints."""

from sitegen.cli.registry import main

__all__ = ["main"]
