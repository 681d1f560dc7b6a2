"""Frames taken to focus: they show no target long enough to count."""

import re
from collections.abc import Sequence
from datetime import timedelta
from itertools import pairwise
from statistics import median

from sitegen.authoring.captures.record import Frame, FrameRecord

SAYS_SO = "a folder or name says so"
KIND_SAYS_SO = "the kind in the header says so"
STEPS = "short, in quick succession, and the focuser steps"
FEWEST, LONGEST_S, SHARE_OF_SUB = 5, 30.0, 1 / 3
IN_SUCCESSION = timedelta(seconds=120)
STEPPING_SHARE = 0.6
# By the language of the diary; English always.
WORDS = {
    "en": ("focus", "focusing", "focussing", "autofocus", "focus run", "focusrun", "vcurve", "v curve", "focus frames"),
    "de": ("fokus", "fokussierung", "fokussieren", "autofokus", "scharfstellen", "fokuslauf"),
}


_IN_ALL_WORDS = ("focus", "fokus", "curve", "scharf")
"""Most paths hold none of these, and are not looked at part by part."""


def kind_says_focus(record: FrameRecord) -> bool:
    return record.kind is None and re.search(r"fo[ck]us", record.kind_words, re.I) is not None


def says_focus(frame: Frame, language: str) -> bool:
    """A whole word of the path, from the folder that was gathered on."""
    if frame.file is None:
        return False
    plain = frame.file.with_folder.casefold()
    if not any(part in plain for part in _IN_ALL_WORDS):
        return False
    words = {*WORDS["en"], *WORDS.get(language.partition("-")[0].casefold(), ())}
    return any(_plain(part) in words or _first_word(part) in words for part in frame.file.with_folder.split("/"))


def _plain(part: str) -> str:
    return re.sub(r"[\W_\d]+", " ", part.casefold()).strip()


def _first_word(part: str) -> str:
    """A name that begins with the word: 'focus_0012.fits'; also the part of a folder: '2026-04-18 focus'."""
    return _plain(part.partition(".")[0]).partition(" ")[0] if "." in part else _plain(part)


def stepping_runs(frames: Sequence[Frame]) -> set[int]:
    """Numbers of light frames that are far shorter than the subs, follow each other quickly, and step the focuser."""
    longer = [frame.exposure_s for frame in frames if frame.exposure_s > LONGEST_S]
    most_s = min(LONGEST_S, SHARE_OF_SUB * median(longer)) if longer else LONGEST_S
    short = [number for number, frame in enumerate(frames) if frame.exposure_s <= most_s and frame.record.focuser is not None]
    short.sort(key=lambda number: frames[number].start)
    stepping: set[int] = set()
    run: list[int] = []
    for number in short:
        if run and frames[number].start - frames[run[-1]].end > IN_SUCCESSION:
            stepping |= _steps(run, frames)
            run = []
        run.append(number)
    return stepping | _steps(run, frames)


def _steps(run: Sequence[int], frames: Sequence[Frame]) -> set[int]:
    """A focuser that follows the temperature moves now and then; one that seeks the focus moves from frame to frame."""
    if len(run) < FEWEST:
        return set()
    positions = [frames[number].record.focuser for number in run]
    moves = sum(before != after for before, after in pairwise(positions))
    return set(run) if moves >= STEPPING_SHARE * (len(run) - 1) and len(set(positions)) >= FEWEST - 1 else set()
