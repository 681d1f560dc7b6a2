"""How far long work has come: a bar on a terminal, a plain line now and then elsewhere, nothing where quiet is asked for."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click

Step = Callable[[str], None]
LINE_EVERY_S = 5.0


@contextmanager
def progress(total: int, doing: str, quiet: bool) -> Iterator[Step]:
    """Gives what is to be called with a name whenever one of `total` things is done. Everything goes to standard error."""
    if quiet or total < 2:
        yield lambda name: None
    elif sys.stderr.isatty():
        yield from _bar(total, doing)
    else:
        yield _lines(total, doing)


def _lines(total: int, doing: str) -> Step:
    done, told_at = 0, time.monotonic()

    def step(name: str) -> None:
        nonlocal done, told_at
        done += 1
        if time.monotonic() - told_at >= LINE_EVERY_S or done == total:
            told_at = time.monotonic()
            click.echo(f"{doing}: {done} of {total}", err=True)

    return step


def _bar(total: int, doing: str) -> Iterator[Step]:
    """rich obeys NO_COLOR by itself, and costs 50 ms that only this pays."""
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    doing_what, which = TextColumn("{task.description}"), TextColumn("{task.fields[name]}")
    columns = (doing_what, BarColumn(), MofNCompleteColumn(), TimeRemainingColumn(), which)
    with Progress(*columns, console=Console(stderr=True), transient=True) as shown:
        task = shown.add_task(doing, total=total, name="")
        yield lambda name: shown.update(task, advance=1, name=name)
