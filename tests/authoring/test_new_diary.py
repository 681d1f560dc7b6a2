"""A new diary: complete, valid, and never put over anything."""

import json
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from sitegen.authoring.new_diary import new_diary, start_diary
from sitegen.authoring.schemas import schema_files
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.reading.front_matter import FENCE
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.value_types.group import Group
from sitegen.rebuild import check

TODAY = date(2026, 11, 25)
FILES = {
    "diary": "diary.yaml",
    "site": "sites/garden.yaml",
    "rig": "rigs/first-train.yaml",
    "entry": "entries/first-light.md",
}


def front_matter(path: str) -> str:
    text = new_diary(TODAY)[f"content/{path}"]
    return text.split(f"{FENCE}\n")[1] if path.endswith(".md") else text


def awake(text: str) -> str:
    """Every key that sleeps behind '#' brought to life, as an author would."""
    return re.sub(r"^#(?! \S)", "", text, flags=re.MULTILINE)


def typed_as_text(text: str) -> Any:
    return yaml.load(text, Loader=yaml.BaseLoader)


def test_it_checks_clean_as_it_is(tmp_path: Path) -> None:
    """What start writes has neither an error nor a warning."""
    start_diary(tmp_path / "new", TODAY, "new")
    base = tmp_path / "new"
    assert check(Folders(base / "content", base / "themes", base / "output", None), TODAY) == ()


@pytest.mark.parametrize("model", AUTHOR_FILES, ids=lambda model: model.name)
def test_every_key_stands_there(model: Any) -> None:
    """With what sleeps behind '#' awake, a file holds every key of its kind, those inside groups too."""
    found = typed_as_text(awake(front_matter(FILES[model.name])))
    assert list(found) == [key.name for key in model.group.keys]
    for key in model.group.keys:
        if isinstance(key.type, Group):
            assert list(found[key.name]) == [inner.name for inner in key.type.keys]


@pytest.mark.parametrize("model", AUTHOR_FILES, ids=lambda model: model.name)
def test_awake_keys_satisfy_the_schema(model: Any) -> None:
    """The example behind each sleeping key is one that an editor accepts."""
    schema = json.loads(schema_files()[f".schemas/{model.name}.json"])
    Draft202012Validator.check_schema(schema)
    found = yaml.load(awake(front_matter(FILES[model.name])), Loader=_EditorLoader)
    assert [error.message for error in Draft202012Validator(schema).iter_errors(found)] == []


def test_the_schema_line_leads_to_the_schema() -> None:
    """From each file, the editor's line names a file that start wrote."""
    files = new_diary(TODAY)
    for path in FILES.values():
        line = front_matter(path).splitlines()[0]
        named = line.partition("$schema=")[2]
        folder = Path("/content") / path
        assert str((folder.parent / named).resolve().relative_to("/")) in files


def test_a_folder_with_anything_in_it_is_refused(tmp_path: Path) -> None:
    """Even a hidden file is somebody's."""
    (tmp_path / ".kept").touch()
    with pytest.raises(
        DiaryProblems, match=r"^nd:1:1: error: is not empty: a new diary begins in a folder of its own; name one"
    ):
        start_diary(tmp_path, TODAY, "nd")
    assert [path.name for path in tmp_path.iterdir()] == [".kept"]


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    """A file of that name is left alone."""
    (tmp_path / "nd").write_text("mine")
    with pytest.raises(DiaryProblems, match="nd:1:1: error: is a file: a new diary begins in a folder of its own"):
        start_diary(tmp_path / "nd", TODAY, "nd")


class _EditorLoader(yaml.SafeLoader):
    """YAML 1.2 as editors read it: dates and sexagesimals are text."""


_EditorLoader.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in found if not tag.endswith(("timestamp", ":int"))]
    for first, found in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
_EditorLoader.add_implicit_resolver("tag:yaml.org,2002:int", re.compile(r"[-+]?\d+$"), list("-+0123456789"))
