"""What is remembered of a diary: believed where it is whole and this version's, and told of where it is not."""

import os
import sys
from pathlib import Path

import pytest

from sitegen.build.manifest import Manifest, read_manifest, write_manifest
from sitegen.build.registry import COMPUTING, DRAWING, READING
from sitegen.build.store import read_checked, write_checked
from sitegen.rebuild import rebuild
from tests.build.small_diary import bytes_of, entries, lay_out, settle
from tests.conftest import TODAY


def test_a_real_one_comes_back_as_it_was(tmp_path: Path) -> None:
    """Every kind of record that a rebuild remembers, written again from what was read, is the same bytes."""
    folders = lay_out(tmp_path)
    settle()
    rebuild(folders, TODAY)
    assert folders.keep is not None
    (path,) = (folders.keep / "store").glob("manifest-*")
    version = read_checked(path).partition(b"\n")[0].decode()
    manifest, note = read_manifest(path, version)
    assert note is None and len(manifest.tasks["facts"]) == len(entries(folders.content))
    assert all(manifest.tasks[rule.name] for rule in (*READING, *COMPUTING, *DRAWING))
    write_manifest(tmp_path / "again", manifest)
    assert read_manifest(tmp_path / "again", version) == (manifest, None)


def test_a_missing_one_is_empty_and_nothing_to_tell(tmp_path: Path) -> None:
    assert read_manifest(tmp_path / "none", "me") == (Manifest("me"), None)


@pytest.mark.parametrize(
    ("body", "told"),
    [(b"another\n\x90", "another version's"), (b"me\n\xc1", "damaged"), (b"me\n\x93\x01", "damaged"), (b"", "another version's")],
)
def test_another_s_and_a_damaged_one_are_empty_and_told(tmp_path: Path, body: bytes, told: str) -> None:
    write_checked(tmp_path / "one", body)
    manifest, note = read_manifest(tmp_path / "one", "me")
    assert manifest == Manifest("me") and note is not None and told in note


def test_one_with_a_false_checksum_is_damaged(tmp_path: Path) -> None:
    write_manifest(tmp_path / "one", Manifest("me"))
    (tmp_path / "one").write_bytes((tmp_path / "one").read_bytes()[:-1] + b"!")
    assert "damaged" in str(read_manifest(tmp_path / "one", "me")[1])


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere every name is text")
def test_a_file_whose_name_is_no_text_loses_nothing(tmp_path: Path) -> None:
    """It is nobody's, and lies in the folder all the same: one entry changed is one entry read."""
    folders = lay_out(tmp_path)
    Path(os.fsdecode(os.fsencode(folders.content) + b"/pictures/\xff.txt")).touch()
    settle()
    rebuild(folders, TODAY)
    entry = entries(folders.content)[0]
    entry.write_text(entry.read_text("utf-8").replace("In all", "Altogether"), "utf-8")
    settle()
    report = rebuild(folders, TODAY)
    assert (report.made["entries read"], report.kept["entries read"]) == (1, 3)
    assert b"Altogether" in bytes_of(folders.output)[f"entries/{entry.stem}/index.html"]
