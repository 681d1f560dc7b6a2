"""Scales, fields and limits that instruments' own pages and textbooks print."""

from dataclasses import dataclass

from tests.published_values.record import COMMON_PRACTICE, FROM_MEMORY, Published


@dataclass(frozen=True, slots=True)
class Scale:
    """Of what size the pixels of an instrument are, at which focal length, and on the sky."""

    instrument: str
    focal_length_mm: float
    pixel_um: float
    arcsec_px: Published


@dataclass(frozen=True, slots=True)
class Field:
    optics: str
    pixels: float
    pixel_um: float
    focal_length_mm: float
    field_deg: Published


SCALES = (
    Scale("JKT", 206264.806 / 13.8, 24.0, Published(
        0.331, 0.0007, "Starlink Cookbook SC/5, eqs 1 to 4: 13.8 arcsec/mm, 24 um", "three digits printed of each")),
    Scale("SDSS imager", 12500.0, 24.0, Published(
        0.396, 0.0004, "SDSS constants table (0.39598); 24 um: Gunn et al. 1998, AJ 116, 3040; 2.5 m at f/5 from memory",
        "0.1 %: f/5 is a round number")),
    Scale("DECam, centre", 11733.0, 15.0, Published(
        0.2637, 0.0003, "NOIRLab DECam characteristics; Flaugher et al. 2015, arXiv:1504.02900; focal length implied by the two",
        "0.1 %: the edge has 0.2626")),
    Scale("DSS-I", 206264.806 / 67.2, 25.0, Published(
        1.70, 0.034, "STScI pages of DSS and Morrison, ADASS 1994 (25 um, 1.70); 67.2 arcsec/mm from memory", "2 %: the pages print 1.7")),
    Scale("DSS-II", 206264.806 / 67.2, 15.0, Published(
        1.0, 0.01, "STScI pages of DSS (1994 on); 67.2 arcsec/mm from memory", "two digits printed")),
    Scale("ZTF", 3060.0, 15.0, Published(1.01, 0.01, f"technical pages of ZTF (15 um); 1.01 and the focal length {FROM_MEMORY}", "1 %: three digits")),
    Scale("Pan-STARRS1", 7992.0, 10.0, Published(
        0.258, 0.0026, f"Chambers et al. 2016, arXiv:1612.05560, {FROM_MEMORY}: 1.8 m at f/4.44", "1 %: f/4.44 has three digits")),
)  # fmt: skip

PRINTED_ON_LENSES = f"{COMMON_PRACTICE}: makers of 50 mm lenses print it for 36 × 24 mm"
COMPUTED = "computed a second time: twice the arc tangent of half a side over the focal length"
FIELDS = (
    Field("full frame, 50 mm, long side", 36.0 / 0.006, 6.0, 50.0, Published(39.6, 0.05, PRINTED_ON_LENSES, "half of the last digit")),
    Field("full frame, 50 mm, short side", 24.0 / 0.006, 6.0, 50.0, Published(27.0, 0.05, PRINTED_ON_LENSES, "half of the last digit")),
    Field("SDSS CCD", 2048, 24.0, 12500.0, Published(13.52 / 60, 0.0002, f"{COMPUTED}: 13.52 arcmin", "0.01 arcmin, the last digit")),
    Field("6248 px, 530 mm", 6248, 3.76, 530.0, Published(2.53924, 1e-4, COMPUTED, "four digits published")),
    Field("6248 px, 135 mm", 6248, 3.76, 135.0, Published(9.94547, 1e-4, COMPUTED, "four digits published")),
)  # fmt: skip

RAYLEIGH_100_MM_ARCSEC = Published(
    1.384, 7e-4, "worked by hand: 1.22 lambda / D at 550 nm, 138.4 / D in mm; any optics textbook", "half of the last digit"
)
DAWES = "W. R. Dawes, Memoirs of the RAS 35, 137 (1867)"
DAWES_100_MM_ARCSEC = Published(1.16, 1e-6, f"{DAWES}: 116 arcsec / D in mm", "a quotient: exact but for rounding")
DAWES_ONE_INCH_ARCSEC = Published(4.56, 0.0228, f"{DAWES}: 4.56 arcsec / D in inches", "0.5 %: 116 and 4.56 are rounded apart")
