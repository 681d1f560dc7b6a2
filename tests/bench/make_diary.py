"""Makes a diary of any size, the same bytes every time: entries with several nights, logs as tables or FITS headers, pictures.

    python tests/bench/make_diary.py FOLDER --entries 1000 [--nights 5] [--subs 20] [--pictures 0] [--fits 0]

Invented throughout: an imager at one place who works through a list of targets with two rigs, year after year.
"""

import argparse
import random
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

FIRST_EVENING = date(2012, 3, 1)
TARGETS = (
    "M 42", "M 31", "M 33", "M 51", "M 81", "M 101", "M 106", "M 63", "M 64", "M 16", "M 17", "M 20", "M 8", "M 27", "M 57",
    "M 97", "M 13", "M 3", "M 5", "M 92", "M 15", "M 2", "M 45", "M 1", "NGC 7000", "NGC 6946", "NGC 253", "NGC 891", "NGC 2403",
    "NGC 4565", "NGC 4631", "NGC 281", "NGC 7635", "NGC 6888", "NGC 2244", "NGC 2264", "IC 1805", "IC 1848", "IC 5070", "IC 5146",
)  # fmt: skip
TOPICS = ("focus", "guiding", "dew", "collimation", "flats", "processing", "weather", "cables", "narrowband", "moonlight")
FILTERS = {"long": ("L", "R", "G", "B", "Ha", "OIII"), "wide": ("Ha", "OIII", "SII")}
WORDS = (
    "the night began clear and ended in thin cloud while the mount kept its place and the stars stayed small until the wind rose "
    "from the west so the last hour was thrown away and the first three kept because their background was even and dark and the "
    "focus had been set twice after the air cooled which seems to be worth the minute it costs whenever the mirror is still warm"
).split()

DIARY = "title: A diary of measured length\nauthor: Nobody\ntagline: Invented nights\nlanguage: en\naddress: https://nights.example/\n"
SITE = (
    "name: The yard\nlatitude_deg: 48.21\nlongitude_deg: 16.36\nelevation_m: 310\ntime_zone: Europe/Vienna\n"
    "sky_mag_arcsec2: 20.6\nseeing_arcsec: 2.6\nbortle: 5\n"
)
CAMERA = "camera: {name: cooled camera, pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}\n"
BANDS = {
    "L": ("Luminance", "broadband", 550, 300), "R": ("Red", "broadband", 640, 100), "G": ("Green", "broadband", 535, 85),
    "B": ("Blue", "broadband", 450, 100), "Ha": ("H-alpha", "narrowband", 656.3, 5), "OIII": ("Oxygen", "narrowband", 500.7, 5),
    "SII": ("Sulphur", "narrowband", 672.4, 5),
}  # fmt: skip
OPTICS = {"long": ("The long tube", 200, 1000), "wide": ("The wide one", 80, 400)}


@dataclass(frozen=True)
class Size:
    """How much there shall be. Pictures (24 megapixels) and FITS frames are spread over the entries. `share_nights`: every entry
    has the same evenings."""

    entries: int
    nights: int = 5
    subs: int = 20
    pictures: int = 0
    fits: int = 0
    share_nights: bool = False


def make_diary(content: Path, size: Size) -> None:
    """Writes content/ whole."""
    for folder in ("entries", "sites", "rigs", "logs", "pictures"):
        (content / folder).mkdir(parents=True, exist_ok=True)
    (content / "diary.yaml").write_text(DIARY, "utf-8")
    (content / "sites" / "yard.yaml").write_text(SITE, "utf-8")
    for slug, (name, aperture, focal) in OPTICS.items():
        (content / "rigs" / f"{slug}.yaml").write_text(_rig(slug, name, aperture, focal), "utf-8")
    pictures = _pictures(content, size)
    for number in range(size.entries):
        _entry(content, number, size, pictures[number :: size.entries])


def _rig(slug: str, name: str, aperture: int, focal: int) -> str:
    filters = "".join(
        f"  {short}: {{name: {name_of}, kind: {kind}, centre_nm: {centre}, width_nm: {width}}}\n"
        for short in FILTERS[slug]
        for name_of, kind, centre, width in [BANDS[short]]
    )
    work = "".join(
        f"  - {{date: {FIRST_EVENING.year + year}-06-15, part: mirror, what: cleaned, caution: weight}}\n" for year in range(10)
    )
    optics = f"telescope: {{design: reflector, aperture_mm: {aperture}, focal_length_mm: {focal}}}\n"
    return f"name: {name}\n{optics}{CAMERA}filters:\n{filters}work:\n{work}"


def _entry(content: Path, number: int, size: Size, pictures: list[str]) -> None:
    chance = random.Random(number)
    slug = f"night-work-{number:05d}"
    rig = "wide" if number % 3 == 2 else "long"
    days = 0 if size.share_nights else int(number * 3650 / max(1, size.entries))
    first = FIRST_EVENING + timedelta(days=days)
    evenings = [first + timedelta(days=3 * night) for night in range(size.nights)]
    for evening in evenings:
        rows = list(_rows(evening, size.subs, FILTERS[rig], number, chance))
        (content / "logs" / f"{slug}-{evening}.csv").write_text(LOG_HEAD + "".join(rows), "utf-8")
    frames = _frames(content, slug, evenings[-1] + timedelta(days=1), rig, number, size)
    text = _front_matter(number, rig, slug, evenings, pictures, frames, chance) + _body(slug, chance)
    (content / "entries" / f"{slug}.md").write_text(text, "utf-8")


LOG_HEAD = "start,exposure_s,filter,kind,kept,reason,binning,gain,sensor_c,fwhm_arcsec,elongation,guiding_rms_arcsec\n"


def _rows(evening: date, subs: int, filters: tuple[str, ...], number: int, chance: random.Random) -> Iterator[str]:
    """Entries that share an evening begin some seconds apart: their frames are not the same ones."""
    moment = datetime(evening.year, evening.month, evening.day, 20, 30, tzinfo=UTC) + timedelta(seconds=number % 300)
    for index in range(subs):
        kept = chance.random() > 0.08
        moment += timedelta(seconds=312)
        yield (
            f"{moment:%Y-%m-%dT%H:%M:%S},300,{filters[index * len(filters) // subs]},light,{'yes' if kept else 'no'},"
            f"{'' if kept else 'cloud'},1,100,-10,{chance.uniform(2.1, 3.4):.2f},{chance.uniform(1.05, 1.3):.2f},"
            f"{chance.uniform(0.4, 0.9):.2f}\n"
        )


def _front_matter(
    number: int, rig: str, slug: str, evenings: list[date], pictures: list[str], frames: bool, chance: random.Random
) -> str:
    told = [
        "---",
        f"title: Night work {number}, {TARGETS[number % len(TARGETS)]}",
        f"published: {evenings[-1] + timedelta(days=2)}",
        f"summary: {_sentence(chance)}",
        f"target: {TARGETS[number % len(TARGETS)]}",
        f"rig: {rig}",
        "site: yard",
        f"topics: [{', '.join(sorted({TOPICS[number % 10], TOPICS[(number // 7) % 10]}))}]",
        f"wanted: {{{FILTERS[rig][0]}: 12}}",
        "logs:",
        f"  - logs/{slug}-*.csv",
        *([f"  - logs/{slug}/*.fits"] if frames else []),
        *(["pictures:"] if pictures else []),
        *(f"  - {{file: {file}, alt: An invented sky}}" for file in pictures),
        "nights:",
        *(f"  {evening}: {{clouds: thin, wind: calm, temperature_c: {chance.randint(-5, 20)}}}" for evening in evenings),
        "lessons:",
        f"  worked: [{_sentence(chance)}]",
        f"  next: [{_sentence(chance)}]",
        "---",
    ]
    return "\n".join(told) + "\n"


def _body(slug: str, chance: random.Random) -> str:
    paragraphs = [" ".join(_sentence(chance) for _ in range(4)) for _ in range(4)]
    told = "\n\n".join(paragraphs)
    return f"# What was done\n\n{told}\n\nIn all [](fact:integration.total_s), and it *showed*.\n\n- one\n- two\n"


def _sentence(chance: random.Random) -> str:
    first = chance.randrange(len(WORDS) - 14)
    return " ".join(WORDS[first : first + chance.randint(7, 14)]).capitalize() + "."


def _frames(content: Path, slug: str, evening: date, rig: str, number: int, size: Size) -> bool:
    """This entry's share of the FITS frames: headers with a block of pixels."""
    share = range(number * size.fits // size.entries, (number + 1) * size.fits // size.entries)
    folder = content / "logs" / slug
    for index, _ in enumerate(share):
        folder.mkdir(exist_ok=True)
        moment = datetime(evening.year, evening.month, evening.day, 20, tzinfo=UTC) + timedelta(seconds=65 * index + number % 60)
        (folder / f"light-{index:05d}.fits").write_bytes(_fits(moment, FILTERS[rig][0], OPTICS[rig][2]))
    return len(share) > 0


def _fits(moment: datetime, filter_short: str, focal_mm: int) -> bytes:
    """One frame's header, and the pixels of a thumbnail so that the file is whole (FITS standard 4.0, section 3)."""
    cards = [
        ("SIMPLE", "T"), ("BITPIX", "16"), ("NAXIS", "2"), ("NAXIS1", "6248"), ("NAXIS2", "4176"),
        ("DATE-OBS", f"'{moment:%Y-%m-%dT%H:%M:%S.000}'"), ("EXPTIME", "60.0"), ("FILTER", f"'{filter_short:8}'"),
        ("IMAGETYP", "'Light   '"), ("XBINNING", "1"), ("YBINNING", "1"), ("GAIN", "100"), ("CCD-TEMP", "-10.0"),
        ("XPIXSZ", "3.76"), ("FOCALLEN", f"{focal_mm}.0"),
        *((f"NOTE{index:02d}", f"'line {index} of the program'") for index in range(30)),
    ]  # fmt: skip
    text = "".join(f"{name:8}= {value:>20}".ljust(80) for name, value in cards) + "END".ljust(80)
    return text.ljust(-(-len(text) // 2880) * 2880).encode("ascii")


def _pictures(content: Path, size: Size) -> list[str]:
    """A few different pictures under many names are not the same work: each has pixels of its own."""
    if not size.pictures:
        return []
    import numpy as np
    from PIL import Image

    made = []
    chance = np.random.default_rng(7)
    ground = chance.normal(24, 6, (1000, 1500, 3)).clip(0, 255).astype("uint8")
    for number in range(size.pictures):
        name = f"pictures/result-{number:04d}.jpg"
        picture = Image.fromarray(np.roll(ground, number * 37, axis=1)).resize((6000, 4000), Image.Resampling.BILINEAR)
        picture.save(content / name, quality=88)
        made.append(name)
    return made


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    for name, usual in (("entries", 100), ("nights", 5), ("subs", 20), ("pictures", 0), ("fits", 0)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    told = parser.parse_args()
    make_diary(told.folder, Size(told.entries, told.nights, told.subs, told.pictures, told.fits))


if __name__ == "__main__":
    main()
