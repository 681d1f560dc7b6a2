"""What a diary withdraws is gone from its site, wherever the diary has travelled meanwhile; what the author put there stays."""

import json
import re
import shutil
from collections.abc import Callable
from hashlib import blake2b
from pathlib import Path

import pytest

from sitegen.diary import addresses
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.publish.record import RECORD
from sitegen.rebuild import Report, rebuild
from tests.conftest import ROOT, TODAY
from tests.trust import tiny

SECOND = """---
title: A night that is to be forgotten
published: 2026-06-22
target: NGC 104
rig: dome
site: roof
logs: [logs/second.csv]
topics: [regretted]
---
Something private.
"""
LOG = "start,exposure_s,filter\n2026-06-17T10:00:00,300,L\n"
WITHDRAWN = ["entries/second", "nights/2026-06-17", "targets/ngc-104", "topics/regretted"]


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A diary of two entries, built, with a file of the author's own in its output."""
    root = tmp_path_factory.mktemp("published")
    folders = tiny.lay_out(root / "here")
    (folders.content / "entries/second.md").write_text(SECOND)
    (folders.content / "logs/second.csv").write_text(LOG)
    rebuild(folders, TODAY, jobs=1)
    (folders.output / "CNAME").write_text("nights.example")
    (folders.output / "entries/second/film.webm").write_bytes(b"a film")
    return root / "here"


def folders_in(root: Path) -> Folders:
    return Folders(root / "content", ROOT / "themes", root / "output", root / ".sitegen")


def again(root: Path) -> Report:
    return rebuild(folders_in(root), TODAY, jobs=1)


def moved(here: Path, there: Path) -> None:
    shutil.copytree(here, there / "on the way", symlinks=True)
    (there / "on the way").rename(there / "project")


def copied(here: Path, there: Path) -> None:
    shutil.copytree(here, there / "project")


def restored(here: Path, there: Path) -> None:
    """From a backup that keeps no times."""
    shutil.copytree(here, there / "project", copy_function=shutil.copyfile)


def cloned(here: Path, there: Path) -> None:
    """A clean checkout on a build server that keeps the output."""
    for folder in ("content", "output"):
        shutil.copytree(here / folder, there / "project" / folder, copy_function=shutil.copyfile)


JOURNEYS = [moved, copied, restored, cloned]


def delete(content: Path) -> None:
    (content / "entries/second.md").unlink()
    (content / "logs/second.csv").unlink()


def unlist(content: Path) -> None:
    (content / "entries/second.md").write_text(SECOND.replace("topics:", "unlisted: true\ntopics:"))


@pytest.mark.parametrize("withdraw", [delete, unlist])
@pytest.mark.parametrize("journey", JOURNEYS)
def test_a_withdrawn_entry_is_gone(
    published: Path, tmp_path: Path, journey: Callable[[Path, Path], None], withdraw: Callable[[Path], None]
) -> None:
    """Its pages, nights, target and topic; the author's own files stay, the one in its folder, too."""
    journey(published, tmp_path)
    root = tmp_path / "project"
    withdraw(root / "content")
    report = again(root)
    left = [place for place in WITHDRAWN if (root / "output" / place).exists()]
    assert left == ["entries/second"]
    assert [path.name for path in (root / "output/entries/second").iterdir()] == ["film.webm"]
    assert report.carried == ("CNAME", "entries/second/film.webm")
    assert not re.search(rb"forgotten|2026-06-17", b"".join(tiny.site_of(root / "output").values()))
    assert not (root / "output-by-hand").exists()


def test_empty_folders_go(published: Path, tmp_path: Path) -> None:
    """With the last file of an entry its folder."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    (root / "output/entries/second/film.webm").unlink()
    delete(root / "content")
    again(root)
    assert [place for place in WITHDRAWN if (root / "output" / place).exists()] == []
    assert [path for path in (root / "output").rglob("*") if path.is_dir() and not any(path.iterdir())] == []


def test_a_page_changed_by_hand_and_then_withdrawn(published: Path, tmp_path: Path) -> None:
    """It goes from the site like the others; the author's version is beside it, and a line says where."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    page = root / "output/entries/second/index.html"
    page.write_text("my own words")
    delete(root / "content")
    told = [str(problem) for problem in again(root).problems if "by hand" in problem.wrong]
    assert told == [
        "output/entries/second/index.html:1:1: warning: this file was changed by hand after it was made, and the diary no longer "
        "makes it; your version is kept as output-by-hand/entries/second/index.html: take from it what you need, and delete it"
    ]
    assert not page.exists()
    assert (root / "output-by-hand/entries/second/index.html").read_text() == "my own words"


LOST = (
    "output/.published:1:1: warning: the record of what was published is missing or damaged, "
    "so files at sitegen's addresses are taken for its own"
)


@pytest.mark.parametrize("damage", [None, b"", b"\xff", b"[]", b'{"format": 1, "checksum": "", "files": {"CNAME": ""}}'])
def test_a_site_without_its_record(published: Path, tmp_path: Path, damage: bytes | None) -> None:
    """Lost, cut off or edited: what lies at an address of the site's goes, too, is kept beside it, and one line says so. The
    author's own files stay, but one that the edited record calls ours, which is kept like the others."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    (root / "output" / RECORD).unlink()
    if damage is not None:
        (root / "output" / RECORD).write_bytes(damage)
    delete(root / "content")
    report = again(root)
    assert [place for place in WITHDRAWN if (root / "output" / place).exists()] == ["entries/second"]
    expected = {f"{place}/index.html" for place in WITHDRAWN} | {"entries/second/subs.ecsv"}
    expected |= {f"{place}/facts.json" for place in WITHDRAWN if not place.startswith("topics/")}
    expected |= {"CNAME"} if damage and b"CNAME" in damage else set()
    assert set(tiny.site_of(root / "output-by-hand")) == expected
    assert "entries/second/film.webm" in report.carried
    told = [str(problem) for problem in report.problems if str(problem).startswith("output/")]
    assert told == [
        f"{LOST}; {len(expected)} files that no page needs any more were moved to output-by-hand: "
        "take from it what is yours, and delete it"
    ]
    assert not [problem for problem in again(root).problems if str(problem).startswith("output/")]


def test_a_lost_record_and_nothing_withdrawn(published: Path, tmp_path: Path) -> None:
    """The line says how not to lose it; nothing is moved."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    (root / "output" / RECORD).unlink()
    told = [str(problem) for problem in again(root).problems if str(problem).startswith("output/")]
    assert told == [f"{LOST}; copy .published along whenever you copy or restore this folder"]
    assert not (root / "output-by-hand").exists()


def test_the_record_says_nothing_but_what_lies_beside_it(published: Path) -> None:
    """Every file but the author's own and itself, each with its digest; no place, no time, no name of this machine."""
    output = published / "output"
    record = json.loads((output / RECORD).read_bytes())
    site = tiny.site_of(output)
    ours = {path: content for path, content in site.items() if path not in (RECORD, "CNAME", "entries/second/film.webm")}
    assert record["files"] == {path: blake2b(content, digest_size=20).hexdigest() for path, content in ours.items()}
    assert list(record["files"]) == sorted(record["files"])
    assert sorted(record) == ["checksum", "files", "format"]
    assert str(published).encode() not in site[RECORD]


def test_the_record_has_the_bytes_of_a_fresh_one(published: Path, tmp_path: Path) -> None:
    """After a journey and an edit it is the record that a new folder gets."""
    restored(published, tmp_path)
    root = tmp_path / "project"
    delete(root / "content")
    again(root)
    rebuild(Folders(root / "content", ROOT / "themes", tmp_path / "fresh", None), TODAY, jobs=1)
    assert (root / "output" / RECORD).read_bytes() == (tmp_path / "fresh" / RECORD).read_bytes()


def test_addresses_know_every_file_of_the_site(demo_site: Path) -> None:
    """A new kind of page has its place in `addresses.may_be_ours`, so that it can be withdrawn without a record."""
    paths = [path.relative_to(demo_site).as_posix() for path in demo_site.rglob("*") if path.is_file()]
    assert [path for path in paths if path != RECORD and not addresses.may_be_ours(path)] == []
    own = ["CNAME", "notes.html", "entries/ngc-253/film.webm", "nights/2026-06-17/sketch.png", "films/index.html"]
    assert [path for path in own if addresses.may_be_ours(path)] == []


def test_a_renamed_address_leaves_nothing_behind(published: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A later version that calls a folder otherwise takes its own pages away; none is 'put here by hand'."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    monkeypatch.setattr(addresses, "TOPICS", "subjects/")
    report = again(root)
    assert not (root / "output/topics").exists()
    assert (root / "output/subjects/regretted/index.html").is_file()
    assert report.carried == ("CNAME", "entries/second/film.webm")


def test_a_record_of_a_later_version(published: Path, tmp_path: Path) -> None:
    """Nothing is guessed, and nothing touched."""
    cloned(published, tmp_path)
    root = tmp_path / "project"
    (root / "output" / RECORD).write_text('{"format": 2, "pages": []}')
    delete(root / "content")
    told = (
        r"^output/\.published:1:1: error: a later version of sitegen published this site \(its record has format 2, this version "
        r"knows 1\); rebuild with that version, or name another --output$"
    )
    with pytest.raises(DiaryProblems, match=told):
        again(root)
    assert (root / "output/entries/second/index.html").is_file()


@pytest.mark.parametrize("where", ["as it was", "copied"])
def test_the_first_rebuild_after_an_upgrade(published: Path, tmp_path: Path, where: str) -> None:
    """Versions before the record remembered in `.sitegen/` what they had published, and where: that is taken over once."""
    copied(published, tmp_path)
    root = tmp_path / "project"
    files = json.loads((root / "output" / RECORD).read_bytes())["files"]
    (root / "output" / RECORD).unlink()
    (root / ".sitegen/published-output.copy").unlink()
    number = (root / "output").stat().st_ino if where == "as it was" else 1
    marks = {path: blake2b((root / "output" / path).read_bytes(), digest_size=12).hexdigest() for path in files}
    body = json.dumps({"output": "/elsewhere", "sites": [[number, marks], [2, {}]]}).encode()
    note = root / ".sitegen/published-output.json"
    note.write_bytes(blake2b(body, digest_size=20).hexdigest().encode() + b"\n" + body)
    delete(root / "content")
    report = again(root)
    assert [place for place in WITHDRAWN if (root / "output" / place).exists()] == ["entries/second"]
    assert report.carried == ("CNAME", "entries/second/film.webm")
    assert not [problem for problem in report.problems if str(problem).startswith("output/")]
    assert (root / "output" / RECORD).is_file()
    assert not note.exists()
