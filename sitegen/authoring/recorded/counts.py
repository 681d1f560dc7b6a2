"""How many frames a row stands for, and how many of them were kept."""

from collections.abc import Mapping, Sequence
from math import inf

from msgspec import Struct

from sitegen.authoring.recorded.cells import CellRow
from sitegen.authoring.recorded.exposures import Exposure
from sitegen.authoring.recorded.numbers import number_in, plain_number
from sitegen.reading.capture_logs.log_problems import ValueProblem

YES = frozenset({"yes", "y", "true", "t", "1", "kept", "keep", "ok", "good", "accepted", "accept", "approved", "pass", "passed",
                 "used", "x", "✓", "✔", "+", "ja", "j", "gut", "brauchbar", "behalten", "verwendet", "genutzt",
                 "selected"})  # fmt: skip
NO = frozenset({"no", "n", "false", "f", "0", "discarded", "discard", "rejected", "reject", "bad", "fail", "failed", "unused",
                "✗", "✘", "nein", "schlecht", "verworfen", "ausschuss", "unbrauchbar", "aussortiert", "deleted", "gelöscht",
                "deselected"})  # fmt: skip


class Verdicts(Struct, frozen=True):
    """How the columns 'good', 'bad' and 'verdict' speak: in numbers of frames, or yes and no. `blank` is what an empty cell of
    'good' says. `told` explains."""

    good_counts: bool = False
    bad_counts: bool = False
    blank: bool = True
    told: tuple[str, ...] = ()


class Count(Struct, frozen=True):
    kept: int
    discarded: int

    @property
    def frames(self) -> int:
        return self.kept + self.discarded


def verdicts_of(rows: Sequence[CellRow], headings: Mapping[str, str]) -> Verdicts:
    good, bad = ([row.cells[key].casefold() for row in rows if key in row.cells] for key in ("good", "bad"))
    has_count = any("count" in row.cells for row in rows)
    good_counts = _are_counts(good, has_count)
    bad_counts = _are_counts(bad, has_count or good_counts)
    empty = sum("good" not in row.cells for row in rows)
    blank = not (good and not good_counts and empty and not any(cell in NO for cell in good))
    remarks = [] if blank else [f"an empty '{headings['good']}' means not kept ({empty} rows), as the others say {good[0]!r}"]
    if good_counts or bad_counts:
        remarks.append("which frames of a row were thrown away is not told: its last ones are taken to be")
    return Verdicts(good_counts, bad_counts, blank, tuple(remarks))


def _are_counts(cells: Sequence[str], others_count: bool) -> bool:
    """0 and 1 alone are no and yes, unless another column counts."""
    return bool(cells) and all(map(_is_count, cells)) and (others_count or any(cell not in ("0", "1") for cell in cells))


def _is_count(cell: str) -> bool:
    number = plain_number(cell)
    return number is not None and number.is_integer()


def count_of(row: CellRow, exposure: Exposure | None, verdicts: Verdicts) -> Count | None:
    """None where the row does not say how many. Raises ValueProblem, whose `remedy` is the key of the cell."""
    taken = exposure.count if exposure is not None and exposure.count is not None else _whole(row, "count")
    good = _whole(row, "good") if verdicts.good_counts else None
    bad = _whole(row, "bad") if verdicts.bad_counts else None
    if good is None and bad is None:
        if taken is None:
            return None
        return Count(taken, 0) if kept_of(row, verdicts) else Count(0, taken)
    frames = taken if taken is not None else (good or 0) + (bad or 0)
    kept = good if good is not None else frames - (bad or 0)
    if kept > frames or kept < 0 or (good is not None and bad is not None and good + bad != frames):
        raise ValueProblem(f"kept and thrown away do not add up to the {frames} taken", "good" if good is not None else "bad")
    return Count(kept, frames - kept)


def kept_of(row: CellRow, verdicts: Verdicts) -> bool:
    """Raises ValueProblem."""
    if not verdicts.good_counts and "good" in row.cells:
        return _yes(row.cells["good"], "good")
    if not verdicts.bad_counts and "bad" in row.cells:
        return not _yes(row.cells["bad"], "bad")
    if "verdict" in row.cells:
        return _yes(row.cells["verdict"], "verdict")
    return verdicts.blank and "reason" not in row.cells


def _yes(cell: str, key: str) -> bool:
    word = cell.casefold().strip(" .!")
    if word not in YES | NO:
        raise ValueProblem("neither yes nor no", key)
    return word in YES


def _whole(row: CellRow, key: str) -> int | None:
    if key not in row.cells:
        return None
    try:
        number = number_in(row.cells[key], 0, inf)
    except ValueProblem as doubt:
        raise ValueProblem(doubt.wrong, key) from None
    if not number.is_integer():
        raise ValueProblem("not a whole number", key)
    return int(number)
