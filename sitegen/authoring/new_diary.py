"""A diary to begin with: small, invented, and complete enough to be rebuilt as it is."""

from collections.abc import Mapping
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from sitegen.authoring.new_files import fill_empty_folder
from sitegen.authoring.sample_yaml import sample_yaml
from sitegen.authoring.schemas import schema_files, schema_line
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.diary_file import DIARY_FILE
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.model.rig_file import RIG_FILE
from sitegen.reading.model.site_file import SITE_FILE

HEAD = (
    "# {explained}\n# Everything here is invented: put your own in its place. A line that begins with '#' and a key\n"
    "# comes to life when you take the '#' away.\n"
)
DIARY = {
    "title": "Nights in the garden",
    "author": "Your name",
    "language": "en",
    "privacy": {"site_position": "rounded", "round_to_deg": "0.1"},
    "moon_rule": {"illuminated_above": "0.5", "up_share_above": "0.5"},
    "outlook": {"published": "false", "nights": "30", "minimum_altitude_deg": "30"},
}
SITE = {
    "name": "The garden",
    "latitude_deg": "-36.85",
    "longitude_deg": "174.76",
    "elevation_m": "80",
    "time_zone": "Pacific/Auckland",
    "sky_mag_arcsec2": "20.1",
    "seeing_arcsec": "2.8",
}
RIG = {
    "name": "The first train",
    "telescope": {"design": "Newtonian", "aperture_mm": "200", "focal_length_mm": "1000"},
    "camera": {"pixel_um": "3.76", "width_px": "6248", "height_px": "4176", "colour": "mono"},
    "filters": {
        "L": {"name": "luminance", "kind": "broadband", "centre_nm": "550", "width_nm": "300"},
        "Ha": {"name": "hydrogen-alpha", "kind": "narrowband", "centre_nm": "656.3", "width_nm": "7"},
    },
}
LOG = """start,exposure_s,filter,kept,reason,count,gap_s
{evening}T10:00:00Z,5m,Ha,yes,,18,10
{evening}T11:40:00Z,5m,Ha,no,cloud,3,10
"""
BODY = """
This entry is invented, and shows how one is written. Its numbers come from `logs/first-light.csv`: so far
[](fact:integration.total_s) are in.

When a first log of your own is at hand, let it begin an entry, and delete this one.
"""


def start_diary(folder: Path, today: date, shown: str) -> tuple[str, ...]:
    """Fills a folder that is empty or not there; gives the paths written, inside it. Raises DiaryProblems for any other."""
    files = new_diary(today)
    fill_empty_folder(folder, files, shown)
    return tuple(files)


def new_diary(today: date) -> dict[str, str]:
    """Text by path. The invented night is the last one before `today`."""
    evening = today - timedelta(days=1)
    entry: dict[str, Any] = {
        "title": "First light",
        "published": today.isoformat(),
        "summary": "An invented night, to show how an entry is written.",
        "stage": "gathering",
        "target": "NGC 2070",
        "rig": "first-train",
        "site": "garden",
        "logs": "[logs/first-light.csv]",
        "wanted": "{Ha: 4, L: 2}",
        "nights": {evening.isoformat(): {"clouds": "some, towards midnight", "ended_by": "cloud"}},
        "topics": "[nebula]",
        "lessons": {"next": "[more hydrogen, and all of the luminance]"},
    }
    inside = {
        "diary.yaml": _page(DIARY_FILE, DIARY),
        "sites/garden.yaml": _page(SITE_FILE, SITE),
        "rigs/first-train.yaml": _page(RIG_FILE, RIG),
        "entries/first-light.md": f"---\n{_page(ENTRY_FILE, entry)}---\n{BODY}",
        "logs/first-light.csv": LOG.format(evening=evening),
        **schema_files(),
    }
    return {f"content/{path}": text for path, text in inside.items()} | {".gitignore": "/output/\n/.sitegen/\n"}


def bare_diary(language: str = "en", doubt: str = "") -> dict[str, str]:
    """Text by path inside content/: a diary without rigs, sites and entries, which a harvest fills. `doubt` stands behind the
    language where it was guessed."""
    own = {name: value for name, value in DIARY.items() if name not in ("title", "author")}
    head = f"# {DIARY_FILE.explained} Its title and its author are yours to write.\n"
    values = {"title": "My nights", **own, "language": f"{language}  # {doubt}" if doubt else language}
    page = f"{schema_line(DIARY_FILE)}\n{head}\n{sample_yaml(DIARY_FILE.group, values)}"
    return {"diary.yaml": page, **schema_files()}


def _page(model: AuthorFile, values: Mapping[str, Any]) -> str:
    return f"{schema_line(model)}\n{HEAD.format(explained=model.explained)}\n{sample_yaml(model.group, values)}"
