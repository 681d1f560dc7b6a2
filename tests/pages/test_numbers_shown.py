"""Numbers of pictures in words, tables that leave out what they do not know, and the marks of ribbons that name no sub."""

import pytest
from msgspec.structs import replace

from sitegen.facts.registry import PictureFacts
from sitegen.number_text import NumberText
from sitegen.pages.entry_numbers import number_tables
from sitegen.pages.fact_formatter import FactFormatter, fact_value
from sitegen.pages.words import words_from
from tests.conftest import ROOT
from tests.diaries import HILL
from tests.pages.test_year_cloth import prepared_at

WORDS = words_from("en", ((ROOT / "themes/default/words/en.yaml").read_text("utf-8"),))
SHOWER = FactFormatter(NumberText("en", WORDS), WORDS)
PICTURE = PictureFacts(
    file="pictures/core.jpg", type="observation", solved_by="stars", not_solved=None, ra_deg=10.0, dec_deg=-25.0,
    field_deg=(0.75, 0.5), scale_arcsec_px=1.25, rotation_deg=359.99, mirrored=False, stars_matched=6,
    residual_arcsec=None, corners_sure=None,
)  # fmt: skip


@pytest.mark.parametrize(("turned", "text"), [(359.99, "0.0°"), (359.9, "359.9°"), (0.04, "0.0°"), (20.0, "20.0°")])
def test_a_full_turn_reads_as_none(turned: float, text: str) -> None:
    """The rotation of a picture has one decimal and is never 360°."""
    assert SHOWER.show("pictures.rotation_deg", turned).text == text


@pytest.mark.parametrize(
    ("place", "value", "text"),
    [
        ("pictures.field_deg", (3.0, 1.999), "3.00° × 2.00°"),
        ("pictures.field_deg", (12.04, 1.5), "12.0° × 1.5°"),
        ("pictures.field_deg", (1.9, 0.02), "114′ × 1.2′"),
        ("panels.dec_deg", -25.8333, "−25° 50′ 00″"),
    ],
)
def test_numbers_have_one_unit_and_no_digit_too_many(place: str, value: object, text: str) -> None:
    """Both sides of a field in degrees from two on; a whole minute of a panel's place stays one."""
    assert SHOWER.show(place, value).text.replace("\u202f", " ") == text


@pytest.mark.parametrize(
    ("place", "value", "text"),
    [
        ("conditions.temperature_c", 20.2, "20 °C"), ("conditions.humidity_percent", 33, "33 %"),
        ("conditions.wind_m_s", 3.9, "3.9 m/s"), ("conditions.sky_mag_arcsec2", 20.914, "20.9 mag/arcsec²"),
        ("conditions.guiding_rms_arcsec", 0.577, "0.58″"), ("polar.drift_arcsec_min", 1.05, "1.1″/min"),
        ("polar.corner_smear_px", 0.106, "0.1 px"),
        ("polar.typical_corner_smear_px", 0.032, "0.03 px"),
    ],
)  # fmt: skip
def test_what_was_read_is_shown_with_the_digits_that_it_has(place: str, value: float, text: str) -> None:
    """No instrument of an amateur tells the humidity to a tenth."""
    assert SHOWER.show(f"nights.{place}", value).text.replace("\u202f", " ") == text


def test_a_marker_names_the_picture_whose_number_it_wants() -> None:
    """`pictures.rotation_deg@FILE` finds it; without the file it does where there is one picture only."""
    wide = replace(PICTURE, file="pictures/wide.jpg", rotation_deg=20.0)
    two = replace(prepared_at(HILL).facts, pictures=(PICTURE, wide))
    assert fact_value(two, "pictures.rotation_deg@pictures/wide.jpg") == ("pictures.rotation_deg", 20.0)
    with pytest.raises(LookupError, match=r"more than one picture; write @ and one of pictures/core\.jpg, pictures/wide\.jpg"):
        fact_value(two, "pictures.rotation_deg")


def test_the_table_of_pictures_leaves_out_what_none_of_them_knows() -> None:
    """A row stands where any picture has a value; the columns are the files' names."""
    prepared = prepared_at(HILL)
    tables = number_tables(replace(prepared.facts, pictures=(PICTURE,)), prepared.view, prepared.card.nights, SHOWER)
    (pictures,) = (table for table in tables if table.title_key == "numbers.picture")
    shown = {row[0].path: row[0].text for row in pictures.rows}
    assert pictures.columns == ("core.jpg",)
    assert shown["pictures.solved_by"] == "its stars"
    assert shown["pictures.mirrored"] == "no"
    assert not {"pictures.residual_arcsec", "pictures.not_solved", "pictures.file"} & set(shown)


def test_a_column_is_no_number() -> None:
    """A marker that names one is refused with where it stands; the sum of it has a name of its own."""
    facts = prepared_at(HILL).facts
    with pytest.raises(LookupError, match=r"'subs\.airmass' is a column, not one number; it stands in subs\.ecsv"):
        fact_value(facts, "subs.airmass")
    assert fact_value(facts, "integration.kept") == ("integration.kept", facts.integration.kept)
