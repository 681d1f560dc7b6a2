"""`sitegen survey` and `sitegen ring`, run as a user runs them."""

import json
import re
from math import degrees
from xml.etree.ElementTree import fromstring

import pytest
import pyvips
from click.testing import CliRunner

from sitegen.cli.registry import main
from sitegen.reading.measurement_files import ring_as_dict, save, survey_as_dict
from tests.stars.frames_on_disk import write_fits
from tests.stars.measured_frames import ringed, surveyed
from tests.stars.synthetic import Sky, draw


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """A frame, two saved measurements, and a file that is none."""
    place = tmp_path_factory.mktemp("frames")
    write_fits(place / "field.fits", draw(Sky(width=700, height=480, stars=400, fwhm=3.0, seed=3))[0], FOCALLEN=None)
    save(survey_as_dict(surveyed(slope=0.1, empty=(0,))), place / "tilted.yaml")
    save(ring_as_dict(ringed(warnings=("the star stands aside",))), place / "ring.json")
    (place / "none.fits").write_text("nothing")
    return place


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


def test_a_survey_is_a_table_of_the_zones(folder):
    """Top row first, the pattern and its evidence below; a zone without a measurement shows its count in brackets."""
    done = run("survey", folder / "tilted.yaml")
    assert done.exit_code == 0, done.output
    lines = done.output.splitlines()
    drawn = re.fullmatch(r"tilted\.yaml: Stars across the field: 4\.5″ wide, FWHM rises (\d+)\u202f% to one side", lines[0])
    assert int(drawn[1]) == pytest.approx(100 * (1.45 / 0.95 - 1), abs=4)  # from edge to edge of what was written
    assert lines[2].split("  ")[1].strip() == "4.50″ 1.02 30°"
    assert lines[4].strip().startswith("(2)")
    assert "  One side is worse, the right: the camera or the focuser is tilted." in lines


def test_a_ring_is_told(folder):
    """Offset with its error, direction, both diameters."""
    done = run("ring", folder / "ring.json")
    assert done.exit_code == 0
    assert "5.0\u202f% of the disc's diameter: 6.0 ± 0.2 px, towards 90°" in done.output
    assert "Disc: 120.0\u202fpx" in done.output


def test_a_scale_given_wins(folder):
    """By --scale, or by focal length and pixel, 7.52 µm seen from 1000 mm; without either the frame has px only."""
    found = [
        json.loads(run("survey", folder / "field.fits", "--json", *given).stdout)["measurements"][0]["scale_arcsec_px"]
        for given in ((), ("--scale", "2.5"), ("--focal-length", "1000", "--pixel", "7.52"))
    ]
    assert found == [None, 2.5, pytest.approx(3600 * degrees(0.00752 / 1000), abs=1e-4)]  # four digits published


def test_saved_is_what_was_measured(folder, tmp_path):
    """--save beside the frame, --save-to where it is wished; measured again from there, the numbers are the same."""
    first = run("survey", folder / "field.fits", "--save", "--save-to", tmp_path / "kept.json", "--json")
    assert (first.exit_code, "saved in" in first.stderr) == (0, True)
    again = [run("survey", place, "--json") for place in (folder / "field.survey.yaml", tmp_path / "kept.json")]
    wanted = json.loads(first.stdout)["measurements"][0]["zones"]
    assert [json.loads(each.stdout)["measurements"][0]["zones"] for each in again] == [wanted, wanted]


@pytest.mark.parametrize(("command", "file"), [("survey", "tilted.yaml"), ("ring", "ring.json")])
def test_pictures_are_drawn(folder, tmp_path, command, file):
    """SVG that an XML parser takes, with its own colours and nothing from elsewhere; PNG with more than paper on it."""
    for ending in ("svg", "png"):
        assert run(command, folder / file, "--picture", tmp_path / f"p.{ending}").exit_code == 0
    text = (tmp_path / "p.svg").read_text("utf-8")
    assert fromstring(text).tag == "{http://www.w3.org/2000/svg}svg"
    assert "var(" not in text and "url(" not in text and "href" not in text
    picture = pyvips.Image.new_from_file(str(tmp_path / "p.png"))
    assert picture.width == 872
    assert picture.colourspace("b-w")[0].deviate() > 5


@pytest.mark.parametrize("command", ["survey", "ring"])
def test_what_cannot_be_measured_is_told_and_the_rest_is_done(folder, command):
    """Every file is tried; each problem is a line, and the exit status 1."""
    good = folder / ("tilted.yaml" if command == "survey" else "ring.json")
    done = run(command, folder / "none.fits", good, folder / "gone.fits")
    assert done.exit_code == 1
    assert good.name in done.stdout
    assert done.stderr.splitlines() == [
        f"{folder}/none.fits:1:1: error: is neither FITS nor a TIFF, PNG or JPEG picture; "
        "name a frame, or what 'sitegen survey --save' wrote",
        f"{folder}/gone.fits:1:1: error: cannot be read: No such file or directory",
    ]


def test_problems_as_json(folder):
    """With --json nothing is told beside it."""
    done = run("ring", folder / "none.fits", "--json")
    assert (done.exit_code, done.stderr) == (1, "")
    assert json.loads(done.stdout)["problems"][0]["severity"] == "error"


def test_a_place_that_cannot_be_written_is_a_problem(folder):
    """A folder that is not there, for a measurement and for a drawing."""
    done = run("ring", folder / "ring.json", "--save-to", folder / "no/r.yaml", "--picture", folder / "no/r.svg")
    assert done.exit_code == 1
    assert done.stderr.splitlines() == [
        f"{folder}/no/r.yaml:1:1: error: cannot be written: No such file or directory",
        f"{folder}/no/r.svg:1:1: error: it cannot be written: No such file or directory",
    ]


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["survey", "a", "--pixel", "3"], "--focal-length and --pixel give a scale only together"),
        (["survey", "a", "--pixel", "3", "--focal-length", "9", "--scale", "1"],
         "--scale says it already; leave out --focal-length and --pixel"),
        (["survey", "a", "--scale", "0"], "Invalid value for '--scale': 0.0 is not in the range x>0."),
        (["ring", "a", "--picture", "b.gif"], "--picture writes .svg or .png, not '.gif'"),
        (["ring", "a", "b", "--picture", "b.png"], "--picture draws one frame; name one file"),
        (["ring", "a", "--save-to", "b.txt"], "--save-to writes .yaml or .json, not '.txt'"),
        (["ring", "a", "b", "--save-to", "b.yaml"], "--save-to needs a folder that exists where several frames are measured"),
        (["ring"], "Missing argument 'FILES...'."),
    ],
)  # fmt: skip
def test_wishes_that_cannot_be_fulfilled(arguments, sentence):
    """Exit status 2 before anything is opened."""
    done = run(*arguments)
    assert done.exit_code == 2
    assert f"Error: {sentence}" in done.stderr
