"""The paths that DEVELOPERS.md tells are those that a rebuild takes, and an exposure's way through the machinery is short."""

import re
import sys
from collections.abc import Iterator
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

import sitegen
from sitegen.rebuild import rebuild
from tests.build.small_diary import lay_out
from tests.conftest import ROOT, TODAY

PACKAGE = f"{Path(sitegen.__file__).parent}/"
PATHS = {
    words: re.findall(r"`([\w/]+\.py)`", path)
    for words, path in re.findall(
        r"^- \*\*one (\w+)\*\*(.*?)(?=^- |^## )", (ROOT / "DEVELOPERS.md").read_text("utf-8"), re.MULTILINE | re.DOTALL
    )
}
HANDED_ON = {
    "reading/capture_logs/table.py:_understood", "reading/capture_logs/table.py:_subs", "build/store.py:put",
    "build/store.py:get", "facts/diary_in_sky.py:views_of", "pages/lanes.py:_block", "publish/staging.py:place",
}  # fmt: skip
"""Where a row becomes a sub, a sub is kept and taken up again, gets its place in the sky, is drawn, and reaches the site."""
MACHINERY = ("rebuild.py", "build/", "publish/")
WORK = "build/work/"


class Followed:
    """`calls`: files of the package in the order in which their functions were called, each run of one file once; `ways`: those
    that were waiting for it whenever an exposure was handed on."""

    def __init__(self) -> None:
        self.calls: list[str] = []
        self.ways: dict[str, set[str]] = {}

    def __call__(self, frame: FrameType, event: str, _: Any) -> None:
        file = _file_of(frame)
        if event != "call" or file is None:
            return
        if not self.calls or self.calls[-1] != file:
            self.calls.append(file)
        step = f"{file}:{frame.f_code.co_name}"
        if step in HANDED_ON:
            self.ways.setdefault(step, set()).update(_files_waiting(frame))


def _file_of(frame: FrameType) -> str | None:
    name = frame.f_code.co_filename
    return name[len(PACKAGE) :] if name.startswith(PACKAGE) else None


def _files_waiting(frame: FrameType | None) -> Iterator[str]:
    while frame is not None:
        if file := _file_of(frame):
            yield file
        frame = frame.f_back


@pytest.fixture(scope="module")
def followed(tmp_path_factory: pytest.TempPathFactory) -> Followed:
    """A rebuild from nothing, in one process."""
    folders, calls = lay_out(tmp_path_factory.mktemp("followed")), Followed()
    before = sys.getprofile()
    sys.setprofile(calls)
    try:
        rebuild(folders, TODAY, jobs=1)
    finally:
        sys.setprofile(before)
    return calls


def test_three_paths_are_told() -> None:
    assert {words: bool(path) for words, path in PATHS.items()} == {"exposure": True, "sentence": True, "picture": True}


@pytest.mark.parametrize("what", PATHS)
def test_a_path_is_taken_as_it_is_told(followed: Followed, what: str) -> None:
    """File by file, each called after the one before it."""
    calls = iter(followed.calls)
    assert [file for file in PATHS[what] if file not in calls] == []


def test_an_exposure_passes_few_files(followed: Followed) -> None:
    """At most 35 wait for it, at most eight of them machinery; what tasks do for the diary is not."""
    assert followed.ways.keys() == HANDED_ON
    files = set().union(*followed.ways.values())
    machinery = {file for file in files if file.startswith(MACHINERY) and not file.startswith(WORK)}
    assert len(files) <= 35, sorted(files)
    assert len(machinery) <= 8, sorted(machinery)
