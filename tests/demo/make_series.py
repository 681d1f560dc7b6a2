"""Writes what instruments read beside the demo's camera: ``python tests/demo/make_series.py``.

All of it is invented, and each table says so in its first line. The guiding of 6 November 2026 scatters as much in each sub as
the log says of that sub; the weather of 14 November has the cloud come in when the log begins to throw subs away.
"""

import csv
import math
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np

LOGS = Path(__file__).resolve().parents[2] / "content" / "logs" / "tarantula"
INSTRUMENTS = LOGS / "instruments"
INVENTED = "# invented for the demo by tests/demo/make_series.py"
CADENCE_S = 5
RA_SHARE = 0.79
"""Of the RMS in right ascension; declination has the rest, in quadrature."""
DRIFT_ARCSEC_S = -0.0006
SCALE_ARCSEC_PX = 3.2
HOUR_S = 3600.0


def subs_of(evening: str) -> list[tuple[datetime, float]]:
    """Start, and guiding error in arcsec."""
    with (LOGS / f"{evening}.csv").open(encoding="utf-8", newline="") as file:
        return [(datetime.fromisoformat(row["start"]), float(row["guiding_rms_arcsec"])) for row in csv.DictReader(file)]


def guiding(evening: str, seed: int) -> list[str]:
    """In pixels of the guider, by UTC; settling after each of the pauses in which the camera moved a little."""
    draws = np.random.default_rng(seed)
    rows = ["time,ra_px,dec_px,state"]
    for start, rms_arcsec in subs_of(evening):
        rows += [f"{start - timedelta(seconds=2):%Y-%m-%dT%H:%M:%SZ},{draws.normal(0, 2):.2f},{draws.normal(0, 2):.2f},settling"]
        for second in range(1, 300, CADENCE_S):
            drift = DRIFT_ARCSEC_S * (second - 150)
            ra = draws.normal(0, RA_SHARE * rms_arcsec)
            dec = draws.normal(0, math.sqrt(1 - RA_SHARE**2) * rms_arcsec) + drift
            when = start + timedelta(seconds=second)
            rows.append(f"{when:%Y-%m-%dT%H:%M:%SZ},{ra / SCALE_ARCSEC_PX:.2f},{dec / SCALE_ARCSEC_PX:.2f},")
    return rows


def weather(evening: str, cloud_from: str) -> list[str]:
    """Every ten minutes from before the first sub until after the last, by the wall clock of the hill (UTC + 10:30)."""
    start, end, cloud = subs_of(evening)[0][0], subs_of(evening)[-1][0], datetime.fromisoformat(cloud_from)
    rows = ["Zeit;Luft;Feuchte;Wind;Wolken"]
    moment = start.replace(minute=start.minute // 10 * 10, second=0) - timedelta(minutes=10)
    while moment < end + timedelta(minutes=20):
        hours, late_s = (moment - start).total_seconds() / HOUR_S, (moment - cloud).total_seconds()
        cells = (20.8 - 0.9 * hours, 31 + 3 * hours, 2.1 + 2.4 * hours, min(95.0, 5 + max(0.0, late_s + 600) / 12))
        local = moment + timedelta(hours=10, minutes=30)
        rows.append(f"{local:%Y-%m-%d %H:%M:%S};" + ";".join(f"{cell:.1f}".replace(".", ",") for cell in cells))
        moment += timedelta(minutes=10)
    return rows


def write(name: str, rows: list[str]) -> None:
    INSTRUMENTS.mkdir(exist_ok=True)
    (INSTRUMENTS / name).write_text("\n".join([INVENTED, *rows, ""]), "utf-8")


if __name__ == "__main__":
    write("guiding-2026-11-06.csv", guiding("2026-11-06", seed=61106))
    write("weather-2026-11-14.csv", weather("2026-11-14", "2026-11-14T12:57:35Z"))
