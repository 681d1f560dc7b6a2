"""Frames lying anywhere -> what each of them is: their headers read once, and every file sorted into one kind, with evidence."""
