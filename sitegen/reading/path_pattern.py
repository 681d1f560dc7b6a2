"""Patterns over the files of content/: `*` and `?` stay inside a folder, `**` crosses them."""

import fnmatch
import re
from functools import lru_cache

from sitegen.reading.content_folder import ContentFolder

ANY_DEPTH = "**"
_WILD = re.compile(r"[*?\[]")
_Steps = tuple[re.Pattern[str] | None, ...]


def is_pattern(text: str) -> bool:
    return _WILD.search(text) is not None


def plain_start(pattern: str) -> str:
    """What every path begins with that the pattern finds."""
    return _WILD.split(pattern, maxsplit=1)[0]


def files_matching(pattern: str, content: ContentFolder, fold_case: bool = False) -> tuple[str, ...]:
    """The files' paths as the disk spells them, sorted. A file that is literally called like the pattern is taken at its word."""
    if pattern in content.names:
        return (content.names[pattern],)
    if not is_pattern(pattern):
        return ()
    plain = "" if fold_case else plain_start(pattern)
    steps = _steps(pattern, fold_case)
    return tuple(content.names[name] for name in content.under(plain) if _fits(steps, name.split("/")))


@lru_cache(maxsize=1_000)
def _steps(pattern: str, fold_case: bool) -> _Steps:
    """One expression a folder name, None for any number of folders; at the end, '**' stands for every file below."""
    flags = re.IGNORECASE if fold_case else 0
    steps = pattern.split("/") + (["*"] if pattern.endswith(ANY_DEPTH) else [])
    return tuple(None if step == ANY_DEPTH else re.compile(fnmatch.translate(step), flags) for step in steps)


def _fits(steps: _Steps, names: list[str]) -> bool:
    """Walks the names once, with every place in the pattern that could stand for what was walked."""
    reached = _past_any_depth({0}, steps)
    for name in names:
        went_on = {at + 1 for at in reached if at < len(steps) and (step := steps[at]) is not None and step.match(name)}
        stayed = {at for at in reached if at < len(steps) and steps[at] is None}
        reached = _past_any_depth(went_on | stayed, steps)
    return len(steps) in reached


def _past_any_depth(reached: set[int], steps: _Steps) -> set[int]:
    """'**' also stands for no folder at all."""
    waiting = list(reached)
    while waiting:
        at = waiting.pop()
        if at < len(steps) and steps[at] is None and at + 1 not in reached:
            reached.add(at + 1)
            waiting.append(at + 1)
    return reached
