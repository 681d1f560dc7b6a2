"""Judge the demo's nights with astropy: ``python tests/demo/check_logs.py``.

Says what is impossible under the sky of its date: a sub in twilight, a target
too low, two subs of one rig at once, a row that did not reach its file.
"""

import csv
import sys
from collections import defaultdict
from itertools import pairwise
from pathlib import Path

import astropy.units as u
import nights
import numpy as np
import yaml
from astropy.coordinates import AltAz, EarthLocation, SkyCoord, get_body
from astropy.table import Table
from astropy.time import Time
from astropy.utils import iers
from frames import Frame, Session, frames_of

LOWEST_TARGET_DEG = 25.0
# At 60 N there is not even nautical darkness in June: the entry says so, and most of it was discarded.
SUN_LIMIT_DEG = {"2026-06-21": -5.8, "2026-06-23": -5.8}
NAUTICAL_DEG = -12.0


def altitudes(session: Session, frames: list[Frame]) -> dict[str, np.ndarray]:
    """Altitudes in degrees of Sun, Moon and target at start and end of each frame."""
    place = EarthLocation(lat=session.place.latitude_deg * u.deg, lon=session.place.longitude_deg * u.deg)
    when = Time([moment for frame in frames for moment in (frame.start, frame.end)])
    sky = AltAz(obstime=when, location=place)
    target = SkyCoord(session.ra_deg * u.deg, session.dec_deg * u.deg)
    bodies = {name: get_body(name, when, place) for name in ("sun", "moon")} | {"target": target}
    return {name: body.transform_to(sky).alt.deg for name, body in bodies.items()}


def night_problems(session: Session) -> list[str]:
    """What the sky of that night does not allow."""
    lights = [frame for frame in frames_of(session) if frame.kind == "light"]
    seen = altitudes(session, lights)
    limit = SUN_LIMIT_DEG.get(session.evening, NAUTICAL_DEG)
    found = []
    if seen["sun"].max() > limit:
        found.append(f"Sun at {seen['sun'].max():.1f} deg")
    if session.rig != "camera-lens" and seen["target"].min() < LOWEST_TARGET_DEG:
        found.append(f"target at {seen['target'].min():.1f} deg")
    kept = sum(frame.exposure_s for frame in lights if frame.kept) / 3600
    print(
        f"{session.evening} {session.place.name:15} {session.rig:13} {len(lights):3} subs {kept:5.2f} h kept,"
        f" Sun < {seen['sun'].max():6.1f}, target {seen['target'].min():4.1f}..{seen['target'].max():4.1f},"
        f" Moon {seen['moon'].min():5.1f}..{seen['moon'].max():5.1f}"
    )
    return [f"{session.evening} {session.rig}: {what}" for what in found]


def overlaps() -> list[str]:
    """Two frames of one rig at the same time."""
    by_rig: dict[str, list[Frame]] = defaultdict(list)
    for session in nights.ALL:
        by_rig[session.rig] += frames_of(session)
    found = []
    for rig, frames in by_rig.items():
        frames.sort(key=lambda frame: frame.start)
        found += [f"{rig}: {b.start} overlaps" for a, b in pairwise(frames) if b.start < a.end]
    return found


def file_problems(content: Path) -> list[str]:
    """Tables that do not read back, and structured files that are not YAML."""
    found = []
    for path in sorted(content.glob("logs/**/*.csv")):
        rows = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))
        found += [f"{path}: ragged row {row}" for row in rows if len(row) != len(rows[0])]
    for path in sorted(content.glob("logs/**/*.ecsv")):
        found += [] if len(Table.read(path)) else [f"{path}: empty"]
    for path in [*content.glob("*.yaml"), *content.glob("[rs]i*s/*.yaml"), *content.glob("entries/*.md")]:
        text = path.read_text(encoding="utf-8")
        parsed = yaml.safe_load(text.split("\n---\n")[0].removeprefix("---\n") if path.suffix == ".md" else text)
        found += [] if isinstance(parsed, dict) else [f"{path}: not a mapping"]
        found += _missing_files(path, parsed, content) if path.suffix == ".md" else []
    return found


def _missing_files(path: Path, front: dict, content: Path) -> list[str]:
    globs = [item if isinstance(item, str) else item["files"] for item in front.get("logs", [])]
    globs += [picture["file"] for picture in front.get("pictures", [])]
    steps = [step for picture in front.get("pictures", []) for step in picture.get("steps", [])]
    globs += [step["file"] for step in steps if "file" in step]
    stars = [*front.get("star_survey", []), *front.get("star_rings", [])]
    globs += [item if isinstance(item, str) else item["file"] for item in stars]
    flat = [one for item in globs for one in ([item] if isinstance(item, str) else item)]
    return [f"{path}: nothing matches {one}" for one in flat if not list(content.glob(one))]


if __name__ == "__main__":
    iers.conf.auto_download, iers.conf.auto_max_age = False, None
    problems = [what for session in nights.ALL for what in night_problems(session)]
    problems += overlaps() + file_problems(Path(__file__).parents[2] / "content")
    print(*problems, sep="\n")
    sys.exit(1 if problems else 0)
