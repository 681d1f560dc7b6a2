"""Puts a finished site in the place of the earlier one: whole or not at all.

The next site is built in a folder of its own; files that did not change are shared with the earlier site by hard link, so that
little is copied. Then the two folders change places in one step of the file system. Killed, out of disk or out of memory before
that step, the earlier site is untouched; whatever lies about is cleared away by the next rebuild.

The site that stood before is kept among the kept things, where they lie on the same disk: the next one begins from it, so that a
rebuild touches what changed and no more. A folder that can change places with no other is published into (`in_place`).
"""

import shutil
from collections.abc import Iterable
from pathlib import Path

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.file_moves import move
from sitegen.problems import DiaryProblems, Problem, system_problem
from sitegen.writing.ahead import Walk
from sitegen.writing.by_hand import SUFFIX, ByHand, keep_by_hand
from sitegen.writing.in_place import STAGE, SiteInPlace, is_root_of_disk
from sitegen.writing.memory import NO_ADDRESSES, SiteAddresses, keep_copy, remembered
from sitegen.writing.next_site import NextSite, SourceLost
from sitegen.writing.one_at_a_time import one_at_a_time
from sitegen.writing.record import FORMAT, RECORD, NewerRecord
from sitegen.writing.switch import change_places

__all__ = ["Published", "SiteAddresses", "SourceLost", "look_ahead", "publish", "recover"]

CATCH_UP = 200
"""With more files written than this, the site before is no good beginning for the next one: it is brought up to date at once."""


class Published(Struct, frozen=True):
    """`changed` files were written, the others shared with the earlier site. `removed` were made by an earlier rebuild and are
    gone now; `carried` are files that somebody put there by hand and that stay. `by_hand`: pages changed by hand in the output,
    made anew or gone, and where the author's versions are kept. `lay`: path, size, time and inode of every file as it lies in the
    output now; None where somebody's own files lie among them. `warnings`, told once: pages changed by hand, and
    what had to be assumed of the output."""

    files: int
    changed: int
    removed: int
    carried: tuple[str, ...]
    by_hand: tuple[ByHand, ...]
    lay: list[tuple[str, int, int, int]] | None = None
    warnings: tuple[Problem, ...] = ()


def look_ahead(output: Path, state: Path | None) -> Walk:
    """Begins to look through what `publish` of the same folders will want to know. Ask it, or close it."""
    output = _settled(output)
    try:
        return Walk(output, _place_beside(output, state))
    except OSError:  # told by `publish`
        return Walk(output, output, copied=False)


def publish(artifacts: Iterable[Artifact], output: Path, state: Path | None = None, ahead: Walk | None = None,
            known_by: SiteAddresses = NO_ADDRESSES) -> Published:  # fmt: skip
    """Writes beside `output` and switches. `state` is a folder for the site that stood before, `ahead` what `look_ahead` gave,
    `known_by` how a site is known that has lost its record.

    Raises DiaryProblems, with the earlier site whole, where the disk is full, a folder cannot be written, a file that was put
    into the output by hand stands in the way of a page, or a later version published there.
    """
    output = _settled(output)
    try:
        output.parent.mkdir(parents=True, exist_ok=True)
        with one_at_a_time(output.with_name(f".{output.name}.lock")):
            recover(output)
            beside = _place_beside(output, state)
            stays = False
            try:
                published = _published(artifacts, output, beside, state, ahead, known_by)
                stays = beside.parent == state
                return published
            finally:  # before another rebuild may begin one of that name
                if not stays:
                    shutil.rmtree(beside, ignore_errors=True)
    except OSError as wrong:
        raise DiaryProblems([system_problem(wrong, output.name, (output, state or output))]) from wrong
    except NewerRecord as newer:
        raise DiaryProblems([_of_a_later_version(output, newer)]) from newer


def _settled(output: Path) -> Path:
    return output.resolve() if output.is_symlink() else output.absolute()


def _place_beside(output: Path, state: Path | None) -> Path:
    if is_root_of_disk(output):
        return output / STAGE
    return _standing_by(output, state) or output.with_name(f".{output.name}.next")


def _standing_by(output: Path, state: Path | None) -> Path | None:
    """Where the site before stands by; None where it cannot, as a folder can only be moved within one disk."""
    if state is None:
        return None
    state.mkdir(parents=True, exist_ok=True)
    place = state / f"before-{output.name}"
    return place if state.stat().st_dev == output.parent.stat().st_dev and not place.is_symlink() else None


def recover(output: Path) -> None:
    """Clears what a killed rebuild left; where it died between two renames, the earlier site comes back."""
    old = output.with_name(f".{output.name}.old")
    if old.exists() and not output.exists():
        move(old, output)
    shutil.rmtree(old, ignore_errors=True)
    shutil.rmtree(output / STAGE, ignore_errors=True)
    shutil.rmtree(output.with_name(f".{output.name}.next"), ignore_errors=True)


def _published(artifacts: Iterable[Artifact], output: Path, beside: Path, state: Path | None, ahead: Walk | None,
               known_by: SiteAddresses) -> Published:  # fmt: skip
    memory = remembered(output, state, known_by)
    in_place = SiteInPlace(output, memory.files, ahead) if beside.name == STAGE else None
    next_site = in_place or NextSite(output, beside, memory.files, ahead)
    for artifact in artifacts:
        next_site.place(artifact)
    foreign = next_site.sort_out(memory, known_by.may_be_ours)
    if foreign.in_the_way:
        raise DiaryProblems(_in_the_way(path, output) for path in foreign.in_the_way)
    next_site.carry(foreign.carried)
    record = next_site.record()
    by_hand = keep_by_hand(output, next_site.changed_by_hand())
    keep_by_hand(output, foreign.assumed)
    next_site.clear()
    if in_place:
        in_place.take_places()
    else:
        change_places(beside, output)
    keep_copy(output, state, record)
    if beside.parent == state and next_site.changed > CATCH_UP:
        _catch_up(output, beside)
    removed = len((memory.files.keys() | set(foreign.assumed)) - next_site.placed.keys())
    lay = None if foreign.carried else [(path, *laid) for path, laid in next_site.lay.items()]
    in_doubt = memory.ours and not memory.whole and next_site.earlier
    warnings = [_without_record(output, len(foreign.assumed))] if in_doubt else []
    warnings += [_changed_by_hand(output, path, kept, path in next_site.placed) for path, kept in by_hand]
    return Published(len(next_site.placed), next_site.changed, removed, tuple(foreign.carried), by_hand, lay, tuple(warnings))


def _catch_up(output: Path, beside: Path) -> None:
    same = NextSite(output, beside)
    same.share_all()
    same.clear()


def _in_the_way(path: str, output: Path) -> Problem:
    return Problem(
        f"{output.name}/{path}", 1, 1, "this file was put here by hand, and a page of the diary needs its place",
        "move it out of the output folder",
    )  # fmt: skip


def _changed_by_hand(output: Path, path: str, kept: str, made_anew: bool) -> Problem:
    """Told once, by the rebuild that took the file's place."""
    what_then = "its place is taken again" if made_anew else "the diary no longer makes it"
    wrong = f"this file was changed by hand after it was made, and {what_then}"
    remedy = f"your version is kept as {kept}: take from it what you need, and delete it"
    return Problem(f"{output.name}/{path}", 1, 1, wrong, remedy, "warning")


def _without_record(output: Path, assumed: int) -> Problem:
    wrong = "the record of what was published is missing or damaged, so files at sitegen's addresses are taken for its own"
    remedy = f"copy {RECORD} along whenever you copy or restore this folder"
    if assumed:
        kept = f"{output.name}{SUFFIX}"
        what = "1 file that no page needs any more was" if assumed == 1 else f"{assumed} files that no page needs any more were"
        remedy = f"{what} moved to {kept}: take from it what is yours, and delete it"
    return Problem(f"{output.name}/{RECORD}", 1, 1, wrong, remedy, "warning")


def _of_a_later_version(output: Path, newer: NewerRecord) -> Problem:
    wrong = f"a later version of sitegen published this site (its record has format {newer}, this version knows {FORMAT})"
    return Problem(f"{output.name}/{RECORD}", 1, 1, wrong, "rebuild with that version, or name another --output")
