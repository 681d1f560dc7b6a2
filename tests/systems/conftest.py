"""Two versions of one small diary, and the sites that an ordinary machine makes of them."""

import shutil
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tests.systems.machines import run
from tests.trust.tiny import Wishes, lay_out, site_of

OLD = Wishes(title="The old version", body="Once. " * 400, owner="old")
NEW = replace(OLD, title="The new version", body="Twice. " * 400, owner="new")


class Diary:
    """`folder` holds the old version, built; `old` and `new` are the bytes of both sites."""

    def __init__(self, folder: Path, old: dict[str, bytes], new: dict[str, bytes]) -> None:
        self.folder, self.old, self.new = folder, old, new

    def site(self) -> dict[str, bytes]:
        return site_of(self.folder / "output")

    def change(self) -> None:
        lay_out(self.folder, NEW)


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Diary:
    folder = tmp_path_factory.mktemp("systems")
    sites = []
    for wishes in (NEW, OLD):
        lay_out(folder, wishes)
        status, _, told = run(folder, "", "rebuild", "--quiet")
        assert status == 0, told
        sites.append(site_of(folder / "output"))
    return Diary(folder, sites[1], sites[0])


@pytest.fixture
def diary(built: Diary, tmp_path: Path) -> Diary:
    """A copy of one's own."""
    shutil.copytree(built.folder, tmp_path / "diary", symlinks=True)
    return Diary(tmp_path / "diary", built.old, built.new)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What is simulated here, other systems are."""
    simulated = pytest.mark.skipif(sys.platform != "linux", reason="lesser systems are simulated on Linux alone")
    for item in items:
        if "tests/systems/" in item.path.as_posix():
            item.add_marker(simulated)
