"""Plans that later entries tick off, on a whole site, and when the later one comes."""

import re
from datetime import date
from pathlib import Path

import pytest

from sitegen.folders import Folders
from sitegen.rebuild import check, rebuild
from tests.conftest import TODAY
from tests.entries.diary_text import HERE, lay_out, read_diary_text

FIRST = """---
title: First
published: 2026-06-20
topics: [Cold Nights, dew]
lessons:
  worked: [{what: a hat, subject: dress}, gloves]
  failed: [{what: no hat, subject: Dress}]
  next: [Buy a dome., more blue]
---
"""
SECOND = """---
title: Second
published: 2026-07-20
lessons:
  worked: [{what: two hats, subject: dress}]
  next: [sell the dome]
  done: [{of: first, what: buy a  DOME}]
---
"""
BETWEEN = "---\ntitle: Between\npublished: 2026-07-01\n---\n"  # so that neither of the two is next to the other


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    lay_out(read_diary_text(HERE / "sound.diary"), tmp_path / "content")
    write(tmp_path / "content", first=FIRST, between=BETWEEN, second=SECOND)
    return Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")


def write(content: Path, **texts: str) -> None:
    for name, text in texts.items():
        (content / f"entries/{name}.md").write_text(text, "utf-8")


def built(folders: Folders, today: date = TODAY) -> tuple[str, ...]:
    return tuple(str(problem) for problem in rebuild(folders, today, jobs=1).problems)


def section(folders: Folders, page: str, name: str) -> str:
    """The words of one section, with the addresses of its links."""
    html = (folders.output / page / "index.html").read_text("utf-8")
    part = html.partition(f'id="{name}"')[2].partition("</section>")[0]
    return re.sub(r"\s+", " ", re.sub(r"<(?!a )[^>]*>", " ", part))


def test_open_and_done_are_kept_apart(folders: Folders) -> None:
    """Open plans newest first; a done one has left them, in the words that planned it, with the way to where it was done."""
    assert built(folders) == ()
    still_open, done = section(folders, "lessons", "next"), section(folders, "lessons", "done")
    assert "Buy a dome" not in still_open
    assert still_open.index("sell the dome") < still_open.index("more blue")
    assert "Buy a dome." in done and "more blue" not in done
    assert done.index("entries/second/") < done.index("entries/first/")


def test_lessons_are_grouped_by_subject(folders: Folders) -> None:
    """However it is written; else by the entry's first topic, which has a page."""
    built(folders)
    worked = section(folders, "lessons", "worked")
    assert worked.index("dress") < worked.index("two hats") < worked.index("a hat") < worked.index("Cold Nights")
    assert worked.index("Cold Nights") < worked.index("gloves")
    assert "topics/cold-nights/" in worked
    assert worked.count("dress") == 1


def test_the_entries_lead_to_each_other(folders: Folders) -> None:
    """The planning one to where it was done, the doing one to where it was planned."""
    built(folders)
    first, second = section(folders, "entries/first", "taught"), section(folders, "entries/second", "taught")
    assert re.search(r'Buy a dome\. *Done: *<a href="../second/[^>]*> *Second', first)
    assert re.search(r'buy a DOME *planned in *<a href="../first/[^>]*> *First', second)
    assert first.count("Done:") == 1


def test_an_entry_that_comes_later_ticks_off(folders: Folders) -> None:
    """A rebuild draws the planning entry again, and again when the later one is taken back."""
    second = folders.content / "entries/second.md"
    second.unlink()
    built(folders)
    assert "Done:" not in section(folders, "entries/first", "taught")
    assert "Buy a dome" in section(folders, "lessons", "next")
    write(folders.content, second=SECOND)
    built(folders)
    assert "Done:" in section(folders, "entries/first", "taught")
    assert "Buy a dome" not in section(folders, "lessons", "next")
    write(folders.content, second=SECOND.replace("title: Second", "title: Other"))
    built(folders)
    assert "Other" in section(folders, "entries/first", "taught")
    second.unlink()
    built(folders)
    assert "Done:" not in section(folders, "entries/first", "taught")


def test_an_unlisted_entry_ticks_nothing_off(folders: Folders) -> None:
    """Nobody could follow the link; and a plan of one cannot be ticked off."""
    write(folders.content, second=SECOND.replace("title: Second", "title: Second\nunlisted: true"))
    built(folders)
    assert "Buy a dome" in section(folders, "lessons", "next")
    write(folders.content, first=FIRST.replace("title: First", "title: First\nunlisted: true"), second=SECOND)
    assert any("no published entry is named 'first'" in str(problem) for problem in check(folders, TODAY))


def test_a_broken_entry_is_not_said_to_be_missing(folders: Folders) -> None:
    """Nobody knows what it plans until it is mended."""
    write(folders.content, first=FIRST.replace("published: 2026-06-20", "published: soon"))
    problems = check(folders, TODAY)
    assert len(problems) == 1 and "'published' is 'soon'" in str(problems[0])
