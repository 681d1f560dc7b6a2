"""A diary of astronomical imaging, computed from its capture logs and published as plain files."""

__version__ = "0.1.0"
