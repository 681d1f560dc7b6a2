"""Diary to numbers: pure functions over valid records."""
