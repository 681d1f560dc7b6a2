"""What an author's sentences claim, held against the logs, the sky and the calendar: doubts for the author, never published."""
