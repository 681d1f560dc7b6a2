"""Smaller, never larger, in the depth it came in."""

import pyvips

# Mitchell's filter: a ninth of the dark ring that Lanczos draws around a bright star (0.005 of white against 0.045)
KERNEL = "mitchell"


def height_at(width_px: int, full: tuple[int, int]) -> int:
    """The height that keeps the proportions of `full` (width, height), at least 1."""
    return max(1, round(full[1] * width_px / full[0]))


def reduced(image: pyvips.Image, width_px: int, height_px: int) -> pyvips.Image:
    """Exactly that size; the picture itself where it has it already."""
    if (image.width, image.height) == (width_px, height_px):
        return image
    return image.resize(width_px / image.width, vscale=height_px / image.height, kernel=KERNEL)
