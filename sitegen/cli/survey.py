"""sitegen survey: star shapes over the field, in the terminal."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from msgspec.structs import replace

from sitegen.cli.star_options import star_options

if TYPE_CHECKING:
    from sitegen.stars.measured import SurveyedFrame

POSITIVE = click.FloatRange(0, min_open=True)


@click.command()
@star_options
@click.option("--scale", type=POSITIVE, metavar="ARCSEC", help="Arcseconds a pixel, where the header does not tell.")
@click.option("--focal-length", type=POSITIVE, metavar="MM", help="With --pixel: the same from the telescope and the camera.")
@click.option("--pixel", type=POSITIVE, metavar="UM", help="Side of a pixel as it was read out, binning included.")
def command(
    files: tuple[Path, ...], content: Path, themes: Path, output: Path, save_beside: bool, save_to: Path | None,
    picture: Path | None, as_json: bool, scale: float | None, focal_length: float | None, pixel: float | None,
) -> None:  # fmt: skip
    """Measure the stars over the field of frames: their width and shape in 5 × 3 zones, and what the pattern says.

    FILES are FITS frames (.fits, .fit, .gz, .fz; mono or raw colour), pictures (TIFF, PNG, JPEG), or measurements saved before.
    A scale given here wins over the header's. What --save writes an entry can name in 'star_survey' in place of the frame.

    \b
    Examples:
      sitegen survey sub-0012.fits --save
      sitegen survey before.fits.fz after.fits.fz --focal-length 2000 --pixel 3.76
    """
    from sitegen.cli.star_output import check_wishes, draw, finish, keep, measure_all, speech
    from sitegen.pages.star_pictures import survey_svg
    from sitegen.reading.measurement_files import survey_as_dict
    from sitegen.reading.star_measuring import survey_of

    check_wishes(files, save_to, picture)
    wanted = _scale(scale, focal_length, pixel)
    theme, words, numbers = speech(themes)
    measured, problems = measure_all(files, survey_of)
    done = [(path, _at_scale(frame, wanted)) for path, frame in measured]
    for path, frame in done:
        problems += keep(survey_as_dict(frame), path, save_beside, save_to)
        if picture is not None:
            problems += draw(survey_svg(frame, theme, words, numbers), picture)
    contents = [_content(frame) for _, frame in done]
    finish(problems, as_json, contents, (line for _, frame in done for line in _lines(frame, words, numbers)))


def _scale(scale: float | None, focal_length: float | None, pixel: float | None) -> float | None:
    from sitegen.sky.optics import image_scale_arcsec_px

    if (focal_length is None) != (pixel is None):
        raise click.UsageError("--focal-length and --pixel give a scale only together")
    if scale is not None and pixel is not None:
        raise click.UsageError("--scale says it already; leave out --focal-length and --pixel")
    return image_scale_arcsec_px(pixel, 1, focal_length) if pixel is not None and focal_length is not None else scale


def _at_scale(frame: "SurveyedFrame", wanted: float | None) -> "SurveyedFrame":
    from sitegen.stars.measured import scaled

    return frame if wanted is None else replace(frame, survey=scaled(frame.survey, wanted))


def _content(frame: "SurveyedFrame") -> dict[str, Any]:
    from sitegen.reading.measurement_files import survey_as_dict, unfolded

    return {**survey_as_dict(frame), "pattern": unfolded(frame.pattern)}


def _lines(frame: "SurveyedFrame", words: Any, numbers: Any) -> Iterator[str]:
    """The zones as they lie, top row first; then what they say."""
    from sitegen.pages.star_words import evidence_words, pattern_words, survey_title
    from sitegen.stars.zones import COLUMNS, ROWS

    yield f"{frame.file}: {survey_title([frame], words, numbers)}"
    yield ""
    for row in reversed(range(ROWS)):
        zones = frame.survey.zones[row * COLUMNS : (row + 1) * COLUMNS]
        yield "  " + "  ".join(f"{_cell(zone, numbers):<20}" for zone in zones).rstrip()
    yield ""
    yield f"  {pattern_words(frame.pattern, words)}"
    for line in evidence_words(frame, words, numbers):
        yield f"  {line}"
    yield ""


def _cell(zone: Any, numbers: Any) -> str:
    """Width, elongation, angle: '3.94″ 1.26 45°'."""
    if zone.fwhm_px is None:
        return f"({zone.stars})"
    width = f"{numbers.number(zone.fwhm_px, 2)} px" if zone.fwhm_arcsec is None else f"{numbers.number(zone.fwhm_arcsec, 2)}″"
    angle = "round" if zone.angle_deg is None else f"{numbers.number(zone.angle_deg, 0)}°"
    return f"{width} {numbers.number(zone.elongation, 2)} {angle}"
