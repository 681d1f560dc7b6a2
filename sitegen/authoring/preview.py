"""The preview: rebuild whenever the author saves, tell the open pages, go on until stopped.

It ends within a second, whatever it is doing: rebuilds run in a thread of their own, which is left to itself when the preview
stops. The site that stands is whole at every moment, so nothing is lost by that.
"""

import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from msgspec import Struct
from watchfiles import Change, watch

from sitegen.authoring.preview_news import NewsBoard
from sitegen.authoring.preview_server import HOST, open_server
from sitegen.folders import Folders
from sitegen.problems import Problem, errors_in

# A burst of saves is one change: wait until nothing has come for a step, but no longer than the whole.
STEP_MS, LONGEST_MS = 50, 600
_LEFT_BY_EDITORS = ("~", ".swp", ".swx", ".swo", ".tmp", ".temp", ".bak", ".part", ".crdownload", ".orig")
LOOK_AROUND_S = 0.05
# Some look with a file of this name whether they may write in a folder.
_TRIED_BY_EDITORS = "4913"


class Built(Struct, frozen=True):
    """`changed` tells whether any published file is another one than before."""

    problems: tuple[Problem, ...]
    changed: bool
    seconds: float = 0.0


Build = Callable[[], Built]
Told = Callable[[Built], None]


def preview(folders: Folders, port: int, build: Build, ready: Callable[[str], None], tell: Told, stop: threading.Event) -> bool:
    """Serves before it builds, so that the page is there at once. Ends when `stop` is set.

    `ready` gets the address, `told` what came of each rebuild. True where nothing is left running, False where a rebuild was in
    hand. Raises DiaryProblems where no port is free.
    """
    board = NewsBoard(f"{time.time_ns():x}")
    server = open_server(port, folders.output, board)
    threading.Thread(target=server.serve_forever, args=(LOOK_AROUND_S,), name="preview", daemon=True).start()
    try:
        ready(f"http://{HOST}:{server.server_address[1]}/")
        for _ in _saves(folders, stop):
            built = _built_meanwhile(lambda: _timed(build, folders.content), stop)
            if built is None:
                return False
            board.tell(built.problems, built.changed and not errors_in(built.problems))
            tell(built)
        return True
    finally:
        board.close()
        server.shutdown()
        server.server_close()


def _built_meanwhile(build: Build, stop: threading.Event) -> Built | None:
    """None where `stop` was set before the rebuild was done."""
    done: list[Built] = []
    building = threading.Thread(target=lambda: done.append(build()), name="rebuild", daemon=True)
    building.start()
    while building.is_alive() and not stop.is_set():
        building.join(LOOK_AROUND_S)
    return None if stop.is_set() else done[0]


def _saves(folders: Folders, stop: threading.Event) -> Iterator[None]:
    """Once at the beginning, then after every change that may show in the site."""
    changes = watch(
        *(folder for folder in (folders.content, folders.themes) if folder.is_dir()),
        watch_filter=matters,
        debounce=LONGEST_MS,
        step=STEP_MS,
        stop_event=stop,
        rust_timeout=500,
        yield_on_timeout=True,
        raise_interrupt=False,
        ignore_permission_denied=True,
    )
    next(changes, None)
    if not stop.is_set():
        yield
    for saved in changes:
        if saved:
            yield


def matters(change: Change, path: str) -> bool:
    """Not what editors put beside a file while they save it, nor anything hidden."""
    name = Path(path).name
    return not (name.startswith((".", "#")) or name.casefold().endswith(_LEFT_BY_EDITORS) or name == _TRIED_BY_EDITORS)


def _timed(build: Build, content: Path) -> Built:
    """A rebuild that fails in a way nobody foresaw is told like any other: the preview and the last good page go on."""
    began = time.monotonic()
    try:
        built = build()
    except Exception as trouble:
        wrong = f"the rebuild failed: {type(trouble).__name__}: {trouble}"
        remedy = "this is a fault of sitegen; 'sitegen rebuild' shows where"
        built = Built((Problem(str(content), 1, 1, wrong, remedy),), changed=False)
    return Built(built.problems, built.changed, time.monotonic() - began)
