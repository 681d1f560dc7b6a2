"""The data sets are told of where they lie, and stay small."""

import gzip
import subprocess
import sys
from pathlib import Path

import sitegen.catalogue
from sitegen.catalogue.credits import CREDITS

ROOM = Path(sitegen.catalogue.__file__).parent
SOURCES = (ROOM / "SOURCES.md").read_text("utf-8")


def test_every_data_file_is_explained() -> None:
    """SOURCES.md names each bundled file and each credited data set with its licence."""
    files = sorted(path.name for path in (ROOM / "data").iterdir())
    assert files
    assert [name for name in files if f"`{name}`" not in SOURCES] == []
    assert [credit.name for credit in CREDITS if credit.name not in SOURCES] == []
    assert [credit.spdx for credit in CREDITS if credit.spdx not in SOURCES] == []


def test_bundled_data_stay_small_and_repeatable() -> None:
    """Less than 250 kB, and 8 MB of packed stars; no gzip file carries a time of its making (RFC 1952: bytes 4 to 7)."""
    files = list((ROOM / "data").iterdir())
    assert sum(path.stat().st_size for path in files if path.suffix != ".bin") < 250_000
    assert sum(path.stat().st_size for path in files if path.suffix == ".bin") < 8_000_000
    zipped = [path for path in files if path.suffix == ".gz"]
    assert len(zipped) >= 5
    assert all(path.read_bytes()[4:8] == b"\0\0\0\0" and gzip.decompress(path.read_bytes()) for path in zipped)


def test_looking_up_needs_no_heavy_library() -> None:
    """Finding an object imports neither numpy nor astropy nor pyongc's own module."""
    code = (
        "import sys; from sitegen.catalogue.lookup import find_object; find_object('Rosette'); "
        "sys.exit(' '.join(sorted({'numpy', 'erfa', 'astropy', 'pyongc', 'matplotlib'} & set(sys.modules))) or 0)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")
