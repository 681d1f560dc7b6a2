"""Scales, fields and limits that instruments' own pages and textbooks print. Each with its source and the reason for its tolerance."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PublishedScale:
    """`focal_length_mm` and `pixel_um` as published; `scale_arcsec_px` what the source prints."""

    instrument: str
    focal_length_mm: float
    pixel_um: float
    scale_arcsec_px: float
    relative_tolerance: float
    source: str


@dataclass(frozen=True, slots=True)
class PublishedField:
    instrument: str
    pixels: float
    pixel_um: float
    focal_length_mm: float
    field_deg: float
    tolerance_deg: float
    source: str


SCALES = (
    PublishedScale("JKT", 206264.806 / 13.8, 24.0, 0.331, 0.002, "Starlink Cookbook SC/5, eqs 1-4: 13.8 arcsec/mm, 24 um; three digits printed"),
    PublishedScale("SDSS imager", 12500.0, 24.0, 0.396, 0.001, "SDSS constants table (0.39598); 24 um: Gunn et al. 1998, AJ 116, 3040; focal length 2.5 m at f/5 from memory"),
    PublishedScale("DECam, centre", 11733.0, 15.0, 0.2637, 0.001, "NOIRLab DECam characteristics; Flaugher et al. 2015, arXiv:1504.02900; focal length implied by the two"),
    PublishedScale("DSS-I", 206264.806 / 67.2, 25.0, 1.70, 0.02, "STScI DSS pages and Morrison, ADASS 1994 (25 um, 1.70 printed to 1 %); plate scale 67.2 arcsec/mm from memory"),
    PublishedScale("DSS-II", 206264.806 / 67.2, 15.0, 1.0, 0.01, "STScI DSS pages (1.0, two digits printed); plate scale from memory"),
    PublishedScale("ZTF", 3060.0, 15.0, 1.01, 0.01, "ZTF technical pages (15 um); 1.01 and the focal length from memory"),
    PublishedScale("Pan-STARRS1", 7992.0, 10.0, 0.258, 0.01, "Chambers et al. 2016, arXiv:1612.05560, from memory: 1.8 m at f/4.44"),
)  # fmt: skip

FIELDS = (
    PublishedField("full frame, 50 mm, long side", 36.0 / 0.006, 6.0, 50.0, 39.6, 0.05, "widely published for 36 x 24 mm and 50 mm"),
    PublishedField("full frame, 50 mm, short side", 24.0 / 0.006, 6.0, 50.0, 27.0, 0.05, "widely published for 36 x 24 mm and 50 mm"),
    PublishedField("SDSS CCD", 2048, 24.0, 12500.0, 13.52 / 60, 0.0002, "2048 px at the SDSS scale: 13.52 arcmin (reference sheet, computed)"),
    PublishedField("6248 px, 530 mm", 6248, 3.76, 530.0, 2.53924, 1e-4, "computed with an independent library, not a published number"),
    PublishedField("6248 px, 135 mm", 6248, 3.76, 135.0, 9.94547, 1e-4, "computed with an independent library, not a published number"),
)  # fmt: skip

RAYLEIGH_100_MM_ARCSEC = 1.384  # 1.22 lambda / D at 550 nm, any optics textbook; 138.4 / D in mm
DAWES_100_MM_ARCSEC = 1.16  # 116 arcsec / D in mm, W. R. Dawes 1867
DAWES_4_56_INCH = 4.56  # the same limit as printed in inches: 4.56 arcsec / D in inches
