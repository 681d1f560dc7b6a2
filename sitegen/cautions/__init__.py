"""What an author wrote, to what could hurt somebody who copies it."""
