"""What is kept belongs to the code that made it: a version follows from what the code imports, and from nothing else."""

from pathlib import Path

import pytest

from sitegen.build import code_version
from sitegen.build.code_version import PACKAGE, code_versions, version_of
from sitegen.build.context import PICTURE_WORK, STAR_WORK
from sitegen.build.imports import files_behind


@pytest.fixture
def package(tmp_path: Path) -> Path:
    """A package in which a work imports in every way there is."""
    files = {
        "__init__.py": "",
        "work/__init__.py": "",
        "work/main.py": """
from typing import TYPE_CHECKING
from sitegen.lazy_module import LazyModule
from sitegen.tools import plain
from sitegen.tools.named import NAME
import sitegen.whole
lazy = LazyModule("sitegen.tools.lazy", "thing")
if TYPE_CHECKING:
    from sitegen.tools.typed import Typed
def late():
    from sitegen.tools.inside import x
    resolve_name("sitegen.tools.function:work")
    return import_module("sitegen.tools.literal")
""",
        "tools/__init__.py": "",
        **{f"tools/{name}.py": "" for name in ("named", "lazy", "typed", "inside", "literal", "stranger", "deep", "function")},
        "tools/plain.py": "from sitegen.tools import deep",
        "tools/table.csv": "1,2",
        "tools/NOTES.md": "words",
        "others/data.csv": "3",
        "lazy_module.py": "",
        "whole.py": "",
    }
    for name, text in files.items():
        path = tmp_path / "sitegen" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return tmp_path / "sitegen"


IMPORTED = [
    "__init__.py", "lazy_module.py", "tools/__init__.py", "tools/deep.py", "tools/function.py", "tools/inside.py",
    "tools/lazy.py", "tools/literal.py", "tools/named.py", "tools/plain.py", "whole.py", "work/__init__.py", "work/main.py",
]  # fmt: skip


def versions_before_and_after(package: Path, name: str) -> tuple[str, str]:
    before = version_of.__wrapped__(package, "sitegen.work.main")
    (package / name).write_text((package / name).read_text() + "\n# changed")
    return before, version_of.__wrapped__(package, "sitegen.work.main")


def test_every_way_of_importing_is_seen(package: Path) -> None:
    """At the top, inside a function, through another file, by a name in quotes; not for a type checker alone."""
    assert sorted(files_behind(package, "sitegen.work.main")) == IMPORTED


@pytest.mark.parametrize("name", [*IMPORTED, "tools/table.csv"])
def test_another_version_of_what_the_work_imports(package: Path, name: str) -> None:
    """Whatever it imports, and the data beside it: one changed byte is another version."""
    before, after = versions_before_and_after(package, name)
    assert before != after


@pytest.mark.parametrize("name", ["tools/stranger.py", "tools/typed.py", "tools/NOTES.md", "others/data.csv"])
def test_what_the_work_does_not_import_is_nothing_to_it(package: Path, name: str) -> None:
    """So that an upgrade that touched only pages encodes no picture again."""
    before, after = versions_before_and_after(package, name)
    assert before == after


def test_a_work_that_is_no_module(package: Path) -> None:
    """A renamed file is noticed, and no version of nothing is given."""
    with pytest.raises(ValueError, match=r"^no module sitegen\.work\.lost$"):
        files_behind(package, "sitegen.work.lost")


@pytest.mark.parametrize(
    ("work", "needed"),
    [
        (PICTURE_WORK, ["pictures/encoders.py", "stars/solving/solver.py", "catalogue/star_field.py", "limited_reader.py"]),
        (STAR_WORK, ["stars/rings.py", "reading/star_frames.py", "sky/optics.py", "limited_reader.py", "problems.py"]),
    ],
)
def test_the_works_of_a_rebuild(work: str, needed: list[str]) -> None:
    """Pictures and star measurements hang on these, some of them in rooms of another kind; on no page, chart or command."""
    behind = files_behind(PACKAGE, work.partition(":")[0])
    assert [name for name in needed if name not in behind] == []
    assert [name for name in behind if name.startswith(("pages/", "charts/", "cli/", "feeds/", "build/", "publish/"))] == []


def test_versions_are_worked_out_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """They are kept for as long as the code stays the same, and worked out again when it changes or what is kept is damaged."""
    asked: list[str] = []
    given = lambda package, module: (asked.append(module), f"{module}-{len(asked)}")[1]  # noqa: E731
    monkeypatch.setattr(code_version, "version_of", given)
    assert code_versions(("a", "b"), tmp_path) == {"a": "a-1", "b": "b-2"}
    assert code_versions(("a", "b"), tmp_path) == {"a": "a-1", "b": "b-2"}
    (tmp_path / "versions").write_bytes(b"damaged")
    assert code_versions(("a", "b"), tmp_path) == {"a": "a-3", "b": "b-4"}
    monkeypatch.setattr(code_version, "package_version", lambda: "other code")
    assert code_versions(("a", "b"), tmp_path) == {"a": "a-5", "b": "b-6"}
    assert code_versions(("a", "c"), tmp_path)["c"] == "c-8"
