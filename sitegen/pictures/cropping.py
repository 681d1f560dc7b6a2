"""The middle of a picture, in given proportions."""

import pyvips

from sitegen.pictures.resizing import reduced


def covered(image: pyvips.Image, width_px: int, height_px: int) -> pyvips.Image:
    """Exactly that size, filled: scaled until both sides suffice, the rest cut off evenly. Enlarges a smaller one."""
    scale = max(width_px / image.width, height_px / image.height)
    cut_width, cut_height = (max(1, round(side / scale)) for side in (width_px, height_px))
    cut_width, cut_height = min(image.width, cut_width), min(image.height, cut_height)
    left, top = (image.width - cut_width) // 2, (image.height - cut_height) // 2
    return reduced(image.crop(left, top, cut_width, cut_height), width_px, height_px)
