"""Names of mosaic panels as people write them: 'M 31 panel 2', 'M31_P2', a folder 'Panel 03'. Common practice, no source."""

import re
from functools import lru_cache

_BEFORE, _GAP = r"(?<![^\W\d_])", r"[\s_\-#]*"
_ANY = r"\d{1,3}(?:[\s_\-x]+\d{1,3})?|[NS][EWO]|[A-H]"
# A mosaic of 2x2, or of 12 panels, is no panel of that name.
_ONE, _NO_LAYOUT = r"\d{1,3}|[A-H]", r"(?!\s*x\s*\d|\s*(?:panels|paneele|tiles|kacheln|fields|felder))"
_OF = r"(?:\s*(?:of|von|/)\s*\d{1,3})?"
_PANEL = rf"{_BEFORE}(?:panel|paneel|pane|tile|kachel){_GAP}(?P<name>{_ANY})"
_MOSAIC = rf"{_BEFORE}(?:mosaic|mosaik){_GAP}(?P<name>{_ONE})"
_FIELD = rf"{_BEFORE}(?:feld|field|part|teil){_GAP}(?P<name>{_ONE})"
# A comet may be called C/2023 P1.
_SHORT = r"(?<!\b[CP][/_\- ](?:18|19|20)\d\d)(?<=[^\W_])[\s_\-]+\(?P(?P<name>\d{1,2})"
_TAIL = re.compile(rf"[\s_\-]*\(?{_BEFORE}(?:panel|paneel|pane|tile|kachel|mosaic|mosaik|feld|field|part|teil){_GAP}"
                   rf"(?:{_ANY})?(?:\s*panels)?{_OF}\)?\s*$", re.I)  # fmt: skip
_SHORT_TAIL = re.compile(rf"{_SHORT}\)?\s*$")
_IN_OBJECT = (_SHORT_TAIL, *(re.compile(rf"{words}{_OF}\)?\s*$", re.I) for words in (_PANEL, _MOSAIC, _FIELD)))
_IN_PATH = (*(re.compile(rf"{words}(?![^\W_]){_NO_LAYOUT}", re.I) for words in (_PANEL, _MOSAIC)),
            re.compile(rf"{_SHORT}(?![^\W_])"))  # fmt: skip


def without_panel(name: str) -> str:
    """What the panels belong to: 'M 31' of 'M 31 mosaic 2x2 panel 3'. A name that says nothing else stays as it is."""
    whole = _SHORT_TAIL.sub("", name).strip()
    while (shorter := _TAIL.sub("", whole).strip()) not in (whole, ""):
        whole = shorter
    return whole or name


def panel_called(name: str, path: str) -> str:
    """The panel that OBJECT names, else the file's own name, else its folders, the deepest first; '' for none."""
    in_object = _in_object(name)
    if in_object:
        return in_object
    folders, _, file = path.rpartition("/")
    in_file = _panel_in(file, *_IN_PATH) if _may_name(file.translate(_NO_DIGITS)) else ""
    return in_file or _in_folders(folders)


@lru_cache(maxsize=4_096)
def _in_object(name: str) -> str:
    return _panel_in(name, *_IN_OBJECT) if without_panel(name) != name else ""


@lru_cache(maxsize=4_096)
def _in_folders(folders: str) -> str:
    names = (_panel_in(part, *_IN_PATH) for part in reversed(folders.split("/")))
    return next((name for name in names if name), "")


_HINT = re.compile(r"pane|tile|kache|mosai|[\s_\-]\(?p", re.I)
_NO_DIGITS = str.maketrans("", "", "0123456789")


@lru_cache(maxsize=4_096)
def _may_name(letters: str) -> bool:
    """Whether a file's name without its digits, which thousands share, has what no name of a panel lacks."""
    return _HINT.search(letters) is not None


def _panel_in(text: str, *patterns: re.Pattern[str]) -> str:
    named = (match.group("name") for pattern in patterns if (match := pattern.search(text)) is not None)
    return next((_plain(name) for name in named if name), "")


def _plain(name: str) -> str:
    """'02' is '2', '1x2' is '1-2'."""
    parts = re.split(r"[\s_\-x]+", name)
    return "-".join(part.lstrip("0") or "0" if part.isdigit() else part.upper() for part in parts)
