"""What a harvest cannot know, asked with the key and the line that answer it, and the author's answers to it."""

import os
import re
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from sitegen.authoring.captures.discards import matches
from sitegen.authoring.captures.record import FrameFile
from sitegen.diary.settings import CaptureAnswer

ANSWERS = "captures.answers"
CONFIRM = "to be confirmed:"
"""A line of a rig or a site that harvest guessed bears it, until its author has looked at it and takes it away."""


class Question(Struct, frozen=True):
    """`files` wait for the answer, none where something is only to be confirmed; `key` names the file below content/ and the key
    in it, `line` is what to write there."""

    question: str
    key: str
    line: str
    files: int = 0


class Answers:
    """What the author has answered, looked up once for each file."""

    def __init__(self, answers: Sequence[CaptureAnswer]) -> None:
        self.answers = tuple(answers)
        self.remembered: dict[str, CaptureAnswer] = {}

    def about(self, file: FrameFile | None) -> CaptureAnswer:
        if file is None or not self.answers:
            return _NONE
        answer = self.remembered.get(file.below)
        if answer is None:
            answer = self.remembered[file.below] = self._about(file.below)
        return answer

    def _about(self, below: str) -> CaptureAnswer:
        said: dict[str, object] = {}
        for answer in self.answers:
            if matches(below, answer.files):
                said |= {name: value for name in _SAYS if (value := getattr(answer, name))}
        return CaptureAnswer(below, **said) if said else _NONE  # type: ignore[arg-type]


_SAYS = ("target", "rig", "site", "filter", "time_zone", "leave_out")
_NONE = CaptureAnswer("")


def asked_of(wording: str, key: str, files: Iterable[FrameFile], each_folder: bool = False) -> list[Question]:
    """One question for each of the folders at the top in which the files lie, or for `each_folder` that is named after more than
    a date. `wording` has '{}' for how many and where; `key` is that of an answer, with an example behind it."""
    groups: dict[str, list[FrameFile]] = {}
    for file in files:
        folders = file.below.rpartition("/")[0]
        groups.setdefault(_without_dates(folders) if each_folder else folders.partition("/")[0], []).append(file)
    merged: dict[str, list[FrameFile]] = {}
    for folders, group in sorted(groups.items()):
        above = next((other for other in merged if f"{folders}/".startswith(f"{other}/")), folders)
        merged.setdefault(above, []).extend(group)
    return [_asked(wording, key, group) for group in merged.values()]


@lru_cache(maxsize=4_096)
def _without_dates(folders: str) -> str:
    """The path without the folders at its end that only name a night or say that lights lie in them."""
    parts = folders.split("/")
    while len(parts) > 1 and (not re.search(r"[^\W\d_]{3}", parts[-1]) or parts[-1].casefold() in _OF_LIGHTS):
        parts.pop()
    return "/".join(parts)


_OF_LIGHTS = ("light", "lights", "raw", "subs")


def _asked(wording: str, key: str, files: Sequence[FrameFile]) -> Question:
    folder = os.path.commonpath([file.below.rpartition("/")[0] for file in files])
    pattern = f"{folder}/*" if folder else "*" if len(files) > 1 else files[0].name
    counted = "1 frame" if len(files) == 1 else f"{len(files)} frames"
    where = f"{counted} in {folder}/" if folder else counted
    return Question(wording.format(where), f"diary.yaml: {ANSWERS}", f"- {{files: '{pattern}', {key}}}", len(files))


def to_confirm(texts: Mapping[str, str]) -> list[Question]:
    """By path inside content/, the texts of the diary: each line that is still marked asks."""
    return [
        Question(f"is it right? {marked[2].strip()}", f"{path}: {marked[1]}", _unmarked(line))
        for path, text in sorted(texts.items())
        if CONFIRM in text
        for line in text.splitlines()
        if (marked := _MARKED.match(line))
    ]


def _unmarked(line: str) -> str:
    return f"'{line.partition('#')[0].strip()}', without the mark, or what is right"


_MARKED = re.compile(rf"\s*([\w.-]+):.*?#\s*{CONFIRM}(.*?)(?:  #.*)?$")
