"""The diary as lists for machines."""
