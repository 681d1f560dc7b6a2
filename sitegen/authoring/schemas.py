"""JSON Schemas of the author's files, and the line by which an editor finds them."""

import json

from sitegen.reading.json_schema import json_schema
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.registry import AUTHOR_FILES

FOLDER = ".schemas"


def schema_files() -> dict[str, str]:
    """By path inside content/: hidden there, so that the reader passes over them."""
    return {_path(model): json.dumps(json_schema(model), ensure_ascii=False, indent=1) + "\n" for model in AUTHOR_FILES}


def schema_line(model: AuthorFile) -> str:
    """A comment that common editors understand, relative to where such a file lies."""
    return f"# yaml-language-server: $schema={'../' * model.pattern.count('/')}{_path(model)}"


def _path(model: AuthorFile) -> str:
    return f"{FOLDER}/{model.name}.json"
