"""The one description of an author's keys agrees with the list below, the records, itself, and the schemas made from it."""

from typing import Any

import jsonschema
import pytest
import yaml
from msgspec import NODEFAULT
from msgspec.structs import fields

from sitegen.diary.entry import Entry, Lessons, Link, NightNote, Picture, PointingSolution, ProcessStep, StarFile
from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Work
from sitegen.diary.settings import CaptureAnswer, CaptureSettings, MoonRule, OutlookSettings, Privacy, Settings
from sitegen.diary.site import Site
from sitegen.reading.json_schema import json_schema
from sitegen.reading.key_reference import key_reference
from sitegen.reading.model import capture_columns, diary_file, entry_file, rig_file, series_columns, site_file
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.panel import PANEL
from sitegen.reading.model.recalled import RECALLED
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.value_types.group import Group, Key, Values
from sitegen.reading.yaml_text import read_yaml
from tests.conftest import ROOT
from tests.entries.diary_text import HERE, read_diary_text
from tests.reading.desks import diagnostics

GROUPS: dict[str, Group] = {
    **{file.name: file.group for file in AUTHOR_FILES},
    "privacy": diary_file.PRIVACY,
    "moon_rule": diary_file.MOON_RULE,
    "outlook": diary_file.OUTLOOK,
    "captures": diary_file.CAPTURES,
    "answer": diary_file.ANSWER,
    "telescope": Group(rig_file.TELESCOPE_KEYS, "a telescope"),
    "camera": Group(rig_file.CAMERA_KEYS, "a camera"),
    "filter": rig_file.FILTER,
    "change": rig_file.CHANGE,
    "work": rig_file.WORK,
    "panel": PANEL,
    "recalled": RECALLED,
    "target": entry_file.TARGET,
    "log": entry_file.LOG,
    "series": entry_file.SERIES,
    "series columns": series_columns.SERIES_COLUMNS,
    "columns": capture_columns.COLUMNS,
    "picture": entry_file.PICTURE,
    "solution": entry_file.SOLUTION,
    "step": entry_file.STEP,
    "stretch": entry_file.STRETCH,
    "star frame": entry_file.STAR_FRAME,
    "night": entry_file.NIGHT,
    "link": entry_file.LINK,
    "lessons": entry_file.LESSONS,
    "lesson": entry_file.LESSON,
    "lesson done": entry_file.LESSON_DONE,
}
# Every key once more, so that one that comes, goes or becomes required does so on purpose; a key marked ! is required.
KEYS = {
    "diary": "title! author tagline language address theme licence privacy moon_rule outlook captures",
    "captures": "discarded answers",
    "answer": "files! target rig site filter time_zone leave_out",
    "privacy": "site_position round_to_deg",
    "moon_rule": "illuminated_above up_share_above",
    "outlook": "published nights minimum_altitude_deg",
    "site": "name! latitude_deg! longitude_deg! elevation_m time_zone! sky_mag_arcsec2 extinction_mag seeing_arcsec bortle "
    "horizon",
    "rig": "name! telescope! camera! mount guiding other filters changes work",
    "telescope": "design aperture_mm obstruction_mm focal_length_mm! factor",
    "camera": "name pixel_um! width_px! height_px! colour!",
    "filter": "name kind! centre_nm width_nm spelt",
    "change": "from! design aperture_mm obstruction_mm focal_length_mm factor name pixel_um width_px height_px colour note",
    "work": "date! part! what! note caution",
    "entry": "title! published! updated summary stage target rig site logs series recalled panels pictures wanted nights links "
    "topics lessons star_survey star_rings unlisted",
    "panel": "name! ra dec rotation_deg",
    "recalled": "filter count exposure total when target",
    "target": "name! ra dec kind positions size_arcmin",
    "log": "files! rig site target filter time_zone columns",
    "series": "files! time_zone scale_arcsec_px ra_on_sky columns",
    "series columns": "time ra_arcsec dec_arcsec ra_px dec_px state temperature_c humidity_percent wind_m_s cloud_percent "
    "sky_mag_arcsec2",
    "columns": "start exposure_s filter kind kept reason binning gain sensor_c fwhm_arcsec elongation guiding_rms_arcsec "
    "stars count gap_s panel note",
    "picture": "file! alt! caption role type solution steps compare_with stretch",
    "solution": "ra! dec! scale_arcsec_px! rotation_deg! mirrored",
    "step": "what! file alt",
    "stretch": "black_share sky_brightness colours_together",
    "star frame": "file! type",
    "night": "clouds wind temperature_c humidity_percent seeing_arcsec polar_error_arcmin ended_by note",
    "link": "title! address!",
    "lessons": "worked failed next done",
    "lesson": "what! subject",
    "lesson done": "of! what!",
}
RECORDS: dict[str, type] = {
    "diary": Settings,
    "privacy": Privacy,
    "moon_rule": MoonRule,
    "outlook": OutlookSettings,
    "captures": CaptureSettings,
    "answer": CaptureAnswer,
    "site": Site,
    "telescope": Telescope,
    "camera": Camera,
    "filter": Filter,
    "work": Work,
    "link": Link,
    "lessons": Lessons,
    "night": NightNote,
    "step": ProcessStep,
    "star frame": StarFile,
}
# What records call otherwise, or get from elsewhere than a key.
BESIDE = {
    "entry": {"slug", "body", "body_line", "subs", "targets", "wanted_hours", "night_notes"},
    "rig": {"slug", "trains"},
    "site": {"slug"},
    "filter": {"short"},
    "lessons": {"subjects"},
}
FILES_OF_EXAMPLES = ("logs/2026-04-18.csv", "logs/comet/places.csv", "logs/ngc-253/a.csv", "logs/ngc-253/last.fits",
                     "logs/adjusting/star.fits", "logs/guiding/a.csv",
                     "pictures/ngc-253.tif", "pictures/ngc-253-step2.jpg", "pictures/ngc-253-one-night.jpg")  # fmt: skip
EVERY_KEY = [pytest.param(key, id=f"{name}-{key.name}") for name, group in GROUPS.items() for key in group.keys]


@pytest.mark.parametrize("name", GROUPS)
def test_the_keys_are_those_listed(name: str) -> None:
    """No key more and none less, and the same ones required."""
    assert [key.name + "!" * key.required for key in GROUPS[name].keys] == KEYS[name].split()


@pytest.mark.parametrize("name", [*RECORDS, "entry", "rig"])
def test_every_field_of_a_record_has_its_key(name: str) -> None:
    """What the reader can fill, an author can write, and the other way round."""
    record = {**RECORDS, "entry": Entry, "rig": Rig}[name]
    keys = {key.name for key in GROUPS[name].keys}
    own = {field.name for field in fields(record)} - BESIDE.get(name, set())
    assert keys - own <= {"target", "logs", "series", "wanted", "nights", "telescope", "camera", "changes"}
    assert own <= keys
    assert {field.name for field in fields(Picture)} == {key.name for key in GROUPS["picture"].keys}
    assert {field.name.removesuffix("_deg") for field in fields(PointingSolution)} == {
        key.name.removesuffix("_deg") for key in GROUPS["solution"].keys
    }


@pytest.mark.parametrize("name", RECORDS)
def test_a_default_in_words_is_the_default_of_the_record(name: str) -> None:
    """The page of keys would lie otherwise; the sea's level and a filter's short name are the reader's own."""
    of_record = {field.name: field.default for field in fields(RECORDS[name])}
    for key in GROUPS[name].keys:
        if key.name in of_record and (name, key.name) not in {("site", "elevation_m"), ("filter", "name")}:
            real = of_record[key.name]
            groups = Privacy | MoonRule | OutlookSettings | CaptureSettings | tuple
            plain = None if real is NODEFAULT or isinstance(real, groups) else real
            assert key.default == (None if plain is None else _in_words(plain))


def _in_words(value: Any) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value).lower() if isinstance(value, bool) else str(value)


@pytest.mark.parametrize("key", EVERY_KEY)
def test_every_example_is_true(key: Key) -> None:
    """What the page of keys shows can be typed behind the key, in YAML, without a problem."""
    at = diagnostics(*FILES_OF_EXAMPLES)
    node = read_yaml(f"{key.name}: {key.example}", at)
    assert isinstance(key.explained, str) and key.explained.endswith(".")
    value = None if node is None else key.type.read(node.entries[0][1], key.name, at)  # type: ignore[union-attr]
    missing = [problem for problem in at.problems if "is missing in" not in problem.wrong]
    assert missing == [] and value is not None


@pytest.mark.parametrize("model", AUTHOR_FILES, ids=lambda model: model.name)
def test_the_schema_is_one(model: AuthorFile) -> None:
    """Valid itself by the draft it names, and closed: an editor underlines an unknown key."""
    schema = json_schema(model)
    jsonschema.Draft202012Validator.check_schema(schema)
    errors = list(jsonschema.Draft202012Validator(schema).iter_errors({"titel": "x"}))
    assert any("titel" in error.message for error in errors)


@pytest.mark.parametrize("model", AUTHOR_FILES, ids=lambda model: model.name)
def test_the_schema_accepts_the_sound_diary(model: AuthorFile) -> None:
    """As an editor loads it: dates stay text, numbers are numbers."""
    written = {path: text for path, _, _, text in read_diary_text(HERE / "sound.diary").parts}
    path = {"diary": "diary.yaml", "site": "sites/roof.yaml", "rig": "rigs/dome.yaml", "entry": "entries/first.md"}[model.name]
    text = written[path].split("---\n")[1] if path.endswith(".md") else written[path]
    loaded = yaml.load(text, _EditorLoader)
    assert list(jsonschema.Draft202012Validator(json_schema(model)).iter_errors(loaded)) == []


@pytest.mark.parametrize("model", AUTHOR_FILES, ids=lambda model: model.name)
def test_the_schema_accepts_the_demo(model: AuthorFile) -> None:
    """No editor underlines anything in a diary of many kinds of entries that builds."""
    paths = sorted((ROOT / "content").glob(model.pattern.replace("NAME", "*")))
    texts = [path.read_text("utf-8").split("---\n")[1 if path.suffix == ".md" else 0] for path in paths]
    check = jsonschema.Draft202012Validator(json_schema(model))
    wrong = [error.message for text in texts for error in check.iter_errors(yaml.load(text, _EditorLoader))]
    assert (wrong, len(texts) > 0) == ([], True)


class _EditorLoader(yaml.SafeLoader):
    """YAML 1.2 has no dates."""


_EditorLoader.yaml_implicit_resolvers = {
    letter: [(tag, regexp) for tag, regexp in resolvers if tag != "tag:yaml.org,2002:timestamp"]
    for letter, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def test_the_page_of_keys_has_every_key() -> None:
    """Each with its row, and as many cells in each row as the table has columns."""
    page = key_reference()
    rows = [line for line in page.splitlines() if line.startswith("| `")]
    names = [row.split("`")[1] for row in rows]
    assert sorted(set(names)) == sorted({key.name for group in GROUPS.values() for key in group.keys})
    assert len(rows) == sum(len(group.keys) for group in GROUPS.values())
    assert {row.replace("\\|", "").count("|") for row in rows} == {5}
    assert page.count("### `star_survey` and `star_rings` of entries/NAME.md") == 1, "two keys share one table"


def test_values_leave_absent_keys_to_the_record() -> None:
    """A record's own default holds where the author wrote nothing."""
    at = diagnostics()
    node = read_yaml("round_to_deg: 0.5", at)
    assert node is not None
    values = diary_file.PRIVACY.read(node, "'privacy'", at)
    assert isinstance(values, Values)
    assert values.into(Privacy) == Privacy("rounded", 0.5)
    assert site_file.SITE_FILE.pattern == "sites/NAME.yaml"
