"""What a value may be: one file a kind. Each reads a node, describes itself in words, and as JSON Schema."""
