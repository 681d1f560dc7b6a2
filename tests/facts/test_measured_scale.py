"""Which solved pictures measure a train, and which only say what was simulated."""

from typing import get_args

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import PictureType
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.facts.measured_scale import measured
from sitegen.facts.registry import OpticsFacts
from sitegen.facts.views import EntryView, PointedPicture
from sitegen.stars.solving.solution import Solution
from tests.diaries import diary, entry, sub
from tests.published_values.record import Published

FOCAL_LENGTH_MM = Published(994.3, 0.06, "worked by hand: 206.264806 × 3.76 ÷ 0.78", "one digit published")


def solved(scale_arcsec_px: float, type_: PictureType) -> PointedPicture:
    """A whole frame of the test train, solved from its stars at that scale."""
    step = scale_arcsec_px / 3600
    solution = Solution(6248, 4176, 11.9, -25.3, 6247 / 2, 4175 / 2, ((-step, 0.0), (0.0, -step)), matched=42, rms_arcsec=0.4)
    return PointedPicture(f"pictures/{type_}.jpg", 6248, 4176, solution, "stars", None, type_)


def view_with(*pictures: PointedPicture) -> EntryView:
    """An entry with one sub through the 1000 mm train, nominally 206.265 × 3.76 ÷ 1000 = 0.7756″ a pixel."""
    one = entry([sub("2026-09-12 12:00")])
    view = views_of(diary(one), (one,))[0]
    return replace(view, pictures=pictures, optics=measured(view.optics, pictures))


def optics(*pictures: PointedPicture) -> OpticsFacts:
    (row,) = facts_of(view_with(*pictures)).optics
    return row


@pytest.mark.parametrize("type_", get_args(PictureType))
def test_only_a_picture_of_exposures_measures_the_train(type_: PictureType) -> None:
    """AVM 1.2, `Type`: observations, collages and pictures of planets come from a telescope; the others do not. A simulation has
    names of its own for what it was drawn at; a chart that happens to be solved has none."""
    row = optics(solved(0.78, type_))
    measured_row = row.measured_scale_arcsec_px, row.measured_focal_length_mm
    simulated_row = row.simulated_scale_arcsec_px, row.simulated_focal_length_mm
    is_measured, is_simulated = type_ in ("observation", "collage", "planetary"), type_ == "simulation"
    for (scale, focal_length_mm), is_told in ((measured_row, is_measured), (simulated_row, is_simulated)):
        assert scale == (0.78 if is_told else None)
        assert FOCAL_LENGTH_MM.agrees(focal_length_mm) if is_told else focal_length_mm is None


def test_a_simulation_beside_an_observation_takes_nothing_from_it() -> None:
    """Whichever comes first, each keeps to its own facts, and says which file it was."""
    seen, made = solved(0.78, "observation"), solved(0.77, "simulation")
    for pictures in ((seen, made), (made, seen)):
        row = optics(*pictures)
        assert (row.measured_scale_arcsec_px, row.simulated_scale_arcsec_px) == (0.78, 0.77)
        (told,) = view_with(*pictures).optics
        assert (told.measured_by, told.simulated_by) == ("pictures/observation.jpg", "pictures/simulation.jpg")
