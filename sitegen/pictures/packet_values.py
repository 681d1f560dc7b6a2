"""What a published picture says of itself: the diary's words as values of Astronomy Visualization Metadata 1.2."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.diary.entry import FROM_EXPOSURES, Entry, Picture
from sitegen.diary.settings import Settings
from sitegen.markdown.marks import without_marks
from sitegen.pictures.avm import Value, avm_packet
from sitegen.stars.solving.avm import avm_spatial
from sitegen.stars.solving.solution import Solution

OPTICAL_NM = (390.0, 700.0)


class Exposures(Struct, frozen=True):
    """All kept subs of one rig through one filter. `start` is ISO 8601 UTC."""

    rig: str
    camera: str | None
    band: str
    centre_nm: float | None
    start: str
    total_s: float


def packet_values(entry: Entry, picture: Picture, settings: Settings, exposures: Sequence[Exposures]) -> dict[str, Value]:
    """Words and exposures; the place on the sky comes with each size. A result says what it was made from, where it
    was made from subs. Other pictures do not: which of the subs they show is not known."""
    wished: dict[str, Value | None] = {
        "Title": entry.title,
        "Headline": without_marks(picture.caption or ""),
        "Description": without_marks(picture.alt),
        "Creator": settings.title,
        "Credit": settings.author or settings.title,
        "Rights": settings.licence,
        "Date": entry.published.isoformat(),
        "Type": picture.type.capitalize(),
        "Subject.Name": None if picture.role == "setup" else [target.name for target in entry.targets] or None,
        "ReferenceURL": f"{settings.address.rstrip('/')}/{addresses.entry(entry.slug)}" if settings.address else None,
    }
    words: dict[str, Value] = {name: value for name, value in wished.items() if value}
    from_subs = picture.role == "result" and picture.type in FROM_EXPOSURES and exposures
    return words | (_made_from(exposures) if from_subs else {})


def packet(values: dict[str, Value], solution: Solution | None, width_px: int, height_px: int) -> bytes:
    """The packet of one published size."""
    spatial = avm_spatial(solution, width_px, height_px) if solution else {}
    return avm_packet({**values, **spatial})


def _made_from(exposures: Sequence[Exposures]) -> dict[str, Value]:
    """Parallel lists, one element an exposure, as AVM has them."""
    return {
        "Facility": [exposure.rig for exposure in exposures],
        "Instrument": [exposure.camera for exposure in exposures],
        "Spectral.Band": [_band(exposure.centre_nm) for exposure in exposures],
        "Spectral.Bandpass": [exposure.band for exposure in exposures],
        "Spectral.CentralWavelength": [exposure.centre_nm for exposure in exposures],
        "Temporal.StartTime": [exposure.start for exposure in exposures],
        "Temporal.IntegrationTime": [exposure.total_s for exposure in exposures],
    }


def _band(centre_nm: float | None) -> str:
    """AVM's words. Without a wavelength: what a camera sees without a filter is light."""
    if centre_nm is None or OPTICAL_NM[0] <= centre_nm <= OPTICAL_NM[1]:
        return "Optical"
    return "Infrared" if centre_nm > OPTICAL_NM[1] else "Ultraviolet"
