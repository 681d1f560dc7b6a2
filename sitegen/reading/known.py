"""What entries may name."""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.diary.rig import Rig
from sitegen.diary.site import Site


class Known(Struct, frozen=True):
    """The diary's rigs and sites by name; None for one whose file has an error."""

    rigs: Mapping[str, Rig | None]
    sites: Mapping[str, Site | None]
