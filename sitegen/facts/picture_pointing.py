"""Where each picture of the entry points: given by its author or its file, or solved from its stars."""

from collections.abc import Callable
from typing import Any

from sitegen.facts.fact import Fact
from sitegen.facts.views import PointedPicture
from sitegen.stars.solving.solution import Solution

SOLVED = "the picture's plate solution"


def _of_solution(take: Callable[[Solution], Any]) -> Callable[[PointedPicture], Any]:
    return lambda view: None if view.solution is None else take(view.solution)


FILE: Fact[PointedPicture] = Fact("Picture", "", lambda view: view.file, "The picture's file in the diary.", "the author")
TYPE: Fact[PointedPicture] = Fact(
    "Type",
    "",
    lambda view: view.type,
    "What kind of picture it is: an observation, or a simulation, artwork, chart, collage, photograph or picture of a planet.",
    "the author; the words are those of Astronomy Visualization Metadata 1.2",
)
SOLVED_BY: Fact[PointedPicture] = Fact(
    "Solved by",
    "",
    lambda view: view.origin,
    "Who says where the picture points: its author, its FITS header, AVM inside it, or its stars.",
    "the file read",
)
NOT_SOLVED: Fact[PointedPicture] = Fact(
    "Not solved because",
    "",
    lambda view: view.reason,
    "Why it is not known where the picture points.",
    "the solver's own limits",
)
RA_DEG: Fact[PointedPicture] = Fact(
    "Right ascension of its middle",
    "°",
    _of_solution(lambda solved: solved.ra_deg),
    "Of the middle of the frame, ICRS.",
    SOLVED,
    5,
)
DEC_DEG: Fact[PointedPicture] = Fact(
    "Declination of its middle",
    "°",
    _of_solution(lambda solved: solved.dec_deg),
    "Of the middle of the frame, ICRS.",
    SOLVED,
    5,
)
FIELD_DEG: Fact[PointedPicture] = Fact(
    "Field of the picture",
    "°",
    _of_solution(lambda solved: list(solved.field_deg)),
    "Width and height of the picture on the sky, through its middle.",
    SOLVED,
    4,
)
SCALE_ARCSEC_PX: Fact[PointedPicture] = Fact(
    "Scale of the picture",
    "″/px",
    _of_solution(lambda solved: solved.scale_arcsec_px),
    "Arcseconds across one pixel of the picture as its author gave it, resized or not.",
    SOLVED,
    4,
)
ROTATION_DEG: Fact[PointedPicture] = Fact(
    "Rotation of the picture",
    "°",
    _of_solution(lambda solved: round(solved.rotation_deg, 2) % 360),
    "Position angle of the picture's up in its middle, from north through east.",
    SOLVED,
    2,
)
MIRRORED: Fact[PointedPicture] = Fact(
    "Mirrored",
    "",
    _of_solution(lambda solved: solved.mirrored),
    "Whether the picture shows the sky as a mirror does.",
    SOLVED,
)
STARS_MATCHED: Fact[PointedPicture] = Fact(
    "Stars matched",
    "",
    _of_solution(lambda solved: solved.matched or None),
    "Catalogue stars that the solution rests on, where it was found from stars.",
    SOLVED,
)
RESIDUAL_ARCSEC: Fact[PointedPicture] = Fact(
    "Residual",
    "″",
    _of_solution(lambda solved: solved.corner_arcsec),
    "How far off the solution may be in the farthest corner, where it was found from stars: four standard deviations.",
    SOLVED,
    2,
)
CORNERS_SURE: Fact[PointedPicture] = Fact(
    "Sure of its corners",
    "",
    _of_solution(lambda solved: None if solved.corner_arcsec is None else solved.is_sure_of_corners),
    "Whether that is at most one pixel of the picture as the solver looks at it (2,400 px at most), three in fields of 5° and "
    "more; if not, no names stand in the corners.",
    SOLVED,
)
