"""A whole diary, from files to records."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Lessons, Link, NightNote, Picture, PointingSolution, ProcessStep, StarFile
from sitegen.diary.rig import Filter
from sitegen.facts.target_identity import constellation
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.reader import DiaryReading, read_diary
from tests.entries.diary_text import HERE, DiaryText, lay_out, read_diary_text
from tests.published_values.record import degrees
from tests.reading.desks import TODAY

ENTRY = """---
title: "The Helix: two subs"
published: 2026-06-20
updated: 2026-06-25
summary: |
  Two subs,
  and then fog.
stage: gathering
target: [helix nebula, {name: Our smudge, ra: 22 30 00, dec: '-21:00:00', kind: galaxy, size_arcmin: [3, 2]}]
rig: dome
site: roof
logs: [logs/first.csv, {files: [logs/more/*.csv], target: Our smudge}]
pictures:
  - file: pictures/helix.png
    alt: a ring of faint gas
    caption: Two subs.
    role: process
    type: artwork
    solution: {ra: 22 29 38, dec: -20 50 13, scale_arcsec_px: 0.78, rotation_deg: 12.5, mirrored: yes}
    steps: [stacked, {what: stretched, file: pictures/helix.png, alt: the ring again}]
    stretch: {sky_brightness: 0.12, colours_together: yes}
wanted: {L: 4, Ha: 6.5, clear: 1}
nights:
  2026-06-14: {clouds: none, temperature_c: -4, ended_by: fog}
links: [{title: raw, address: 'https://example.org/raw'}]
topics: [planetary nebula, moonlight, planetary nebula]
lessons: {worked: [focusing often], next: [two more hours, more dew heating]}
star_survey: [logs/first.csv, {file: logs/more/a.csv, type: simulation}]
star_rings: [{file: logs/first.csv}]
---
Text, *with* Markdown.
---
And a rule above this line.
"""


def reading_of(content: Path, files: dict[str, str]) -> DiaryReading:
    lay_out(read_diary_text(HERE / "sound.diary"), content)
    lay_out(DiaryText("", tuple((name, None, None, text) for name, text in files.items()), ()), content)
    return read_diary(content, TODAY)


def diary_of(content: Path, files: dict[str, str]) -> Diary:
    reading = reading_of(content, files)
    assert reading.problems == ()
    assert reading.diary is not None
    return reading.diary


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return tmp_path / "content"


LOG = "start,exposure_s,filter\n2026-06-15T10:00:00,300,L\n"


def test_every_key_of_an_entry_arrives(content: Path) -> None:
    """What the author typed stands in the record, with the types of the model."""
    (entry,) = diary_of(content, {"entries/first.md": ENTRY, "logs/more/a.csv": LOG}).entries
    assert (entry.slug, entry.title, entry.stage) == ("first", "The Helix: two subs", "gathering")
    assert (entry.published, entry.updated) == (date(2026, 6, 20), date(2026, 6, 25))
    assert entry.summary == "Two subs,\nand then fog."
    assert entry.pictures == (
        Picture(
            "pictures/helix.png", "a ring of faint gas", "Two subs.", "process",
            PointingSolution(
                pytest.approx(degrees(15 * 22, 15 * 29, 15 * 38)), pytest.approx(degrees(-20, 50, 13)), 0.78, 12.5, True),
            (ProcessStep("stacked"), ProcessStep("stretched", "pictures/helix.png", "the ring again")),
            {"sky_brightness": 0.12, "colours_together": 1.0}, type="artwork",
        ),
    )  # fmt: skip
    assert entry.wanted_hours == {"L": 4.0, "Ha": 6.5, "clear": 1.0}
    assert entry.night_notes == {date(2026, 6, 14): NightNote(clouds="none", temperature_c=-4.0, ended_by="fog")}
    assert entry.links == (Link("raw", "https://example.org/raw"),)
    assert entry.topics == ("planetary nebula", "moonlight")
    assert entry.lessons == Lessons(("focusing often",), (), ("two more hours", "more dew heating"))
    assert entry.star_survey == (StarFile("logs/first.csv", "observation"), StarFile("logs/more/a.csv", "simulation"))
    assert entry.star_rings == (StarFile("logs/first.csv", "observation"),)
    assert (entry.rig, entry.site, entry.unlisted) == ("dome", "roof", False)


def test_a_picture_that_does_not_say_is_an_observation_but_of_the_setup(content: Path) -> None:
    """A telescope by day is a photograph, and one that was drawn can say so."""
    picture = "  - {file: pictures/helix.png, alt: what it shows"
    pictures = f"{picture}}}\n{picture}, role: sub}}\n{picture}, role: setup}}\n{picture}, role: setup, type: chart}}\n"
    text = f"---\ntitle: Four\npublished: 2026-06-20\npictures:\n{pictures}---\nText.\n"
    (entry,) = diary_of(content, {"entries/first.md": text}).entries
    assert [picture.type for picture in entry.pictures] == ["observation", "observation", "photographic", "chart"]


def test_the_body_is_what_follows_the_front_matter(content: Path) -> None:
    """With the number of its first line, and with rules of its own."""
    (entry,) = diary_of(content, {"entries/first.md": ENTRY, "logs/more/a.csv": LOG}).entries
    assert entry.body == "Text, *with* Markdown.\n---\nAnd a rule above this line.\n"
    assert ENTRY.splitlines()[entry.body_line - 1] == "Text, *with* Markdown."


def test_targets_have_the_author_s_keys_over_the_catalogue_s(content: Path) -> None:
    """The first is the main one; its address is the catalogue's name, so that one object has one page."""
    (entry,) = diary_of(content, {"entries/first.md": ENTRY, "logs/more/a.csv": LOG}).entries
    helix, smudge = entry.targets
    assert (helix.slug, helix.name, helix.kind) == ("ngc-7293", "NGC 7293", "planetary nebula")
    assert constellation(helix) == "Aquarius" and "Helix Nebula" in helix.aliases
    assert (smudge.slug, smudge.name, smudge.kind, smudge.size_arcmin) == ("our-smudge", "Our smudge", "galaxy", (3.0, 2.0))
    assert (smudge.ra_deg, smudge.dec_deg) == (337.5, -21.0)


def test_a_target_has_the_catalogue_s_direction(content: Path) -> None:
    """M 31's longer axis lies at a position angle of 35° (Third Reference Catalogue of Bright Galaxies, 1991, from memory),
    whatever size its author gives; a name that no catalogue has, has none."""
    text = ENTRY.replace("helix nebula,", "{name: M 31, size_arcmin: [190, 60]},")
    (entry,) = diary_of(content, {"entries/first.md": text, "logs/more/a.csv": LOG}).entries
    andromeda, smudge = entry.targets
    assert andromeda.size_arcmin == (190.0, 60.0)
    assert andromeda.position_angle_deg == pytest.approx(35.0, abs=1.0)  # catalogues give whole degrees
    assert smudge.position_angle_deg is None


def test_subs_know_their_target_and_their_log(content: Path) -> None:
    """Of the entry's first target, unless the log's item names another."""
    (entry,) = diary_of(content, {"entries/first.md": ENTRY, "logs/more/a.csv": LOG}).entries
    assert [(sub.target, sub.filter, sub.source) for sub in entry.subs] == [
        (0, "L", "logs/first.csv"),
        (0, "Ha", "logs/first.csv"),
        (1, "L", "logs/more/a.csv"),
    ]
    assert entry.subs[0].start == datetime(2026, 6, 14, 10, tzinfo=UTC)


def test_a_rig_is_its_trains_in_time_order(content: Path) -> None:
    """Each change is laid over the train before it, not over the first."""
    rig = """
name: Dome Newtonian
telescope: {design: Newtonian, aperture_mm: 200, focal_length_mm: 1000}
camera: {name: old, pixel_um: 5.4, width_px: 3300, height_px: 2500, colour: mono}
filters: {L: {kind: broadband}, Ha: {name: hydrogen, kind: dual-band, centre_nm: [656.3, 500.7], width_nm: 7}}
changes:
  - {from: 2026-03-01, factor: 0.95, note: corrector}
  - {from: 2026-05-01, name: new, pixel_um: 3.76, width_px: 6248, height_px: 4176}
work:
  - {date: 2026-05-02, part: camera, what: squared}
  - {date: 2026-04-11, part: secondary, what: turned, note: corners, caution: laser}
"""
    dome = diary_of(content, {"rigs/dome.yaml": rig}).rigs["dome"]
    assert [train.from_evening for train in dome.trains] == [None, date(2026, 3, 1), date(2026, 5, 1)]
    assert [train.telescope.factor for train in dome.trains] == [1.0, 0.95, 0.95]
    assert [train.camera.name for train in dome.trains] == ["old", "old", "new"]
    assert dome.train_on(date(2026, 4, 30)).camera.pixel_um == 5.4
    assert dome.filters["Ha"] == Filter("Ha", "hydrogen", "dual-band", (656.3, 500.7), 7.0)
    assert dome.filters["L"] == Filter("L", "L", "broadband")
    assert [(work.date, work.caution) for work in dome.work] == [(date(2026, 4, 11), "laser"), (date(2026, 5, 2), None)]


def test_a_site_keeps_its_horizon_by_azimuth_and_stands_at_sea_level_unless_told(content: Path) -> None:
    """The author may list obstructions in any order."""
    site = "name: Roof\nlatitude_deg: -36.85\nlongitude_deg: 174.76\ntime_zone: Pacific/Auckland\nhorizon: [[90, 25], [0, 12]]\n"
    roof = diary_of(content, {"sites/roof.yaml": site}).sites["roof"]
    assert (roof.horizon, roof.elevation_m, roof.extinction_mag) == (((0.0, 12.0), (90.0, 25.0)), 0.0, 0.25)


def test_settings_arrive_with_their_defaults(content: Path) -> None:
    """A part that is given keeps the defaults of what it does not say."""
    yaml = "title: T\nlanguage: pt-BR\naddress: https://example.org/d/\nprivacy: {site_position: hidden}\n"
    yaml += "outlook: {published: yes, nights: 12}\n"
    settings = diary_of(content, {"diary.yaml": yaml}).settings
    assert (settings.language, settings.address, settings.theme) == ("pt-BR", "https://example.org/d/", "default")
    assert (settings.privacy.site_position, settings.privacy.round_to_deg) == ("hidden", 0.1)
    assert (settings.outlook.published, settings.outlook.nights, settings.outlook.minimum_altitude_deg) == (True, 12, 30.0)


def test_entries_are_the_listed_ones_newest_first(content: Path) -> None:
    """Of one day, by name; what is unlisted is read and left out."""
    entries = {f"entries/{name}.md": f"---\ntitle: {name}\npublished: {day}\n{more}---\n" for name, day, more in [
        ("b", "2026-07-01", ""), ("a", "2026-07-01", ""), ("old", "2020-01-01", ""), ("draft", "2026-08-01", "unlisted: true\n"),
    ]}  # fmt: skip
    diary = diary_of(content, entries)
    assert [entry.slug for entry in diary.entries] == ["a", "b", "first", "old"]


def test_the_files_read_are_named(content: Path) -> None:
    """Author files and logs, not pictures: what a later rebuild has to look at again."""
    reading = reading_of(content, {})
    assert [path.relative_to(content).as_posix() for path in reading.files] == [
        "diary.yaml", "entries/first.md", "logs/first.csv", "rigs/dome.yaml", "sites/roof.yaml"
    ]  # fmt: skip


def test_there_may_be_no_diary_at_all(tmp_path: Path) -> None:
    """A wrong folder is one line."""
    reading = read_diary(tmp_path / "nowhere", TODAY, shown_as="nowhere")
    assert [str(problem) for problem in reading.problems] == [
        "nowhere:1:1: error: there is no diary here; name its folder with --content, or begin one with 'sitegen start'"
    ]
    assert (reading.diary, reading.files) == (None, ())


def test_paths_are_shown_as_the_author_types_them(content: Path) -> None:
    """Not as the machine resolves them."""
    lay_out(read_diary_text(HERE / "sound.diary"), content)
    (content / "diary.yaml").write_text("titel: x\n", encoding="utf-8")
    reading = read_diary(content, TODAY, shown_as="my/content")
    assert {problem.path for problem in reading.problems} == {"my/content/diary.yaml"}


def asked_of(content: Path, logs: str, more_logs: tuple[str, ...] = ()) -> list[LogRequest]:
    """What the log reader is asked for an entry with these logs."""
    entry = f"---\ntitle: T\npublished: 2026-06-20\ntarget: [NGC 7293, NGC 253]\nrig: dome\nsite: roof\nlogs: {logs}\n---\n"
    lay_out(read_diary_text(HERE / "sound.diary"), content)
    files = tuple((name, None, None, LOG) for name in more_logs)
    lay_out(DiaryText("", (("entries/first.md", None, None, entry), *files), ()), content)
    asked: list[LogRequest] = []

    def remember(request: LogRequest) -> LogReading:
        asked.append(request)
        return LogReading()

    assert read_diary(content, TODAY, read_log=remember).problems == ()
    return asked


def test_a_log_is_asked_for_with_what_its_item_says(content: Path) -> None:
    """Its own rig, site, target, filter, clock and columns, and the place of the item for problems about it."""
    logs = (
        "[{files: logs/first.csv, target: Sculptor Galaxy, filter: Ha, time_zone: Europe/Athens, columns: {exposure_s: Seconds}}]"
    )
    (request,) = asked_of(content, logs)
    assert request.rig is not None and request.site is not None
    assert (request.rig.slug, request.site.slug, request.target, request.filter) == ("dome", "roof", 1, "Ha")
    assert (request.time_zone, request.columns, request.today) == ("Europe/Athens", {"exposure_s": "Seconds"}, TODAY)
    assert (request.source, request.shown_path) == ("logs/first.csv", "content/logs/first.csv")
    assert request.item_place == ("content/entries/first.md", 7, 8)


def test_a_log_matched_twice_is_read_once(content: Path) -> None:
    """By the item that says more about it, wherever that stands in the list."""
    requests = asked_of(
        content, "['logs/*.csv', logs/first.csv, {files: logs/n1.csv, filter: Ha}]", ("logs/n1.csv", "logs/n2.csv")
    )
    assert [(request.source, request.filter) for request in requests] == [
        ("logs/n1.csv", "Ha"), ("logs/first.csv", None), ("logs/n2.csv", None)
    ]  # fmt: skip


def test_a_moving_target_has_no_place(content: Path) -> None:
    """A comet of the catalogue's kind would be found where it is not."""
    entry = "---\ntitle: T\npublished: 2026-06-20\ntarget: {name: A comet, kind: moving}\n---\n"
    (target,) = diary_of(content, {"entries/first.md": entry}).entries[0].targets
    assert (target.slug, target.kind, target.ra_deg, target.dec_deg, constellation(target)) == (
        "a-comet",
        "moving",
        None,
        None,
        None,
    )
