"""What a process needs can be sent to another, also after it has been used in this one."""

import pickle
from datetime import date
from pathlib import Path

from sitegen.build.run import context_of
from sitegen.build.work.drawing_kit import kit_of, load_template
from sitegen.diary.settings import Settings
from sitegen.pages.theme import open_theme
from sitegen.reading.diary_config import DiaryConfig, read_config
from tests.trust import tiny


def test_a_context_that_was_used_still_travels(tmp_path: Path) -> None:
    """Templates that this process has loaded stay behind; a few jobs done here, then many shared out, must not fail."""
    folders = tiny.lay_out(tmp_path)
    config = read_config(folders.content, date(2026, 11, 25))
    assert isinstance(config, DiaryConfig)
    theme, _ = open_theme("default", folders.themes)
    context = context_of(folders.content, config, config.settings or Settings(""), theme, tmp_path / "store")
    load_template(context)
    name = context.store.put("a record")
    there = pickle.loads(pickle.dumps(context))
    assert (there.look, there.versions, there.store.get(name, str)) == (context.look, context.versions, "a record")
    assert kit_of(there).page_layout is not kit_of(context).page_layout
