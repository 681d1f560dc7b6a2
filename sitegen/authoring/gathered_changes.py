"""What a gathering changes in its log: rows added, cells corrected, rows taken out. The author's own kept and reason win."""

import os
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from itertools import chain
from pathlib import Path
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.discards import BY_TABLE, NOT_LISTED, WORDS, Discard
from sitegen.authoring.captures.reading import Unreadable
from sitegen.authoring.captures.record import Frame, FrameFile
from sitegen.authoring.captures.sorting import Counted, LeftOut, SortedFrames
from sitegen.authoring.captures.walk import folder_name
from sitegen.authoring.gathered_log import GatheredLog, cell_text, changed_cells, missing_columns, sub_of, texts_of
from sitegen.authoring.gathered_rows import FilterName, KnownRow, match_rows
from sitegen.authoring.log_table import Row, add_columns, insert_rows, new_rows, remove_rows, set_cells
from sitegen.diary.sub import Sub

NO_LONGER_THERE = "no longer there"
GoneRule = Literal["keep", "discard"]


class Gone(Struct, frozen=True):
    """Frames gathered before that are not there any more, as far as it is open what to do with them or was done now; `unplugged`
    those of folders of which no known frame is left."""

    count: int = 0
    discarded: int = 0
    unplugged: int = 0


class Changes(Struct, frozen=True):
    """`new` are the subs of new rows, `subs` all of the log as it will be. `kept` says of each counted frame, by its identity,
    whether it counts. The other numbers count rows."""

    new: tuple[Sub, ...]
    subs: tuple[Sub, ...]
    known: int
    kept: Mapping[int, bool]
    judged_anew: Mapping[str, int]
    moved_clock: int
    removed: Mapping[str, int]
    gone: Gone


class ChangeRequest(Struct, frozen=True):
    """`scopes` are the folders of which all is known now; `gone` None leaves frames that are not there any more as they are;
    `corrects_clock` where the author named the clock of records that do not tell theirs; patterns or a list of kept frames of an
    earlier run hold until this run has some."""

    filter_name: FilterName
    scopes: Mapping[str, str]
    gone: GoneRule | None = None
    with_names: bool = True
    corrects_clock: bool = False
    has_patterns: bool = False
    has_list: bool = False


class _Edit(Struct):
    """One row to be changed, and the sub that it then stands for."""

    row: KnownRow
    cells: dict[str, str]
    subs: tuple[Sub, ...]


def change_log(log: GatheredLog, sorted_frames: SortedFrames, request: ChangeRequest) -> Changes:
    """Changes the log's table; whether its text is another then, the caller sees."""
    counted = (*sorted_frames.counted, *sorted_frames.calibration)
    rows, left = _rows_of(counted, log.rows, request.filter_name)
    removed, left = _removed(sorted_frames.left_out, left, request.filter_name)
    edits: list[_Edit] = []
    new: list[Sub] = []
    kept: dict[int, bool] = {}
    for exposure in counted:
        row = rows.get(id(exposure.frame))
        sub = _sub(exposure, request)
        if row is None:
            new.append(sub)
            kept[id(exposure.frame)] = sub.kept
        else:
            edit = _edit(row, exposure, sub, request)
            edits.append(edit)
            kept[id(exposure.frame)] = edit.subs[0].kept
    gone, gone_edits = _gone(_without_unreadable(left, sorted_frames.unreadable), log.rows, request)
    edits += gone_edits
    judged = Counter(_judgement(edit) for edit in edits if "kept" in edit.cells)
    moved_clock = sum("start" in edit.cells for edit in edits)
    removed_rows = {id(row.row) for group in removed.values() for row in group}
    changed = {id(edit.row): edit.subs for edit in edits}
    subs = [sub for row in log.rows if id(row.row) not in removed_rows for sub in changed.get(id(row), row.subs)]
    _apply(log, edits, new, [row.row for group in removed.values() for row in group])
    counts = {kind: len(group) for kind, group in removed.items()}
    return Changes(tuple(new), (*subs, *new), len(rows), kept, dict(judged), moved_clock, counts, gone)


def _rows_of(
    counted: Sequence[Counted], rows: Iterable[KnownRow], filter_name: FilterName
) -> tuple[dict[int, KnownRow], tuple[KnownRow, ...]]:
    """By the identity of the counted frame: its own row, else that of one of its copies."""
    own = match_rows([exposure.frame for exposure in counted], rows, filter_name)
    row_of = dict(own.row_of)
    left = own.unmatched
    missing = [exposure for exposure in counted if id(exposure.frame) not in row_of]
    copies = {id(copy): exposure.frame for exposure in missing for copy in exposure.exposure.copies}
    waiting = [copy for exposure in counted for copy in exposure.exposure.copies if id(copy) in copies]
    if waiting and left:
        matching = match_rows(waiting, left, filter_name)
        for identity, row in matching.row_of.items():
            row_of.setdefault(id(copies[identity]), row)
        left = matching.unmatched
    return row_of, left


def _removed(
    left_out: Iterable[LeftOut], rows: tuple[KnownRow, ...], filter_name: FilterName
) -> tuple[dict[str, list[KnownRow]], tuple[KnownRow, ...]]:
    """Rows of frames that are known not to be subs of this log; what the author wrote something of stays."""
    kinds = {id(passed.frame): passed.kind for passed in left_out if isinstance(passed.frame, Frame)}
    frames = [passed.frame for passed in left_out if isinstance(passed.frame, Frame)]
    if not frames or not rows:
        return {}, rows
    matching = match_rows(frames, rows, filter_name)
    removed: dict[str, list[KnownRow]] = {}
    for identity, row in matching.row_of.items():
        if not (row.is_run or row.is_judged_by_author or row.sub.note):
            removed.setdefault(kinds[identity], []).append(row)
    return removed, matching.unmatched


def _sub(exposure: Counted, request: ChangeRequest) -> Sub:
    listed = exposure.frame.listed
    discard = exposure.discard
    kept, reason = discard is None, discard.reason if discard else None
    if listed is not None and discard is None:
        reason = listed.reason  # of a frame that is kept in spite of it
    sub = sub_of(exposure.frame, request.filter_name, kept, reason, discard.remembered if discard else None, request.with_names)
    return replace(sub, **_measured(exposure))


def _measured(exposure: Counted) -> dict[str, float | int]:
    """By the name of the sub's field."""
    measures = exposure.exposure.measures
    values = {name: getattr(measures, name, None) for name in ("fwhm_arcsec", "elongation", "stars")}
    return {name: value for name, value in values.items() if value is not None}


def _edit(row: KnownRow, exposure: Counted, sub: Sub, request: ChangeRequest) -> _Edit:
    if row.is_run:
        return _Edit(row, {}, row.subs)
    cells = _told_anew(row, exposure, sub, request) if exposure.frame.listed is None else {}
    cells |= {name: cell_text(value) for name, value in _measured(exposure).items() if value != getattr(row.sub, name)}
    stays = row.is_judged_by_author or (exposure.discard is None and _holds(row.origin.discarded_by, exposure, request))
    judged = {} if stays else _judged(row, exposure.discard)
    return _Edit(row, cells | judged, (_changed(row.sub, judged, sub),))


def _told_anew(row: KnownRow, exposure: Counted, sub: Sub, request: ChangeRequest) -> dict[str, str]:
    """What its header or its place on the disk says otherwise than the row."""
    cells = changed_cells(row, sub)
    if row.file is not None and exposure.frame.file is not None and (
        is_same_file(row.file, exposure.frame.file) or exposure.frame.record.is_processed
    ):
        cells.pop("file", None)
        cells.pop("folder", None)
    if not request.with_names and row.file is not None:
        cells |= {"file": "", "folder": ""}
    if sub.panel and not row.sub.panel:
        cells["panel"] = sub.panel
    return cells | _named_filter(row, sub) | (_corrected_start(row, exposure.frame) if request.corrects_clock else {})


def _holds(discarded_by: str | None, exposure: Counted, request: ChangeRequest) -> bool:
    """Whether an earlier run discarded the frame by what this run was not given: a list, patterns, or a table that lists it.
    Folders, names and missing files speak for themselves each time."""
    if discarded_by is None or discarded_by == NO_LONGER_THERE:
        return False
    if discarded_by == NOT_LISTED:
        return not request.has_list
    if discarded_by.startswith(BY_TABLE):
        measures = exposure.exposure.measures
        return all(frame.listed is None for frame in exposure.exposure.frames) and (measures is None or measures.kept is None)
    return not request.has_patterns and not any(discarded_by in words for words in WORDS.values())


def _changed(before: Sub, judged: Mapping[str, str], now: Sub) -> Sub:
    """As it counts in totals."""
    kept = before.kept if "kept" not in judged else judged["kept"] == "True"
    return Sub(before.start, before.exposure_s, "", "", kind=before.kind, kept=kept, filter=now.filter)


def _corrected_start(row: KnownRow, frame: Frame) -> dict[str, str]:
    """Only where the row's clock was assumed, as in every log of the version before, and another one than now: what differs by
    the same clock is its author's correction."""
    if frame.clock in (None, row.sub.clock) or (row.sub.clock is None and row.origin.file is not None):
        return {}
    apart_s = abs((row.sub.start - frame.start).total_seconds())
    return {"clock": frame.clock or ""} | ({"start": cell_text(frame.start)} if apart_s >= 1 else {})


def _named_filter(row: KnownRow, sub: Sub) -> dict[str, str]:
    """The header's words become the rig's short name as soon as the rig knows them; what the author wrote stays."""
    filter_told = sub.origin.filter_told if sub.origin else None
    return {"filter": sub.filter} if sub.filter and sub.filter != row.sub.filter and row.sub.filter in (None, filter_told) else {}


def _judged(row: KnownRow, discard: Discard | None) -> dict[str, str]:
    reason, remembered = (discard.reason, discard.remembered) if discard else ("", "")
    if (row.origin.discarded_by or "") == remembered:
        return {}
    return {"kept": str(discard is None), "reason": reason, "discarded_by": remembered}


def _judgement(edit: _Edit) -> str:
    return "kept" if edit.cells["kept"] == "True" else "discarded"


def _gone(
    left: Sequence[KnownRow], rows: Iterable[KnownRow], request: ChangeRequest
) -> tuple[Gone, list[_Edit]]:
    """Rows of the folders being gathered whose files are not there, nor anywhere in this run. Where nothing known of a folder is
    left, its disk is not there."""
    inside = [row for row in left if _is_in_scope(row, request.scopes)]
    all_left = {id(row) for row in inside}
    present = {row.origin.folder for row in rows if id(row) not in all_left and row.file is not None}
    missing = [row for row in inside if row.origin.folder in present]
    unplugged = len(inside) - len(missing)
    open_rows = [row for row in missing if not row.is_judged_by_author and row.origin.discarded_by in (None, NO_LONGER_THERE)]
    asked = [row for row in open_rows if row.sub.kept] if request.gone != "keep" else []
    if request.gone is None:
        return Gone(len(asked), 0, unplugged), []
    discard = Discard(NO_LONGER_THERE, NO_LONGER_THERE) if request.gone == "discard" else None
    edits = []
    for row in open_rows:
        cells = _judged(row, discard)
        if cells:
            edits.append(_Edit(row, cells, (_changed(row.sub, cells, row.sub),)))
    return Gone(len(edits) if discard else 0, len(edits) if discard else 0, unplugged), edits


def _without_unreadable(rows: Iterable[KnownRow], unreadable: Iterable[Unreadable]) -> list[KnownRow]:
    """A file that cannot be read this time is still there."""
    by_name: dict[str, list[FrameFile]] = {}
    for broken in unreadable:
        by_name.setdefault(broken.file.name, []).append(broken.file)
    return [row for row in rows if row.file is None or not any(
        is_same_file(row.file, file) for file in by_name.get(row.file[1].rpartition("/")[2], ()))]  # fmt: skip


def _is_in_scope(row: KnownRow, scopes: Mapping[str, str]) -> bool:
    if row.file is None:
        return False
    folder, file = row.file
    prefix = scopes.get(folder)
    return prefix is not None and file.startswith(prefix)


def is_same_file(named: tuple[str, str], file: FrameFile) -> bool:
    """Whether folder and path below it lead to this file, through whichever of its folders it was gathered."""
    folder, below = named
    if (file.folder, file.below) == named:
        return True
    real = Path(file.directory) / file.name
    depth = below.count("/")
    if depth >= len(real.parents) or not real.as_posix().endswith(f"/{below}"):
        return False
    return folder_name(os.fspath(real.parents[depth])) == folder


def _apply(log: GatheredLog, edits: Sequence[_Edit], new: Sequence[Sub], removed: Sequence[Row]) -> None:
    table = log.table
    texts = texts_of(new)
    add_columns(table, missing_columns(table, chain(texts, *(edit.cells for edit in edits))))
    for edit in edits:
        if edit.cells:
            set_cells(table, edit.row.row, edit.cells)
    rows = zip((sub.start for sub in new), new_rows(table, texts), strict=True)
    insert_rows(table, rows, [row.sub.start for row in log.rows])
    remove_rows(table, removed)
