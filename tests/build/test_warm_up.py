"""A save rehearsed: the newest entry is drawn, the site stays as it is."""

from pathlib import Path

import pytest

from sitegen.assembly import rehearsal
from sitegen.assembly.records import DrawnPages
from sitegen.rebuild import rebuild
from tests.conftest import TODAY
from tests.build.small_diary import bytes_of, lay_out, settle


def test_it_draws_the_newest_entry_and_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And the rebuild after it finds nothing to do."""
    folders = lay_out(tmp_path)
    settle()
    rebuild(folders, TODAY)
    before = bytes_of(folders.output)
    drawn: list[DrawnPages] = []
    draw = rehearsal.draw_entries
    monkeypatch.setattr(rehearsal, "draw_entries", lambda bench, jobs: drawn.extend(draw(bench, jobs)))
    rehearsal.rehearse(folders, TODAY)
    assert len(drawn) == 1
    assert any(path.startswith("entries/") for path in drawn[0].pages)
    assert bytes_of(folders.output) == before
    assert rebuild(folders, TODAY).standing


def test_nothing_kept_is_no_trouble(tmp_path: Path) -> None:
    folders = lay_out(tmp_path)
    rehearsal.rehearse(folders, TODAY)
    assert not folders.output.exists()
