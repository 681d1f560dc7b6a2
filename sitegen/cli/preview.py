"""sitegen preview: rebuild on every save, and a page that refreshes itself."""

import os
import signal
import sys
import threading
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.progress import stages
from sitegen.cli.shared import folders_of, places, summary, tell, tell_waiting, today
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, errors_in

if TYPE_CHECKING:
    from sitegen.authoring.preview import Built

SHOW_CURSOR = "\x1b[?25h"
"""A bar hides it (ECMA-48, DECTCEM), and who leaves at once must give it back."""


@click.command()
@places
@click.option(
    "--port", type=click.IntRange(1, 65535), default=None,
    help="Where to serve, or at the next free port where it is busy; any free one by default.",
)  # fmt: skip
@click.option("--jobs", type=click.IntRange(1), default=None, help="Processes to draw with; as many as cores by default.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
def command(content: Path, themes: Path, output: Path, port: int | None, jobs: int | None, quiet: bool) -> None:
    """Show the site on this machine while you write: every save rebuilds what it changed, and the open page refreshes itself.

    The first line says the address to open, on 127.0.0.1, where nobody else is served. A problem shows here and in the page, over
    the last good one. Ctrl-C ends it.

    \b
    Examples:
      sitegen preview
      sitegen preview --content ../other/content --port 4180
    """
    from sitegen.authoring.preview import preview
    from sitegen.authoring.preview_server import ANY_FREE

    folders = folders_of(content, themes, output)
    if not content.is_dir():
        from sitegen.rebuild import check

        tell(check(folders, today()))
        sys.exit(1)

    warming = threading.Thread(target=_warm, args=(folders,), name="warming", daemon=True)

    def told(built: "Built") -> None:
        if warming.ident is None:
            warming.start()
        tell(built.problems)
        if errors_in(built.problems):
            click.echo(f"{content}: {summary(built.problems)}; {_what_stands(folders)}", err=True)
        elif not quiet:
            click.echo(f"rebuilt in {built.seconds:.1f} s" + ("" if built.changed else ", nothing changed"))

    def ready(address: str) -> None:
        click.echo(f"{address}  (Ctrl-C ends)")

    try:
        done = preview(folders, port or ANY_FREE, lambda: _build(folders, jobs, quiet), ready, told, _stop_by_signals())
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    if not done or warming.is_alive():
        _leave()


def _what_stands(folders: Folders) -> str:
    """What the open page shows while the diary has errors."""
    stands = (folders.output / "index.html").is_file()
    return "the last good site stays" if stands else "there is no site yet: it comes with the first save without an error"


def _warm(folders: Folders) -> None:
    """While the author writes, so that the first save does not wait for it.

    What fails here fails in a rebuild, which tells it.
    """
    import sitegen.publish.publish  # noqa: F401 # loaded for the first save
    from sitegen.build.warm_up import warm_up
    from sitegen.rebuild import STORE

    with suppress(Exception):
        warm_up(folders, folders.keep / STORE if folders.keep else None, today())


def _stop_by_signals() -> threading.Event:
    """Set by Ctrl-C, by being asked to end, or by a terminal that is closed; a second time the system ends it by itself.

    A script's programs in the background are told to ignore Ctrl-C, which would leave a server behind that nobody sees: this one
    ends with its script. Who says 'nohup' wants it to outlive its terminal, and is obeyed.
    """
    stop = threading.Event()

    def ended(number: int, _: object) -> None:
        signal.signal(number, signal.SIG_DFL)
        stop.set()

    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and not (name == "SIGHUP" and signal.getsignal(number) is signal.SIG_IGN):
            signal.signal(number, ended)
    return stop


def _leave() -> None:
    """At once, though a rebuild is in hand: a thread deep in a picture cannot be called back."""
    from sitegen.build.workers import end_processes, release_semaphores

    end_processes()
    release_semaphores()
    if sys.stderr.isatty():
        sys.stderr.write(SHOW_CURSOR)
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(0)


def _build(folders: Folders, jobs: int | None, quiet: bool) -> "Built":
    from sitegen.authoring.preview import Built
    from sitegen.rebuild import rebuild

    try:
        with stages(quiet) as step:
            report = rebuild(folders, today(), jobs, on_wait=tell_waiting, progress=step)
    except DiaryProblems as wrong:
        return Built(wrong.problems, changed=False)
    return Built(report.problems, changed=bool(report.changed or report.removed))
