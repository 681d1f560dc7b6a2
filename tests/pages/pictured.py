"""Pictures of an entry as pages get them, without a pixel."""

from sitegen.diary.entry import Picture
from sitegen.pages.picture_view import PreparedPicture, PreparedStep
from sitegen.pictures.pointing_records import Pointing
from sitegen.pictures.records import MadeFile, MadePicture

MADE = MadePicture(480, 320, (MadeFile("480.jpg", 480, 320, 1000, "image/jpeg"),), "data:,", "#000000")


def prepared_picture(picture: Picture, pointing: Pointing | None = None) -> PreparedPicture:
    """In one size; of its steps only the words."""
    folder = f"entries/five-nights/pictures/{picture.file.rpartition('/')[2].rpartition('.')[0]}/"
    steps = tuple(PreparedStep(step.what) for step in picture.steps)
    return PreparedPicture(picture, MADE, folder, None, pointing, None, steps)
