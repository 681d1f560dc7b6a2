"""sitegen ring: how far the shadow of a defocused star sits off its disc's middle, in the terminal."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from sitegen.cli.star_options import star_options

if TYPE_CHECKING:
    from sitegen.stars.measured import RingedFrame


@click.command()
@star_options
def command(
    files: tuple[Path, ...], content: Path, themes: Path, output: Path, save_beside: bool, save_to: Path | None,
    picture: Path | None, as_json: bool,
) -> None:  # fmt: skip
    """Measure a bright defocused star: the middle of its disc, the middle of the shadow in it, and how far they are apart.

    FILES are FITS frames (.fits, .fit, .gz, .fz; mono or raw colour), pictures (TIFF, PNG, JPEG), or measurements saved before.
    Put the star in the middle of the frame: off the axis a disc is lopsided even in a telescope in order. What --save writes an
    entry can name in 'star_rings' in place of the frame.

    \b
    Examples:
      sitegen ring defocused.fits --save
      sitegen ring before.png after.png --json
    """
    from sitegen.cli.star_output import check_wishes, draw, finish, keep, measure_all, speech
    from sitegen.pages.star_pictures import ring_svg
    from sitegen.reading.measurement_files import ring_as_dict
    from sitegen.reading.star_measuring import ring_of

    check_wishes(files, save_to, picture)
    theme, words, numbers = speech(themes)
    done, problems = measure_all(files, ring_of)
    for path, frame in done:
        problems += keep(ring_as_dict(frame), path, save_beside, save_to)
        if picture is not None:
            problems += draw(ring_svg(frame, theme, words, numbers), picture)
    contents = [ring_as_dict(frame) for _, frame in done]
    finish(problems, as_json, contents, (line for _, frame in done for line in _lines(frame, words, numbers)))


def _lines(frame: "RingedFrame", words: Any, numbers: Any) -> Iterator[str]:
    from sitegen.pages.star_maps import ring_words
    from sitegen.pages.star_words import ring_title

    ring = frame.ring
    yield f"{frame.file}: {ring_title([frame], words, numbers)}"
    yield ""
    yield f"  {ring_words(ring, words, numbers)}"
    yield f"  {words['ring.head.outer']}: {numbers.quantity(ring.outer_px, 'px')}"
    yield f"  {words['ring.head.inner']}: {numbers.quantity(ring.inner_px, 'px')}"
    yield ""
