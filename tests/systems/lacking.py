# ruff: noqa: PTH100, PTH112, PTH118, PTH119, PTH120 # it stands below pathlib
"""Makes this process believe that it runs on a lesser system or disk: what that lacks is taken away, what it refuses is refused.

`become("no-fork link=ENOSYS tick=2")` is called before sitegen is imported. Each word is one function below.
"""

import builtins
import contextlib
import ctypes
import errno
import io
import os
import signal
import stat
import sys
import time
import unicodedata
from collections.abc import Callable, Iterator
from typing import Any

SECOND_NS = 1_000_000_000
LACKED_BY_WINDOWS = {
    os: "fork forkpty sched_getaffinity getuid geteuid getgid getegid O_NOFOLLOW O_DIRECTORY statvfs sysconf mkfifo "
        "sendfile lchown chown getpgid setsid killpg",
    signal: "pthread_sigmask SIGKILL SIGHUP SIGALRM SIGPROF SIGUSR1 setitimer pthread_kill sigwait",
}  # fmt: skip
UNIX_MODULES = ("fcntl", "resource", "pwd", "grp", "termios", "pty", "tty")
"""From memory: what the documentation of os, signal and of each module marks *Availability: Unix*."""


def become(words: str) -> None:
    for word in words.split():
        name, _, value = word.partition("=")
        MACHINES[name](value)


def _take_away(owner: Any, name: str) -> None:
    if hasattr(owner, name):
        delattr(owner, name)


def no_fork(_: str) -> None:
    _take_away(os, "fork")


def no_fcntl(_: str) -> None:
    sys.modules["fcntl"] = None  # type: ignore[assignment]


def no_names_of_unix(_: str) -> None:
    """All at once, as on Windows."""
    for owner, names in LACKED_BY_WINDOWS.items():
        for name in names.split():
            _take_away(owner, name)
    for module in UNIX_MODULES:
        sys.modules[module] = None  # type: ignore[assignment]


def no_proc(_: str) -> None:
    """Nothing below /proc opens."""
    for owner, name in ((io, "open"), (os, "scandir"), (os, "listdir"), (os, "open"), (os, "stat"), (os, "readlink")):
        really = getattr(owner, name)
        setattr(owner, name, _refusing_proc(really))
    builtins.open = io.open


def _refusing_proc(really: Callable[..., Any]) -> Callable[..., Any]:
    def asked(path: Any = ".", *more: Any, **named: Any) -> Any:
        if isinstance(path, str | os.PathLike) and os.fspath(path).startswith("/proc"):
            raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), os.fspath(path))
        return really(path, *more, **named)

    return asked


def no_link(_: str) -> None:
    _take_away(os, "link")


def link(refusal: str) -> None:
    """os.link is refused with that errno."""
    os.link = _refusing(getattr(errno, refusal))


def _refusing(number: int) -> Callable[..., Any]:
    def refuse(*asked: Any, **_: Any) -> Any:
        raise OSError(number, os.strerror(number), str(asked[0]))

    return refuse


def no_exchange(_: str) -> None:
    """A C library that has never heard of it."""

    class Library:
        def __init__(self, *asked: Any, **named: Any) -> None:
            self.real = _REAL_CDLL(*asked, **named)

        def __getattr__(self, name: str) -> Any:
            if name in ("renameat2", "renamex_np"):
                raise AttributeError(name)
            return getattr(self.real, name)

    ctypes.CDLL = Library  # type: ignore[misc,assignment]


_REAL_CDLL = ctypes.CDLL


class _OnWindows(PermissionError):
    """As Windows raises it: with its own number beside errno."""

    def __init__(self, number: int, path: str) -> None:
        super().__init__(errno.EACCES, "Permission denied", path)
        self.winerror = number


def held_open(tries: str) -> None:
    """The first `tries` attempts to give each file or folder another name are refused: a scanner has it open."""
    seen: dict[str, int] = {}
    for name in ("rename", "replace"):
        really = getattr(os, name)

        def renamed(old: Any, new: Any, *, really: Any = really, **named: Any) -> None:
            place = os.fspath(old)
            seen[place] = seen.get(place, 0) + 1
            if seen[place] <= int(tries):
                raise _OnWindows(32, place)
            really(old, new, **named)

        setattr(os, name, renamed)


def held_folder(name: str) -> None:
    """A program has a file in the folder of that name open for good: the folder cannot be renamed."""
    for function in ("rename", "replace"):
        really = getattr(os, function)

        def renamed(old: Any, new: Any, *, really: Any = really, **named: Any) -> None:
            if os.path.basename(os.fspath(old)) == name:
                raise _OnWindows(32, os.fspath(old))
            really(old, new, **named)

        setattr(os, function, renamed)


def second_rename(number: str) -> None:
    """A folder takes the name that another has just given up: refused with that errno, once the first one is away."""
    for function in ("rename", "replace"):
        really = getattr(os, function)

        def renamed(old: Any, new: Any, *, really: Any = really, **named: Any) -> None:
            given_up = os.path.join(os.path.dirname(os.fspath(new)), f".{os.path.basename(os.fspath(new))}.old")
            if os.path.isdir(old) and os.path.isdir(given_up) and os.fspath(old) != given_up:
                raise OSError(getattr(errno, number), os.strerror(getattr(errno, number)), os.fspath(old))
            really(old, new, **named)

        setattr(os, function, renamed)


def read_only_attribute(_: str) -> None:
    """Windows removes no file without the right to write it."""
    really = os.unlink

    def unlinked(path: Any, **named: Any) -> None:
        if not named and not os.lstat(path).st_mode & stat.S_IWRITE:
            raise _OnWindows(5, os.fspath(path))
        really(path, **named)

    os.unlink = os.remove = unlinked


class _Entry:
    """A folder's entry as another system tells it."""

    def __init__(self, real: "os.DirEntry[str]", change: Callable[[os.stat_result], os.stat_result]) -> None:
        self.real, self.change = real, change
        self.name, self.path = real.name, real.path
        self.is_symlink, self.is_file, self.inode = real.is_symlink, real.is_file, real.inode

    def __fspath__(self) -> str:
        return self.path

    def is_dir(self, *, follow_symlinks: bool = True) -> bool:
        return self.real.is_dir(follow_symlinks=follow_symlinks)

    def stat(self, *, follow_symlinks: bool = True) -> os.stat_result:
        return self.change(self.real.stat(follow_symlinks=follow_symlinks))


class _Scan:
    def __init__(self, real: Any, made: Callable[[Any], Any]) -> None:
        self.real, self.made = real, made

    def __iter__(self) -> Iterator[Any]:
        return (self.made(entry) for entry in self.real)

    def __next__(self) -> Any:
        return self.made(next(self.real))

    def __enter__(self) -> "_Scan":
        return self

    def __exit__(self, *_: object) -> None:
        self.real.close()

    def close(self) -> None:
        self.real.close()


def _scans(made: Callable[[Any], Any]) -> None:
    really = os.scandir
    os.scandir = lambda path=".": _Scan(really(path), made)  # type: ignore[assignment,misc,return-value]


def _changed(told: os.stat_result, **fields: int) -> os.stat_result:
    every = {name: getattr(told, name) for name in dir(told) if name.startswith("st_")} | fields
    for name in ("atime", "mtime", "ctime"):
        every[f"st_{name}"] = every[f"st_{name}_ns"] / SECOND_NS
    times = (every[f"st_{name}_ns"] // SECOND_NS for name in ("atime", "mtime", "ctime"))
    plain = [*told[:1], every["st_ino"], *told[2:7], *times]
    return os.stat_result(plain, every)


def tick(words: str) -> None:
    """The disk's clock counts in steps of so many seconds. `2:20:T`: since the nanosecond T, which begins a tick, all clocks have
    gone 20 times slower, so that a tick leaves time for a rebuild on a busy machine."""
    seconds, slower, since = (*map(int, words.split(":")), 1, 0)[:3]
    step_ns = seconds * SECOND_NS
    began_ns = since // step_ns * step_ns

    def clock(real_ns: int) -> int:
        return real_ns if real_ns < since or not since else began_ns + (real_ns - since) // slower

    def coarse(told: os.stat_result) -> os.stat_result:
        times = {name: clock(getattr(told, name)) // step_ns * step_ns for name in ("st_mtime_ns", "st_ctime_ns")}
        return _changed(told, **times)

    for name in ("stat", "lstat", "fstat"):
        really = getattr(os, name)
        setattr(os, name, lambda *asked, really=really, **named: coarse(really(*asked, **named)))
    _scans(lambda entry: _Entry(entry, coarse))
    now_ns = time.time_ns
    time.time_ns = lambda: clock(now_ns())


def no_inode(_: str) -> None:
    """Reading a folder tells no inode (os.DirEntry.stat on Windows)."""
    _scans(lambda entry: _Entry(entry, lambda told: _changed(told, st_ino=0)))


def _key(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()


def case_insensitive(_: str) -> None:
    """Names that differ in case or in Unicode form are one; a file keeps the spelling that it was made with."""
    listed, seen = os.listdir, os.lstat

    def found(path: Any) -> Any:
        if not isinstance(path, str | os.PathLike) or isinstance(os.fspath(path), bytes):
            return path
        text = os.fspath(path)
        with contextlib.suppress(OSError):
            seen(text)
            return text
        head, name = os.path.split(text)
        if not name or head == text:
            return text
        above = found(head) if head else "."
        try:
            same = next((other for other in listed(above) if _key(other) == _key(name)), name)
        except OSError:
            same = name
        return os.path.join(above, same) if head else same

    one_path = "stat lstat open mkdir rmdir unlink remove chmod utime scandir listdir access readlink"
    for owner, name in (*((os, name) for name in one_path.split()), (io, "open")):
        really = getattr(owner, name)
        setattr(owner, name, lambda path=".", *more, really=really, **named: really(found(path), *more, **named))
    for name in "rename replace link symlink".split():
        really = getattr(os, name)
        setattr(os, name, lambda old, new, *, really=really, **named: really(found(old), found(new), **named))
    builtins.open = io.open


def refuse(words: str) -> None:
    """`EROFS:.sitegen`: nothing in a folder of that name can be made or written."""
    refusal, _, name = words.partition(":")
    number = getattr(errno, refusal)
    for owner, function in ((os, "mkdir"), (os, "open"), (os, "rename"), (os, "replace"), (os, "unlink"), (io, "open")):
        really = getattr(owner, function)

        def asked(path: Any, *more: Any, really: Any = really, **named: Any) -> Any:
            reading = really is _REAL_OPEN and not set(more[0] if more else named.get("mode", "r")) & set("wxa+")
            if not reading and isinstance(path, str | os.PathLike) and f"/{name}/" in f"{os.path.abspath(path)}/":
                raise OSError(number, os.strerror(number), os.fspath(path))
            return really(path, *more, **named)

        setattr(owner, function, asked)
    builtins.open = io.open


_REAL_OPEN = io.open


def dying(words: str) -> None:
    """`SIGSEGV:NAME:2`: a process of others ends by that signal when it opens the file for the second time."""
    number, name, times = words.split(":")
    really, seen = io.open, []

    def opened(path: Any, *more: Any, **named: Any) -> Any:
        if isinstance(path, str | os.PathLike) and os.fspath(path).endswith(name) and "--multiprocessing-fork" in sys.orig_argv:
            seen.append(path)
        if len(seen) == int(times):
            os.kill(os.getpid(), getattr(signal, number))
        return really(path, *more, **named)

    io.open = builtins.open = opened  # type: ignore[assignment]


def affinity(_: str) -> None:
    _take_away(os, "sched_getaffinity")


MACHINES: dict[str, Callable[[str], None]] = {
    "no-fork": no_fork, "no-fcntl": no_fcntl, "no-names-of-unix": no_names_of_unix, "no-proc": no_proc, "no-link": no_link,
    "link": link, "no-exchange": no_exchange, "held-open": held_open, "held-folder": held_folder, "second-rename": second_rename,
    "read-only-attribute": read_only_attribute, "tick": tick, "no-inode": no_inode, "case-insensitive": case_insensitive,
    "dying": dying, "refuse": refuse, "no-affinity": affinity,
}  # fmt: skip
