"""Text as matplotlib gets it: letters that its font has, in place of any others.

The page shows a chart's text as text, in the reader's own fonts. matplotlib measures it all the same, in a font that lacks
most of the world's scripts, warns of each letter missing there, and would place the line by an empty box.
"""

import re

_REFERENCE = re.compile(r"&(?:#(\d+)|amp);")


def plain_letters(text: str) -> str:
    """The text in ASCII: each other letter as an XML character reference ('&#26143;'), '&' as '&amp;'."""
    return text.replace("&", "&amp;").encode("ascii", "xmlcharrefreplace").decode("ascii")


def as_written(plain: str) -> str:
    """The text that `plain_letters` was given."""
    return _REFERENCE.sub(lambda reference: chr(int(reference[1])) if reference[1] else "&", plain)
