"""The keys of the front matter of content/entries/NAME.md."""

from typing import get_args

from sitegen.diary.entry import PictureType
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.capture_columns import COLUMNS
from sitegen.reading.model.panel import PANEL
from sitegen.reading.model.recalled import RECALLED
from sitegen.reading.model.series_columns import SERIES_COLUMNS
from sitegen.reading.value_types.address import WebAddress
from sitegen.reading.value_types.angle import Declination, RightAscension
from sitegen.reading.value_types.choice import Choice, YesOrNo
from sitegen.reading.value_types.collections import ListOf, MapOf, OneOf
from sitegen.reading.value_types.content_path import ContentPath, LogPattern
from sitegen.reading.value_types.day import Day
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number, NumberPair
from sitegen.reading.value_types.text import LINE, NAME, PARAGRAPHS, WORD
from sitegen.reading.value_types.time_zone import TimeZone

# What the pictures room can open.
PICTURE_FILE = ContentPath(
    (".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".avif", ".fits", ".fit", ".fts", ".fits.gz", ".fit.gz", ".fts.gz",
        ".fits.fz", ".fz")
)  # fmt: skip
PICTURE_TYPE = Choice(get_args(PictureType))
# A minor planet of the main belt has some hundredths of an arcsecond.
SIZE = Number(unit="arcmin", least=0.0001, most=10_800)
# The largest telescopes through a Barlow give hundredths.
SCALE = Number(unit="arcsec/px", least=0.001, most=10_000)

TARGET = Group(
    (
        Key("name", NAME, "What it is called; found in the catalogues, it needs no more.", "NGC 6744", required=True),
        Key("ra", RightAscension(), "Right ascension, ICRS.", "19 09 46"),
        Key("dec", Declination(), "Declination, ICRS.", "-63 51 27"),
        Key("kind", LINE, "What it is; 'moving' for what has no fixed place.", "galaxy"),
        Key("positions", ContentPath(),
            "Where a comet or another moving thing was: a table of `time` (UTC), `ra`, `dec` (ICRS, seen from the Earth's "
            "centre). The Moon and the planets need none.",
            "logs/comet/places.csv"),
        Key("size_arcmin", NumberPair(SIZE, SIZE, ("longer", "shorter"), one_is_both=True), "Its size on the sky.",
            "[15.7, 9.8]"),
    ),
    called="a target",
)  # fmt: skip

LOG = Group(
    (
        Key("files", ListOf(LogPattern(), or_one=True), "The logs these keys hold for.", "logs/2026-04-*.csv", required=True),
        Key("rig", NAME, "The rig of these logs.", "dome", default="the entry's"),
        Key("site", NAME, "The site of these logs.", "roof", default="the entry's"),
        Key("target", NAME, "Which of the entry's targets they show.", "NGC 253", default="the first"),
        Key("filter", NAME, "The filter, where the log does not tell it.", "L"),
        Key("time_zone", TimeZone(), "What clock the log keeps where it does not say.", "Europe/Athens", default="UTC"),
        Key("columns", COLUMNS, "What the table calls the columns.", "{exposure_s: Seconds}"),
    ),
    called="a log",
)  # fmt: skip

SERIES = Group(
    (
        Key("files", ListOf(LogPattern(), or_one=True), "The tables these keys hold for.", "logs/guiding/*.csv", required=True),
        Key("time_zone", TimeZone(), "What clock the tables keep where they do not say.", "Europe/Athens", default="UTC"),
        Key("scale_arcsec_px", SCALE, "Image scale of the guider, for errors in pixels.", "3.2"),
        Key("ra_on_sky", YesOrNo(),
            "Whether errors in right ascension are arcseconds on the sky; `no` for those in hour angle, which shrink with "
            "the declination.", "no", default="yes"),
        Key("columns", SERIES_COLUMNS, "What the tables call the columns.", "{time: Timestamp, ra_px: RA px}"),
    ),
    called="a series",
)  # fmt: skip

SOLUTION = Group(
    (
        Key("ra", RightAscension(), "Of the picture's centre, ICRS.", "00 47 33", required=True),
        Key("dec", Declination(), "Of the picture's centre, ICRS.", "-25 17 18", required=True),
        Key("scale_arcsec_px", SCALE, "Image scale of the file.", "0.78", required=True),
        Key("rotation_deg", Number(unit="degrees", least=-360, most=360),
            "Position angle of the picture's up, from north through east.",
            "12.5", required=True),
        Key("mirrored", YesOrNo(), "Whether left and right are swapped.", "false", default="false"),
    ),
    called="a solution",
)  # fmt: skip

# The settings of `pictures/stretch.py`. The remedies answer names that these keys once had.
STRETCH = Group(
    (
        Key("black_share", Number(least=0, most=0.45), "The share of the sky, without its stars, that is drawn black.", "0.02",
            default="0.005"),
        Key("sky_brightness", Number(least=0.01, most=0.9), "The brightness of the sky, from 0 (black) to 1 (white).", "0.10",
            default="0.13"),
        Key("colours_together", YesOrNo(),
            "One curve for all colours: what is brighter than the sky keeps its hue, as suits a calibrated picture. Otherwise "
            "each colour has its own.",
            "true", default="false"),
    ),
    called="a stretch",
    remedies=(
        ("black", "did you mean 'black_share'? It is a share of the sky, 0 to 0.45"),
        ("white", "leave it out: white is found in the picture; 'sky_brightness' makes the sky and the faint parts brighter"),
        ("midtone", "did you mean 'sky_brightness'?"),
        ("linked", "did you mean 'colours_together'?"),
    ),
)  # fmt: skip

STEP = Group(
    (
        Key("what", PARAGRAPHS, "What was done.", "gradient removed", required=True),
        Key("file", PICTURE_FILE, "The picture after it.", "pictures/ngc-253-step2.jpg"),
        Key("alt", LINE, "What a reader who cannot see it should know.", "the galaxy on an even, dark sky"),
    ),
    called="a step",
)  # fmt: skip

PICTURE = Group(
    (
        Key("file", PICTURE_FILE, "JPEG, PNG, TIFF, WebP, AVIF or FITS.", "pictures/ngc-253.tif", required=True),
        Key("alt", LINE, "What a reader who cannot see it should know.", "a long, tilted spiral full of dust", required=True),
        Key("caption", PARAGRAPHS, "Under the picture.", "Nine hours, cropped by a tenth."),
        Key("role", Choice(("result", "process", "sub", "setup")), "What it shows.", "result", default="result"),
        Key("type", PICTURE_TYPE,
            "What kind of picture it is, in the words of Astronomy Visualization Metadata 1.2 (`Type`). Whatever is no "
            "observation is called so wherever it is shown; only an observation, a collage or a picture of a planet measures the "
            "train, and what a simulation was drawn at stands under other names.",
            "simulation", default="observation; photographic for `role: setup`"),
        Key("solution", SOLUTION, "Where it points, if you know better than the site can find out.",
            "{ra: 00 47 33, dec: -25 17 18}"),
        Key("steps", ListOf(OneOf(PARAGRAPHS, STEP)), "How it was processed, in order.", "[stacked, stretched]"),
        Key("compare_with", PICTURE_FILE,
            "Another picture of this entry, of the same framing and earlier: this one is laid over it, with an edge to push.",
            "pictures/ngc-253-one-night.jpg"),
        Key("stretch", STRETCH,
            "How values in proportion to light become brightness, where the automatic way does not suit: an asinh curve "
            "(Lupton et al. 2004, PASP 116, 133). FITS has it always, other pictures where this key asks for it.",
            "{sky_brightness: 0.10}"),
    ),
    called="a picture",
    remedies=(("kind", "did you mean 'type'?"), ("src", "did you mean 'file'?"), ("path", "did you mean 'file'?")),
)  # fmt: skip

STAR_FRAME = Group(
    (
        Key("file", ContentPath(), "The frame, or its saved measurement.", "logs/adjusting/star.fits", required=True),
        Key("type", PICTURE_TYPE,
            "What kind of frame it is, with the words of a picture's `type`. Whatever is no observation is called so wherever "
            "the frame, or a number measured in it, is shown.",
            "simulation", default="observation"),
    ),
    called="a star frame",
    remedies=(("kind", "did you mean 'type'?"), ("src", "did you mean 'file'?"), ("path", "did you mean 'file'?")),
)  # fmt: skip

NIGHT = Group(
    (
        Key("clouds", LINE, "In words.", "thin cirrus after midnight"),
        Key("wind", LINE, "In words.", "gusts from the south"),
        Key("temperature_c", Number(unit="°C", least=-80, most=60), "Of the air.", "4"),
        Key("humidity_percent", Number(unit="%", least=0, most=100), "Relative.", "85"),
        Key("seeing_arcsec", Number(unit="arcsec", least=0.1, most=30),
            "Star width (FWHM) that night, before the pixels widen it.", "3.1"),
        Key("polar_error_arcmin", Number(unit="arcmin", least=0, most=600), "How far the mount's axis was off the pole.", "1.5"),
        Key("ended_by", LINE, "Why it was over.", "clouds"),
        Key("note", PARAGRAPHS, "What else is worth keeping.", "the dew heater failed"),
    ),
    called="a night",
)  # fmt: skip

LINK = Group(
    (
        Key("title", LINE, "What it leads to.", "raw data", required=True),
        Key("address", WebAddress(), "In full.", "https://example.org/ngc-253-raw", required=True),
    ),
    called="a link",
    remedies=(("url", "did you mean 'address'?"), ("href", "did you mean 'address'?")),
)  # fmt: skip

LESSON = Group(
    (
        Key("what", PARAGRAPHS, "The lesson.", "guiding through haze", required=True),
        Key("subject", NAME, "What it is of: the page of lessons groups by it.", "guiding", default="the entry's first topic"),
    ),
    called="a lesson",
)  # fmt: skip

LESSON_DONE = Group(
    (
        Key("of", LINE, "The entry that had it under 'next'.", "ngc-253-first", required=True),
        Key("what", PARAGRAPHS, "The same words; case, blanks and a full stop do not matter.", "two more hours of blue",
            required=True),
    ),
    called="a lesson done",
    remedies=(("entry", "did you mean 'of'?"),),
)  # fmt: skip

LESSONS = Group(
    (
        Key("worked", ListOf(OneOf(PARAGRAPHS, LESSON)), "What to do again.", "[focusing on each filter]"),
        Key("failed", ListOf(OneOf(PARAGRAPHS, LESSON)), "What not to do again.",
            "[{what: guiding through haze, subject: guiding}]"),
        Key("next", ListOf(OneOf(PARAGRAPHS, LESSON)), "What is still to do.", "[two more hours of blue]"),
        Key("done", ListOf(LESSON_DONE), "What an earlier entry had under 'next', and this one has done.",
            "[{of: ngc-253-first, what: two more hours of blue}]"),
    ),
    called="lessons",
)  # fmt: skip

ENTRY_FILE = AuthorFile(
    name="entry",
    pattern="entries/NAME.md",
    explained="One entry: these keys between two '---' lines, then Markdown. NAME becomes its address. `[](no_doubt:)` at the "
    "end of a paragraph says that what it claims is right, whatever logs, sky and calendar say: `check` doubts nothing in "
    "it. `[](no_caution:)` in a paragraph, or in another text of this file or of a rig's, says that nothing in it needs a "
    "caution; for the entry's title it stands in the summary. No page shows either mark.",
    group=Group(
        (
            Key("title", LINE, "What the entry is called.", "Five nights on NGC 253", required=True),
            Key("published", Day(past=True), "When it was published.", "2026-06-02", required=True),
            Key("updated", Day(past=True), "When it was last changed in substance.", "2026-06-20"),
            Key("summary", PARAGRAPHS, "One or two sentences for lists and feeds.", "A galaxy over five broken nights."),
            Key("stage", Choice(("trial", "gathering", "finished")), "How far the project is.", "gathering", default="finished"),
            Key("target", ListOf(OneOf(NAME, TARGET), or_one=True),
                "A name of the catalogues, or a mapping whose keys win over theirs; a list where there are several.",
                "NGC 253", default="none: an entry about gear"),
            Key("rig", NAME, "The rig of this entry's logs.", "dome"),
            Key("site", NAME, "The site of this entry's logs.", "roof"),
            Key("logs", ListOf(OneOf(LogPattern(), LOG)), "Where the subs are recorded.", "[logs/ngc-253/*.csv]"),
            Key("series", ListOf(SERIES),
                "Tables that instruments wrote beside the camera: guiding, weather, a sky meter. They are reduced to each sub "
                "and each night; they are not published themselves.",
                "[{files: logs/guiding/*.csv, scale_arcsec_px: 3.2}]"),
            Key("recalled", ListOf(RECALLED),
                "Totals of which no log is left. They stand beside what logs tell, and are added to nothing.",
                "[{filter: Ha, count: 40, exposure: 10m, when: autumn 2019}, {filter: L, total: 3h20m, when: 2018-04}]"),
            Key("panels", ListOf(PANEL),
                "The fields of a mosaic. A frame belongs to the panel that its log or its header names, else to the one it was "
                "pointed at. An empty list says that it is no mosaic.",
                "[{name: north, ra: 00 47 33, dec: -25 00 00}, {name: south, ra: 00 47 33, dec: -25 35 00}]",
                default="found in the frames: as they are named, else where they cluster"),
            Key("pictures", ListOf(PICTURE), "The first is shown first.", "[{file: pictures/ngc-253.tif, alt: a tilted spiral}]"),
            Key("wanted", MapOf(WORD, Number(unit="hours", above=0, most=100_000), "FILTER"), "What the project aims for.",
                "{L: 8, Ha: 10.5}"),
            Key("nights", MapOf(Day(), NIGHT, "EVENING"), "What only you know, by the date of the evening.",
                "{2026-04-18: {clouds: none, temperature_c: 4}}"),
            Key("links", ListOf(LINK), "A film, raw data, a paper.", "[{title: raw data, address: 'https://example.org/raw'}]"),
            Key("topics", ListOf(NAME), "Words to find it by.", "[galaxy, moonlight]"),
            Key("lessons", LESSONS, "What it taught.", "{worked: [focusing on each filter]}"),
            Key("star_survey", ListOf(OneOf(ContentPath(), STAR_FRAME)),
                "Frames in which to measure star shapes over the field, or saved measurements.",
                "[logs/ngc-253/last.fits]"),
            Key("star_rings", ListOf(OneOf(ContentPath(), STAR_FRAME)),
                "Frames of a bright defocused star, or saved measurements.",
                "[logs/adjusting/star.fits]"),
            Key("unlisted", YesOrNo(), "Left out of the published site.", "true", default="false"),
        ),
        called="an entry",
        remedies=(("targets", "did you mean 'target'?"), ("date", "did you mean 'published'?"), ("tags",
        "did you mean 'topics'?")),
    ),
)  # fmt: skip
