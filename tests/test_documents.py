"""What the documents say is so."""

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli.registry import COMMANDS, main
from tests.conftest import ROOT

README = (ROOT / "README.md").read_text("utf-8")
FACTS_OF_THE_TABLE = {
    "focal length": ("optics", 0, "focal_length_mm"),
    "image scale": ("optics", 0, "scale_arcsec_px"),
    "field, width": ("optics", 0, "field_deg", 0),
    "field, height": ("optics", 0, "field_deg", 1),
    "red, kept": ("integration", "by_filter", "R", "total_s"),
    "Moon's age, 19 September": ("nights", 1, "moon", "age_days"),
    "Moon lit, 19 September": ("nights", 1, "moon", "illuminated"),
}


def hand_table() -> dict[str, float]:
    """Number to its published value, from the README's table of the entry worked out by hand."""
    rows = re.findall(r"^\| ([^|]+) \| [^|]+ \| `[^`]+` ([\d.]+) \|$", README, re.M)
    return {name: float(value) for name, value in rows}


@pytest.mark.parametrize("name", FACTS_OF_THE_TABLE)
def test_the_readme_s_numbers_are_the_published_ones(name: str, demo_site: Path) -> None:
    """Every published number of the hand calculation stands in the demo's facts.json."""
    value = json.loads((demo_site / "entries/ngc-253-five-nights/facts.json").read_text("utf-8"))
    for key in FACTS_OF_THE_TABLE[name]:
        value = value[key]
    assert hand_table()[name] == value


def test_the_hand_agrees_with_the_published() -> None:
    """The pencil's own results, recomputed from the numbers the table starts from."""
    scale = 206.265 * 3.76 * 2 / (2000 * 0.8)
    assert hand_table()["image scale"] == pytest.approx(scale, abs=5e-5)
    assert hand_table()["red, kept"] == 42 * 120 + 28 * 180
    assert hand_table()["Moon lit, 19 September"] == pytest.approx(0.574, abs=0.01)
    assert hand_table()["Moon's age, 19 September"] == pytest.approx(8 + (11 + 11 / 60) / 24, abs=0.01)


def test_the_readme_opens_with_the_job() -> None:
    """One paragraph, then the two commands, each of one line."""
    assert re.match(r"# sitegen\n\nYou image", README)
    for name in ("demo", "tests"):
        between = README.split(f"<!-- {name} -->")[1].split(f"<!-- /{name} -->")[0]
        assert len([line for line in between.splitlines() if line.startswith("    ")]) == 1


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_documented_and_explains_itself(name: str) -> None:
    """It stands in the README's table and answers --help."""
    assert f"`sitegen {name}" in README
    answer = CliRunner().invoke(main, [name, "--help"])
    assert answer.exit_code == 0
    assert len(answer.output.splitlines()) > 4


@pytest.mark.parametrize("document", ["README.md", "DEVELOPERS.md"])
def test_links_in_documents_lead_somewhere(document: str) -> None:
    """Every relative link names a file of the repository."""
    text = (ROOT / document).read_text("utf-8")
    prose = re.sub(r"`[^`]*`|^    .*$", "", text, flags=re.M)
    targets = [target.partition("#")[0] for target in re.findall(r"\]\(([^)]+)\)", prose)]
    assert [target for target in targets if target and "://" not in target and not (ROOT / target).exists()] == []
