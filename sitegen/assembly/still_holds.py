"""Whether what was read stands: entries whose files, logs and frame are as they were are not opened."""

from collections.abc import Mapping, Sequence

from sitegen.assembly.bench import Bench
from sitegen.assembly.records import ReadEntry
from sitegen.keeping.footprint import Mark


def still_holds(read: ReadEntry | None, frame: str, bench: Bench, marks: Mapping[str, Mark | None], moved: Sequence[str]) -> bool:
    """Whether the entry would be read the same again. `moved`: paths that came or went since. An entry with an error is always
    read again; a warning may hang on the day."""
    if read is None or read.entry is None or read.frame != frame:
        return False
    today = bench.frame.today
    if today != read.today and (read.problems or today < read.today):
        return False
    if any(mark is None or marks.get(name) != mark for name, mark in read.marks):
        return False
    return not any(name.startswith(read.asked) for name in moved)
