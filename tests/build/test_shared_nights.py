"""A night that entries share costs what that night costs, not what all nights of its entries cost."""

from pathlib import Path

import pytest

from sitegen.folders import Folders
from sitegen.pages import card
from sitegen.rebuild import rebuild
from tests.bench.make_diary import Size, make_diary
from tests.conftest import TODAY

ENTRIES = 2


def ribbons_drawn(root: Path, nights: int, monkeypatch: pytest.MonkeyPatch) -> int:
    """Small ribbons of one rebuild from nothing, in this process."""
    folders = Folders(root / "content", root / "themes", root / "output", root / "kept")
    make_diary(folders.content, Size(ENTRIES, nights=nights, subs=3, share_nights=True))
    drawn, ribbon_of = [], card.ribbon_of
    with monkeypatch.context() as patched:
        patched.setattr(card, "ribbon_of", lambda *given, **named: drawn.append(given) or ribbon_of(*given, **named))
        rebuild(folders, TODAY, jobs=1)
    shared = sorted((folders.output / "nights").glob("*-*-*/index.html"))
    assert len(shared) == nights
    assert all(f"night-work-{number:05d}/" in page.read_text("utf-8") for page in shared for number in range(ENTRIES))
    return len(drawn)


def test_each_shared_night_draws_its_own_ribbons_only(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One for each night on its entry's card, and one on the night's page for each entry that shares it."""
    assert [ribbons_drawn(tmp_path / str(nights), nights, monkeypatch) for nights in (1, 4)] == [2 * ENTRIES, 8 * ENTRIES]
