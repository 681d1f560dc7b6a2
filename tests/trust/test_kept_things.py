"""What is kept between rebuilds may be damaged, another version's, or a stranger's: one line discards it, and it runs nothing."""

import pickle
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from click.testing import CliRunner
from msgspec import Struct, msgpack, to_builtins

from sitegen.build.kept_entries import KeptEntry, kept_entry
from sitegen.build.manifest import Manifest
from sitegen.build.records import dump, load
from sitegen.build.rules.entries import EntryRead
from sitegen.build.rules.entry_pages import EntryPages
from sitegen.build.rules.facts import FactsSummary
from sitegen.build.store import CacheMiss, Store, write_checked
from sitegen.build.work.kept_prepared import KeptPrepared, kept_prepared
from sitegen.cli import main
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.folders import Folders
from sitegen.pages.card import EntryCard
from sitegen.rebuild import STORE, rebuild
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


class Unlike(Struct):
    """Another record than the one that is asked for."""

    name: int


@pytest.mark.parametrize("body", [
    pickle.dumps(HILL), dump(Unlike(7)), dump({"name": ["a"]}), dump(HILL)[:-4], b"", b"\xc1",
    dump({**to_builtins(HILL, builtin_types=(datetime,)), "latitude_deg": "north"}),
])  # fmt: skip
def test_a_strangers_record_is_as_good_as_missing(body: bytes, tmp_path: Path) -> None:
    """With a right checksum in front, as anybody can write one: only values of the type that is asked for come out of it."""
    store = Store(tmp_path)
    write_checked(tmp_path / "kept", body)
    with pytest.raises(CacheMiss):
        store.get("kept", Site)


def test_an_array_of_objects_is_refused(tmp_path: Path) -> None:
    """Its bytes would be taken for addresses."""
    with pytest.raises(ValueError, match="an array of objects"):
        load(dump(("|O", (1,), bytes(8))), np.ndarray[tuple[int], np.dtype[np.float64]])


class Everything(Struct):
    """Of every kind of value that records have."""

    site: Site
    rig: Rig
    moment: datetime
    zone: ZoneInfo
    names: frozenset[int]
    path: Path
    lengths: np.ndarray[tuple[int, int], np.dtype[np.float64]]


def test_records_come_back(tmp_path: Path) -> None:
    """What is really kept is read as it was: records, dates, zones, arrays."""
    numbers = np.arange(6.0).reshape(2, 3)
    moment, zone = datetime(2026, 6, 14, tzinfo=UTC), ZoneInfo("Pacific/Auckland")
    value = Everything(HILL, RIG, moment, zone, frozenset({1}), tmp_path, numbers)
    store = Store(tmp_path)
    back = store.get(store.put(value), Everything)
    assert np.array_equal(back.lengths, numbers)
    names = [name for name in Everything.__struct_fields__ if name != "lengths"]
    assert [getattr(back, name) for name in names] == [getattr(value, name) for name in names]


def test_every_record_of_a_diary_comes_back_the_same(folders: Folders) -> None:
    """To the type and the time zone: a page drawn from what was kept is the one drawn from what was made."""
    rebuild(folders, TODAY, jobs=1)
    assert folders.keep is not None
    store, differing = Store(folders.keep / STORE), []
    manifest = next(store.root.glob("manifest-*")).read_bytes()[20:].partition(b"\n")[2]
    tasks = msgpack.decode(manifest, type=Manifest).tasks
    prepared = [msgpack.decode(record.value, type=FactsSummary).prepared for record in tasks["facts"].values()]
    entries = [msgpack.decode(record.value, type=EntryRead).entry for record in tasks["entries"].values()]
    cards = [msgpack.decode(record.value, type=EntryPages).card for record in tasks["entry pages"].values()]
    kinds = [(prepared, KeptPrepared, kept_prepared), (entries, KeptEntry, kept_entry), (cards, EntryCard, None)]
    for names, kind, kept in kinds:
        assert names
        for name in names:
            once = store.get(str(name), kind)
            differing += list(_differences(once, load(dump(once), kind), kind.__name__))
            differing += [f"{name} is kept under another name"] if store.put(once) != name else []
            differing += [f"{name} is not what it was"] if kept and kept(once.whole()) != once else []
    assert differing == []


def _differences(one: Any, other: Any, path: str) -> Iterator[str]:
    if type(one) is not type(other):
        yield f"{path}: {type(one)} {type(other)}"
    elif isinstance(one, Struct):
        for name in one.__struct_fields__:
            yield from _differences(getattr(one, name), getattr(other, name), f"{path}.{name}")
    elif isinstance(one, tuple | list):
        yield from (each for pair in zip(one, other, strict=True) for each in _differences(*pair, f"{path}[]"))
    elif isinstance(one, datetime) and one.utcoffset() != other.utcoffset():
        yield f"{path}: {one} {other}"
