"""The one line that makes a rig know a filter that headers spell otherwise."""

import re

from sitegen.diary.rig import Rig
from sitegen.problems import did_you_mean
from sitegen.reading.capture_logs.filter_names import match_filter

_NARROW = re.compile(r"h[\W_]*(?:a|α|alpha|b|β|beta)|o[\W_]*(?:iii|3)|s[\W_]*(?:ii|2)|n[\W_]*(?:ii|2)|"
                     r"\bnb\b|narrow|\d\s*nm", re.I)  # fmt: skip
_DUAL = re.compile(r"dual|duo|tri|quad", re.I)
_PLAIN_KEY = re.compile(r"[A-Za-z][A-Za-z0-9 +._/-]*")


def filter_advice(words: str, rig: Rig) -> str:
    """'add ...', to be pasted: another spelling of a filter that the rig has, else the filter's own line."""
    short = _meant(words, rig)
    if short is not None:
        return f"add 'spelt: [{_quoted(words)}]' to the filter '{short}' in rigs/{rig.slug}.yaml"
    kind = "dual-band" if _DUAL.search(words) else "narrowband" if _NARROW.search(words) else "broadband"
    return f"add '{_quoted(words)}: {{name: {_quoted(words)}, kind: {kind}}}' under 'filters' in rigs/{rig.slug}.yaml"


def _meant(words: str, rig: Rig) -> str | None:
    """By one of its words, or by all of them but a number with its unit; last by its looks."""
    without_width = re.sub(r"\d+(?:[.,]\d+)?\s*(?:nm|mm)?", " ", words).strip()
    for part in (without_width, *re.split(r"[\s_\-/]+", words)):
        if len(part) > 0 and (short := match_filter(part, rig)) is not None:
            return short
    return did_you_mean(words, rig.filters) if len(words) > 3 else None


def _quoted(words: str) -> str:
    return words if _PLAIN_KEY.fullmatch(words) and words.casefold() not in ("yes", "no", "on", "off", "y", "n") else f'"{words}"'
