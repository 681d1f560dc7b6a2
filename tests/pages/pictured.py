"""Pictures of an entry as pages get them, without a pixel."""

from sitegen.diary.entry import Picture, ProcessStep
from sitegen.pages.picture_view import PreparedPicture, PreparedStep
from sitegen.pictures.pointing_records import Pointing
from sitegen.pictures.records import MadeFile, MadePicture

MADE = MadePicture(480, 320, (MadeFile("480.jpg", 480, 320, 1000, "image/jpeg"),), "data:,", "#000000")


def prepared_picture(picture: Picture, pointing: Pointing | None = None) -> PreparedPicture:
    """In one size."""
    steps = tuple(_step(step) for step in picture.steps)
    return PreparedPicture(picture, MADE, _folder(picture.file), None, pointing, None, steps)


def _step(step: ProcessStep) -> PreparedStep:
    if step.file is None:
        return PreparedStep(step.what)
    picture = Picture(step.file, step.alt or "", step.what, "process")
    return PreparedStep(step.what, PreparedPicture(picture, MADE, _folder(step.file)))


def _folder(file: str) -> str:
    return f"entries/five-nights/pictures/{file.rpartition('/')[2].rpartition('.')[0]}/"
