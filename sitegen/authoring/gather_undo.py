"""The last gathering taken back: its log, and the entry's line if that gathering wrote it."""

from hashlib import blake2b
from pathlib import Path

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.new_files import refuse, write_over
from sitegen.problems import Problem

FOLDER = "gathered"


class _Written(Struct, frozen=True):
    """Digests of what a gathering left behind; `entry_text` is the entry as it was before, where that gathering changed it."""

    log_digest: str
    had_log: bool
    entry: str | None = None
    entry_digest: str = ""
    entry_text: str = ""


class EntryChange(Struct, frozen=True):
    """The entry that a gathering made to name its log: its path inside content/, and its text before and after."""

    path: str
    before: str
    after: str


class Undo(Struct, frozen=True):
    """Where the log was before; `folder` None where nothing is kept."""

    folder: Path | None
    name: str

    @property
    def earlier_copy(self) -> Path:
        assert self.folder is not None
        return self.folder / FOLDER / f"{self.name}.ecsv"

    @property
    def _record(self) -> Path:
        return self.earlier_copy.with_suffix(".json")

    def keep(self, before: str, after: str, entry: EntryChange | None = None) -> None:
        """What this gathering changed. `before` is '' where there was no log."""
        if self.folder is None:
            return
        written = _Written(_digest(after), bool(before))
        if entry is not None:
            written = replace(written, entry=entry.path, entry_digest=_digest(entry.after), entry_text=entry.before)
        write_over(self.earlier_copy, before, str(self.earlier_copy))
        write_over(self._record, msgspec.json.encode(written).decode("utf-8"), str(self._record))

    def undo(self, log: Path, shown: str, content: Path, relative: str, shown_entry: str) -> tuple[Problem, ...]:
        """Raises DiaryProblems, with nothing changed, where there is nothing to take back or the log was edited since. A warning
        where the entry was: its line then stays."""
        written = self._written(shown)
        if not log.is_file() or _digest(text_of(log)) != written.log_digest:
            remedy = f"as it was before, it lies in {self.earlier_copy}"
            raise refuse(shown, "was edited since it was gathered, and is left as it is", remedy)
        if written.had_log:
            write_over(log, text_of(self.earlier_copy), shown)
        else:
            _remove(log, shown)
        problems = _undo_entry(written, content, relative, shown_entry)
        _remove(self._record, str(self._record))
        _remove(self.earlier_copy, str(self.earlier_copy))
        return problems

    def _written(self, shown: str) -> _Written:
        try:
            if self.folder is not None:
                return msgspec.json.decode(self._record.read_bytes(), type=_Written)
        except (OSError, msgspec.MsgspecError):
            pass
        raise refuse(shown, "there is no gathering to take back", "only the last one can be, and once")


def _remove(path: Path, shown: str) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError as trouble:
        raise refuse(shown, f"cannot be removed: {trouble.strerror or 'the system refuses'}") from trouble


def _undo_entry(written: _Written, content: Path, log: str, shown: str) -> tuple[Problem, ...]:
    if written.entry is None:
        return ()
    path = content / written.entry
    if path.is_file() and _digest(text_of(path)) == written.entry_digest:
        write_over(path, written.entry_text, shown)
        return ()
    wrong = "was edited since it was made to name the log, and is left as it is"
    return (Problem(shown, 1, 1, wrong, f"take {log} out of its 'logs' yourself", "warning"),)


def text_of(path: Path) -> str:
    return path.read_bytes().decode("utf-8", "surrogateescape")


def _digest(text: str) -> str:
    return blake2b(text.encode("utf-8", "surrogateescape"), digest_size=20).hexdigest()
