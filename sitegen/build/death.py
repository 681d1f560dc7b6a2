"""A worker that died, as a problem of the file that it was working on."""

from pathlib import Path

from sitegen.build.workers import WorkerDied
from sitegen.problems import MORE_MEMORY, Problem


def death_of_a_worker(trouble: Exception, content: Path) -> Problem | None:
    """None for any other trouble. The place is the picture or frame that a library had open, where that is known; else the
    entry's file."""
    if not isinstance(trouble, WorkerDied):
        return None
    file = _inside(trouble.file, content)
    shown = f"{content}/{file or trouble.item}"
    entry = f" for {trouble.item}" if file else ""
    if trouble.ended == "SIGKILL":
        wrong = f"the process that worked on it{entry} was killed by the system (SIGKILL), as a rule for want of memory"
        return Problem(shown, 1, 1, wrong, MORE_MEMORY)
    wrong = f"the process that worked on it{entry} ended in the midst of it ({trouble.ended})"
    return Problem(shown, 1, 1, wrong, "that is a fault of sitegen or of a library: leave the file out until it is mended")


def _inside(file: Path | None, content: Path) -> str | None:
    whole = content.resolve()
    if file is None or not file.resolve().is_relative_to(whole):
        return None
    return file.resolve().relative_to(whole).as_posix()
