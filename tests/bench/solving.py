"""The solver at its full size: simulated pictures by field size, and pictures of the wrong field.

    python tests/bench/solving.py [pictures=330] [first seed=0]

With --knots every picture has a nebula of compact bright knots. Prints, for every field size, how many were solved, not solved,
and solved wrongly, with the error in the farthest corner; then the same with the catalogue and the prior of another place, where
every solution is a wrong one; then times (of one processor, so that a busy machine tells no tales).
"""

import sys
from collections import defaultdict
from pathlib import Path
from time import process_time

import numpy as np

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "stars" / "solving")]

from simulated_pictures import Picture, simulated_picture  # noqa: E402

from sitegen.catalogue.star_field import stars_to_solve  # noqa: E402
from sitegen.stars.solving.detection import DetectedStars, detect_stars  # noqa: E402
from sitegen.stars.solving.scene import SolvePrior  # noqa: E402
from sitegen.stars.solving.solution import NotSolved, Solution  # noqa: E402
from sitegen.stars.solving.solver import solve  # noqa: E402

FIELDS_DEG = (0.4, 0.5, 0.75, 1.0, 1.5, 2.0, 4.0, 8.0, 14.0, 20.0, 24.0)
WRONG_FROM_PX = 10.0


def timed_solve(detected: DetectedStars, frame: tuple[int, int], prior: SolvePrior) -> tuple[Solution | NotSolved, float]:
    near = stars_to_solve(prior.ra_deg, prior.dec_deg, prior.search_radius_deg(*frame))
    start = process_time()
    answer = solve(detected, *frame, near.ra_deg, near.dec_deg, near.magnitude, prior)
    return answer, process_time() - start


def elsewhere(picture: Picture, seed: int) -> SolvePrior:
    """The prior of a place that has nothing to do with the picture."""
    luck = np.random.default_rng(10_000_000 + seed)
    old = picture.prior
    while True:
        ra, dec = luck.uniform(0, 360), np.degrees(np.arcsin(luck.uniform(-1, 1)))
        if abs(dec - old.dec_deg) > 25 or abs((ra - old.ra_deg + 180) % 360 - 180) > 60:
            return SolvePrior(float(ra), float(dec), old.scale_arcsec_px, centre_tolerance_deg=old.centre_tolerance_deg)


def main(pictures: int = 330, first: int = 0) -> None:
    table = defaultdict(list)
    false, times = [], defaultdict(list)
    for seed in range(first, first + pictures):
        field = FIELDS_DEG[seed % len(FIELDS_DEG)]
        picture = simulated_picture(seed, field, knots="--knots" in sys.argv)
        start = process_time()
        detected = detect_stars(picture.pixels)
        times["detect"].append(process_time() - start)
        answer, seconds = timed_solve(detected, picture.frame, picture.prior)
        times["right field"].append(seconds)
        table[field].append((answer, picture, seconds))
        other, seconds = timed_solve(detected, picture.frame, elsewhere(picture, seed))
        times["wrong field"].append(seconds)
        if isinstance(other, Solution):
            false.append((seed, other.evidence))
        if "-v" in sys.argv:
            print(seed, field, picture.in_frame, len(detected), f"{times['right field'][-1]:.2f} s",
                  answer.reason if isinstance(answer, NotSolved) else (picture.error_px(answer, margin=0.0), answer.evidence))
    report(table, false, times, pictures)


def report(table: dict, false: list, times: dict, pictures: int) -> None:
    print("field deg  pictures  solved  share  wrong  median stars in frame  corner error px median / max  rms px  median CPU s")
    wrong_count = 0
    for field, rows in sorted(table.items()):
        solved = [(a, p.error_px(a, margin=0.0), a.mirrored != p.lens.mirrored) for a, p, _ in rows if isinstance(a, Solution)]
        errors = [error for _, error, _ in solved] or [np.nan]
        wrong = sum(error > WRONG_FROM_PX or parity for _, error, parity in solved)
        wrong_count += wrong
        rms = np.median([a.rms_arcsec / a.scale_arcsec_px for a, _, _ in solved]) if solved else np.nan
        print(f"{field:9.2f}  {len(rows):8d}  {len(solved):6d}  {len(solved) / len(rows):5.0%}  {wrong:5d}  "
              f"{np.median([p.in_frame for _, p, _ in rows]):21.0f}  {np.median(errors):17.2f} / {np.max(errors):8.2f}  "
              f"{rms:6.2f}  {np.median([s for _, _, s in rows]):12.2f}")
    print(f"wrong solutions: {wrong_count} in {pictures}")
    print(f"wrong field: {len(false)} accepted in {pictures}", *false)
    for what, seconds in times.items():
        print(f"{what}: median {np.median(seconds):.3f} s, 95 % under {np.percentile(seconds, 95):.3f} s")


if __name__ == "__main__":
    main(*(int(argument) for argument in sys.argv[1:] if not argument.startswith("-")))
