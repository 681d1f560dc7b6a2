"""A rebuild after edits gives the bytes of a rebuild from nothing, whatever was edited, damaged or thrown away between."""

import json
import random
import shutil
import subprocess
import sys
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from sitegen.build import workers
from sitegen.build.garbage import COLLECT_EVERY, IDLE_COLLECTIONS
from sitegen.build.manifest import manifest_path
from sitegen.build.work import log_memory
from sitegen.folders import Folders
from sitegen.reading import series_reading
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.series_reading import read_all_series
from sitegen.rebuild import rebuild
from tests.bench.make_diary import Size, make_diary
from tests.build.small_diary import EDITS, another_version, bytes_of, entries, lay_out, settle
from tests.conftest import ROOT, TODAY

SEED = 11
EDITS_A_LOOK = 5


def fresh(folders: Folders, elsewhere: Path) -> dict[str, bytes]:
    rebuild(Folders(folders.content, folders.themes, elsewhere, None), TODAY, jobs=1)
    return bytes_of(elsewhere)


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(path for path in {*one, *other} if one.get(path) != other.get(path))


@pytest.mark.parametrize("half", [0, 1])
def test_any_edits_give_the_bytes_of_a_fresh_build(tmp_path: Path, half: int) -> None:
    """Every kind of edit, in an order drawn by lot, a rebuild after each, compared after every fifth."""
    chance = random.Random(SEED)
    edits = chance.sample(EDITS, len(EDITS))[half::2]
    folders = lay_out(tmp_path)
    rebuild(folders, TODAY, jobs=1)
    for number, edit in enumerate(edits, start=1):
        settle()
        edit(folders, chance)
        settle()
        rebuild(folders, TODAY, jobs=1)
        if number % EDITS_A_LOOK == 0 or number == len(edits):
            done = [one.__name__ for one in edits[:number]]
            assert differing(bytes_of(folders.output), fresh(folders, tmp_path / f"fresh-{number}")) == [], done


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Folders:
    folders = lay_out(tmp_path_factory.mktemp("built"))
    settle()
    rebuild(folders, TODAY, jobs=1)
    return folders


def test_nothing_changed_is_nothing_done(built: Folders) -> None:
    """Told from the outside of the files alone: no library that reads, computes or draws is loaded."""
    settle()
    rebuild(built, TODAY, jobs=1)
    script = (
        "import sys; from datetime import date; from pathlib import Path; from sitegen.folders import Folders\n"
        "from sitegen.rebuild import rebuild\n"
        f"told = rebuild(Folders(*map(Path, {[str(each) for each in (built.content, built.themes, built.output, built.keep)]})), "
        f"date{TODAY.timetuple()[:3]})\n"
        "print(told.standing, [name for name in ('yaml', 'numpy', 'jinja2', 'astropy', 'erfa', 'matplotlib', 'pyvips') "
        "if name in sys.modules])"
    )
    told = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "True []"


def test_touched_files_make_no_page(built: Folders) -> None:
    """New times, same bytes: read again, and nothing drawn."""
    settle()
    for path in built.content.rglob("*"):
        path.touch()
    settle()
    report = rebuild(built, TODAY, jobs=1)
    assert report.made["entries read"] == 4
    assert [kind for kind, made in report.made.items() if made and kind.startswith("pages")] == []
    assert report.changed == 0


def test_one_sentence_draws_one_page(built: Folders) -> None:
    """Its entry's page; nights, lists and neighbours stay as they are."""
    settle()
    path = entries(built.content)[2]
    path.write_text(path.read_text("utf-8") + "\nA sentence that no list shows.\n", "utf-8")
    settle()
    report = rebuild(built, TODAY, jobs=1)
    pages = {kind: made for kind, made in report.made.items() if kind.startswith("pages") and made}
    assert pages == {"pages of entries": 1}


def test_the_last_shared_night_leaves_with_its_entry(built: Folders, tmp_path: Path) -> None:
    """An evening that only one entry has left stands on that entry's own page of it, once."""
    for folder in (built.content, built.themes, built.keep):
        shutil.copytree(folder or tmp_path, tmp_path / (folder or tmp_path).name)
    folders = Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")
    rebuild(folders, TODAY, jobs=1)
    settle()
    first, second = entries(folders.content)[:2]
    second.unlink()
    settle()
    assert rebuild(folders, TODAY, jobs=1).entries == 3
    night = next((folders.output / "nights").glob("2012-*/index.html")).read_text("utf-8")
    assert (first.stem in night, second.stem in night) == (True, False)


def test_a_log_seen_again_is_not_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One of an entry's logs changed, then its text, then its rig: only what may read differently is read."""
    make_diary(tmp_path / "content", Size(entries=1, nights=2, subs=3, fits=3))
    folders = Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")
    opened: list[str] = []
    monkeypatch.setattr(log_memory, "read_log", lambda request: (opened.append(request.source), read_log(request))[1])

    def read_after(path: Path, old: str, new: str) -> list[str]:
        opened.clear()
        path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
        settle()
        rebuild(folders, TODAY, jobs=1)
        return sorted(opened)

    (entry,) = entries(folders.content)
    log = next((folders.content / "logs").glob("*.csv"))
    every = sorted(path.relative_to(folders.content).as_posix() for path in (folders.content / "logs").rglob("*.*"))
    settle()
    assert read_after(entry, "", "") == every
    assert len(every) == 5
    assert read_after(log, ",yes,", ",no,") == [f"logs/{log.name}"]
    assert read_after(entry, "In all", "Altogether") == []
    assert read_after(folders.content / "rigs" / "long.yaml", "focal_length_mm: 1000", "focal_length_mm: 1010") == every
    assert differing(bytes_of(folders.output), fresh(folders, tmp_path / "fresh")) == []


def test_series_seen_again_are_not_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The entry's text changed, then its series, its log, a line above the item: only what may be reduced otherwise is read."""
    make_diary(tmp_path / "content", Size(entries=1, nights=1, subs=3))
    folders = Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")
    (entry,) = entries(folders.content)
    log, series = next((folders.content / "logs").glob("*.csv")), folders.content / "logs" / "weather.txt"
    start = datetime.fromisoformat(log.read_text("utf-8").splitlines()[1].partition(",")[0])
    rows = [f"{start + timedelta(minutes=10 * number):%Y-%m-%dT%H:%M:%S},7.5" for number in range(-1, 30)]
    series.write_text("\n".join(["time,temperature_c", *rows]), "utf-8")
    entry.write_text(entry.read_text("utf-8").replace("logs:\n", "series: [{files: logs/weather.txt}]\nlogs:\n", 1), "utf-8")
    opened: list[int] = []
    monkeypatch.setattr(series_reading, "read_all_series", lambda *asked: (opened.append(1), read_all_series(*asked))[1])

    def temperature_after(path: Path, old: str, new: str) -> tuple[float | None, int]:
        opened.clear()
        path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
        settle()
        rebuild(folders, TODAY, jobs=1)
        facts = json.loads(next((folders.output / "entries").glob("*/facts.json")).read_bytes())
        return facts["nights"][0]["conditions"]["temperature_c"], len(opened)

    assert temperature_after(entry, "", "") == (7.5, 1)
    assert temperature_after(entry, "In all", "Altogether") == (7.5, 0)
    assert temperature_after(series, "7.5", "6.5") == (6.5, 1)
    assert temperature_after(log, ",yes,", ",no,") == (6.5, 0)
    assert temperature_after(entry, "\nseries:", "\n# of the roof\nseries:") == (6.5, 0)
    assert differing(bytes_of(folders.output), fresh(folders, tmp_path / "fresh")) == []


def test_an_error_costs_nothing_that_was_kept(built: Folders) -> None:
    """A diary with an error is refused again and again, and built once it is mended, from what was kept."""
    settle()
    path = entries(built.content)[0]
    sound = path.read_text("utf-8")
    path.write_text(sound.replace("rig: long", "rig: lang", 1), "utf-8")
    for _ in range(2):
        settle()
        with pytest.raises(Exception, match="unknown rig 'lang'; did you mean 'long'"):
            rebuild(built, TODAY, jobs=1)
    path.write_text(sound, "utf-8")
    settle()
    report = rebuild(built, TODAY, jobs=1)
    assert sum(made for kind, made in report.made.items() if kind.startswith("pages")) == 0


def test_another_version_uses_nothing_old(built: Folders) -> None:
    """Another maker makes everything itself, and the same bytes where it works the same."""
    before = bytes_of(built.output)
    path = built.content / "diary.yaml"
    settle()
    path.touch()
    with another_version():
        report = rebuild(built, TODAY, jobs=1)
    assert report.kept["entries read"] == 0
    assert differing(bytes_of(built.output), before) == []


def test_processes_give_the_same_bytes(built: Folders, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Work shared out over two processes is the work of one."""
    monkeypatch.setattr(workers, "WORTH_PROCESSES_S", 0.0)
    rebuild(Folders(built.content, built.themes, tmp_path / "shared", tmp_path / "kept"), TODAY, jobs=2)
    assert differing(bytes_of(tmp_path / "shared"), fresh(built, tmp_path / "alone")) == []


def test_two_diaries_share_a_store(tmp_path: Path) -> None:
    """Their outputs lie side by side: what one of them is made from is no garbage to the other."""
    one, other = lay_out(tmp_path / "one"), lay_out(tmp_path / "other")
    keep = tmp_path / "kept"
    first = Folders(one.content, one.themes, tmp_path / "first", keep)
    second = Folders(other.content, other.themes, tmp_path / "second", keep)
    for entry in entries(other.content):
        entry.write_text(entry.read_text("utf-8") + "\nOf the other diary.\n", "utf-8")
    settle()
    rebuild(second, TODAY, jobs=1)
    for number in range(COLLECT_EVERY * (IDLE_COLLECTIONS + 1)):
        entry = entries(one.content)[0]
        entry.write_text(f"{entry.read_text('utf-8')}\n{number}\n", "utf-8")
        settle()
        rebuild(first, TODAY, jobs=1)
    entry = entries(other.content)[0]
    entry.write_text(entry.read_text("utf-8").replace("title: ", "title: Again, "), "utf-8")
    settle()
    report = rebuild(second, TODAY, jobs=1)
    assert (report.made["entries read"], report.said) == (1, ())


def test_a_diary_that_was_moved_leaves_no_manifest_behind(tmp_path: Path) -> None:
    """It would hold everything in the store for ever that the diary once was made from."""
    folders = lay_out(tmp_path / "old")
    settle()
    rebuild(folders, TODAY, jobs=1)
    (tmp_path / "old").rename(tmp_path / "new")
    new = Folders(*(tmp_path / "new" / part for part in ("content", "themes", "output", "kept")))
    assert new.keep is not None
    for number in range(COLLECT_EVERY):
        entry = entries(new.content)[0]
        entry.write_text(f"{entry.read_text('utf-8')}\n{number}\n", "utf-8")
        settle()
        rebuild(new, TODAY, jobs=1)
    (manifest,) = new.keep.glob("store/manifest-*")
    assert manifest == manifest_path(new.keep / "store", new.content)
