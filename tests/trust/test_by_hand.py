"""A page that the author changed in the output itself is made anew, and the author's version is named and kept."""

import json
import os
from hashlib import blake2b
from pathlib import Path

import pytest

from sitegen.artifact import Artifact
from sitegen.publish.publish import Published, publish
from sitegen.publish.publish_manifest import note_path
from sitegen.publish.record import RECORD
from sitegen.rebuild import rebuild
from tests.conftest import TODAY
from tests.trust import tiny


@pytest.fixture
def output(tmp_path: Path) -> Path:
    """Of two pages and a picture."""
    (tmp_path / "kept.jpg").write_bytes(b"a picture")
    once_more(tmp_path / "output", "made")
    return tmp_path / "output"


def once_more(output: Path, text: str, *names: str) -> Published:
    pages = [Artifact.text(name, f"{text} {name}") for name in names or ("a.html", "b/index.html")]
    return publish([*pages, Artifact("p.jpg", str(output.with_name("kept.jpg")))], output, output.with_name("state"))


@pytest.mark.parametrize("text", ["made", "another"], ids=["page as before", "page made anew"])
def test_a_page_changed_by_hand_is_kept(output: Path, text: str) -> None:
    """Whether or not the diary changed meanwhile: the site is the diary's, the author's words are beside it."""
    (output / "a.html").write_text("my words")
    assert once_more(output, text).by_hand == (("a.html", "output-by-hand/a.html"),)
    assert (output / "a.html").read_text() == f"{text} a.html"
    assert (output.with_name("output-by-hand") / "a.html").read_text() == "my words"
    assert once_more(output, "third").by_hand == ()


def test_a_page_that_is_no_more(output: Path) -> None:
    """A changed page whose entry is gone goes too, and is kept like the others; one that nobody touched just goes."""
    (output / "b/index.html").write_text("my words")
    told = once_more(output, "made", "a.html")
    assert (told.removed, told.by_hand) == (1, (("b/index.html", "output-by-hand/b/index.html"),))
    assert not (output / "b").exists()
    assert once_more(output, "made", "c.html").by_hand == ()


def test_nothing_kept_is_written_over(output: Path) -> None:
    """Another change of the same page gets another name; the same change does not."""
    for words in ("first", "second", "second"):
        (output / "a.html").write_text(words)
        once_more(output, "made")
    kept = output.with_name("output-by-hand")
    assert {path.name: path.read_text() for path in kept.iterdir()} == {"a.html": "first", "a.html.2": "second"}


def test_a_retouched_picture(output: Path) -> None:
    """Files that are not read again are known by size and time."""
    (output / "p.jpg").write_bytes(b"retouched")
    assert once_more(output, "made").by_hand == (("p.jpg", "output-by-hand/p.jpg"),)
    assert (output / "p.jpg").read_bytes() == b"a picture"


def test_a_page_replaced_by_a_link(output: Path) -> None:
    """The link is kept as a link."""
    (output / "a.html").unlink()
    (output / "a.html").symlink_to("elsewhere.html")
    once_more(output, "made")
    assert (output.with_name("output-by-hand") / "a.html").readlink() == Path("elsewhere.html")


def test_touched_only_is_not_changed(output: Path) -> None:
    """A copy, a checkout or a backup gives a page another time: that is no change."""
    os.utime(output / "a.html", (1, 1))
    assert once_more(output, "another").by_hand == ()


def test_a_note_of_the_first_versions_remembers_names_only(output: Path) -> None:
    """It holds for what may be taken away, and nobody is accused."""
    (output / RECORD).unlink()
    body = json.dumps({"output": str(output), "sites": [[output.stat().st_ino, ["a.html", "b/index.html", "p.jpg"]]]}).encode()
    note = note_path(output, output.with_name("state"))
    note.write_bytes(blake2b(body, digest_size=20).hexdigest().encode() + b"\n" + body)
    assert once_more(output, "another", "a.html").by_hand == ()
    assert not (output / "b").exists()


def test_the_command_names_it(tmp_path: Path) -> None:
    """A whole rebuild tells it as a warning, once, though nothing else had changed."""
    folders = tiny.lay_out(tmp_path)
    rebuild(folders, TODAY, jobs=1)
    page = folders.output / "index.html"
    made = page.read_bytes()
    page.write_bytes(made + b"<p>mine</p>")
    told = [str(problem) for problem in rebuild(folders, TODAY, jobs=1).problems if "by hand" in problem.wrong]
    assert told == [
        "output/index.html:1:1: warning: this file was changed by hand after it was made, and its place is taken again; "
        "your version is kept as output-by-hand/index.html: take from it what you need, and delete it"
    ]
    assert page.read_bytes() == made
    assert not [problem for problem in rebuild(folders, TODAY, jobs=1).problems if "by hand" in problem.wrong]
