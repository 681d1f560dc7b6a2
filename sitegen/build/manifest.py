"""The manifest: every task that was done, what it was made from, and what came of it. It lies in one file of the store.

Records of known types are written and read by `msgspec`, which makes nothing else, in a tenth of the time of a pickle.
"""

import os
from contextlib import suppress
from datetime import date
from pathlib import Path

from msgspec import Struct, field, msgpack

from sitegen.build.rule import Records
from sitegen.build.store import key_of, read_checked, write_checked

MANIFESTS = "manifest-*"
DAMAGED = "what was kept from earlier is damaged: everything is made again"
OF_ANOTHER_VERSION = "what was kept from earlier is another version's: everything is made again"


class Manifest(Struct):
    """`tasks` by rule and name. `version` is that of the code that wrote it, `day` and `shown_as` are those of the rebuild that
    did: problems are spelt for them. `content` is the path of the diary's folder, `names` are the files that lay in it."""

    version: str = ""
    day: date = date.min
    shown_as: str = ""
    content: bytes = b""
    names: frozenset[str] = frozenset()
    tasks: dict[str, Records] = field(default_factory=dict)


def manifest_path(root: Path, content: Path) -> Path:
    return root / f"manifest-{key_of(str(content.absolute()))}"


def living_manifests(root: Path, version: str) -> list[Manifest]:
    """Of all diaries whose store this is. That of a folder that is gone, since the diary was moved, is removed."""
    manifests = []
    for path in sorted(root.glob(MANIFESTS)):
        manifest, _ = read_manifest(path, version)
        if manifest.content and not Path(os.fsdecode(manifest.content)).is_dir():
            path.unlink(missing_ok=True)
        else:
            manifests.append(manifest)
    return manifests


def write_manifest(path: Path, manifest: Manifest) -> None:
    """Nothing where a name in it is no text, as some disks allow for a file: what it tells of is made again."""
    with suppress(UnicodeEncodeError):
        write_checked(path, manifest.version.encode() + b"\n" + msgpack.encode(manifest))


def read_manifest(path: Path, version: str) -> tuple[Manifest, str | None]:
    """An empty one where there is none, or it is damaged or of another version; then with a line that says so."""
    if not path.exists():
        return Manifest(version), None
    try:
        written_by, _, body = read_checked(path).partition(b"\n")
        if written_by != version.encode():
            return Manifest(version), OF_ANOTHER_VERSION
        return msgpack.decode(body, type=Manifest), None
    except (OSError, ValueError):
        return Manifest(version), DAMAGED
