"""What the search knows of one entry: its row among the hits, what it can be picked out by, and the words that lead to it."""

from msgspec import Struct


class SearchEntry(Struct, frozen=True, gc=False):
    """Hangs on no other entry. `row` is JSON: title, address, day, hours, summary, type of the picture. `moon` is how much of it
    was lit, the least and the most in percent, None without a kept night. `terms`: folded words, and names behind
    `search_terms.NAME_MARK`, parted by blanks."""

    row: str
    rigs: tuple[str, ...]
    filters: tuple[str, ...]
    kinds: tuple[str, ...]
    years: tuple[int, ...]
    seconds: int
    picture_type: str
    moon: tuple[int, int] | None
    terms: str
