"""A diary whose targets are named in scripts that the charts' font lacks, rebuilt as an author rebuilds it."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image

from tests.charts.test_any_script import NAMES
from tests.conftest import ROOT

RIG = """name: The long tube
telescope: {design: reflector, aperture_mm: 200, focal_length_mm: 1000}
camera: {name: camera, pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}
filters: {L: {name: 輝度, kind: broadband, centre_nm: 550, width_nm: 300}}
"""
SITE = """name: Гора 山
latitude_deg: -36.9
longitude_deg: 174.8
time_zone: Pacific/Auckland
sky_mag_arcsec2: 20.5
"""
LOG = "start,exposure_s,filter\n2026-09-12T10:00:00,300,L\n2026-09-12T10:06:00,300,L\n"
ENTRY = """---
title: "{name}"
published: 2026-10-01
target: {{name: "{name}", ra: 40, dec: -30, kind: galaxy, size_arcmin: [60, 30]}}
rig: long
site: hill
logs: [logs/night.csv]
wanted: {{L: 10}}
pictures:
  - file: pictures/one.png
    alt: A grey field.
    role: result
    solution: {{ra: 40, dec: -30, scale_arcsec_px: 5, rotation_deg: 0}}
---
{name}
"""


@pytest.fixture(scope="module")
def rebuilt(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, subprocess.CompletedProcess[str]]:
    """The published site and the run that made it; one entry a script, of one picture and one night."""
    folder = tmp_path_factory.mktemp("scripts")
    texts = {"diary.yaml": "title: 星の日記\n", "rigs/long.yaml": RIG, "sites/hill.yaml": SITE, "logs/night.csv": LOG}
    texts |= {f"entries/{script}.md": ENTRY.format(name=name) for script, name in NAMES.items()}
    for path, text in texts.items():
        file = folder / "content" / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    (folder / "content/pictures").mkdir()
    Image.new("RGB", (600, 400), (40, 44, 60)).save(folder / "content/pictures/one.png")
    command = [sys.executable, "-m", "sitegen", "rebuild", "--jobs", "1"]
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, timeout=300, check=False)
    return folder / "output", run


def test_no_library_has_a_word_to_say(rebuilt: tuple[Path, subprocess.CompletedProcess[str]]) -> None:
    """The rebuild ends well and prints no warning of a letter that is not there."""
    _, run = rebuilt
    assert run.returncode == 0, run.stdout + run.stderr
    assert not [line for line in (run.stdout + run.stderr).splitlines() if "Warning" in line or "Glyph" in line]


@pytest.mark.parametrize("script", NAMES)
def test_charts_show_the_name(script: str, rebuilt: tuple[Path, subprocess.CompletedProcess[str]]) -> None:
    """As text, which the reader's own fonts draw."""
    page = (rebuilt[0] / "entries" / script / "index.html").read_text("utf-8")
    assert any(f">{NAMES[script]}</text>" in chart for chart in page.split('<svg class="panel')[1:])


@pytest.mark.parametrize("script", NAMES)
def test_the_card_holds_no_letters(script: str, rebuilt: tuple[Path, subprocess.CompletedProcess[str]]) -> None:
    """The picture beside a link is the same whatever the entry and its target are called: no font of this machine is in it."""
    cards = [(rebuilt[0] / "entries" / name / "card.jpg").read_bytes() for name in (script, "latin")]
    assert cards[0] == cards[1]
