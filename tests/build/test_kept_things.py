"""What is in the store: found again by its inputs, never when it is damaged, collected when nothing reaches it."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from sitegen.build.code_version import LIBRARIES, libraries
from sitegen.build.garbage import COLLECT_EVERY, IDLE_COLLECTIONS, collect_garbage
from sitegen.build.stamps import Stamp, digest_of_stamps, reliable, stamps_in
from sitegen.build.store import CacheMiss, Store, are_whole
from tests.conftest import ROOT


def test_a_value_is_made_once_for_the_same_inputs(tmp_path: Path) -> None:
    """And again for others, for another version, and when its file is damaged."""
    made = []
    for version, inputs in (("1", "a"), ("1", "a"), ("1", "b"), ("2", "a")):
        assert Store(tmp_path).made_by(version).value(inputs, int, lambda: made.append(1) or len(made)) in (1, 2, 3)
    assert len(made) == 3
    for path in tmp_path.glob("records/*/*"):
        path.write_bytes(path.read_bytes()[:-1] + b"!")
    Store(tmp_path).made_by("1").value("a", int, lambda: made.append(1) or len(made))
    assert len(made) == 4


@pytest.mark.parametrize("damage", [b"", b"short", b"x" * 400])
def test_a_damaged_record_is_missing(tmp_path: Path, damage: bytes) -> None:
    """Whatever stands in the file."""
    store = Store(tmp_path)
    name = store.put({"a": 1})
    assert store.get(name, dict[str, int]) == {"a": 1}
    (tmp_path / name).write_bytes(damage)
    with pytest.raises(CacheMiss, match=name):
        store.get(name, dict[str, int])


def test_a_folder_of_files_is_made_again_when_one_was_changed(tmp_path: Path) -> None:
    """A picture that somebody opened and saved is not published as ours."""
    made = []

    def make(out: Path) -> str:
        (out / "inside").mkdir()
        (out / "inside" / "file").write_text(str(len(made)))
        made.append(1)
        return "said"

    folder, said = Store(tmp_path).made_by("1").folder("a", str, make)
    assert (said, len(made)) == ("said", 1)
    Store(tmp_path).made_by("1").folder("a", str, make)
    assert len(made) == 1
    (folder / "inside" / "file").write_text("something else")
    Store(tmp_path).made_by("1").folder("a", str, make)
    assert len(made) == 2


def test_a_kept_page_knows_when_it_was_changed(tmp_path: Path) -> None:
    """By size and time; keeping the same bytes again mends it."""
    output = Store(tmp_path).put_file("index.html", b"page")
    assert are_whole([output], tmp_path)
    (tmp_path / output.kept).write_bytes(b"PAGE")
    assert not are_whole([replace(output, mtime_ns=0)], tmp_path)
    again = Store(tmp_path).put_file("index.html", b"page")
    assert are_whole([again], tmp_path)
    assert (tmp_path / again.kept).read_bytes() == b"page"


def test_stamps_tell_any_change_from_outside(tmp_path: Path) -> None:
    """Another size, another file under the name, one more file."""
    path = tmp_path / "log.csv"
    path.write_text("one")
    digests = {digest_of_stamps(stamps_in(tmp_path))}
    path.write_text("longer")
    digests.add(digest_of_stamps(stamps_in(tmp_path)))
    (tmp_path / "other").write_text("six...")
    (tmp_path / "other").replace(path)
    digests.add(digest_of_stamps(stamps_in(tmp_path)))
    (tmp_path / "new").touch()
    digests.add(digest_of_stamps(stamps_in(tmp_path)))
    assert len(digests) == 4


def test_a_file_of_this_instant_is_not_trusted() -> None:
    """It may change again within the same tick of the clock."""
    stamp = Stamp(3, 1_000_000_123, 1_000_000_123, 7)
    assert reliable(stamp, 1_000_000_124) is None
    assert reliable(stamp, 1_100_000_123) == stamp


def test_a_stamp_of_whole_seconds_is_distrusted_longer() -> None:
    """The disk's clock may tick in steps of two seconds (FAT; common practice, no source)."""
    stamp = Stamp(3, 1_000_000_000, 1_000_000_000, 7)
    assert reliable(stamp, 2_900_000_000) is None
    assert reliable(stamp, 3_100_000_000) == stamp


def test_what_nothing_reaches_is_collected_in_time(tmp_path: Path) -> None:
    """Not at once, so that an edit taken back finds what it needs; not never."""
    for name in ("files/ab/abcd", "files/ab/abff", "records/01/01ff", "folders/idle/picture.jpg", "folders/used/picture.jpg"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("x")
    for _ in range(COLLECT_EVERY * IDLE_COLLECTIONS):
        collect_garbage(tmp_path, lambda: {"files/ab/abcd", "folders/used"})
    assert (tmp_path / "files/ab/abff").exists()
    for _ in range(COLLECT_EVERY):
        collect_garbage(tmp_path, lambda: {"files/ab/abcd", "folders/used"})
    left = sorted(path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*") if path.is_file())
    assert left == ["files/ab/abcd", "folders/used/picture.jpg", "garbage"]


def test_the_version_names_the_libraries() -> None:
    """numpy's version is part of it."""
    assert any(name.startswith("numpy-") for name in libraries())


def test_every_library_that_shapes_bytes_is_named() -> None:
    """Each dependency of the project is, but for those that no published byte depends on."""
    text = (ROOT / "pyproject.toml").read_text("utf-8").partition("dependencies = [")[2].partition("]")[0]
    wanted = {line.strip(' ",').partition(">")[0].replace("-", "_") for line in text.splitlines() if line.strip()}
    assert wanted - {"click", "filelock", "parse", "rich", "watchfiles"} <= set(LIBRARIES)
