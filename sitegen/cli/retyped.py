"""A command line as its author typed it, typed again with a change: for messages that name the command to run next."""

import shlex
from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.entry_file import entry_path
from sitegen.authoring.gathered_log import is_gathered_name, log_path
from sitegen.diary.addresses import slug_of
from sitegen.folders import Folders


class Typed(Struct, frozen=True):
    """`places` are the options --content, --themes and --output where they are not what they would be anyway; `options` those
    that hold for the frames whatever they show; `target` and `rig` hold until a message names others."""

    command: str
    name: str
    logs: tuple[str, ...]
    places: tuple[str, ...] = ()
    options: tuple[str, ...] = ()
    target: str | None = None
    rig: str | None = None

    def again(self, *more: str, name: str | None = None) -> str:
        """Works when it is pasted into a shell."""
        own = (("--target", self.target), ("--rig", self.rig))
        held = (word for option, value in own if value is not None and option not in more for word in (option, value))
        return shlex.join(["sitegen", self.command, name or self.name, *self.logs, *self.places, *self.options, *held, *more])


def places_typed(content: Path, themes: Path, output: Path) -> tuple[str, ...]:
    typed = (("content", content), ("themes", themes), ("output", output))
    return tuple(word for name, path in typed if str(path) != name for word in (f"--{name}", str(path)))


def options_typed(options: Sequence[tuple[str, Sequence[object]]]) -> tuple[str, ...]:
    return tuple(word for name, values in options for value in values if value is not None for word in (name, str(value)))


def free_name(wanted: str, folders: Folders, own: str) -> str:
    """An entry's name that is free to take, or that gathered the same before; never `own`, whose log has other frames."""
    slug = slug_of(wanted)
    number, name = 1, slug
    while (
        name == own
        or (folders.content / entry_path(name)).exists()
        or ((folders.content / log_path(name)).exists() and not is_gathered_name(name, folders))
    ):
        number += 1
        name = f"{slug}-{number}"
    return name
