"""What was made before and is still true: the hash of its inputs leads to it."""
