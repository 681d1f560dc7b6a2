"""Nothing of the author's is lost, whatever happens to a rebuild."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.artifact import Artifact
from sitegen.problems import DiaryProblems
from sitegen.publish import publish as room
from sitegen.publish.publish import publish
from sitegen.publish.publish_manifest import SiteAddresses
from sitegen.publish.record import RECORD, read_record
from tests.conftest import ROOT

SIGNS = ("facts.schema.json", "look/search.js")
KNOWN_BY = SiteAddresses(SIGNS, lambda path: path.endswith(".html"))
HAND = "this file was put here by hand, and a page of the diary needs its place"


def pages(*names: str, text: str = "made") -> list[Artifact]:
    return [Artifact.text(name, f"{text} {name}") for name in names]


def found(folder: Path) -> dict[str, str]:
    """Every file but the record."""
    files = (path for path in folder.rglob("*") if path.is_file() and path.name != RECORD)
    return {path.relative_to(folder).as_posix(): path.read_text() for path in files}


@pytest.fixture
def places(tmp_path: Path) -> tuple[Path, Path]:
    """(output, state) of a site of two pages."""
    publish(pages("a.html", "b/index.html"), tmp_path / "output", tmp_path / "state")
    return tmp_path / "output", tmp_path / "state"


class Killed(BaseException):
    """Stands for a process that is no more."""


@pytest.mark.parametrize("step", ["atomic_swap", "keep_copy"])
def test_a_death_round_the_switch_is_forgotten_by_the_next(
    places: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    """Killed just after the switch, or a little later, the next rebuild still knows which files are its own."""
    really = getattr(room, step)

    def then_die(*asked: object) -> None:
        really(*asked)
        raise Killed

    with monkeypatch.context() as patched, pytest.raises(Killed):
        patched.setattr(room, step, then_die)
        publish(pages("a.html", "new.html", text="second"), *places)
    told = publish(pages("a.html", "new.html", text="third"), *places)
    assert told.carried == ()
    assert found(places[0]) == {"a.html": "third a.html", "new.html": "third new.html"}


def test_a_page_that_became_a_folder(places: tuple[Path, Path]) -> None:
    """What sitegen made is no hindrance to what it makes next."""
    told = publish(pages("a.html/index.html", "b"), *places)
    assert (told.carried, sorted(found(places[0]))) == ((), ["a.html/index.html", "b"])


@pytest.mark.parametrize("hand", ["new", "new/x/notes.txt"])
def test_a_file_by_hand_across_a_folder_of_the_site(places: tuple[Path, Path], hand: str) -> None:
    """A file where a folder has to be, or below what has to be a page, is named and stays."""
    path = places[0] / hand
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("mine")
    wanted = "new/index.html" if hand == "new" else "new"
    with pytest.raises(DiaryProblems, match=f"output/{hand}:1:1: error: {HAND}"):
        publish(pages(wanted), *places)
    assert path.read_text() == "mine"


def test_a_link_to_a_folder_stays(places: tuple[Path, Path], tmp_path: Path) -> None:
    """A folder linked into the site by hand is carried along as the link it is, and nothing behind it is touched."""
    (tmp_path / "films").mkdir()
    (tmp_path / "films/one.webm").write_text("film")
    (places[0] / "films").symlink_to(tmp_path / "films")
    told = publish(pages("a.html"), *places)
    assert told.carried == ("films",)
    assert (places[0] / "films").is_symlink()
    assert (tmp_path / "films/one.webm").read_text() == "film"


def test_a_folder_that_sitegen_never_saw(tmp_path: Path) -> None:
    """--output aimed at somebody's own folder: what stands in the way is named, nothing goes."""
    output = tmp_path / "documents"
    output.mkdir()
    (output / "a.html").write_text("my own page")
    with pytest.raises(DiaryProblems, match=f"documents/a.html:1:1: error: {HAND}"):
        publish(pages("a.html"), output, tmp_path / "state")
    assert found(output) == {"a.html": "my own page"}


def test_an_earlier_site_that_nobody_remembers(tmp_path: Path) -> None:
    """Without a record the site is rebuilt over itself, and what lies at no address of the site's stays and is named."""
    output = tmp_path / "output"
    publish(pages("a.html", *SIGNS), output, tmp_path / "state")
    (output / RECORD).unlink()
    (output / "CNAME").write_text("nights.example")
    told = publish(pages("a.html", *SIGNS, text="again"), output, tmp_path / "another", known_by=KNOWN_BY)
    assert (told.carried, (output / "a.html").read_text()) == (("CNAME",), "again a.html")


def test_an_earlier_page_in_the_way_and_no_record(tmp_path: Path) -> None:
    """A later version may need a folder where an earlier one had a page: without a record it goes, and is kept."""
    output = tmp_path / "output"
    publish(pages("a", *SIGNS), output)
    (output / RECORD).unlink()
    publish(pages("a/index.html", *SIGNS), output, known_by=KNOWN_BY)
    assert (output / "a/index.html").read_text() == "made a/index.html"
    assert found(tmp_path / "output-by-hand") == {"a": "made a"}


DAMAGED = [b"", b"\xff\xfe", b"[]", b"{}", b'{"format": 1, "files": 2}', b'{"format": "x"}', b'{"format": -1}']


@pytest.mark.parametrize("damage", DAMAGED)
def test_a_damaged_record_is_no_traceback(tmp_path: Path, damage: bytes) -> None:
    """Damaged in any way it is as good as none; the copy beside what is kept still tells what is ours."""
    output, state = tmp_path / "output", tmp_path / "state"
    for text in ("made", "more"):
        publish(pages("a.html", *SIGNS, text=text), output, state)
    (output / RECORD).write_bytes(damage)
    (output / SIGNS[0]).write_text("mine")
    told = publish(pages(*SIGNS, text="again"), output, state, known_by=SiteAddresses((), lambda path: False))
    record = read_record(output / RECORD)
    assert (sorted(record.files), record.whole, told.carried) == (sorted(SIGNS), True, ())
    assert found(tmp_path / "output-by-hand") == {SIGNS[0]: "mine"}


def test_a_record_that_is_no_file(places: tuple[Path, Path]) -> None:
    """A link in its place is replaced, and not followed; a folder in its place is the author's, and in the way."""
    output, elsewhere = places[0], places[0].with_name("elsewhere")
    elsewhere.write_text("mine")
    (output / RECORD).unlink()
    (output / RECORD).symlink_to(elsewhere)
    publish(pages("a.html"), *places)
    assert not (output / RECORD).is_symlink()
    assert elsewhere.read_text() == "mine"
    (output / RECORD).unlink()
    (output / RECORD).mkdir()
    (output / RECORD / "notes.txt").write_text("mine")
    shutil.rmtree(places[1])
    with pytest.raises(DiaryProblems, match=rf"^output/\.published/notes\.txt:1:1: error: {HAND}"):
        publish(pages("a.html"), *places)


def test_an_output_thrown_away(tmp_path: Path) -> None:
    """But for a scribbled page, which is made anew and kept. Of a folder that is gone nothing is said."""
    output, state = tmp_path / "output", tmp_path / "state"
    state.mkdir()
    publish(pages("a.html", "b.html"), output, state)
    shutil.rmtree(output)
    assert publish(pages("a.html", "b.html"), output, state).warnings == ()
    shutil.rmtree(output)
    output.mkdir()
    (output / "a.html").write_text("scribbled")
    told = publish(pages("a.html", "b.html"), output, state)
    assert (told.by_hand, len(told.warnings)) == ((("a.html", "output-by-hand/a.html"),), 2)


def test_an_output_that_is_a_link(tmp_path: Path) -> None:
    """The site goes where the link points; the link stays, also the first time, when nothing is there yet."""
    (tmp_path / "output").symlink_to(tmp_path / "disk" / "site")
    for text in ("once", "twice"):
        publish(pages("a.html", text=text), tmp_path / "output", tmp_path / "state")
        assert (tmp_path / "output").is_symlink()
        assert found(tmp_path / "disk" / "site") == {"a.html": f"{text} a.html"}


def test_what_lies_about_is_cleared_while_nobody_else_works(places: tuple[Path, Path]) -> None:
    """The folder beside the output is taken away before another rebuild may begin one of the same name."""
    script = (
        "import sys, time; from pathlib import Path; sys.path.insert(0, sys.argv[2]);"
        "from sitegen.artifact import Artifact; from sitegen.publish.publish import publish;"
        "publish((Artifact.text(f'{n}.html', sys.argv[3]) for n in range(200) if not time.sleep(0.001)),"
        "Path(sys.argv[1]), Path(sys.argv[1]).with_name('state'))"
    )
    command = [sys.executable, "-c", script, str(places[0]), str(ROOT)]
    for process in [subprocess.Popen([*command, str(number)]) for number in range(4)]:
        assert process.wait() == 0
    site = {name: text for name, text in found(places[0]).items() if name[0].isdigit()}
    assert len(site) == 200
    assert len(set(site.values())) == 1


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() != 0, reason="only root can become another user: run as root")
@pytest.mark.parametrize("closed", ["output", "."])
def test_a_folder_that_may_not_be_written(tmp_path: Path, closed: str) -> None:
    """As a user without rights there: one problem line, the earlier site whole."""
    base = tmp_path / "closed"
    publish(pages("a.html"), base / "output")
    script = (
        "import os, sys; sys.path.insert(0, sys.argv[2]);"
        "from pathlib import Path; from sitegen.artifact import Artifact; from sitegen.problems import DiaryProblems;"
        "from sitegen.publish.publish import publish\n"
        "os.chdir(sys.argv[1]); os.setgroups([]); os.setgid(65534); os.setuid(65534)\n"
        "try: publish([Artifact.text('a.html', 'other')], Path('output'))\n"
        "except DiaryProblems as wrong: print(wrong)\n"
    )
    if closed == "output":
        base.chmod(0o777)
        (base / "output").chmod(0o555)
    told = subprocess.run([sys.executable, "-c", script, str(base), str(ROOT)], capture_output=True, text=True, check=False)
    assert "Traceback" not in told.stderr
    if closed == ".":
        assert "the site could not be written: permission denied; make the folder writable" in told.stdout
        assert found(base / "output") == {"a.html": "made a.html"}
    else:
        assert "the site could not be written" in told.stdout or found(base / "output") == {"a.html": "other a.html"}
