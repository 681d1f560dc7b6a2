"""A diary on disk in which frames are told twice, thrown away by one and kept by the other, and shared by two targets."""

from pathlib import Path

HEAD = "start,exposure_s,filter,kept\n"
SITE = """name: The hill
latitude_deg: -32.6
longitude_deg: 139.0
elevation_m: 300
time_zone: Australia/Adelaide
sky_mag_arcsec2: 21.4
"""
RIG = """name: {name}
telescope: {{design: reflector, aperture_mm: 250, focal_length_mm: 1000}}
camera: {{name: cooled camera, pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}}
filters:
  L: {{name: Luminance, kind: broadband, centre_nm: 550, width_nm: 300}}
  Ha: {{name: Hydrogen, kind: narrowband, centre_nm: 656.3, width_nm: 5}}
"""
ALPHA = "{name: Alpha, ra: 10, dec: -25, kind: galaxy}"
BETA = "{name: Beta, ra: 350, dec: -30, kind: galaxy}"
GAMMA = "{name: Gamma, ra: 350, dec: -30.5, kind: galaxy}"  # half a degree from Beta, in a field of 0.81° around it
DELTA = "{name: Delta, ra: 330, dec: -30, kind: galaxy}"
LOGS = {
    "progress": [
        f"2026-09-12T12:{minute:02d}:00,300,L,{kept}" for minute, kept in ((0, "yes"), (10, "yes"), (20, "yes"), (30, "no"))
    ],
    "final": [
        *(f"2026-09-12T12:{minute:02d}:00.2,300,L,{kept}" for minute, kept in ((0, "yes"), (10, "yes"), (20, "no"), (30, "no"))),
        *(f"2026-09-13T12:{minute:02d}:00,600,Ha,yes" for minute in (0, 11, 22, 33, 44)),
    ],
    "twin": [f"2026-09-12T12:{minute:02d}:00,300,L,yes" for minute in (0, 10, 20, 30)],
    "beta": [f"2026-10-01T12:{minute:02d}:00,120,L,yes" for minute in (0, 3, 6, 9, 12, 15)],
    "delta": [f"2026-10-01T13:{minute:02d}:00,120,L,yes" for minute in (0, 3)],
    "claim": [f"2026-10-01T12:{minute:02d}:00,120,Ha,yes" for minute in (0, 3)],
}  # fmt: skip


def entry_text(title: str, published: str, target: str, logs: str, rig: str = "long", more: str = "") -> str:
    return (
        f"---\ntitle: {title}\npublished: {published}\ntarget: {target}\nrig: {rig}\nsite: hill\nlogs: {logs}\n"
        f"topics: [deep]\n{more}---\n\nText of {title}.\n"
    )


ENTRIES = {
    "progress": entry_text("Progress", "2026-09-20", ALPHA, "[logs/progress.csv]", more="stage: gathering\nwanted: {L: 2}\n"),
    "final": entry_text("Final", "2026-10-20", ALPHA, "[logs/final.csv]", more="wanted: {Ha: 3}\n"),
    "twin": entry_text("Twin", "2026-09-25", ALPHA, "[logs/twin.csv]", "twin"),
    "pair": entry_text(
        "Pair", "2026-10-04", f"[{BETA}, {GAMMA}, {DELTA}]", "[logs/beta.csv, {files: logs/delta.csv, target: Delta}]"
    ),
    "claim": entry_text("Claim", "2026-10-05", DELTA, "[logs/claim.csv]"),
    "hidden": entry_text("Hidden", "2026-11-01", ALPHA, "[logs/final.csv]", more="unlisted: true\n"),
}


def lay_out(content: Path, *slugs: str) -> None:
    """The diary with these entries, all of them where none is named."""
    for folder in ("entries", "sites", "rigs", "logs"):
        (content / folder).mkdir(parents=True, exist_ok=True)
    (content / "diary.yaml").write_text("title: Told twice\naddress: https://twice.example/\n", "utf-8")
    (content / "sites" / "hill.yaml").write_text(SITE, "utf-8")
    for slug, name in (("long", "The long train"), ("twin", "Its twin")):
        (content / "rigs" / f"{slug}.yaml").write_text(RIG.format(name=name), "utf-8")
    for name, rows in LOGS.items():
        (content / "logs" / f"{name}.csv").write_text(HEAD + "\n".join(rows) + "\n", "utf-8")
    for slug in slugs or ENTRIES:
        write_entry(content, slug)


def write_entry(content: Path, slug: str, old: str = "", new: str = "") -> None:
    """The entry as it stands above, or with something in it replaced."""
    assert old in ENTRIES[slug]
    (content / "entries" / f"{slug}.md").write_text(ENTRIES[slug].replace(old, new, 1) if old else ENTRIES[slug], "utf-8")
