"""Pictures as the demo diary publishes them: where they point, what they carry, what is made once."""

import json
import re
from collections.abc import Iterator
from math import cos, radians
from pathlib import Path

import numpy as np
import pytest
from astropy.io import fits
from PIL import Image
from pyavm import AVM

from sitegen.catalogue.star_field import stars_near
from sitegen.diary.entry import PointingSolution
from sitegen.pictures.avm_reading import spatial_in
from sitegen.pictures.embedding import with_packet
from sitegen.pictures.packet_values import packet
from sitegen.pictures.pointing import likely_scales, point, stated_solution
from sitegen.pictures.pointing_records import PointingPrior, ScalePrior
from sitegen.pictures.records import PictureSettings
from sitegen.sky.separation import separation_deg
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.transforms import flipped_top_bottom
from tests.pictures.level_0 import promised
from tests.pictures.strip_check import strip_check
from tests.written_header import as_header

FIELD = PointingSolution(161.0, -59.8, 8.0, 33.0)
SIZE = (900, 600)
FRAME = ScalePrior(3600, 2400, 2.0)
PLAIN = PictureSettings()
NOTHING_SAID = PointingPrior(None, ((161.1, -59.7),), (FRAME,), by_stars=True)


def drawn(solution: Solution) -> np.ndarray:
    """The catalogue's stars where the solution has them, (height, width), 8 bits, with a little noise."""
    stars = stars_near(solution.ra_deg, solution.dec_deg, 2.0)
    down, across = np.mgrid[: solution.height_px, : solution.width_px]
    pixels = np.random.default_rng(7).normal(20.0, 2.0, (solution.height_px, solution.width_px))
    for x, y, magnitude in zip(*solution.to_pixel(stars.ra_deg, stars.dec_deg), stars.magnitude, strict=True):
        if -5 < x < solution.width_px + 5 and -5 < y < solution.height_px + 5:
            left, top = max(int(x) - 8, 0), max(int(y) - 8, 0)
            part = np.s_[top : int(y) + 9, left : int(x) + 9]
            spread = ((across[part] - x) ** 2 + (down[part] - y) ** 2) / (2 * 1.6**2)
            pixels[part] += 220 * 10 ** (-0.2 * (magnitude - 5)) * np.exp(-spread)
    return np.clip(pixels, 0, 255).astype(np.uint8)


def apart_arcsec(one: Solution, other: Solution) -> float:
    """The largest difference of place at the four corners."""
    x, y = [0, one.width_px - 1, 0, one.width_px - 1], [0, 0, one.height_px - 1, one.height_px - 1]
    places = zip(*one.to_sky(x, y), *other.to_sky(x, y), strict=True)
    return max(3600 * float(separation_deg(ra, dec, float(to_ra), float(to_dec))) for ra, dec, to_ra, to_dec in places)


@pytest.fixture(scope="module")
def truth() -> Solution:
    return stated_solution(FIELD, *SIZE)


def test_the_author_s_words_are_the_solution(truth: Solution) -> None:
    """Centre, scale and rotation come back from the solution as they were stated, mirrored or not."""
    mirrored = stated_solution(PointingSolution(161.0, -59.8, 8.0, 33.0, mirrored=True), *SIZE)
    for solution, is_mirrored in ((truth, False), (mirrored, True)):
        told = solution.ra_deg, solution.dec_deg, solution.scale_arcsec_px, solution.rotation_deg
        assert told == pytest.approx((161.0, -59.8, 8.0, 33.0), abs=1e-6)
        assert solution.mirrored is is_mirrored


def test_with_north_up_east_is_left() -> None:
    """To the right of the middle right ascension falls, above it declination grows."""
    plain = stated_solution(PointingSolution(10.0, 20.0, 3.6, 0.0), 101, 101)
    ra, dec = plain.to_sky([60, 50], [50, 40])
    assert float(ra[0]) == pytest.approx(10.0 - 0.01 / cos(radians(20.0)), abs=1e-6)
    assert float(dec[1]) == pytest.approx(20.0 + 0.01, abs=1e-6)


def test_the_stars_tell_where_nobody_does(truth: Solution, tmp_path: Path) -> None:
    """A resized frame, target a tenth of a degree off the middle: within half a pixel at the corners."""
    Image.fromarray(drawn(truth)).save(tmp_path / "sky.png")
    found = point(tmp_path / "sky.png", NOTHING_SAID, PLAIN, tmp_path)
    assert found.origin == "stars"
    assert found.solution is not None
    assert apart_arcsec(found.solution, truth) < 4.0


def test_no_stars_no_guess(tmp_path: Path) -> None:
    """Noise is not solved, and the reason is a sentence."""
    noise = np.random.default_rng(3).normal(40, 5, (SIZE[1], SIZE[0])).clip(0, 255).astype(np.uint8)
    Image.fromarray(noise).save(tmp_path / "noise.png")
    found = point(tmp_path / "noise.png", NOTHING_SAID, PLAIN, tmp_path)
    assert (found.solution, found.origin) == (None, None)
    assert found.reason is not None
    assert found.reason.startswith("only ")


def test_the_order_of_who_is_believed(truth: Solution, tmp_path: Path) -> None:
    """The author wins over the file, the file over the stars."""
    Image.fromarray(drawn(truth)).save(tmp_path / "sky.jpg", quality=95)
    told = packet({"Title": "t"}, stated_solution(PointingSolution(12.0, 5.0, 8.0, 0.0), *SIZE), *SIZE)
    (tmp_path / "told.jpg").write_bytes(with_packet((tmp_path / "sky.jpg").read_bytes(), told))
    by_file = point(tmp_path / "told.jpg", NOTHING_SAID, PLAIN, tmp_path)
    by_author = point(tmp_path / "told.jpg", PointingPrior(FIELD, (), (), False), PLAIN, tmp_path)
    assert (by_file.origin, by_author.origin) == ("avm", "author")
    assert by_file.solution is not None
    assert by_file.solution.ra_deg == pytest.approx(12.0, abs=1e-6)


@pytest.mark.parametrize("row_order", ["BOTTOM-UP", "TOP-DOWN"])
def test_a_fits_header_is_read_upright(truth: Solution, tmp_path: Path, row_order: str) -> None:
    """The header speaks of stored rows, the picture of shown ones."""
    stored = truth if row_order == "TOP-DOWN" else flipped_top_bottom(truth)
    told = {key: value for key, value in as_header(stored).items() if not key.startswith("NAXIS")}
    header = fits.Header(told | {"ROWORDER": row_order})
    fits.PrimaryHDU(np.zeros(SIZE[::-1], dtype=np.uint8), header).writeto(tmp_path / "frame.fits")
    found = point(tmp_path / "frame.fits", NOTHING_SAID, PLAIN, tmp_path)
    assert found.origin == "header"
    assert found.solution is not None
    assert apart_arcsec(found.solution, truth) < 1e-3


def test_scales_worth_trying() -> None:
    """A whole frame resized, and a crop in the frame's own pixels; a shape no frame has leaves only the crop."""
    assert likely_scales(900, 600, (FRAME,)) == pytest.approx((8.0, 2.0))
    assert likely_scales(600, 900, (FRAME,)) == pytest.approx((8.0, 2.0))
    assert likely_scales(3600, 2400, (FRAME,)) == pytest.approx((2.0,))
    assert likely_scales(1000, 1000, (FRAME,)) == pytest.approx((2.0,))
    assert likely_scales(5000, 5000, (FRAME,)) == ()


def test_a_packet_that_declares_entities_is_not_opened() -> None:
    """Nor one that is no XML."""
    assert spatial_in(b'<!DOCTYPE x [<!ENTITY a "b">]><x/>') == {}
    assert spatial_in(b"<broken") == {}


def published(site: Path, *kinds: str) -> Iterator[Path]:
    return (path for kind in kinds for path in sorted((site / "entries").rglob(f"*.{kind}")))


def test_nothing_private_is_published(demo_site: Path) -> None:
    """Two readers find nothing but the AVM packet in any picture of the demo, cards and tiles included."""
    paths = list(published(demo_site, "jpg", "webp", "avif"))
    assert len(paths) > 200
    assert {str(path): found for path in paths if (found := strip_check(path))} == {}


# pyavm knows no domain longer than six letters, and no WebP by name
@pytest.mark.filterwarnings("ignore:ReferenceURL", "ignore:Only PNG and JPEG")
def test_every_size_carries_its_own_place(demo_site: Path) -> None:
    """pyavm reads author, type (a simulation names no camera) and a scale that shrinks with the size, as facts.json has."""
    folder = demo_site / "entries" / "carina-two-lengths"
    facts = json.loads((folder / "facts.json").read_text())
    wide = next(row for row in facts["pictures"] if row["file"].endswith("wide.jpg"))
    for name in ("480.jpg", "1200.webp", "tiles/full/max/0/default.jpg"):
        path = folder / "pictures" / "wide" / name
        avm = AVM.from_image(str(path))
        with Image.open(path) as picture:
            width = picture.width
        assert avm.Credit == "The keeper of the school observatory"
        assert (avm.Type, avm.Instrument) == ("Simulation", None)
        assert abs(avm.Spatial.Scale[0]) * 3600 == pytest.approx(wide["scale_arcsec_px"] * 2200 / width, rel=1e-4)


def test_the_demo_s_simulated_pictures_give_back_what_they_were_drawn_at(demo_site: Path) -> None:
    """Drawn at 384 and 2000 mm (tests/demo/cameras.py), the pictures of two trains are solved to these within a thousandth. That
    measures no train, and no entry of the demo says that it does."""
    facts = {path.parent.name: json.loads(path.read_text()) for path in (demo_site / "entries").glob("*/facts.json")}
    simulated = {row["rig"]: row["simulated_focal_length_mm"] for row in facts["carina-two-lengths"]["optics"]}
    assert simulated == {"long-mono": pytest.approx(2000, rel=1e-3), "short-colour": pytest.approx(384, rel=1e-3)}
    rows = [row for entry in facts.values() for row in entry["optics"]]
    assert {row[key] for row in rows for key in ("measured_scale_arcsec_px", "measured_focal_length_mm")} == {None}


def test_the_demo_says_that_they_are_simulated_where_the_numbers_stand(demo_site: Path) -> None:
    """Beside the nominal one under the picture, in the train's table, in that of all numbers, and under the finder map."""
    page = (demo_site / "entries" / "carina-two-lengths" / "index.html").read_text()
    below = [text(line) for line in re.findall(r'<p class="place">.*?</p>', page, re.S)]
    assert [len(re.findall(r" mm simulated, [0-9,]+ mm nominal \([±+−]", line)) for line in below] == [1, 1]
    numbers = page.index('<section id="numbers"')
    for part in (page[page.index('<section id="train"') : numbers], page[numbers:]):
        assert "Focal length in a simulated picture" in part and "Scale in a simulated picture" in part
    assert "the field lies as in a simulated picture, not as a camera saw it." in page
    assert "easured focal length" not in page and " mm measured" not in page


def text(html: str) -> str:
    """Without tags, and with every blank a plain one."""
    return " ".join(re.sub(r"<[^>]+>", "", html).split())


def test_a_wide_picture_without_stars_in_its_middle_says_so(demo_site: Path) -> None:
    """49 degrees, whose middle, where a wide picture is searched, shows four stars before the Milky Way's clouds: not solved,
    and why."""
    facts = json.loads((demo_site / "entries" / "milky-way-paddock" / "facts.json").read_text())
    assert [row["solved_by"] for row in facts["pictures"]] == [None, None]
    assert "chance cannot be ruled out" in facts["pictures"][0]["not_solved"]


def test_tiles_name_their_place(demo_site: Path) -> None:
    """IIIF level 0 under the diary's address, with every file that it promises, and no other."""
    described = sorted((demo_site / "entries").rglob("info.json"))
    assert described
    for info_path in described:
        info = json.loads(info_path.read_text())
        beside = {path.relative_to(info_path.parent).as_posix() for path in info_path.parent.rglob("*") if path.is_file()}
        assert beside == promised(info)
        assert info["id"] == f"https://two-tanks.example/{info_path.parent.relative_to(demo_site).as_posix()}"
        for size in info["sizes"]:
            with Image.open(info_path.parent / f"full/{size['width']},{size['height']}/0/default.jpg") as level:
                assert level.size == (size["width"], size["height"])


def test_every_entry_with_a_picture_has_a_card(demo_site: Path) -> None:
    """1200 × 630, named in the page's head."""
    pages = [page for page in sorted((demo_site / "entries").glob("*/index.html")) if (page.parent / "pictures").is_dir()]
    assert len(pages) > 10
    for page in pages:
        with Image.open(page.parent / "card.jpg") as card:
            assert card.size == (1200, 630)
        assert f"{page.parent.name}/card.jpg" in page.read_text()
