"""subs.ecsv: an entry's subs as a table that astropy reads back with units (ECSV 1.0, astropy APE 6)."""

import csv
import io

from sitegen.facts.registry import SubFacts

COLUMNS: tuple[tuple[str, str, str | None], ...] = (
    ("start", "string", None),
    ("exposure_s", "float64", "s"),
    ("filter", "string", None),
    ("kept", "bool", None),
    ("target_altitude_deg", "float64", "deg"),
    ("airmass", "float64", None),
    ("moon_altitude_deg", "float64", "deg"),
    ("moon_separation_deg", "float64", "deg"),
    ("moon_illuminated", "float64", None),
    ("sky_brightening_mag", "float64", "mag"),
    ("sun_altitude_deg", "float64", "deg"),
    ("reason", "string", None),
    ("fwhm_arcsec", "float64", "arcsec"),
    ("elongation", "float64", None),
    ("stars", "int64", None),
    ("guiding_rms_arcsec", "float64", "arcsec"),
    ("guiding_ra_rms_arcsec", "float64", "arcsec"),
    ("guiding_dec_rms_arcsec", "float64", "arcsec"),
    ("guiding_drift_arcsec_min", "float64", "arcsec / min"),
    ("sky_mag_arcsec2", "float64", "mag / arcsec2"),
)


def subs_ecsv(subs: SubFacts) -> str:
    """The `subs` columns of facts.json as ECSV; an unknown value is an empty cell, which reads back as masked."""
    head = ["# %ECSV 1.0", "# ---", "# datatype:"]
    for name, kind, unit in COLUMNS:
        head.append(f"# - {{name: {name}, {f'unit: {unit}, ' if unit else ''}datatype: {kind}}}")
    head += ["# delimiter: ','", "# schema: astropy-2.0"]
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(name for name, _, _ in COLUMNS)
    writer.writerows(zip(*(getattr(subs, name) for name, _, _ in COLUMNS), strict=True))
    return "\n".join(head) + "\n" + text.getvalue()
