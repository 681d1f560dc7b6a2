"""What gathering and harvesting a disk of captures cost beside what cannot be avoided.

    python tests/bench/captures.py [--frames 5000] [--more 20000] [--times 3] [--most 200000]

`--frames 0` leaves gathering out. `--more` frames are begun and harvested; `--most` frames, 0 for none, are harvested for the
memory that it takes. Each hundred nights have another target.

Frames of 45 cards that differ as real ones do (dates, filters, temperatures), raw, calibrated, dark and sorted out, in folders of
nights. Every figure is processor time (user + system, children included) of a command in a process of its own, the least of the
runs; both sides take turns, so that a busy machine troubles both alike. Files were just written: no disk is waited for.

The floors: opening each file and reading 2880-byte blocks up to END; `os.stat` of each path that a walk of the folder finds; and
start-up, which is the same command on a folder of a single frame. What the interpreter alone takes stands beside it.
"""

import argparse
import os
import resource
import subprocess
import sys
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from astropy.io import fits

from sitegen.catalogue.lookup import find_object

ROOT = Path(__file__).resolve().parents[2]
SITEGEN = (sys.executable, "-m", "sitegen")
BLOCK = 2880
WIDTH_PX, HEIGHT_PX, BINNING, PIXEL_UM = 781, 522, 8, 3.76
FIRST_TIMES, AGAIN_TIMES, BEGIN_S = 3.0, 2.0, 15.0
MOST_MB = 500
MOST_LINES = 200
NIGHT = 60
FIRST = datetime(2024, 1, 5, 10, tzinfo=UTC)
DATE, TEMPERATURE = "2000-01-01T00:00:00.000", "-99.999"
FILTERS = ("L", "R", "G", "B", "Ha", "OIII")
BARE_HEADERS = """
import os, sys, time
began = time.process_time()
for folder, _, names in os.walk(sys.argv[1]):
    for name in names:
        with open(os.path.join(folder, name), "rb") as file:
            while b"END     " not in file.read(2880):
                pass
print(time.process_time() - began)
"""
BARE_STATS = """
import os, sys, time
began = time.process_time()
for folder, _, names in os.walk(sys.argv[1]):
    for name in names:
        os.stat(os.path.join(folder, name))
print(time.process_time() - began)
"""


def write_captures(folder: Path, count: int, began: datetime = FIRST, called: str = "NGC 2070") -> None:
    """In every twenty files two calibrated copies, one dark and one in a folder of frames sorted out."""
    templates = {(kind, short, bits): template(kind, short, bits, called) for kind, short, bits in kinds()}
    raw = 0
    for number in range(count):
        place = number % 20
        night, of_night = divmod(raw, NIGHT)
        moment = began + timedelta(days=night, seconds=307.25 * of_night)
        short, kind, bits, under = FILTERS[raw // 10 % 6], "Light", 16, "lights"
        if place in (18, 19):
            moment, bits, under = moment - timedelta(seconds=307.25), -32, "calibrated"
            short = FILTERS[(raw - 1) // 10 % 6]
        elif place == 17:
            kind, under = "Dark", "darks"
        elif place == 16:
            under = "rejected"
        raw += place not in (18, 19)
        path = folder / f"night-{night:03d}" / under / f"{number:06d}.fits"
        path.parent.mkdir(parents=True, exist_ok=True)
        write(path, templates[kind, short, bits], moment, number, bits)


def kinds() -> Iterator[tuple[str, str, int]]:
    for short in FILTERS:
        yield from (("Light", short, 16), ("Light", short, -32), ("Dark", short, 16))


def template(kind: str, short: str, bits: int, called: str) -> bytes:
    cards: dict[str, object] = {"SIMPLE": True, "BITPIX": bits, "NAXIS": 2, "NAXIS1": WIDTH_PX, "NAXIS2": HEIGHT_PX}
    cards |= {"IMAGETYP": f"{kind} Frame", "OBJECT": called, "EXPTIME": 300.0, "FILTER": short, "DATE-OBS": DATE}
    cards |= {"TIMESYS": "UTC", "XBINNING": BINNING, "XPIXSZ": PIXEL_UM * BINNING, "FOCALLEN": 1000.0, "GAIN": 100}
    cards |= {"CCD-TEMP": float(TEMPERATURE), **pointing(called), "INSTRUME": "a camera", "TELESCOP": "a telescope"}
    cards |= {"SITELAT": "-36 51 00", "SITELONG": "174 45 36"}
    cards |= {f"NOISE{index:03d}": f"{index * 7} of a program" for index in range(23)}
    return fits.Header(cards).tostring(endcard=True, padding=True).encode("ascii")


def pointing(called: str) -> dict[str, float]:
    """Where the catalogue has it."""
    sky_object = find_object(called)
    assert sky_object is not None
    return {"RA": round(sky_object.ra_deg, 3), "DEC": round(sky_object.dec_deg, 3)}


def write(path: Path, header: bytes, moment: datetime, number: int, bits: int) -> None:
    """A hole for pixels: the file is as long as its header says."""
    told = header.replace(DATE.encode(), moment.replace(tzinfo=None).isoformat(timespec="milliseconds").encode())
    told = told.replace(TEMPERATURE.encode(), f"{-10 - number % 97 / 1000:.3f}".rjust(len(TEMPERATURE)).encode())
    with path.open("wb") as file:
        file.write(told)
        file.truncate(len(told) + -(-WIDTH_PX * HEIGHT_PX * abs(bits) // 8 // BLOCK) * BLOCK)


def spent_s(words: tuple[object, ...], folder: Path) -> tuple[float, str]:
    """Processor seconds of a process of its own, and what it said."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment["PYTHONPATH"] = str(ROOT)  # as installed: with compiled code kept
    done = subprocess.run([*map(str, words)], cwd=folder, env=environment, capture_output=True, text=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode != 0:
        raise SystemExit(f"{words} failed: {done.stderr[-2000:]}")
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, done.stdout + done.stderr


def new_diary(folder: Path, name: str) -> Path:
    spent_s((*SITEGEN, "start", name), folder)
    return folder / name


def bare_s(script: str, captures: Path, folder: Path) -> float:
    """The loop alone; the interpreter's own start is in start-up."""
    return float(spent_s((sys.executable, "-c", script, captures), folder)[1])


def least(times: int, *calls: Callable[[], float]) -> list[float]:
    best = [float("inf")] * len(calls)
    for _ in range(times):
        best = [min(known, call()) for known, call in zip(best, calls, strict=True)]
    return best


def gathering(folder: Path, frames: int, times: int) -> bool:
    captures, one = folder / "captures", folder / "one"
    write_captures(captures, frames)
    write_captures(one, 1)
    numbers = iter(range(1_000_000))

    def first(frames_of: Path) -> float:
        diary = new_diary(folder, f"first-{next(numbers)}")
        return spent_s((*SITEGEN, "gather", "first-light", frames_of, "--quiet"), diary)[0]

    known = new_diary(folder, "known"), new_diary(folder, "known-one")
    for diary, frames_of in zip(known, (captures, one), strict=True):
        spent_s((*SITEGEN, "gather", "first-light", frames_of, "--quiet"), diary)

    def again(diary: Path, frames_of: Path) -> float:
        return spent_s((*SITEGEN, "gather", "first-light", frames_of, "--quiet"), diary)[0]

    alone_s, python_s, bare_headers_s, first_s, start_s = least(
        times,
        lambda: spent_s((*SITEGEN, "gather", "--help"), folder)[0],
        lambda: spent_s((sys.executable, "-c", "pass"), folder)[0],
        lambda: bare_s(BARE_HEADERS, captures, folder),
        lambda: first(captures),
        lambda: first(one),
    )
    bare_stats_s, again_s, start_again_s = least(
        times,
        lambda: bare_s(BARE_STATS, captures, folder),
        lambda: again(known[0], captures),
        lambda: again(known[1], one),
    )
    print(f"interpreter {python_s:.2f} s, 'gather --help' {alone_s:.2f} s, a gather of one frame {start_s:.2f} s")
    kept = row(f"gather of {frames} frames, first", first_s, FIRST_TIMES, bare_headers_s, "bare header blocks", start_s)
    return row(f"gather of {frames} frames, again", again_s, AGAIN_TIMES, bare_stats_s, "bare stats", start_again_s) and kept


def row(what: str, spent: float, times: float, bare: float, floor: str, start: float) -> bool:
    limit = times * bare + start
    verdict = "kept" if spent <= limit else "NOT kept"
    measured = max(0.0, spent - start) / bare
    print(f"{what:34} {spent:6.2f} s; {floor} {bare:.3f} s, start-up {start:.2f} s: {measured:.2f} times beside start-up")
    print(f"{'':34} at most {times:g} × {bare:.3f} + {start:.2f} = {limit:.2f} s: {verdict}")
    return spent <= limit


OBJECTS = tuple(f"NGC {number}" for number in (2070, 1763, 1714, 1566, 1672, 1313, 104, 2516, 3532, 3372))


def write_disk(folder: Path, count: int) -> None:
    """As `write_captures`, each hundred nights in a folder of their own under the name of a target."""
    block = 100 * NIGHT * 20 // 18
    for first in range(0, count, block):
        number = first // block
        under = folder / f"{number:03d}"
        write_captures(under, min(block, count - first), FIRST + timedelta(days=250 * number), OBJECTS[number % len(OBJECTS)])


def harvesting(folder: Path, frames: int, times: int) -> bool:
    """Into an empty folder each time; the start-up is a harvest of one frame."""
    captures, one = folder / "harvested", folder / "one-harvested"
    write_disk(captures, frames)
    write_disk(one, 1)
    numbers = iter(range(1_000_000))

    def harvest(diary: Path, frames_of: Path) -> float:
        diary.mkdir(exist_ok=True)
        return spent_s((*SITEGEN, "harvest", frames_of, "--quiet"), diary)[0]

    known = folder / "harvest-known", folder / "harvest-known-one"
    for diary, frames_of in zip(known, (captures, one), strict=True):
        harvest(diary, frames_of)
    bare_headers_s, first_s, start_s = least(
        times,
        lambda: bare_s(BARE_HEADERS, captures, folder),
        lambda: harvest(folder / f"harvest-{next(numbers)}", captures),
        lambda: harvest(folder / f"harvest-{next(numbers)}", one),
    )
    bare_stats_s, again_s, start_again_s = least(
        times,
        lambda: bare_s(BARE_STATS, captures, folder),
        lambda: harvest(known[0], captures),
        lambda: harvest(known[1], one),
    )
    kept = row(f"harvest of {frames} frames, first", first_s, FIRST_TIMES, bare_headers_s, "bare header blocks", start_s)
    again = row(f"harvest of {frames} frames, again", again_s, AGAIN_TIMES, bare_stats_s, "bare stats", start_again_s)
    return again and kept


def memory(folder: Path, frames: int) -> bool:
    """The largest resident set of a harvest on first sight, and of one that knows all headers but has something new to say."""
    captures, diary = folder / "most", folder / "most-diary"
    write_disk(captures, frames)
    diary.mkdir()
    kept = True
    for which in ("first", "with all headers known"):
        megabytes = peak_mb((*SITEGEN, "harvest", captures, "--json"), diary)
        kept = kept and megabytes <= MOST_MB
        verdict = "kept" if megabytes <= MOST_MB else "NOT kept"
        print(f"{f'memory, harvest of {frames} frames, {which}':34} {megabytes:.0f} MB, at most {MOST_MB} MB: {verdict}")
    return kept


def peak_mb(words: tuple[object, ...], folder: Path) -> float:
    script = ("import resource, subprocess, sys; subprocess.run(sys.argv[1:], check=True, stdout=subprocess.DEVNULL); "
              "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)")  # fmt: skip
    return float(spent_s((sys.executable, "-c", script, *words), folder)[1].split()[-1]) / 1024


def beginning(folder: Path, frames: int, times: int) -> bool:
    captures = folder / "more"
    write_captures(captures, frames)
    spent, lines = [], 0
    for number in range(times):
        diary = new_diary(folder, f"begun-{number}")
        seconds, said = spent_s((*SITEGEN, "begin", "tarantula", captures), diary)
        spent.append(seconds)
        # A line a night is asked for; a line a frame is not. What counts up in a terminal ends in a carriage return.
        lines = len(said.splitlines())
    nights = frames * 18 // 20 // NIGHT + 1
    kept = min(spent) <= BEGIN_S and lines <= nights + MOST_LINES
    print(f"{f'begin on {frames} frames':34} {min(spent):6.2f} s of processor, at most {BEGIN_S:g} s; "
          f"{lines} lines for {nights} nights: {'kept' if kept else 'NOT kept'}")  # fmt: skip
    return kept


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--frames", type=int, default=5_000)
    parser.add_argument("--more", type=int, default=20_000, help="frames for begin and harvest; 0 leaves them out")
    parser.add_argument("--most", type=int, default=0, help="frames for the memory of a harvest; 0 leaves it out")
    parser.add_argument("--times", type=int, default=3)
    options = parser.parse_args()
    with TemporaryDirectory(prefix="captures-") as made:
        kept = gathering(Path(made), options.frames, options.times) if options.frames else True
        if options.more:
            kept = harvesting(Path(made), options.more, options.times) and kept
            kept = beginning(Path(made), options.more, max(1, options.times // 2)) and kept
        if options.most:
            kept = memory(Path(made), options.most) and kept
    print(f"load {os.getloadavg()[0]:.1f}")
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
