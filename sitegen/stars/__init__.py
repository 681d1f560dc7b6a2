"""PIXELS -> star shapes, rings, plate solutions. Arrays in, frozen records out; no files, no diary."""
