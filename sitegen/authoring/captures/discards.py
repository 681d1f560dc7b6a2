"""Which frames were thrown away: by pattern, by what folders and names say, by a list of those that were used."""

import re
from collections.abc import Iterable, Mapping, Sequence, Set
from fnmatch import fnmatchcase
from functools import lru_cache
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.captures.record import Frame, FrameFile, stem_of
from sitegen.problems import DiaryProblems, Problem
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.table_text import read_table_text

# By the language of the diary; English always.
WORDS: Mapping[str, tuple[str, ...]] = {
    "en": ("rejected", "rejects", "reject", "bad", "discarded", "discards", "discard", "deleted", "trash", "unused", "not used",
           "thrown away", "junk", "unusable"),
    "de": ("verworfen", "verworfene", "ausschuss", "aussortiert", "aussortierte", "schlecht", "schlechte", "unbrauchbar",
           "gelöscht", "geloescht", "papierkorb", "abfall", "müll", "muell", "ungenutzt"),
}  # fmt: skip
NOT_LISTED = "not in the list of kept frames"
BY_TABLE = "table:"
SORTED_OUT = "sorted out"
_NAMES_A_FILE = re.compile(r"\.[A-Za-z][A-Za-z0-9]{1,5}(?:\.gz|\.fz)?$", re.I)
_SEPARATORS = re.compile(r"[_\-. ]+")


class Discarding(Struct, frozen=True):
    """`patterns` are shell globs; without any, and without a list, words of folders and names say it in English and in
    `language`. `kept_stems` is None without a list of kept frames."""

    patterns: tuple[str, ...] = ()
    language: str = "en"
    kept_stems: frozenset[str] | None = None


@lru_cache(maxsize=8)
def words_of(language: str) -> tuple[str, ...]:
    return (*WORDS["en"], *WORDS.get(language.partition("-")[0].casefold(), ()))


def language_of(files: Iterable[FrameFile]) -> tuple[str, str]:
    """The language in which folders say that frames were thrown away, and what it was guessed from; English without any."""
    folders = {part for file in files for part in file.below.split("/")[:-1]}
    english = words_of("en")
    for language, words in WORDS.items():
        said = sorted(folder for folder in folders if (word := _plain(folder)) in words and word not in english)
        if said:
            return language, f"the folder '{said[0]}' says in it that frames were thrown away"
    return "en", ""


def _plain(folder: str) -> str:
    return re.sub(r"[\W_\d]+", " ", folder.casefold()).strip()


class Discard(Struct, frozen=True):
    """`reason` may be published; `by` is the pattern or the words, as they are told to the author alone."""

    reason: str
    by: str
    is_by_table: bool = False

    @property
    def remembered(self) -> str:
        """As the log's column 'discarded_by' has it: what a table said is told from what a pattern did."""
        return f"{BY_TABLE} {self.reason}".strip() if self.is_by_table else self.reason


def reason_of(remembered: str | None) -> str:
    return (remembered or "").removeprefix(BY_TABLE).strip()


def discard_of(frames: Sequence[Frame], discarding: Discarding) -> Discard | None:
    """Why the exposure was thrown away: by any of the files that show it."""
    for frame in frames:
        if frame.file is None:
            continue
        discard = _by_path(frame.file, discarding)
        if discard is not None:
            return discard
    if discarding.kept_stems is not None and not any(_is_listed(frame, discarding.kept_stems) for frame in frames):
        return Discard(NOT_LISTED, "the list of kept frames")
    return None


@lru_cache(maxsize=4_096)
def _by_folders(gathered: str, below: str, language: str) -> Discard | None:
    """`gathered` is the name of the folder gathered as a log has it: that one, too, may say what lies in it."""
    words = words_of(language)
    for folder in (gathered.rpartition("-")[0], *below.split("/")):
        if (word := _plain(folder)) in words:
            return Discard(word, f"the folder '{folder}'")
    return None


def _by_path(file: FrameFile, discarding: Discarding) -> Discard | None:
    if discarding.patterns:
        pattern = next((pattern for pattern in discarding.patterns if matches(file.below, pattern)), None)
        return None if pattern is None else Discard(_word_of(pattern), pattern)
    folders, _, name = file.below.rpartition("/")
    if (discard := _by_folders(file.folder, folders, discarding.language)) is not None:
        return discard
    word = _prefix_of(name, discarding.language)
    return Discard(word, f"names that begin with '{word}'") if word else None


def _prefix_of(name: str, language: str) -> str:
    """'bad_12.fits', 'BAD-12.fits', 'not_used12.fits': a word ends there; 'badlands.fits' is none, nor 'Bad Ems.fits'."""
    match = _prefixes(language).match(name.casefold())
    if match is None or (match.group(1) == "bad" and match.group(2) == " "):
        return ""
    return _SEPARATORS.sub(" ", match.group(1))


@lru_cache(maxsize=8)
def _prefixes(language: str) -> re.Pattern[str]:
    """A word, and the character behind it, which is no letter."""
    longest_first = sorted(words_of(language), key=len, reverse=True)
    spelt = "|".join(re.escape(word).replace(r"\ ", "[ _-]") for word in longest_first)
    return re.compile(f"({spelt})([\\W\\d_])")


def matches(below: str, pattern: str) -> bool:
    """The whole path below the folder gathered, any end of it that begins a folder or the name, in any of which '*' also stands
    for '/'."""
    wanted = f"{pattern}*" if pattern.endswith("/") else pattern
    parts = below.split("/")
    return any(fnmatchcase("/".join(parts[number:]), wanted) for number in range(len(parts)))


def _word_of(pattern: str) -> str:
    """A word of the pattern, fit for the world to read; neither a path nor the name of a file."""
    if not re.search(r"[*?\[]|/$", pattern):
        return SORTED_OUT
    parts = [part for part in re.split(r"[*?/\\.]+|\[[^]]*\]", pattern) if re.search(r"[^\W\d_]{3}", part)]
    words_known = {word for words in WORDS.values() for word in words}
    plain = [re.sub(r"[\W_\d]+", " ", part.casefold()).strip() for part in parts]
    return next(
        (word for word in plain if word in words_known), plain[0] if len(plain) == 1 and len(plain[0]) <= 20 else SORTED_OUT
    )


def _is_listed(frame: Frame, kept: frozenset[str]) -> bool:
    return frame.file is not None and frame.file.stem.casefold() in kept


class KeptList(Struct, frozen=True):
    """`stems` of frames that were used; `strangers` counts names that meet no frame."""

    stems: frozenset[str]
    strangers: int


LONGEST_NAME = 255
"""No disk has a longer one, and each separator of a name is tried."""


def read_kept_list(path: Path, frames: Iterable[Frame]) -> KeptList:
    """A text or a table, any column. Raises DiaryProblems where it cannot be read, or names none of the frames."""
    problems = LogProblems(str(path))
    text = read_table_text(path, problems)
    if text is None:
        raise DiaryProblems(problems.all())
    stems = {frame.file.stem.casefold() for frame in frames if frame.file is not None}
    names = _names_in(text, stems)
    met = {name: stem for name in names if (stem := stem_met(name, stems)) is not None}
    if not met:
        remedy = "it has their names, with or without folder and ending, one a line"
        raise DiaryProblems([Problem(str(path), 1, 1, "names none of the frames gathered", remedy)])
    return KeptList(frozenset(met.values()), len(names) - len(met))


def _names_in(text: str, stems: set[str]) -> list[str]:
    """Cells that name a file; where none does, those that name a frame without its ending."""
    cells = [cell.strip().strip("\"'") for line in text.split("\n") if not line.startswith("#")
             for cell in re.split(r"[,;\t|]", line)]  # fmt: skip
    bases = [base for cell in cells if cell and len(base := re.split(r"[/\\]", cell)[-1].strip()) <= LONGEST_NAME]
    files = [base for base in bases if _NAMES_A_FILE.search(base)]
    if not files and len(bases) > 0:
        files = [base for base in bases if base.casefold() in stems or len(bases) == len(text.strip().split("\n"))]
    return list(dict.fromkeys(base.casefold() for base in files))


def stem_met(name: str, stems: Set[str]) -> str | None:
    """The frame of that name, or that the name is derived from: 'light_012_cal_reg' of 'light_012'."""
    stem = stem_of(name) if _NAMES_A_FILE.search(name) else name
    if stem in stems:
        return stem
    return next((short for short in _shortened(stem) if short in stems), None)


def _shortened(stem: str) -> Iterable[str]:
    """With words taken off its end or its beginning; a number is part of a frame's own name."""
    places = [(separator.start(), separator.end()) for separator in _SEPARATORS.finditer(stem)]
    for start, end in reversed(places):
        if stem[end:].isdigit():
            break
        yield stem[:start]
    for start, end in places:
        if stem[:start].isdigit():
            break
        yield stem[end:]
        yield from (stem[end:last] for last, after in reversed(places) if last > end and not stem[after:].isdigit())
