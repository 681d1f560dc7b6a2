"""The model -> JSON Schema, by which editors complete and check the keys while the author types."""

from typing import Any

from sitegen.reading.model.author_file import AuthorFile

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(model: AuthorFile) -> dict[str, Any]:
    """For one kind of author file (of an entry: its front matter).

    Stricter than the reader in one thing only, a number in quotes; blind to what a schema cannot see: other files.
    """
    about = {"$schema": DIALECT, "title": model.pattern, "description": model.explained}
    return about | model.group.schema()
