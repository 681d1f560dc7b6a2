"""What is fuzzed: each target takes the bytes of a file of the author's, and must answer with a value or a problem."""

import gzip
import io
import re
import struct
import zipfile
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from html.parser import HTMLParser
from pathlib import Path
from random import Random
from urllib.parse import urlsplit

import numpy as np
import openpyxl
from astropy.io import fits
from PIL import Image

from sitegen.authoring.captures.camera_record import camera_record
from sitegen.authoring.captures.discards import read_kept_list
from sitegen.authoring.captures.fits_record import fits_record
from sitegen.authoring.captures.record import Frame as GatheredFrame
from sitegen.authoring.captures.record import FrameFile, FrameRecord
from sitegen.authoring.gathered_log import MARK, read_gathered
from sitegen.authoring.log_table import add_columns, set_cells, table_text
from sitegen.authoring.recorded.asked_columns import read_asked
from sitegen.authoring.recorded.line_patterns import line_pattern, line_patterns
from sitegen.authoring.recorded.measures import read_measures
from sitegen.authoring.recorded.recorded_files import RecordedRequest, read_recorded
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.recorded.text_log import read_lines
from sitegen.pages.markdown_text import Resolvers, plain_text, to_html, to_inline_html
from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.source import picture_facts
from sitegen.problems import DiaryProblems, Problem
from sitegen.publish.record import NewerRecord, read_record, record_text
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.diary_config import DiaryConfig, DiaryReading, read_config
from sitegen.reading.entry_series import Exposure, SeriesRequest
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.reader import read_entry
from sitegen.reading.series_reading import read_all_series
from sitegen.reading.yaml_text import read_yaml
from tests.authoring.recorded.cases import TABLES
from tests.fuzz.mutation import MARKDOWN, NUMBERS, WORDS, Mutate, of_bytes, of_header, of_table, of_text
from tests.reading.desks import diagnostics
from tests.trust import tiny

TODAY = date(2026, 11, 25)
ROOT = Path(__file__).resolve().parents[2]
Answer = str
"""'taken' or 'refused', for the count."""


class Wrong(AssertionError):
    """An answer that no reader may give."""


@dataclass(frozen=True)
class Target:
    """`answer` takes the bytes and a folder of its own to write them into. `share`: of a thousand inputs over all readers."""

    name: str
    seeds: Callable[[], list[bytes]]
    mutate: Mutate
    answer: Callable[[bytes, Path], Answer]
    words: tuple[bytes, ...] = field(default=(), repr=False)
    share: int = 0

    def make(self, chance: Random) -> bytes:
        return self.mutate(chance.choice(_seeds(self)), chance)


_KEPT: dict[str, list[bytes]] = {}


def _seeds(target: Target) -> list[bytes]:
    if target.name not in _KEPT:
        _KEPT[target.name] = target.seeds()
    return _KEPT[target.name]


def _config(folder: Path) -> DiaryConfig:
    """The tiny diary, laid out once in the folder."""
    key = str(folder)
    if key not in _CONFIGS:
        tiny.lay_out(folder)
        config = read_config(folder / "content", TODAY)
        assert not isinstance(config, DiaryReading)
        _CONFIGS[key] = config
    return _CONFIGS[key]


_CONFIGS: dict[str, DiaryConfig] = {}


def _said(problems: object) -> Answer:
    return "refused" if problems else "taken"


def _told_well(problems: tuple[object, ...]) -> None:
    for problem in problems:
        line = str(problem)
        if "\n" in line or not line.isprintable() or len(line) > 4_000:
            raise Wrong(f"a problem line that is none: {line[:200]!r}")


def front_matter(content: bytes, folder: Path) -> Answer:
    config = _config(folder)
    (folder / "content/entries/first.md").write_bytes(content)
    reading = read_entry("entries/first.md", config)
    if reading.entry is None and not reading.problems:
        raise Wrong("neither an entry nor a problem")
    _told_well(reading.problems)
    return _said(reading.entry is None)


def yaml(content: bytes, _: Path) -> Answer:
    text = content.decode("utf-8", "replace")
    at = diagnostics("logs/first.csv", "pictures/helix.jpg")
    node = at.until_full(lambda: read_yaml(text, at))
    _told_well(tuple(at.problems))
    if node is None:
        return "refused"
    clean = False
    for model in AUTHOR_FILES:
        at = diagnostics("logs/first.csv", "pictures/helix.jpg")
        at.until_full(lambda at=at, model=model: model.group.read(node, "x", at))
        _told_well(tuple(at.problems))
        clean |= not at.problems
    return _said(not clean)


def _log(name: str, rig: str | None = None) -> Callable[[bytes, Path], Answer]:
    def answer(content: bytes, folder: Path) -> Answer:
        path, config = folder / name, _config(folder)
        path.write_bytes(content)
        shown, place = f"logs/{name}", ("entries/e.md", 7, 5)
        zone = None if content[-1:] > b"z" else "Pacific/Auckland"
        train = config.rigs[rig] if rig else None
        asked = LogRequest(path, shown, shown, train, config.sites["roof"], 0, None, zone, place, TODAY)
        reading = read_log(asked)
        _told_well(reading.problems)
        if not reading.subs and not reading.problems:
            raise Wrong("neither subs nor a problem")
        return _said(any(problem.severity == "error" for problem in reading.problems))

    return answer


TAGS = frozenset(
    "p h1 h2 h3 h4 h5 h6 em strong a img ul ol li blockquote code pre hr br table thead tbody tr th td dl dt dd sup "
    "section".split()
)
ATTRIBUTES = frozenset("href src alt title class id start align style".split())


class _Judge(HTMLParser):
    """Nothing but what Markdown has words for."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in TAGS or any(name not in ATTRIBUTES for name, _ in attrs):
            raise Wrong(f"<{tag}> with {attrs} came out of Markdown")
        for name, value in attrs:
            if name in ("href", "src"):
                _judge_address((value or "").strip())
            if name == "style" and value not in ("text-align:left", "text-align:right", "text-align:center"):
                raise Wrong(f"a style came out of Markdown: {value}")


def _judge_address(address: str) -> None:
    flat = "".join(letter for letter in address if letter > " ")  # as browsers do before they look for a scheme
    try:
        scheme = urlsplit(flat).scheme.lower()
    except ValueError:
        return
    if scheme not in ("", "http", "https", "mailto"):
        raise Wrong(f"a link to {address!r}")


RESOLVERS = Resolvers(lambda _: "../x/index.html", lambda _, words: ("no such fact", ""), lambda *_: ("no such figure", ""))


def markdown(content: bytes, _: Path) -> Answer:
    text = content.decode("utf-8", "replace").replace("\0", "")
    rendered = to_html(text, RESOLVERS, "x-")
    for html in ("".join(map(str, rendered.parts)), to_inline_html(text)):
        judge = _Judge()
        judge.feed(html)
        judge.close()
    plain_text(text)
    return _said(rendered.mistakes)


def picture(content: bytes, folder: Path) -> Answer:
    path = folder / "picture"
    path.write_bytes(content)
    try:
        facts = picture_facts(path)
        if facts.width_px * facts.height_px < 40_000 and content[-1:] < b"\x10":
            make_sizes(path, folder / "sizes", PictureSettings(widths_px=(20,), avif_effort=0))
    except PictureProblem as problem:
        if not problem.sentence.isprintable():
            raise Wrong(f"an unprintable sentence: {problem.sentence!r}") from None
        return "refused"
    return "taken"


def frame_record(content: bytes, folder: Path) -> Answer:
    path = folder / "frame.fits"
    path.write_bytes(content)
    record = fits_record(path)
    if record.wrong:
        _told_well((Problem("frame.fits", 1, 1, record.wrong, record.remedy),))
    return _said(record.wrong)


def camera_frame(content: bytes, folder: Path) -> Answer:
    path = folder / "frame.cr2"
    path.write_bytes(content)
    return _said(camera_record(path, "raw").wrong)


def gathered(content: bytes, folder: Path) -> Answer:
    """Read, changed in place and written: what is not touched stays to the byte."""
    config = _config(folder)
    (folder / "content/logs/gathered.ecsv").write_bytes(content)
    try:
        log = read_gathered("logs/gathered.ecsv", config)
    except DiaryProblems as refused:
        _told_well(refused.problems)
        return "refused"
    if table_text(log.table) != log.text:
        raise Wrong("a log that was not changed is written otherwise")
    for row in log.table.rows[:3]:
        set_cells(log.table, row, {"note": 'a "gust", then wind'} if "note" in log.table.columns else {})
    add_columns(log.table, [("clock", "string", "")] if "clock" not in log.table.columns else [])
    table_text(log.table)
    return "taken"


def kept_list(content: bytes, folder: Path) -> Answer:
    path = folder / "used.txt"
    path.write_bytes(content)
    try:
        read_kept_list(path, [_SOME_FRAME])
    except DiaryProblems as refused:
        _told_well(refused.problems)
        return "refused"
    return "taken"


def _recorded(name: str, patterns: tuple[str, ...] = ()) -> Callable[[bytes, Path], Answer]:
    """A table as somebody keeps it, or a text log; the last byte chooses the clock."""
    recorded = RecordedRequest(read_asked(()), line_patterns(patterns), ShapeMemory(None))

    def answer(content: bytes, folder: Path) -> Answer:
        path = folder / name
        path.write_bytes(content)
        zone = None if content[-1:] > b"z" else "Pacific/Auckland"
        reading = read_recorded(LogRequest(path, name, name, None, None, None, None, zone, (name, 1, 1), TODAY), recorded)
        _told_well(reading.problems)
        _told_well(reading.told)
        if not reading.subs and not reading.problems:
            raise Wrong("neither subs nor a problem")
        return _said(any(problem.severity == "error" for problem in reading.problems))

    return answer


def series(content: bytes, folder: Path) -> Answer:
    """A table of an instrument; the last byte chooses the clock and the names."""
    path = folder / "series.csv"
    path.write_bytes(content)
    zone = None if content[-1:] > b"z" else "Pacific/Auckland"
    names = {"time": "Timestamp", "ra_px": "RA px"} if content[-1:] < b"0" else {}
    exposures = [Exposure(SERIES_START_S + 310.0 * number, SERIES_START_S + 310.0 * number + 300.0, -60.0) for number in range(3)]
    asked = SeriesRequest(((path, "series.csv"),), ("series.csv",), names, zone, 2.0, content[-2:-1] > b"5", ("entry.md", 1, 1))
    reading = read_all_series([asked], exposures)
    _told_well(reading.problems)
    if len(reading.readings) != len(exposures):
        raise Wrong("not one reading an exposure")
    return _said(any(problem.severity == "error" for problem in reading.problems))


def open_document(content: bytes, folder: Path) -> Answer:
    """The XML inside a sound zip, and, now and then, the zip itself."""
    path = folder / "sheet.ods"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("content.xml", content)
    return _recorded("sheet.ods")(content if content[-1:] > b"\xf0" else path.read_bytes(), folder)


def line_pattern_of(content: bytes, _: Path) -> Answer:
    """A pattern, and a line that repeats it."""
    text = content.decode("utf-8", "replace")
    try:
        pattern = line_pattern(text)
    except DiaryProblems as refused:
        _told_well(refused.problems)
        return "refused"
    read_lines(f"{text}\n{text * 3}\n21:00:00 begin 300 s, filter Ha\n", [pattern], LogProblems("x"))
    return "taken"


def measures(content: bytes, folder: Path) -> Answer:
    path = folder / "grades.csv"
    path.write_bytes(content)
    try:
        read_measures(path, [_SOME_FRAME], None, None, TODAY, RecordedRequest())
    except DiaryProblems as refused:
        _told_well(refused.problems)
        return "refused"
    return "taken"


def _kept_tables() -> list[bytes]:
    texts = [table.text for table in TABLES.values()]
    return [text if isinstance(text, bytes) else text.encode() for text in texts]


def _sheet() -> list[bytes]:
    with zipfile.ZipFile(ROOT / "tests/authoring/recorded/files/night.ods") as archive:
        return [archive.read("content.xml")]


def _book() -> list[bytes]:
    book, target = openpyxl.Workbook(), io.BytesIO()
    book.active.append(["Start", "Exposure", "Filter"])
    book.active.append([datetime(2026, 5, 1, 21, 3, 12), 120, "L"])  # noqa: DTZ001 - a cell has no zone
    book.save(target)
    return [target.getvalue()]


LINES = ("{start:%H:%M:%S} begin {exposure_s} s, filter {filter}", "{end:%H:%M:%S} saved {file}",
         "{discarded:%H:%M:%S} rejected {file} ({reason})", "== {date} ==", "{} filter {filter}")  # fmt: skip
TEXT_LOG = b"""== 2026-04-18 ==
21:00:00 begin 300 s, filter Ha
21:05:01 saved M_001.fits
wheel: filter OIII
00:03:20 rejected M_001.fits (cloud)
"""
GRADES = [b"File;FWHM (px);Eccentricity;Stars;Verdict;Reason\nlight_1.fits;2,5;0,6;900;ok;\n",
          b"Start,FWHM (arcsec),Used\n2026-09-01T00:00:00Z,2.5,no\n"]  # fmt: skip


def published(content: bytes, folder: Path) -> Answer:
    path = folder / ".published"
    path.write_bytes(content)
    try:
        return _said(not read_record(path).whole)
    except NewerRecord:
        return "refused"


_FILE = FrameFile("a/light_1.fits", "light_1.fits", "a-1", "/a", 1, 1, 1, 1)
_SOME_FRAME = GatheredFrame(_FILE, FrameRecord("fits", "light"), datetime(2026, 9, 1, tzinfo=UTC), 60.0)


def _gathered_logs() -> list[bytes]:
    columns = [(name, "string") for name in "start exposure_s filter reason note file".split()]
    columns.insert(3, ("kept", "bool"))
    head = ["# %ECSV 1.0", "# ---", "# datatype:", *(f"# - {{name: {name}, datatype: {kind}}}" for name, kind in columns)]
    head += [MARK, "# delimiter: ','", "# schema: astropy-2.0", ",".join(name for name, _ in columns)]
    rows = ["2026-09-01T10:00:00Z,300,Ha,True,,,a/1.fits", "# the author's own words"]
    rows += ['2026-09-01T10:06:00.250Z,300,Ha,False,"wind, gusts",,a/2.fits', "2026-09-01T10:12:00Z,5m,OIII,True,,3rd,a/3.fits"]
    text = "\n".join([*head, *rows]) + "\n"
    return [text.encode(), text.replace("\n", "\r\n").encode()]


def _records() -> list[bytes]:
    return [record_text({}), record_text({"index.html": "0" * 40, "entries/a/index.html": "f" * 40})]


def _pictures() -> list[bytes]:
    shade = np.linspace(0, 255, 24 * 16 * 3).astype("u1").reshape(16, 24, 3)
    found = [tiny.photograph("x", -30.0, (24, 16)), tiny.frame({})]
    for kind in ("PNG", "TIFF", "WEBP", "AVIF"):
        target = io.BytesIO()
        Image.fromarray(shade).save(target, kind)
        found.append(target.getvalue())
    packed = io.BytesIO()
    fits.HDUList([fits.PrimaryHDU(), fits.CompImageHDU(np.zeros((16, 24), "i2"))]).writeto(packed)
    return [*found, packed.getvalue(), gzip.compress(tiny.frame({}))]


def _camera() -> list[bytes]:
    photo = tiny.photograph("x", -30.0, (12, 8))
    at = photo.index(b"Exif\0\0") + 6
    size = struct.unpack(">H", photo[at - 8 : at - 6])[0] - 8
    return [photo, photo[: at + size], photo[at : at + size]]


def _demo(pattern: str, most: int = 4, bytes_each: int = 4_000) -> list[bytes]:
    """The beginnings of files of the demo diary, cut at the end of a line where they have lines."""
    beginnings = (path.read_bytes()[:bytes_each] for path in sorted((ROOT / "content").glob(pattern))[:most])
    return [text if pattern.endswith(".fits") else text[: text.rindex(b"\n") + 1] for text in beginnings]


def _entries() -> list[bytes]:
    sound = tiny.ENTRY.format(title="A title", body="Text.").encode()
    return [sound] * 12 + [_at_home(text) for text in _demo("entries/*.md", 12)]


def _at_home(text: bytes) -> bytes:
    """A demo entry with the tiny diary's own rig, site, log and picture."""
    for key, name in ((b"rig", b"dome"), (b"site", b"roof"), (b"file", b"pictures/helix.jpg")):
        text = re.sub(key + rb": *[\w./-]+", key + b": " + name, text)
    return re.sub(rb"\nlogs:.*?\n(?=\w)", b"\nlogs: [logs/first.csv]\n", text, count=1, flags=re.DOTALL)


def _yaml_files() -> list[bytes]:
    parts = [text.partition(b"\n---\n")[0][4:] for text in _entries()]
    return [*parts, tiny.RIG.encode(), *_demo("rigs/*.yaml"), *_demo("sites/*.yaml"), *_demo("diary.yaml")]


def _headers() -> list[bytes]:
    return [tiny.frame({}), *_demo("logs/**/*.fits", 3, 28_800)]


def _bodies() -> list[bytes]:
    return [text.partition(b"\n---\n")[2][:1_200] for text in _demo("entries/*.md", 12)] + [
        b" ".join(MARKDOWN),
        b"- a\n  - b\n\n| a | b |\n|:-|-:|\n| 1 | 2 |\n",
    ]


SERIES_START_S = 1_789_214_400.0
"""12 September 2026, 12:00 UTC."""
_GUIDED = [(number // 20, number % 20 * 3, number % 9) for number in range(100)]
SERIES_TABLES = [
    b"time,ra_arcsec,dec_arcsec,state\n" + b"".join(b"2026-09-12T12:0%d:%02dZ,0.%d,-0.2,\n" % row for row in _GUIDED),
    b"Weather station 7\nTimestamp;temperature_c;humidity_percent;wind_m_s\n"
    b"2026-09-12 23:50:00;8,1;70;\n2026-09-13 00:10:00;7,9;71;2,5\n",
    b"# time\tra_px\tdec_px\n2026-09-12T12:00:01+00:00\t0.1\t\n2026-09-12T12:00:02.25\t1e3\tnan\n",
]

TARGETS: tuple[Target, ...] = (
    Target("front matter", _entries, of_text(WORDS), front_matter, WORDS, share=120),
    Target("yaml", _yaml_files, of_text((*WORDS, *NUMBERS)), yaml, WORDS, share=90),
    Target("csv", lambda: [tiny.LOG.encode(), *_demo("logs/**/*.csv", 8, 1_500)], of_table, _log("a.csv"), share=130),
    Target("ecsv", lambda: _demo("logs/**/*.ecsv", 4, 3_000), of_table, _log("a.ecsv"), share=90),
    Target("fits header", _headers, of_header, _log("a.fits", "dome"), share=110),
    Target("frame gathered", _headers, of_header, frame_record, share=110),
    Target("camera frame gathered", _camera, of_bytes, camera_frame, share=20),
    Target("log changed in place", _gathered_logs, of_table, gathered, share=60),
    Target("list of kept frames", lambda: [b"light_1.fits\nlight_2_cal.fits\n", b"name;used\nlight_1;yes\n"], of_table, kept_list,
           share=30),
    Target("table by example", _kept_tables, of_table, _recorded("night.csv"), share=120),
    Target("table by example, letter by letter", _kept_tables, of_text((*NUMBERS, *WORDS)), _recorded("night.tsv"), share=60),
    Target("open document", _sheet, of_text(NUMBERS), open_document, share=30),
    Target("spreadsheet", _book, of_bytes, _recorded("night.xlsx"), share=20),
    Target("text log", lambda: [TEXT_LOG], of_text(NUMBERS), _recorded("2026-04-18.log", LINES), share=60),
    Target("pattern of a line", lambda: [text.encode() for text in LINES], of_text((b"{", b"}", b":", b"%H", b" ", "…".encode())),
           line_pattern_of, share=60),
    Target("series", lambda: SERIES_TABLES, of_table, series, share=60),
    Target("series, letter by letter", lambda: SERIES_TABLES, of_text((*NUMBERS, b"time", b"now", b"2026-10-04T02:30", b";")),
           series, share=40),
    Target("measures", lambda: GRADES, of_table, measures, share=60),
    Target("record of what was published", _records, of_text(NUMBERS), published, share=20),
    Target("exif", _camera, of_bytes, _log("a.jpg", "lens"), share=20),
    Target("markdown", _bodies, of_text(MARKDOWN), markdown, MARKDOWN, share=120),
    Target("picture", _pictures, of_bytes, picture, share=80),
)
