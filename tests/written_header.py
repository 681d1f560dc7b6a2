"""A solution as FITS keywords, for readers that are not ours."""

from sitegen.stars.solving.distortion import Terms
from sitegen.stars.solving.solution import Solution


def as_header(solution: Solution) -> dict[str, str | int | float]:
    """FITS keywords of a solution, for an array whose first row is the picture's row 0."""
    sip = "-SIP" if solution.distortion is not None else ""
    (a, b), (c, d) = solution.cd
    header: dict[str, str | int | float] = {
        "WCSAXES": 2, "NAXIS1": solution.width_px, "NAXIS2": solution.height_px, "CTYPE1": f"RA---TAN{sip}",
        "CTYPE2": f"DEC--TAN{sip}", "CUNIT1": "deg", "CUNIT2": "deg", "RADESYS": "ICRS",
        "CRVAL1": solution.reference_ra_deg, "CRVAL2": solution.reference_dec_deg,
        "CRPIX1": solution.reference_x_px + 1, "CRPIX2": solution.reference_y_px + 1,
        "CD1_1": a, "CD1_2": b, "CD2_1": c, "CD2_2": d}
    if solution.distortion is not None:
        header |= _sip_keywords("A", solution.distortion.a) | _sip_keywords("B", solution.distortion.b)
    return header


def _sip_keywords(letter: str, terms: Terms) -> dict[str, str | int | float]:
    order = max((p + q for p, q, _ in terms), default=0)
    return {f"{letter}_ORDER": max(order, 2), **{f"{letter}_{p}_{q}": value for p, q, value in terms}}
