"""A text as it may stand in a YAML list or mapping on one line."""

import json
import re

_PLAIN = re.compile(r"[^\W\d_](?:[\w .+/*-]*[\w.+/*-])?")
_YAML_WORDS = frozenset({"yes", "no", "on", "off", "true", "false", "null", "y", "n"})


def yaml_word(text: str) -> str:
    """Bare where YAML takes it for text, else in double quotes."""
    plain = _PLAIN.fullmatch(text) is not None and text.casefold() not in _YAML_WORDS
    return text if plain else json.dumps(text, ensure_ascii=False)
