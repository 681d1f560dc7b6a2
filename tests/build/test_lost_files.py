"""Kept files are trusted until one is needed: a lost or damaged one is then made again, and the site is whole."""

from pathlib import Path

import pytest

from sitegen.rebuild import rebuild
from tests.build.small_diary import bytes_of, lay_out, settle
from tests.conftest import TODAY


@pytest.mark.parametrize("lost", [True, False])
def test_a_page_and_its_kept_file_are_gone(tmp_path: Path, lost: bool) -> None:
    """Lost, or of another length than it had."""
    folders = lay_out(tmp_path)
    settle()
    rebuild(folders, TODAY)
    before = bytes_of(folders.output)
    page = folders.output / "index.html"
    assert folders.keep is not None
    files = (path for path in (folders.keep / "store/files").rglob("*") if path.is_file())
    kept = next(path for path in files if path.read_bytes() == page.read_bytes())
    page.unlink()
    kept.unlink() if lost else kept.write_bytes(b"short")
    rebuild(folders, TODAY)
    assert bytes_of(folders.output) == before
