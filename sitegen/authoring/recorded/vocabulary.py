"""Headings that people write over their columns, in English and German -> what stands below them. Common practice, no source."""

import re
from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

WORDS: Mapping[str, tuple[str, ...]] = {
    "start": ("start", "begin", "began", "beginning", "started", "start time", "time", "time of start", "from", "first",
              "date time", "date obs", "dateobs", "date beg", "timestamp", "datetime", "exposure start", "capture time",
              "beginn", "anfang", "startzeit", "beginnzeit", "uhrzeit", "zeit", "von", "ab", "aufnahmebeginn", "aufnahmezeit",
              "zeitpunkt", "begonnen", "datum uhrzeit", "datum zeit", "zeitraum", "time span", "from to", "von bis"),
    "date": ("date", "day", "capture date", "datum", "tag", "aufnahmedatum", "aufnahmetag"),
    "evening": ("evening", "night", "night of", "evening of", "nacht", "abend", "nacht vom", "abend vom"),
    "end": ("end", "ended", "end time", "to", "until", "till", "stop", "finish", "last",
            "ende", "endzeit", "bis", "schluss", "aufnahmeende"),
    "exposure_s": ("exposure", "exposure time", "exposure length", "exposures time", "exp", "exp time", "exptime", "exposure s",
                   "sub exposure", "sub length", "sub", "sub time", "subexposure", "seconds", "secs", "minutes", "each",
                   "shutter", "xposure", "exposure seconds",
                   "belichtung", "belichtungszeit", "einzelbelichtung", "belichtungsdauer", "bel zeit", "sekunden", "minuten",
                   "einzelbelichtungszeit", "je bild"),
    "count": ("count", "number", "no", "n", "subs", "frames", "lights", "exposures", "images", "shots", "taken", "number of subs",
              "number of frames", "frames taken", "subs taken", "no of subs", "no of frames", "quantity", "qty", "captured",
              "shot", "anzahl", "bilder", "aufnahmen", "einzelbilder", "aufgenommen", "stück", "stk", "anzahl bilder",
              "anzahl aufnahmen"),
    "good": ("good", "used", "kept", "keep", "usable", "accepted", "good subs", "subs used", "frames used", "stacked",
             "integrated", "gut", "gute", "brauchbar", "brauchbare", "verwendet", "verwendete", "behalten", "genutzt",
             "gestackt", "ok"),
    "bad": ("bad", "rejected", "discarded", "rejects", "thrown away", "lost", "deleted",
            "verworfen", "verworfene", "ausschuss", "schlecht", "schlechte", "unbrauchbar", "gelöscht", "aussortiert"),
    "filter": ("filter", "band", "channel", "filt", "filtername", "filter name", "kanal"),
    "kind": ("kind", "type", "frame type", "image type", "imagetyp", "frametype", "art", "typ", "bildtyp"),
    "object": ("object", "target", "object name", "objekt", "ziel", "objektname"),
    "binning": ("binning", "bin"),
    "gain": ("gain", "iso", "verstärkung"),
    "sensor_c": ("sensor", "sensor temp", "sensor temperature", "ccd temp", "ccd temperature", "camera temp", "chip temp",
                 "cooler", "sensor c", "sensortemperatur", "sensortemp", "kameratemperatur", "chiptemperatur"),
    "fwhm": ("fwhm", "star fwhm", "mean fwhm", "median fwhm", "halbwertsbreite"),
    "elongation": ("elongation", "axis ratio", "aspect ratio", "elongation ratio", "streckung"),
    "eccentricity": ("eccentricity", "ecc", "exzentrizität"),
    "guiding_rms_arcsec": ("guiding", "guiding rms", "rms", "total rms", "nachführung", "guiding error", "nachführfehler"),
    "stars": ("stars", "star count", "number of stars", "stars detected", "detected stars", "sterne", "sternanzahl"),
    "panel": ("panel", "tile", "mosaic panel", "mosaic tile", "kachel", "paneel", "mosaikfeld"),
    "reason": ("reason", "why", "cause", "grund", "ursache", "warum"),
    "note": ("note", "notes", "comment", "comments", "remark", "remarks", "bemerkung", "bemerkungen", "notiz", "notizen",
             "kommentar", "anmerkung"),
    "gap_s": ("gap", "pause", "delay", "gap s"),
    "file": ("file", "filename", "file name", "frame", "image", "light", "name", "picture", "subframe", "datei", "dateiname",
             "bild", "aufnahme"),
    "verdict": ("verdict", "status", "quality", "approved", "decision", "selected", "grade", "accept",
                "urteil", "bewertung", "auswahl"),
}  # fmt: skip
# What may stand under a heading is fixed by the programs that write these names.
OWN_NAMES = ("start", "end", "date", "evening", "exposure_s", "filter", "kind", "kept", "reason", "binning", "gain", "sensor_c",
             "fwhm_arcsec", "fwhm_px", "elongation", "eccentricity", "guiding_rms_arcsec", "count", "good", "bad", "gap_s",
             "note", "object", "file", "stars", "panel", "verdict")  # fmt: skip
ASKED_ALSO = ("decimal", "dates", "time")
WORDS_ASKED = {"decimal": ("comma", "point"), "dates": ("calendar", "evening")}
"""Keys that are no column: what may stand behind them."""
_UNITS = {"s": "s", "sec": "s", "secs": "s", "second": "s", "seconds": "s", "sek": "s", "sekunden": "s",
          "m": "min", "min": "min", "mins": "min", "minute": "min", "minutes": "min", "minuten": "min",
          "h": "h", "hr": "h", "hours": "h", "std": "h", "stunden": "h",
          "h:mm": "h:mm", "hh:mm": "h:mm", "h:m": "h:mm", "m:ss": "m:ss", "mm:ss": "m:ss", "min:s": "m:ss", "min:sec": "m:ss",
          "px": "px", "pixel": "px", "pixels": "px", "pix": "px", "arcsec": "arcsec", '"': "arcsec", "''": "arcsec",
          "″": "arcsec",
          "as": "arcsec", "bogensekunden": "arcsec", "utc": "utc", "ut": "utc", "gmt": "utc", "z": "utc",
          "local": "local", "local time": "local", "lt": "local", "ortszeit": "local", "mez": "local", "mesz": "local",
          "cet": "local", "cest": "local", "est": "local", "edt": "local", "cst": "local", "cdt": "local", "mst": "local",
          "mdt": "local", "pst": "local", "pdt": "local", "bst": "local", "aest": "local", "aedt": "local", "nzst": "local",
          "nzdt": "local", "lokal": "local", "lokalzeit": "local"}  # fmt: skip
_IN_WORDS = {"seconds": "s", "secs": "s", "sekunden": "s", "minutes": "min", "minuten": "min", "exptime": "s", "xposure": "s"}
_BRACKETS = re.compile(r"[(\[{]([^)\]}]*)[)\]}]")
_KEY_OF = {word: key for key, words in WORDS.items() for word in words}


class Meaning(Struct, frozen=True):
    """What a heading says stands below it. `unit` is '' where it does not say."""

    key: str
    unit: str = ""


@lru_cache(maxsize=2_000)
def meaning_of(heading: str) -> Meaning | None:
    """None for a heading that nobody knows."""
    folded = heading.casefold().strip()
    own = folded.replace(" ", "_")
    if own in OWN_NAMES:
        return Meaning(own if own != "kept" else "good", _own_unit(own))
    unit = next((_UNITS[inside] for inside in map(_unit_word, _BRACKETS.findall(folded)) if inside in _UNITS), "")
    plain = _plain(_BRACKETS.sub(" ", folded))
    if plain not in _KEY_OF:
        head, _, last = plain.rpartition(" ")
        if head in _KEY_OF and last in _UNITS:
            plain, unit = head, unit or _UNITS[last]
    if plain not in _KEY_OF:
        return None
    key = _KEY_OF[plain]
    if key == "start" and plain in ("time", "zeit") and unit in ("s", "min", "h", "m:ss"):
        key = "exposure_s"
    return Meaning(key, unit or _IN_WORDS.get(plain, ""))


def _own_unit(name: str) -> str:
    return name.rpartition("_")[2] if name.endswith(("_s", "_arcsec", "_px")) else ""


def _unit_word(words: str) -> str:
    return words.strip().rstrip(".")


def _plain(words: str) -> str:
    return re.sub(r"[\s_./\-–:,;#]+", " ", words).strip()


def shape_of(headings: tuple[str, ...]) -> str:
    """By what a table is known again: its headings, whatever their case and blanks."""
    return "|".join(_plain(heading.casefold()) for heading in headings if heading.strip())
