"""A drawing of ours to a file of its own: SVG as it is, or PNG."""

from pathlib import Path

import pyvips

from sitegen.pictures.limits import as_picture_problems

DPI = 72


def write_drawing(svg: str, path: Path) -> None:
    """By the file's ending, .png or .svg. Raises PictureProblem where it cannot be written."""
    with as_picture_problems("written"):
        if path.suffix.lower() == ".png":
            path.write_bytes(pyvips.Image.svgload_buffer(svg.encode("utf-8"), dpi=DPI).pngsave_buffer(keep="none"))
        else:
            path.write_text(svg, "utf-8", newline="\n")
