"""What was answered of tables and text logs, by the shape of the table, so that the next file of that shape needs no answer."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path

import msgspec
from msgspec import Struct, field

from sitegen.authoring.recorded.asked_columns import Asked
from sitegen.authoring.recorded.vocabulary import shape_of
from sitegen.file_moves import write_whole

FILE = "answers-to-tables.json"
MOST_PATTERNS = 40


class Shape(Struct, frozen=True):
    """`columns` as its author named them; `order` and `dates` as seen or said."""

    columns: Mapping[str, Asked] = field(default_factory=dict)
    order: str = ""
    dates: str = ""


class _Kept(Struct):
    shapes: dict[str, Shape] = field(default_factory=dict)
    lines: list[tuple[str, ...]] = field(default_factory=list)


class ShapeMemory:
    """One file beside the diary; `folder` None remembers nothing."""

    def __init__(self, folder: Path | None) -> None:
        self.path = folder / FILE if folder is not None else None
        self.kept = self._loaded()
        self.changed = False

    def knows(self, headings: Sequence[str]) -> bool:
        return shape_of(tuple(headings)) in self.kept.shapes

    def shape(self, headings: Sequence[str]) -> Shape:
        return self.kept.shapes.get(shape_of(tuple(headings)), Shape())

    def remember(self, shape: str, answers: Shape) -> None:
        if answers != Shape() and self.kept.shapes.get(shape) != answers:
            self.kept.shapes[shape] = answers
            self.changed = True

    @property
    def lines(self) -> Sequence[tuple[str, ...]]:
        """Sets of patterns, the latest first."""
        return self.kept.lines

    def remember_lines(self, patterns: tuple[str, ...]) -> None:
        if patterns and (not self.kept.lines or self.kept.lines[0] != patterns):
            self.kept.lines = [patterns, *(earlier for earlier in self.kept.lines if earlier != patterns)][:MOST_PATTERNS]
            self.changed = True

    def save(self) -> None:
        """Quietly nothing where the folder cannot be written: the answers will be asked for again."""
        if self.changed and self.path is not None:
            with suppress(OSError):
                write_whole(self.path, msgspec.json.format(msgspec.json.encode(self.kept), indent=2))
        self.changed = False

    def _loaded(self) -> _Kept:
        if self.path is None:
            return _Kept()
        try:
            return msgspec.json.decode(self.path.read_bytes(), type=_Kept)
        except (OSError, msgspec.MsgspecError, ValueError):
            return _Kept()
