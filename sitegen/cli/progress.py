"""How far long work has come: a bar on a terminal, a plain line now and then elsewhere, nothing where quiet is asked for."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from typing import Any

import click

Step = Callable[[str], None]
Stages = Callable[[str, int, int], None]
LINE_EVERY_S = 5.0
# What is over sooner needs no bar.
WORTH_A_BAR_S = 0.5


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
    with _rich() as shown:
        task = shown.add_task(doing, total=total, name="")
        yield lambda name: shown.update(task, advance=1, name=name)


def _rich() -> Any:
    """rich obeys NO_COLOR by itself, and costs 50 ms that only this pays."""
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    doing_what, which = TextColumn("{task.description}"), TextColumn("{task.fields[name]}")
    columns = (doing_what, BarColumn(), MofNCompleteColumn(), TimeRemainingColumn(), which)
    return Progress(*columns, console=Console(stderr=True), transient=True)


@contextmanager
def stages(quiet: bool) -> Iterator[Stages]:
    """The same for work that goes through several stages: gives what is to be called with what is done, how many, of how many."""
    if quiet:
        yield lambda doing, done, total: None
    elif sys.stderr.isatty():
        yield from _bar_of_stages()
    else:
        yield _lines_of_stages()


def _lines_of_stages() -> Stages:
    told_at = time.monotonic()

    def step(doing: str, done: int, total: int) -> None:
        nonlocal told_at
        if time.monotonic() - told_at >= LINE_EVERY_S:
            told_at = time.monotonic()
            click.echo(f"{doing}: {done} of {total}", err=True)

    return step


def _bar_of_stages() -> Iterator[Stages]:
    began, shown = time.monotonic(), ExitStack()
    bars: list[Any] = []
    names: dict[str, Any] = {}

    def step(doing: str, done: int, total: int) -> None:
        if time.monotonic() - began < WORTH_A_BAR_S or total < 2:
            return
        if not bars:
            bars.append(shown.enter_context(_rich()))
        (bar,) = bars
        for other in set(names) - {doing}:
            bar.update(names[other], visible=False)
        if doing not in names:
            names[doing] = bar.add_task(doing, total=total, name="")
        bar.update(names[doing], completed=done, total=total, visible=True)

    with shown:
        yield step
