"""A save done ahead and for nobody: the newest entry is drawn, the site stays as it is."""

from pathlib import Path
from typing import Any

import pytest

from sitegen.build import warm_up as room
from sitegen.build.warm_up import warm_up
from sitegen.rebuild import STORE, rebuild
from tests.build.small_diary import bytes_of, lay_out, settle
from tests.conftest import TODAY


def test_it_draws_the_newest_entry_and_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And the rebuild after it finds nothing to do."""
    folders = lay_out(tmp_path)
    settle()
    rebuild(folders, TODAY)
    before = bytes_of(folders.output)
    drawn: list[Any] = []
    draw = room.draw_entries
    monkeypatch.setattr(room, "draw_entries", lambda context, jobs: drawn.extend(draw(context, jobs)))
    assert folders.keep is not None
    warm_up(folders, folders.keep / STORE, TODAY)
    assert len(drawn) == 1
    assert any(output.path.startswith("entries/") for output in drawn[0].outputs)
    assert bytes_of(folders.output) == before
    assert rebuild(folders, TODAY).standing


def test_nothing_kept_is_no_trouble(tmp_path: Path) -> None:
    folders = lay_out(tmp_path)
    warm_up(folders, None, TODAY)
    assert not folders.output.exists()
    assert folders.keep is not None and not folders.keep.exists()
