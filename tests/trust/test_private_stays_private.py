"""Non-interference through the whole pipeline: what is private changes no published byte. tests/bench/private.py does many."""

from dataclasses import replace
from pathlib import Path
from random import Random

import pytest

from sitegen.folders import Folders
from sitegen.rebuild import rebuild
from tests.conftest import TODAY
from tests.trust.hidden_things import MIDDLE, hidden, neighbour
from tests.trust.tiny import Wishes, lay_out, site_of


def built(folder: Path, wishes: Wishes) -> dict[str, bytes]:
    """The site of a diary in a folder of its own; what is kept is shared, under keys that know every private byte."""
    own = lay_out(folder, wishes)
    rebuild(Folders(own.content, own.themes, own.output, folder.parent / "keep"), TODAY, jobs=1)
    return site_of(own.output)


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("private")


@pytest.fixture(scope="module")
def rounded(base: Path) -> dict[str, bytes]:
    return built(base / "middle", MIDDLE)


@pytest.mark.parametrize("seed", [1, 2])
def test_neighbours_publish_the_same_site(base: Path, rounded: dict[str, bytes], seed: int) -> None:
    """Elsewhere in the cell, other keywords, other owners, another folder: the very same bytes."""
    assert differing(rounded, built(base / f"neighbour-{seed}", neighbour(Random(seed)))) == []


def test_a_step_out_of_the_cell_is_seen(base: Path, rounded: dict[str, bytes]) -> None:
    """So that equal sites mean something: one cell further, numbers change."""
    further = built(base / "further", replace(MIDDLE, latitude=MIDDLE.latitude + 0.1))
    assert "entries/first/facts.json" in differing(rounded, further)


def test_hidden_sites_far_apart_publish_the_same(base: Path) -> None:
    """Eight hundred kilometres apart under one clock: the same bytes, and no altitude, no darkness, no rise."""
    here = built(base / "hidden-1", hidden(Random(1)))
    assert differing(here, built(base / "hidden-2", hidden(Random(2)))) == []
    facts = here["entries/first/facts.json"].decode()
    assert '"dark_s": null' in facts
    assert '"sunset": null' in facts
