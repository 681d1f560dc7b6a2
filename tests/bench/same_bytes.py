"""One diary rebuilt in many surroundings: are the sites the same, byte by byte?

    python tests/bench/same_bytes.py [--diary FOLDER]

Every surrounding is a real process on a fresh copy of the diary: another folder, clock, tongue, mask, number of processes,
order of files, hash seed, home, file system. Incremental rebuilds are compared with fresh ones.
"""

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass, field, replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.trust.tiny import Wishes, lay_out, site_of  # noqa: E402 # run as a script

WISHES = Wishes(title="The same everywhere")


@dataclass(frozen=True)
class Surrounding:
    name: str
    variables: dict[str, str] = field(default_factory=dict)
    jobs: int = 1
    mask: int = 0o022
    folder: str = "diary"
    backwards: bool = False
    memory: bool = False
    user: int | None = None
    again: bool = False  # built first as another diary, then changed into this one


SURROUNDINGS = (
    Surrounding("plain"),
    Surrounding("another folder, with blanks", folder="a folder's Näme"),
    Surrounding("clock east", {"TZ": "Pacific/Kiritimati"}),
    Surrounding("clock west", {"TZ": "America/Adak"}, folder="b"),
    Surrounding("no locale", {"LC_ALL": "C", "LANG": "C", "PYTHONUTF8": "0"}),
    Surrounding("another tongue", {"LC_ALL": "tr_TR.UTF-8", "LANG": "tr_TR.UTF-8", "LANGUAGE": "tr"}),
    Surrounding("strict mask", mask=0o077),
    Surrounding("open mask", mask=0o000),
    Surrounding("two processes", jobs=2),
    Surrounding("files in another order", backwards=True),
    Surrounding("another file system", memory=True),
    Surrounding("hash seed", {"PYTHONHASHSEED": "12345"}),
    Surrounding("another hash seed", {"PYTHONHASHSEED": "0"}),
    Surrounding("another home and user name", {"HOME": "/nowhere", "USER": "somebody", "LOGNAME": "somebody", "HOSTNAME": "h"}),
    Surrounding("a date from outside", {"SOURCE_DATE_EPOCH": "86400"}),
    Surrounding("incremental", again=True),
)


def built(one: Surrounding, base: Path, diary: Path | None) -> dict[str, bytes]:
    """The site as that surrounding makes it, with the modes of its files."""
    folder = base / one.folder
    folder.mkdir(parents=True)
    if one.again and diary is None:
        lay_out(folder, replace(WISHES, title="Something else", body="Another text.", latitude=10.0))
        run(one, folder)
    if diary is not None:
        shutil.copytree(diary, folder / "content")
    else:
        lay_out(folder, replace(WISHES, backwards=one.backwards))
    run(one, folder)
    modes = {f"mode of {path.name}": oct(path.stat().st_mode).encode() for path in (folder / "output").rglob("*")}
    return site_of(folder / "output") | modes


def run(one: Surrounding, folder: Path) -> None:
    command = [sys.executable, "-m", "sitegen", "rebuild", "--jobs", str(one.jobs), "--themes", str(ROOT / "themes")]
    plain = {name: value for name, value in os.environ.items() if name not in ("SOURCE_DATE_EPOCH", "PYTHONHASHSEED")}
    environment = {**plain, "PYTHONPATH": str(ROOT), **one.variables}
    told = subprocess.run(command, cwd=folder, env=environment, umask=one.mask, capture_output=True, text=True, check=False)
    if told.returncode:
        raise SystemExit(f"{one.name}: {told.stderr}")


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--diary", type=Path, help="a content folder; a tiny one of its own without")
    asked = words.parse_args()
    reference: dict[str, bytes] = {}
    wrong = 0
    for one in SURROUNDINGS:
        place = "/dev/shm" if one.memory and Path("/dev/shm").is_dir() else None
        with tempfile.TemporaryDirectory(dir=place) as base:
            found = built(one, Path(base), asked.diary)
        reference = reference or found
        differ = sorted(name for name in reference.keys() | found.keys() if reference.get(name) != found.get(name))
        wrong += bool(differ)
        print(f"{one.name}: {differ or 'the same'}", flush=True)
    print(f"{len(SURROUNDINGS)} surroundings, {len(reference)} files and modes, {wrong} differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
