"""One colour a pixel -> three."""

import pyvips

NEIGHBOURS = {
    "R": [[1, 2, 1], [2, 4, 2], [1, 2, 1]],
    "G": [[0, 1, 0], [1, 4, 1], [0, 1, 0]],
    "B": [[1, 2, 1], [2, 4, 2], [1, 2, 1]],
}


def bayer_to_rgb(mosaic: pyvips.Image, pattern: str) -> pyvips.Image:
    """Three bands of the mosaic's own size. `pattern`: the four letters of the top left 2 × 2, by rows.

    Bilinear: a sample that was taken stays as it is, a missing one is the mean of the two or four nearest of its
    colour that lie within the frame. No edge is guessed; the price is a trace of colour around the finest stars.
    """
    bands = [_filled(mosaic, pattern, colour) for colour in "RGB"]
    return bands[0].bandjoin(bands[1:])


def _filled(mosaic: pyvips.Image, pattern: str, colour: str) -> pyvips.Image:
    kernel = pyvips.Image.new_from_array(NEIGHBOURS[colour])
    taken = _sites(pattern, colour, mosaic.width, mosaic.height)
    return _summed(taken.ifthenelse(mosaic, 0), kernel) / _summed(taken.ifthenelse(1, 0).cast("float"), kernel)


def _sites(pattern: str, colour: str, width_px: int, height_px: int) -> pyvips.Image:
    """255 where the mosaic has a sample of that colour."""
    cell = [[255 * (pattern[2 * row + column] == colour) for column in (0, 1)] for row in (0, 1)]
    across, down = -(-width_px // 2), -(-height_px // 2)
    return pyvips.Image.new_from_array(cell).cast("uchar").replicate(across, down).crop(0, 0, width_px, height_px)


def _summed(samples: pyvips.Image, kernel: pyvips.Image) -> pyvips.Image:
    """Nothing lies outside the frame, so that an edge takes its mean over fewer neighbours."""
    width, height = samples.width, samples.height
    framed = samples.embed(1, 1, width + 2, height + 2, extend="black")
    return framed.conv(kernel, precision="float").crop(1, 1, width, height)
