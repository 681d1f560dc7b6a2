"""A capture folder being filled: each shot is written and its truth noted in the same breath."""

import random
from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tests.disk.frames import Dialect, Shot, Train, write_frame
from tests.disk.truth import DiskFile, DiskTruth, Fate, Place, TrueFrame


class Sky(Struct, frozen=True):
    """Something to point at: what headers call it, where it is (degrees, J2000), and the last part of its page's address."""

    object: str
    ra_deg: float
    dec_deg: float
    page: str


class Taken(Struct, frozen=True):
    """A file with the shot behind it, for those who copy it."""

    file: DiskFile
    shot: Shot


class Disk:
    """The files below `root`, in the order of writing."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.files: list[DiskFile] = []

    def note(self, file: DiskFile) -> DiskFile:
        self.files.append(file)
        return file

    def truth(self) -> DiskTruth:
        return DiskTruth(tuple(self.files))

    def junk(self, path: str, content: bytes, project: str, why: str, fate: Fate = "passed_over") -> None:
        """Anything that is no frame."""
        (self.root / path).parent.mkdir(parents=True, exist_ok=True)
        (self.root / path).write_bytes(content)
        self.note(DiskFile(path, project, fate, why))


class Capture:
    """One project at its rig: what `shoot` writes has these defaults."""

    def __init__(self, disk: Disk, project: str, train: Train, place: Place, sky: Sky, dialect: Dialect) -> None:
        self.disk, self.project, self.train, self.place, self.sky, self.dialect = disk, project, train, place, sky, dialect
        self.random = random.Random(f"captures of {project}")
        self.number = 0

    def starts(self, first: str, count: int, exposure_s: float, whole: bool = False) -> Iterator[datetime]:
        """One after the other with 5 to 9 s for reading out; to a hundredth of a second."""
        moment = datetime.fromisoformat(first).replace(tzinfo=UTC)
        for _ in range(count):
            yield moment
            gap_s = 7 if whole else self.random.randrange(500, 900) / 100
            moment += timedelta(seconds=exposure_s + gap_s)

    def shoot(
        self,
        folder: str,
        first: str,
        count: int,
        exposure_s: float,
        words: str | None = None,
        short: str | None = None,
        *,
        fate: Fate = "kept",
        why: str = "a sound sub",
        prefix: str = "",
        whole: bool = False,
        **changes: Any,
    ) -> list[Taken]:
        """`first` in UTC. `words` is the filter as the header spells it, `short` the rig's own name where that differs."""
        moments = self.starts(first, count, exposure_s, whole)
        shots = [self.shot(moment, exposure_s, words, **changes) for moment in moments]
        return [self.save(folder, shot, short or words, fate, why, prefix) for shot in shots]

    def shot(self, moment: datetime, exposure_s: float, words: str | None, **changes: Any) -> Shot:
        """Pointing within a hundredth of a degree, as dithering leaves it."""
        ra_deg, dec_deg = self.sky.ra_deg + self.random.uniform(-0.01, 0.01), self.sky.dec_deg + self.random.uniform(-0.01, 0.01)
        plain = Shot(moment, exposure_s, self.train, self.place, self.sky.object, ra_deg, dec_deg, words)
        return replace(plain, **changes)

    def save(self, folder: str, shot: Shot, short: str | None, fate: Fate, why: str, prefix: str = "") -> Taken:
        self.number += 1
        path = f"{folder}/{prefix}{self.project}_{self.number:04d}.fits"
        frame = self.true_frame(shot, short, fate) if fate in ("kept", "discarded") else None
        return self.write(path, shot, fate, why, frame)

    def true_frame(self, shot: Shot, short: str | None, fate: Fate) -> TrueFrame:
        return TrueFrame(shot.start, shot.exposure_s, self.train.rig, self.place, self.sky.page, short, fate == "kept")

    def write(self, path: str, shot: Shot, fate: Fate, why: str, frame: TrueFrame | None = None) -> Taken:
        write_frame(self.disk.root / path, shot, self.dialect)
        return Taken(self.disk.note(DiskFile(path, self.project, fate, why, frame)), shot)

    def copies(self, originals: Iterable[Taken], folder: str, name: str, why: str, **changes: Any) -> None:
        """The same exposures once more; `name` is a pattern with the original's stem for `{}`."""
        for each in originals:
            stem = Path(each.file.path).stem
            self.write(f"{folder}/{name.format(stem)}", replace(each.shot, **changes), "copy", why)


def turned_to(capture: Capture, project: str, sky: Sky) -> Capture:
    """The same rig on the same night, at another target."""
    other = Capture(capture.disk, project, capture.train, capture.place, sky, capture.dialect)
    other.random, other.number = random.Random(f"{capture.project} turned to {project} {sky.object}"), 5000
    return other


def last_of(taken: Sequence[Taken]) -> datetime:
    """When the last exposure ended."""
    return taken[-1].shot.start + timedelta(seconds=taken[-1].shot.exposure_s)
