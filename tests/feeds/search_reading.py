"""Reads back what the search page looks through, as `look/search.js` does."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any


@dataclass(frozen=True)
class Searched:
    """The head, and every part by its name."""

    head: dict[str, Any]
    parts: dict[str, Any]

    @property
    def rows(self) -> list[list[Any]]:
        count = -(-self.head["entries"] // self.head["rowsAPart"])
        return [row for number in range(count) for row in self.parts[f"rows-{number}"]]

    @property
    def terms(self) -> dict[str, list[int]]:
        names = [f"words-{beginning.encode().hex()}" for beginning in self.head["words"]]
        return {term: steps for name in names for term, steps in self.parts[name].items()}

    def entries(self, term: str) -> list[int]:
        return unfolded(self.terms.get(term, []))


def searched(site: Path) -> Searched:
    """Of a published site, whichever way it is parted."""
    head = (site / "look/search-index.js").read_text("utf-8")
    files = sorted((site / "look/search").glob("*.js")) if (site / "look/search").is_dir() else []
    return read_back(head, [file.read_text("utf-8") for file in files])


def read_back(head: str, parts: Sequence[str]) -> Searched:
    told, _, inside = head.removeprefix("self.diarySearch = ").partition(";\n")
    if inside:
        assert not parts
        return Searched(json.loads(told), json.loads(inside.removeprefix("diarySearch.parts = ").removesuffix(";\n")))
    named = [json.loads(f"[{part.removeprefix('diarySearch.part(').removesuffix(');' + chr(10))}]") for part in parts]
    return Searched(json.loads(told), dict(named))


def unfolded(steps: Sequence[int]) -> list[int]:
    """Steps from one entry to the next, a run of n steps of 1 as −n."""
    entries, at = [], -1
    for step in steps:
        for length in [1] * -step if step < 0 else [step]:
            at += length
            entries.append(at)
    return entries
