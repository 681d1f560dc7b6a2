"""How every chart looks: its sizes, and the roles that its colours play until the reader's lamp gives them.

A role becomes a class, and the theme's stylesheet gives the class its colour. Lengths are units of a panel 400 wide: on a phone
of 360 px one is 0.82 px.
"""

WIDTH = 400.0
TEXT = 13.6  # 11.1 px where the panel is 328 px wide, a phone of 360 px less its margins
THIN, LINE, THICK = 1.25, 1.4, 2.2  # the thinnest is 1 px on that phone
ROW = 16.4  # from one line of text to the next
BASELINE = 0.36 * TEXT  # half of a capital or a digit: as far below its middle a line of text stands

ROLES = ("paper", "ink", "dim", "rule", "link", "broad", "narrow", "milky", "wash", "wish", "star")
PAPER, INK, DIM, RULE, LINK, BROAD, NARROW, MILKY, WASH, WISH, STAR = ROLES
NIGHT = "night"
"""The ground on which filters are shown, in every lamp."""


def passband(band: str) -> str:
    """The role of a passband as `filter_colour` names it; '' for no hue."""
    return f"nm{band}"


def fill_class(role: str) -> str:
    """'f-ink'; a passband's class colours both."""
    return role if role.startswith("nm") else f"f-{role}"


def line_class(role: str) -> str:
    """'s-ink'; a passband's class colours both."""
    return role if role.startswith("nm") else f"s-{role}"
