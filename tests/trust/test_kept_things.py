"""What is kept between rebuilds may be damaged, another version's, or a stranger's: one line discards it, and it runs nothing."""

import pickle
from datetime import UTC, datetime
from hashlib import blake2b
from pathlib import Path
from random import Random
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from click.testing import CliRunner

from sitegen.build.records import load
from sitegen.build.store import read_record, write_record
from sitegen.cli import main
from sitegen.folders import Folders
from sitegen.rebuild import rebuild
from tests.conftest import TODAY
from tests.diaries import HILL, RIG
from tests.trust import tiny


@pytest.fixture(scope="module")
def folders(tmp_path_factory: pytest.TempPathFactory) -> Folders:
    """The tiny diary, built once."""
    one = tiny.lay_out(tmp_path_factory.mktemp("kept"))
    rebuild(one, TODAY, jobs=1)
    return one


def kept_files(folders: Folders) -> list[Path]:
    assert folders.keep is not None
    return sorted(path for path in folders.keep.rglob("*") if path.is_file() and path.name != "lock")


def test_damage_anywhere_is_mended(folders: Folders) -> None:
    """Every kept file damaged, cut or emptied, whatever it is: the next rebuild gives the very same site and says one line."""
    before, chance = tiny.site_of(folders.output), Random(1)
    for number, path in enumerate(kept_files(folders)):
        content = bytearray(path.read_bytes())
        content[chance.randrange(len(content))] ^= 0x20
        path.write_bytes([bytes(content), bytes(content[: len(content) // 2]), b""][number % 3])
    report = rebuild(folders, TODAY, jobs=1)
    assert tiny.site_of(folders.output) == before
    assert report.said == ("what was kept from earlier is damaged: everything is made again",)


def test_another_version_is_told_by_the_command(folders: Folders, monkeypatch: pytest.MonkeyPatch) -> None:
    """After an update the first rebuild says that it begins anew, and names what lies in the output by hand."""
    monkeypatch.setattr("sitegen.build.run.code_versions", lambda modules, root: dict.fromkeys(modules, "an older one"))
    (folders.output / "CNAME").write_text("nights.example")
    words = ["rebuild", "--jobs", "1", *(f"--{name}={getattr(folders, name)}" for name in ("content", "themes", "output"))]
    told = CliRunner().invoke(main, words)
    assert told.exit_code == 0, told.output
    assert "what was kept from earlier is another version's: everything is made again\n" in told.output
    assert "  not made by sitegen, and left as they are: CNAME\n" in told.output
    assert (folders.output / "CNAME").read_text() == "nights.example"


class Attack:
    def __init__(self, *call: Any) -> None:
        self.call = call

    def __reduce__(self) -> Any:
        return self.call[0], self.call[1:]


@pytest.mark.parametrize("attack", [
    Attack(print, "run"), Attack(eval, "print('run')"), Attack(getattr, ZoneInfo, "no_cache"), Attack(getattr, "x", "format"),
    Attack(Path("/etc").iterdir), Attack(rebuild, None, None),
])  # fmt: skip
def test_a_strangers_pickle_runs_nothing(attack: Attack, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With a right checksum in front, as anybody can write one: it is as good as missing."""
    body = pickle.dumps((attack,), protocol=5)
    (tmp_path / "kept").write_bytes(blake2b(body, digest_size=20).digest() + body)
    assert read_record(tmp_path / "kept") is None
    with pytest.raises(pickle.UnpicklingError, match="is no record"):
        load(body)
    assert capsys.readouterr().out == ""


def test_a_name_inside_a_record_is_no_way_round() -> None:
    """Protocol 4 may name an attribute of a class: what a record's function can reach is out of reach."""
    body = b"\x80\x04\x8c\x14sitegen.diary.target\x8c\x18Target.__init__.__code__\x93."
    with pytest.raises(pickle.UnpicklingError, match="is no record"):
        load(body)


def test_records_come_back(tmp_path: Path) -> None:
    """What is really kept is read as it was: records, dates, zones, arrays."""
    value = (HILL, RIG, datetime(2026, 6, 14, tzinfo=UTC), ZoneInfo("Pacific/Auckland"), {"a": frozenset({1})}, tmp_path)
    write_record(tmp_path / "kept", value)
    assert read_record(tmp_path / "kept") == (value,)
    write_record(tmp_path / "kept", np.arange(6.0).reshape(2, 3))
    found = read_record(tmp_path / "kept")
    assert found is not None
    assert np.array_equal(found[0], np.arange(6.0).reshape(2, 3))
