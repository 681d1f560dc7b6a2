"""Many frames' headers, read side by side: what waits is the disk."""

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from functools import partial
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.frame_hints import FrameHints, hints_of
from sitegen.diary.sub import Sub
from sitegen.problems import Problem, errors_in
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogRequest

READERS = 8
Progress = Callable[[str], None]
"""Called with the name of each file that is done."""


class ReadFrame(Struct, frozen=True):
    """One file: its subs, filters as the log spells them; `hints` of a FITS header only."""

    path: Path
    subs: tuple[Sub, ...]
    problems: tuple[Problem, ...]
    hints: FrameHints | None

    @property
    def unreadable(self) -> bool:
        return bool(errors_in(self.problems))


def read_frames(
    paths: Sequence[Path], today: date, time_zone: str | None = None, jobs: int | None = None, progress: Progress | None = None
) -> tuple[ReadFrame, ...]:
    """In the order of the paths. `time_zone` is the clock of logs that do not tell theirs; None for UTC."""
    done: list[ReadFrame] = []
    pool = ThreadPoolExecutor(jobs or READERS)
    try:
        for frame in pool.map(partial(_read, today=today, time_zone=time_zone), paths):
            done.append(frame)
            if progress is not None:
                progress(frame.path.name)
    finally:
        pool.shutdown(cancel_futures=True)
    return tuple(done)


def _read(path: Path, today: date, time_zone: str | None) -> ReadFrame:
    reading = read_log(
        LogRequest(
            path=path,
            shown_path=str(path),
            source=path.name,
            rig=None,
            site=None,
            target=None,
            filter=None,
            time_zone=time_zone,
            item_place=(str(path), 1, 1),
            today=today,
        )
    )
    return ReadFrame(path, reading.subs, reading.problems, hints_of(path))
