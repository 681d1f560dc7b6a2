"""Puts a finished site in the place of the earlier one: whole or not at all.

The next site is built in a folder of its own; files that did not change are shared with the earlier site by hard link, so that
little is copied. Then the two folders change places in one step of the file system. Killed, out of disk or out of manifest before
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
from sitegen.publish.by_hand import SUFFIX, ByHand, keep_by_hand
from sitegen.publish.file_lock import file_lock
from sitegen.publish.in_place import STAGE, SiteInPlace, is_root_of_disk
from sitegen.publish.prefetch import DirectoryPrefetch
from sitegen.publish.publish_manifest import NO_ADDRESSES, SiteAddresses, keep_copy, read_publish_manifest
from sitegen.publish.record import FORMAT, RECORD, NewerRecord
from sitegen.publish.staging import SourceLost, StagedSite
from sitegen.publish.swap import atomic_swap

__all__ = ["Published", "SiteAddresses", "SourceLost", "prefetch", "publish", "recover"]

CATCH_UP = 200
"""With more files written than this, the site before is no good beginning for the next one: it is brought up to date at once."""


class Published(Struct, frozen=True):
    """`changed` files were written, the others shared with the earlier site. `removed` were made by an earlier rebuild and are
    gone now; `carried` are files that somebody put there by hand and that stay. `by_hand`: pages changed by hand in the output,
    made anew or gone, and where the author's versions are kept. `files_now`: path, size, time and inode of every file as it lies
    in the output now; None where somebody's own files lie among them. `warnings`, told once: pages changed by hand, and what had
    to be assumed of the output."""

    files: int
    changed: int
    removed: int
    carried: tuple[str, ...]
    by_hand: tuple[ByHand, ...]
    files_now: list[tuple[str, int, int, int]] | None = None
    warnings: tuple[Problem, ...] = ()


def prefetch(output: Path, state: Path | None) -> DirectoryPrefetch:
    """Begins to look through what `publish` of the same folders will want to know. Ask it, or close it."""
    output = _settled(output)
    try:
        return DirectoryPrefetch(output, _staging_dir(output, state))
    except OSError:  # told by `publish`
        return DirectoryPrefetch(output, output, forked=False)


def publish(artifacts: Iterable[Artifact], output: Path, state: Path | None = None, scan: DirectoryPrefetch | None = None,
            known_by: SiteAddresses = NO_ADDRESSES) -> Published:  # fmt: skip
    """Writes beside `output` and swaps the two. `state` is a folder for the site that stood before, `scan` what `prefetch` gave,
    `known_by` how a site is known that has lost its record.

    Raises DiaryProblems, with the earlier site whole, where the disk is full, a folder cannot be written, a file that was put
    into the output by hand stands in the way of a page, or a later version published there.
    """
    output = _settled(output)
    try:
        output.parent.mkdir(parents=True, exist_ok=True)
        with file_lock(output.with_name(f".{output.name}.lock")):
            recover(output)
            staging_dir = _staging_dir(output, state)
            stays = False
            try:
                published = _published(artifacts, output, staging_dir, state, scan, known_by)
                stays = staging_dir.parent == state
                return published
            finally:  # before another rebuild may begin one of that name
                if not stays:
                    shutil.rmtree(staging_dir, ignore_errors=True)
    except OSError as wrong:
        raise DiaryProblems([system_problem(wrong, output.name, (output, state or output))]) from wrong
    except NewerRecord as newer:
        raise DiaryProblems([_of_a_later_version(output, newer)]) from newer


def _settled(output: Path) -> Path:
    return output.resolve() if output.is_symlink() else output.absolute()


def _staging_dir(output: Path, state: Path | None) -> Path:
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


def _published(artifacts: Iterable[Artifact], output: Path, staging_dir: Path, state: Path | None, scan: DirectoryPrefetch | None,
               known_by: SiteAddresses) -> Published:  # fmt: skip
    manifest = read_publish_manifest(output, state, known_by)
    in_place = SiteInPlace(output, manifest.files, scan) if staging_dir.name == STAGE else None
    staged = in_place or StagedSite(output, staging_dir, manifest.files, scan)
    for artifact in artifacts:
        staged.place(artifact)
    foreign = staged.sort_out(manifest, known_by.may_be_ours)
    if foreign.in_the_way:
        raise DiaryProblems(_in_the_way(path, output) for path in foreign.in_the_way)
    staged.carry(foreign.carried)
    record = staged.record()
    by_hand = keep_by_hand(output, staged.changed_by_hand())
    keep_by_hand(output, foreign.assumed)
    staged.clear()
    if in_place:
        in_place.take_places()
    else:
        atomic_swap(staging_dir, output)
    keep_copy(output, state, record)
    if staging_dir.parent == state and staged.changed > CATCH_UP:
        _catch_up(output, staging_dir)
    removed = len((manifest.files.keys() | set(foreign.assumed)) - staged.placed.keys())
    files_now = None if foreign.carried else [(path, *stat) for path, stat in staged.files.items()]
    in_doubt = manifest.ours and not manifest.whole and staged.earlier
    warnings = [_without_record(output, len(foreign.assumed))] if in_doubt else []
    warnings += [_changed_by_hand(output, path, kept, path in staged.placed) for path, kept in by_hand]
    return Published(len(staged.placed), staged.changed, removed, tuple(foreign.carried), by_hand, files_now, tuple(warnings))


def _catch_up(output: Path, staging_dir: Path) -> None:
    same = StagedSite(output, staging_dir)
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
