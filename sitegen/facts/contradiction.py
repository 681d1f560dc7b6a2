"""What two entries say of one frame, where they differ."""

from datetime import datetime

from msgspec import Struct


class Contradiction(Struct, frozen=True):
    """Frames of which this entry says something else than the entry `earlier`, published before it.

    `what` is 'kept', 'filter' or 'target'; `here` and `there` are what both say of the first such frame, begun at `start`.
    `logs` are the two logs it stands in, this entry's first; `frames` is how many such frames there are.
    """

    what: str
    earlier: str
    start: datetime
    here: str
    there: str
    logs: tuple[str, str]
    frames: int
