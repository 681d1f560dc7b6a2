"""The recipe *Ten years in one evening*, followed as it stands: its commands and its answers, from an empty folder."""

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

import sitegen
from sitegen.cli import main
from tests.disk.capture import Disk
from tests.disk.decade import ENTRIES, write_decade
from tests.disk.test_harvest import MARK

RECIPE = (Path(sitegen.__file__).parent / "authoring/RECIPES.md").read_text("utf-8").partition("## Ten years in one evening\n")[2]
BLOCKS = re.findall(r"(?:^    .*\n)+", RECIPE.partition("\n## ")[0], re.M)
PLACE = "/disk/captures"


def followed(block: str, disk: Path) -> list[str]:
    """What each command of a block says."""
    said = []
    for line in block.splitlines():
        words = line.strip().replace(PLACE, str(disk)).split()
        assert words.pop(0) == "sitegen"
        done = CliRunner().invoke(main, words, catch_exceptions=False)
        assert done.exit_code == 0, done.output
        said.append(done.stdout)
    return said


def test_the_recipe_works_as_it_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every block in its order; the answers are those that it shows."""
    look, write, answers, publish = BLOCKS
    disk = Disk(tmp_path / "disk")
    write_decade(disk)
    (tmp_path / "diary").mkdir()
    monkeypatch.chdir(tmp_path / "diary")
    assert "question 1:" in followed(look, disk.root)[0]
    assert list(Path().iterdir()) == []
    followed(write, disk.root)
    settings = Path("content/diary.yaml")
    yaml = re.sub(r"^    ", "", answers, flags=re.M)
    settings.write_text(settings.read_text("utf-8").partition("#captures:")[0] + yaml, "utf-8")
    for path in Path("content").rglob("*"):
        if path.suffix in (".yaml", ".md"):
            path.write_text(MARK.sub("", path.read_text("utf-8")), "utf-8")
    rig = Path("content/rigs/garden-newtonian.yaml")
    rig.write_text(re.sub(r"(  OIII: {.*)}", r"\1, spelt: [Nebula X]}", rig.read_text("utf-8")), "utf-8")
    again, _, _ = followed(publish, disk.root)
    assert "question" not in again
    for entry in ENTRIES.values():
        facts = json.loads(Path(f"output/entries/{entry}/facts.json").read_text("utf-8"))
        assert facts["integration"]["total_s"] > 0
