"""FILES -> a valid diary, or every problem. The only room that opens the author's files."""
