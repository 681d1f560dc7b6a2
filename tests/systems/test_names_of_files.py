"""Names that one system keeps and another does not: what is published has none of them."""

import ast
import unicodedata
from pathlib import Path

import pytest

from sitegen.diary.addresses import DEVICE_NAMES
from tests.conftest import ROOT
from tests.systems.conftest import Diary
from tests.systems.machines import run

LONGEST_PUBLISHED = 160
"""Windows takes 260 letters for a whole path unless it is told otherwise (Microsoft, Maximum Path Length Limitation); a hundred
are left for the folder of the diary."""
LONG_NAME = "a" * 100


def wrong_parts(path: str) -> list[str]:
    """Parts that Windows, macOS or a web server may not keep as they are."""
    return [
        part for part in path.split("/")
        if part.split(".")[0].casefold() in DEVICE_NAMES or part.endswith((".", " ")) or set(part) & set('<>:"\\|?*')
        or not part.isascii() or not part.isprintable()
    ]  # fmt: skip


def test_published_names_are_kept_everywhere(diary: Diary) -> None:
    """Of targets and topics called like devices, of entries with long names: ASCII, unequal in any case, no device, short."""
    entries = diary.folder / "content/entries"
    text = (entries / "first.md").read_text("utf-8")
    target = "target: {name: Con, ra: 22h29m38s, dec: -20d50m14s}\ntopics: [aux, Nul, COM1]"
    named = text.replace("target: NGC 7293", target)
    (entries / f"{LONG_NAME}.md").write_text(named, "utf-8")
    status, _, told = run(diary.folder, "", "rebuild", "--quiet")
    assert status == 0, told
    paths = sorted(diary.site())
    assert {path: wrong for path in paths if (wrong := wrong_parts(path))} == {}
    assert len({path.casefold() for path in paths}) == len(paths)
    assert "targets/con-x/index.html" in paths
    assert max(map(len, paths)) <= LONGEST_PUBLISHED


def test_an_entry_called_like_a_device_is_refused(diary: Diary) -> None:
    """Nobody with Windows could fetch that diary."""
    entries = diary.folder / "content/entries"
    (entries / "first.md").rename(entries / "aux.md")
    status, _, told = run(diary.folder, "", "check", "--quiet")
    assert status == 1
    assert "content/entries/aux.md:1:1: error: 'aux' is the name of a device on Windows; rename it to 'the-aux.md'" in told


def test_two_entries_that_differ_only_in_case(diary: Diary) -> None:
    """One file on Windows and macOS."""
    entries = diary.folder / "content/entries"
    (entries / "First.md").write_text((entries / "first.md").read_text("utf-8"), "utf-8")
    status, _, told = run(diary.folder, "", "check", "--quiet")
    assert status == 1
    assert "differs only in case from" in told


@pytest.mark.parametrize("form", ["NFC", "NFD"])
def test_a_name_in_either_unicode_form_is_found(diary: Diary, form: str) -> None:
    """macOS may spell 'é' as two letters on disk; the author writes one."""
    pictures, entry = diary.folder / "content/pictures", diary.folder / "content/entries/first.md"
    (pictures / "helix.jpg").rename(pictures / unicodedata.normalize(form, "hélix.jpg"))
    typed = unicodedata.normalize("NFC", "pictures/hélix.jpg")
    entry.write_text(entry.read_text("utf-8").replace("pictures/helix.jpg", typed), "utf-8")
    status, _, told = run(diary.folder, "", "rebuild", "--quiet")
    assert status == 0, told
    assert not [path for path in diary.site() if not path.isascii()]


def is_text_to_write(mode: object) -> bool:
    """A mode of `open`, not the name of a file in an archive, which opens as bytes."""
    return isinstance(mode, str) and set(mode) <= set("rwxabt+") and bool(set(mode) & set("wxa")) and "b" not in mode


def text_calls(path: Path) -> list[str]:
    """Calls that read or write text and leave its encoding or its newlines to the system."""
    wrong = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
            continue
        name, named = node.func.attr, {word.arg for word in node.keywords}
        mode = node.args[0].value if node.args and isinstance(node.args[0], ast.Constant) else "r"
        place = f"{path.relative_to(ROOT)}:{node.lineno}"
        if name == "read_text" and not node.args and "encoding" not in named:
            wrong.append(f"{place}: no encoding")
        elif name == "write_text" and not ({"newline"} <= named and (len(node.args) > 1 or "encoding" in named)):
            wrong.append(f"{place}: no encoding or newline")
        elif name == "open" and is_text_to_write(mode) and "newline" not in named:
            wrong.append(f"{place}: no newline")
    return wrong


def test_text_is_utf_8_with_plain_newlines_everywhere() -> None:
    """Else Windows would write its code page and its line ends, and publish other bytes. Scripts for developers are left out."""
    sources = [path for path in sorted((ROOT / "sitegen").rglob("*.py")) if path.name != "trim_open_data.py"]
    assert [line for path in sources for line in text_calls(path)] == []
