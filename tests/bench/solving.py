"""The solver at its full size: simulated pictures by field size, and pictures of the wrong field.

    python tests/bench/solving.py [pictures=300] [first seed=0] [wrong fields for each=1] [--wide] [-v] [--knots]
    python tests/bench/solving.py --large

With --wide fields of 24 to 60 degrees; with --knots every picture has a nebula of compact bright knots. Prints, for every field
size, how many were solved, not solved, and solved wrongly; how far the farthest corner is off, and how many are farther off than
the solution says; how many solutions vouch for their corners, and how far the farthest of these is off; how many of the pictures
show fewer than four stars of the catalogue; then the same with the catalogue and the prior of another place, where
every solution is a wrong one; then times (of one processor, so that a busy machine tells no tales).
"""

import sys
from collections import defaultdict
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

import numpy as np
import pyvips
import sep
from PIL import Image
from scipy.spatial import cKDTree

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "stars" / "solving")]

from simulated_pictures import Picture, simulated_picture  # noqa: E402

from sitegen.catalogue.star_field import stars_to_solve  # noqa: E402
from sitegen.pictures.pointing import point  # noqa: E402
from sitegen.pictures.pointing_records import PointingPrior, ScalePrior  # noqa: E402
from sitegen.pictures.records import PictureSettings  # noqa: E402
from sitegen.sky.separation import separation_deg  # noqa: E402
from sitegen.stars.solving.detection import DetectedStars, detect_stars  # noqa: E402
from sitegen.stars.solving.scene import SolvePrior  # noqa: E402
from sitegen.stars.solving.solution import LOOKED_AT_PX, NotSolved, Solution  # noqa: E402
from sitegen.stars.solving.solver import solve  # noqa: E402

NARROW_DEG = (0.4, 0.5, 0.75, 1.0, 1.5, 2.0, 4.0, 8.0, 14.0, 20.0)
WIDE_DEG = (24.0, 30.0, 40.0, 50.0, 60.0)
WRONG_FROM_PX = 10.0


def timed_solve(detected: DetectedStars, frame: tuple[int, int], prior: SolvePrior) -> tuple[Solution | NotSolved, float]:
    near = stars_to_solve(prior.ra_deg, prior.dec_deg, prior.search_radius_deg(*frame))
    start = process_time()
    answer = solve(detected, *frame, near.ra_deg, near.dec_deg, near.magnitude, prior)
    return answer, process_time() - start


def elsewhere(picture: Picture, seed: int, place: int) -> SolvePrior:
    """The prior of one of the places that have nothing to do with the picture."""
    luck = np.random.default_rng(10_000_000 + seed + 1_000_000 * place)
    old = picture.prior
    while True:
        ra, dec = luck.uniform(0, 360), np.degrees(np.arcsin(luck.uniform(-1, 1)))
        if separation_deg(ra, dec, old.ra_deg, old.dec_deg) > max(25.0, 2.5 * picture.field_deg):
            return SolvePrior(float(ra), float(dec), old.scale_arcsec_px, centre_tolerance_deg=old.centre_tolerance_deg)


def shown_of_the_catalogue(picture: Picture, detected: DetectedStars) -> int:
    """Catalogue stars in the frame with a detection within 1.5 pixels."""
    near = stars_to_solve(picture.prior.ra_deg, picture.prior.dec_deg, picture.prior.search_radius_deg(*picture.frame))
    x, y = picture.lens.pixel(near.ra_deg, near.dec_deg)
    inside = (x >= 0) & (x < picture.frame[0]) & (y >= 0) & (y < picture.frame[1])
    if not inside.any() or not len(detected):
        return 0
    apart, _ = cKDTree(np.column_stack([detected.x_px, detected.y_px])).query(np.column_stack([x[inside], y[inside]]))
    return int(np.count_nonzero(apart < 1.5))


def main(pictures: int = 300, first: int = 0, wrong_fields: int = 1) -> None:
    fields = WIDE_DEG if "--wide" in sys.argv else NARROW_DEG
    table = defaultdict(list)
    false, times = [], defaultdict(list)
    for seed in range(first, first + pictures):
        field = fields[seed % len(fields)]
        picture = simulated_picture(seed, field, knots="--knots" in sys.argv)
        start = process_time()
        detected = detect_stars(picture.pixels)
        times["detect"].append(process_time() - start)
        answer, seconds = timed_solve(detected, picture.frame, picture.prior)
        times["right field"].append(seconds)
        shown = shown_of_the_catalogue(picture, detected)
        table[field].append((answer, picture, seconds, shown))
        for place in range(wrong_fields):
            other, spent = timed_solve(detected, picture.frame, elsewhere(picture, seed, place))
            times["wrong field"].append(spent)
            if isinstance(other, Solution):
                false.append((seed, place, other.evidence))
        if "-v" in sys.argv:
            print(seed, field, picture.lens.projection, picture.in_frame, shown, len(detected), f"{seconds:.2f} s",
                  told(answer, picture), flush=True)
    report(table, false, times, pictures)


def told(answer: Solution | NotSolved, picture: Picture) -> object:
    if isinstance(answer, NotSolved):
        return answer.reason
    return picture.error_px(answer, margin=0.0), bound_px(answer), answer.evidence


def bound_px(solution: Solution) -> float:
    return (solution.corner_arcsec or 0.0) / solution.scale_arcsec_px


def report(table: dict, false: list, times: dict, pictures: int) -> None:
    print("field deg  pictures  solved  share  wrong  under 4 shown  corner error px median / max  beyond said  vouch  "
          "max of these  median CPU s")
    wrong_count = 0
    for field, rows in sorted(table.items()):
        solved = [(a, p.error_px(a, margin=0.0), a.mirrored != p.lens.mirrored) for a, p, _, _ in rows if isinstance(a, Solution)]
        errors = np.array([error for _, error, _ in solved] or [np.nan])
        said = np.array([bound_px(a) for a, _, _ in solved] or [np.nan])
        vouched = errors[[a.is_sure_of_corners for a, _, _ in solved]] if solved else np.empty(0)
        wrong = sum(error > WRONG_FROM_PX or parity for _, error, parity in solved)
        wrong_count += wrong
        print(f"{field:9.2f}  {len(rows):8d}  {len(solved):6d}  {len(solved) / len(rows):5.0%}  {wrong:5d}  "
              f"{sum(shown < 4 for _, _, _, shown in rows):13d}  {np.median(errors):19.2f} / {np.max(errors):5.2f}  "
              f"{np.count_nonzero(errors > said):11d}  {len(vouched):5d}  {vouched.max() if len(vouched) else np.nan:12.2f}  "
              f"{np.median([s for _, _, s, _ in rows]):12.2f}")
    print(f"wrong solutions: {wrong_count} in {pictures}")
    print(f"wrong field: {len(false)} accepted in {len(times['wrong field'])}", *false)
    for what, seconds in times.items():
        print(f"{what}: median {np.median(seconds):.3f} s, 95 % under {np.percentile(seconds, 95):.3f} s")


def large(first: int) -> None:
    """Processor time to place a JPEG of about 24 megapixels, beside its bare reading and extraction by libvips and sep."""
    for seed in range(first, first + 6):
        picture = simulated_picture(seed, (1.0, 2.0, 4.0)[seed % 3])
        with TemporaryDirectory() as folder:
            path = Path(folder) / "large.jpg"
            enlarged = Image.fromarray(picture.pixels).resize([5 * side for side in picture.frame], Image.Resampling.BICUBIC)
            enlarged.save(path, quality=90)
            start = process_time()
            bare = bare_extraction(path)
            between = process_time()
            prior = picture.prior
            train = ScalePrior(5 * picture.frame[0], 5 * picture.frame[1], prior.scale_arcsec_px / 5)
            asked = PointingPrior(None, ((prior.ra_deg, prior.dec_deg),), (train,), True)
            pointing = point(path, asked, PictureSettings(), Path(folder))
            placed = process_time() - between
        print(f"seed {seed}: {bare} sources, {between - start:.2f} s bare, {placed:.2f} s placed, "
              f"{placed / (between - start):.2f} times; {'not ' if pointing.solution is None else ''}solved")


def bare_extraction(path: Path) -> int:
    """Sources of the picture at 2400 px, with nothing else done."""
    image = pyvips.Image.new_from_file(str(path)).resize(LOOKED_AT_PX / pyvips.Image.new_from_file(str(path)).width)
    plane = image.numpy().mean(axis=2, dtype=np.float32)
    background = sep.Background(plane)
    return len(sep.extract(plane - background.back(), 5.0, err=background.globalrms))


if __name__ == "__main__" and "--large" in sys.argv:
    large(0)
elif __name__ == "__main__":
    main(*(int(argument) for argument in sys.argv[1:] if not argument.startswith("-")))
