"""A diary whose every free text attacks: it closes scripts, opens tags and attributes, ends comments and CDATA, breaks lines."""

import json
from pathlib import Path

from sitegen.folders import Folders
from tests.trust import tiny

NASTY = "</script><script>alert(1)</script>\"'&<>\u2028]]>--><img src=x onerror=a(2)> onclick=a(3) x=\"{{7*7}}"


def n(mark: str) -> str:
    """The attack with a mark of its own, as YAML and JSON write it; so that it can be found again on the pages."""
    return json.dumps(f"{mark}{NASTY}")


def contents() -> dict[str, str | bytes]:
    sound = tiny.contents(tiny.Wishes())
    return {
        **sound,
        "diary.yaml": f"title: {n('DIARY')}\nauthor: {n('AUTHOR')}\ntagline: {n('TAGLINE')}\nlicence: {n('LICENCE')}\n"
        "address: https://nights.example/\n",
        "sites/roof.yaml": tiny.SITE.format(latitude=-36.85, longitude=174.76, elevation=80.0).replace("School roof", n("SITE")),
        "rigs/dome.yaml": f"""name: {n("RIG")}
mount: {n("MOUNT")}
guiding: {n("GUIDING")}
other: {n("OTHER")}
telescope: {{design: {n("DESIGN")}, aperture_mm: 200, focal_length_mm: 1000}}
camera: {{name: {n("CAMERA")}, pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}}
filters:
  L: {{kind: broadband, centre_nm: 550, width_nm: 300, name: {n("FILTER")}}}
  "<i>&\\"'": {{kind: narrowband, centre_nm: 656.3, width_nm: 7}}
changes: [{{from: 2026-01-01, factor: 0.9, note: {n("CHANGE")}}}]
work: [{{date: 2026-02-01, part: {n("PART")}, what: {n("WHAT")}, note: {n("WORK")}, caution: laser}}]
""",
        "entries/first.md": f"""---
title: {n("TITLE")}
published: 2026-06-20
summary: {n("SUMMARY")}
target: {{name: {n("TARGET")}, ra: 337.4, dec: -20.8, kind: {n("KIND")}}}
rig: dome
site: roof
logs: [logs/first.csv, logs/frame.fits]
pictures:
  - {{file: pictures/helix.jpg, alt: {n("ALT")}, caption: {n("CAPTION")}, steps: [{n("STEP")}, {{what: {n("WHAT")},
      file: "pictures/a '&<b> c.jpg", alt: {n("STEPALT")}}}]}}
  - {{file: "pictures/a '&<b> c.jpg", alt: {n("SECOND")}, role: setup}}
wanted: {{"<i>&\\"'": 4}}
nights:
  2026-06-14: {{clouds: {n("CLOUDS")}, wind: {n("WIND")}, ended_by: {n("ENDED")}, note: {n("NIGHT")}}}
links: [{{title: {n("LINK")}, address: "https://example.org/?a=1&b='x'"}}]
topics: [{n("TOPIC")}, plain]
lessons: {{worked: [{n("WORKED")}], failed: [{n("FAILED")}], next: [{n("NEXT")}]}}
---
BODY {NASTY}

# HEADING {NASTY}

| a | b |
|---|---|
| CELL {NASTY.replace("|", "")} | `CODE {NASTY}` |

A note.[^1] ![IMAGE {NASTY.replace("]", "")}](figure:nights)

[^1]: FOOTNOTE {NASTY}
""",
        "logs/first.csv": "start,exposure_s,filter,kept,reason,note\n"
        + "".join(
            f'2026-06-14T10:{minute:02}:00,300,{name},{kept},"{text}","{text}"\n'
            for minute, name, kept, text in (
                (0, "L", "yes", "plain"),
                (6, "\"<i>&\"\"'\"", "no", NASTY.replace('"', '""').replace("\u2028", " ")),
            )
        ),
        "logs/frame.fits": tiny.frame({"OBJECT": "</script><b>'&", "INSTRUME": "<script>alert(1)</script>"}),
        "pictures/a '&<b> c.jpg": tiny.photograph("<script>", -30.0, (40, 30)),
    }


def lay_out(folder: Path) -> Folders:
    folders = tiny.lay_out(folder)
    for name, content in contents().items():
        path = folders.content / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return folders
