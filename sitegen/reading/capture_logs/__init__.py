"""CAPTURE LOGS -> subs, or every problem: reader.py (contract), registry.py, one file a format."""
