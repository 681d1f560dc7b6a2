"""The command line as an author types it, and the one place that knows what its reports are called."""

import csv
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from click.testing import CliRunner, Result
from msgspec import Struct

from sitegen.cli import main
from tests.conftest import ROOT
from tests.disk.truth import Sums

UNDO = "--undo"
KINDS = {
    "kept": "kept",
    "discarded": "discarded",
    "calibration": "calibration",
    "copy": "copy",
    "combined": "combined",
    "focus": "focus run",
    "other_target": "other target",
    "other_train": "other train",
    "unreadable": "unreadable",
    "passed_over": "passed over",
}


def counts_of(report: Mapping[str, Any]) -> dict[str, int]:
    """Files by fate, from what `gather --json` reports."""
    return {fate: report["kinds"][called] for fate, called in KINDS.items()}


def sums_of(integration: Mapping[str, Any]) -> Sums:
    """From a published `integration`, of an entry or of a list page. What went through no filter stands in no row here."""
    rows = {name: row for name, row in integration["by_filter"].items() if name in "L R G B Ha OIII".split()}
    return Sums(
        total_s=integration["total_s"],
        kept=integration["kept"],
        discarded=integration["discarded"],
        discarded_s=integration["discarded_s"],
        broadband_s=integration["broadband_s"],
        narrowband_s=integration["narrowband_s"],
        by_filter={name: (row["total_s"], row["kept"], row["discarded"]) for name, row in rows.items()},
        by_night=integration["by_night"],
    )


class Diagnostics(Struct, frozen=True):
    """A diary, its site, and the disk that its frames lie on."""

    content: Path
    output: Path
    disk: Path

    def run(self, *words: str | Path) -> Result:
        places = ("--content", self.content, "--output", self.output, "--themes", ROOT / "themes")
        return CliRunner().invoke(main, [str(word) for word in (*words, *places)], catch_exceptions=False)

    def gather(self, name: str, *folders: str, options: tuple[str, ...] = ()) -> Result:
        return self.run("gather", name, *(self.disk / folder for folder in folders), *options)

    def report(self, name: str, *folders: str, options: tuple[str, ...] = ()) -> dict[str, Any]:
        answer: dict[str, Any] = json.loads(self.gather(name, *folders, options=(*options, "--json")).stdout)
        return answer

    def problems(self) -> list[dict[str, Any]]:
        answer: list[dict[str, Any]] = json.loads(self.run("check", "--json").stdout)["problems"]
        return answer

    def log(self, name: str) -> Path:
        return self.content / f"logs/{name}.ecsv"

    def rows(self, name: str) -> list[dict[str, str]]:
        """Of the gathered log, light frames alone, in its order."""
        lines = self.log(name).read_text("utf-8").splitlines()
        rows = csv.DictReader(line for line in lines if not line.startswith("#"))
        return [row for row in rows if row["kind"] == "light"]

    def counted(self, name: str) -> tuple[int, int]:
        """Kept and discarded, by the gathered log."""
        kept = sum(row["kept"].casefold() in ("true", "yes") for row in self.rows(name))
        return kept, len(self.rows(name)) - kept

    def facts(self, address: str) -> dict[str, Any]:
        path = self.output / address / "facts.json"
        assert path.is_file(), f"{address}facts.json is not published"
        answer: dict[str, Any] = json.loads(path.read_text("utf-8"))
        return answer

    def rebuilt_facts(self, name: str) -> dict[str, Any]:
        """The entry's facts after a rebuild of the diary as it is now."""
        done = self.run("rebuild", "--jobs", "1")
        assert done.exit_code == 0, done.output
        return self.facts(f"entries/{name}/")
