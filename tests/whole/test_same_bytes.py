"""Another processor, the same site."""

import json
import shutil
import sys

import pytest

from tests.bench.same_bytes import OLDEST, Surrounding, run
from tests.trust.measured import lay_out_measured
from tests.trust.tiny import Wishes, site_of


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, bytes]]:
    """One diary, built with this processor's arithmetic and with that of an old one."""
    first, other = (tmp_path_factory.mktemp(name) for name in ("first", "other"))
    lay_out_measured(first, Wishes())
    shutil.copytree(first / "content", other / "content")
    for folder, variables in ((first, {}), (other, OLDEST)):
        run(Surrounding(folder.name, variables), folder)
    return [site_of(folder / "output") for folder in (first, other)]


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the C library is told by a variable of Linux's")
def test_no_byte_hangs_on_the_processor(sites: list[dict[str, bytes]]) -> None:
    """NumPy, OpenBLAS, the C library, libvips and libjpeg with the loops of another processor: the same in every file."""
    first, other = sites
    assert sorted(name for name in first.keys() | other.keys() if first.get(name) != other.get(name)) == []


def test_everything_was_measured(sites: list[dict[str, bytes]]) -> None:
    """The diary is no empty control: its picture is solved by stars, its frame has zones, its ring an offset."""
    facts = json.loads(sites[0]["entries/second/facts.json"])
    assert facts["pictures"][0]["solved_by"] == "stars", facts["pictures"][0]["not_solved"]
    assert sum(zone["fwhm_px"] is not None for zone in facts["star_shapes"][0]["zones"]) >= 9
    assert facts["star_rings"][0]["direction_deg"] is not None
    assert facts["integration"]["kept"] == 12
    assert b"Spatial.Scale" in sites[0]["entries/second/pictures/field/full.jpg"]
