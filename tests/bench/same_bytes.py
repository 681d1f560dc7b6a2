"""One diary rebuilt in many surroundings: are the sites the same, byte by byte?

    python tests/bench/same_bytes.py [--diary FOLDER] [--only arithmetic] [--python .venv-3.13/bin/python]

Every surrounding is a real process on a fresh copy of the diary: another folder, clock, tongue, mask, number of processes,
order of files, hash seed, home, file system, arithmetic, Python. Incremental rebuilds are compared with fresh ones.

Arithmetic: NumPy, OpenBLAS, the C library, libvips and libjpeg choose their loops by the processor, and sum and round differently
in each. Here they are made to choose those of older ones; newer ones only run where the processor has them. `--python` names an
interpreter in whose environment the locks are installed.
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

from tests.trust.measured import lay_out_measured  # noqa: E402 # run as a script
from tests.trust.tiny import Wishes, site_of  # noqa: E402 # run as a script

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
    python: str = sys.executable
    flag: str = ""  # of the processor, as Linux tells them; without it the surrounding is left out


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

# Names of loops in NumPy's 2.4 and in its earlier versions; one that a version does not know does nothing.
PLAIN_NUMPY = {"NPY_DISABLE_CPU_FEATURES": "X86_V3 X86_V4 AVX512_ICL AVX512_SPR AVX2 FMA3 AVX512F AVX512CD AVX512_SKX"}
PLAIN_C = {"GLIBC_TUNABLES": "glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4"}
PLAIN_PICTURES = {"VIPS_NOVECTOR": "1", "JSIMD_FORCENONE": "1"}
OLDEST = {**PLAIN_NUMPY, **PLAIN_C, **PLAIN_PICTURES, "OPENBLAS_CORETYPE": "Prescott"}
KERNELS = (
    Surrounding("arithmetic: numpy without AVX2 and FMA", PLAIN_NUMPY),
    Surrounding("arithmetic: OpenBLAS for Prescott", {"OPENBLAS_CORETYPE": "Prescott"}),
    Surrounding("arithmetic: OpenBLAS for Nehalem", {"OPENBLAS_CORETYPE": "Nehalem"}),
    Surrounding("arithmetic: OpenBLAS for Sandybridge", {"OPENBLAS_CORETYPE": "Sandybridge"}, flag="avx"),
    Surrounding("arithmetic: OpenBLAS for Haswell", {"OPENBLAS_CORETYPE": "Haswell"}, flag="avx2"),
    Surrounding("arithmetic: OpenBLAS for SkylakeX", {"OPENBLAS_CORETYPE": "SkylakeX"}, flag="avx512f"),
    Surrounding("arithmetic: the C library without FMA", PLAIN_C),
    Surrounding("arithmetic: libvips and libjpeg without vectors", PLAIN_PICTURES),
    Surrounding("arithmetic: an old processor, all of these together", OLDEST),
)


def built(one: Surrounding, base: Path, diary: Path | None) -> dict[str, bytes]:
    """The site as that surrounding makes it, with the modes of its files."""
    folder = base / one.folder
    folder.mkdir(parents=True)
    if one.again and diary is None:
        lay_out_measured(folder, replace(WISHES, title="Something else", body="Another text.", latitude=10.0))
        run(one, folder)
    if diary is not None:
        shutil.copytree(diary, folder / "content")
    else:
        lay_out_measured(folder, replace(WISHES, backwards=one.backwards))
    run(one, folder)
    modes = {f"mode of {path.name}": oct(path.stat().st_mode).encode() for path in (folder / "output").rglob("*")}
    return site_of(folder / "output") | modes


def run(one: Surrounding, folder: Path) -> None:
    command = [one.python, "-m", "sitegen", "rebuild", "--jobs", str(one.jobs), "--themes", str(ROOT / "themes")]
    plain = {name: value for name, value in os.environ.items() if name not in ("SOURCE_DATE_EPOCH", "PYTHONHASHSEED")}
    environment = {**plain, "PYTHONPATH": str(ROOT), **one.variables}
    told = subprocess.run(command, cwd=folder, env=environment, umask=one.mask, capture_output=True, text=True, check=False)
    if told.returncode:
        raise SystemExit(f"{one.name}: {told.stderr}")


def runs_here(one: Surrounding) -> bool:
    """Loops that the processor lacks would end in an illegal instruction."""
    told = Path("/proc/cpuinfo")
    return not one.flag or (told.is_file() and one.flag in told.read_text("ascii", "replace").split())


def asked_for() -> tuple[tuple[Surrounding, ...], Path | None]:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--diary", type=Path, help="a content folder; a tiny one of its own without")
    words.add_argument("--only", default="", help="surroundings whose names begin so, beside the plain one")
    words.add_argument("--python", action="append", default=[], help="another interpreter; may be given again")
    asked = words.parse_args()
    pythons = tuple(Surrounding(f"python: {path}", python=str(Path(path).absolute())) for path in asked.python)
    every = (*SURROUNDINGS[1:], *KERNELS, *pythons)
    return (SURROUNDINGS[0], *(one for one in every if one.name.startswith(asked.only))), asked.diary


def main() -> None:
    surroundings, diary = asked_for()
    reference: dict[str, bytes] = {}
    wrong = tried = 0
    for one in surroundings:
        if not runs_here(one):
            print(f"{one.name}: left out, the processor has no {one.flag}", flush=True)
            continue
        place = "/dev/shm" if one.memory and Path("/dev/shm").is_dir() else None
        with tempfile.TemporaryDirectory(dir=place) as base:
            found = built(one, Path(base), diary)
        reference = reference or found
        differ = sorted(name for name in reference.keys() | found.keys() if reference.get(name) != found.get(name))
        wrong, tried = wrong + bool(differ), tried + 1
        print(f"{one.name}: {differ or 'the same'}", flush=True)
    print(f"{tried} surroundings, {len(reference)} files and modes, {wrong} differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
