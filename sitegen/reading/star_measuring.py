"""A file that an entry or a command names -> its measurement: taken from the pixels of a frame, or read where it was saved."""

from pathlib import Path

from sitegen.problems import Problem
from sitegen.reading.measurement_files import Ringed, Surveyed, is_saved, read_ring, read_survey
from sitegen.reading.star_frames import FrameProblem, StarFrame, open_frame
from sitegen.stars.detection import SurveyProblem
from sitegen.stars.measured import RingedFrame, SurveyedFrame
from sitegen.stars.pattern import field_pattern
from sitegen.stars.ring_search import RingProblem
from sitegen.stars.rings import ring_offset
from sitegen.stars.survey import star_survey


def measured(kind: str, path: Path, shown: str, file: str) -> Surveyed | Ringed:
    """`kind` is 'survey' or 'ring'; the rest as below."""
    return survey_of(path, shown, file) if kind == "survey" else ring_of(path, shown, file)


def survey_of(path: Path, shown: str, file: str) -> Surveyed:
    """Star shapes over the field, or the problems why not. `shown`: the path in problem lines; `file`: as the author wrote it."""
    if is_saved(path.name):
        return read_survey(path, shown, file)
    try:
        frame = open_frame(path)
        survey = star_survey(
            frame.pixels, scale_arcsec_px=frame.scale_arcsec_px, bayer=frame.bayer, saturation=frame.saturation
        )
    except (FrameProblem, SurveyProblem, ValueError) as error:
        return None, (_problem(shown, error),)
    return SurveyedFrame(file, frame.taken, frame.binning, survey, field_pattern(survey)), ()


def ring_of(path: Path, shown: str, file: str) -> Ringed:
    """How far the shadow of a defocused star sits from its disc's middle, or the problems why it cannot be told."""
    if is_saved(path.name):
        return read_ring(path, shown, file)
    try:
        frame = open_frame(path)
        ring = ring_offset(frame.pixels, bayer=frame.bayer, saturation=frame.saturation)
    except (FrameProblem, RingProblem, ValueError) as error:
        return None, (_problem(shown, error),)
    warnings = tuple(Problem(shown, 1, 1, wrong, severity="warning") for wrong in ring.warnings)
    return RingedFrame(file, frame.taken, frame.binning, *_size(frame), ring), warnings


def _size(frame: StarFrame) -> tuple[int, int]:
    height, width = frame.pixels.shape
    return width, height


def _problem(shown: str, error: Exception) -> Problem:
    if isinstance(error, FrameProblem):
        return Problem(shown, 1, 1, error.wrong, error.remedy)
    return Problem(shown, 1, 1, str(error))
