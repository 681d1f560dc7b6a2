"""Open sky data that travels with the program, and the questions asked of it; SOURCES.md says where each table is from."""
