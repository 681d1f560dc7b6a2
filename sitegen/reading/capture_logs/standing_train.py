"""What a picture's own header says against what its rig was that evening. Every disagreement is a warning."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from sitegen.diary.rig import Rig, Train
from sitegen.diary.site import Site
from sitegen.sky.solar_time import evening_at

TOLERANCE = 0.03
# Cameras keep a few columns and rows for themselves, some programs cut them off.
FRAME_TOLERANCE = 0.01
_SURELY_LATER = timedelta(days=2)
Disagreement = tuple[str, str]


def train_at(rig: Rig, site: Site | None, start: datetime) -> Train:
    """The rig's train in the night that an aware start belongs to; without a site, nights change at noon UTC."""
    latest = rig.trains[-1]
    if latest.from_evening is None or start.date() - latest.from_evening > _SURELY_LATER:
        return latest
    return rig.train_on(evening_at(start, site.longitude_deg if site else 0.0))


def focal_length_disagrees(name: str, found_mm: float | None, rig: Rig, train: Train) -> Iterator[Disagreement]:
    """0 is how programs write that they do not know."""
    nominal_mm = train.telescope.focal_length_mm
    wanted_mm = nominal_mm * train.telescope.factor
    if not found_mm or _near(found_mm, wanted_mm, TOLERANCE):
        return
    remedy = f"correct 'focal_length_mm' or 'factor' in rigs/{rig.slug}.yaml, or add the change of that evening to 'changes'"
    if train.telescope.factor != 1 and _near(found_mm, nominal_mm, TOLERANCE):
        remedy = f"it seems to leave out the factor {train.telescope.factor:g}: tell the capture program"
    yield f"{name} is {found_mm:g} mm, the rig '{rig.slug}' had {wanted_mm:.4g} mm that evening", remedy


def pixel_disagrees(name: str, found_um: float | None, binning: int, rig: Rig, train: Train) -> Iterator[Disagreement]:
    """The keyword counts binned pixels; a minority of programs writes the unbinned, which is accepted."""
    pixel_um = train.camera.pixel_um
    if not found_um or any(_near(found_um, wanted_um, TOLERANCE) for wanted_um in (pixel_um * binning, pixel_um)):
        return
    yield (
        f"{name} is {found_um:g} µm at binning {binning}, the camera of '{rig.slug}' had pixels of {pixel_um:g} µm that evening",
        f"correct 'pixel_um' in rigs/{rig.slug}.yaml, or add the change of that evening to 'changes'",
    )


def frame_disagrees(
    name: str, found_px: tuple[float | None, float | None], binning: int, rig: Rig, train: Train, any_way_up: bool = False
) -> Iterator[Disagreement]:
    """`found_px` is width and height in binned pixels."""
    width, height = found_px
    if not width or not height:
        return
    camera = train.camera
    frame_px, wanted = (width * binning, height * binning), (camera.width_px, camera.height_px)
    ways_up = (wanted, wanted[::-1]) if any_way_up else (wanted,)
    if any(_near(frame_px[0], way[0], FRAME_TOLERANCE) and _near(frame_px[1], way[1], FRAME_TOLERANCE) for way in ways_up):
        return
    yield (
        f"{name} is {width:g} × {height:g} px at binning {binning}, the camera of '{rig.slug}' had "
        f"{camera.width_px} × {camera.height_px} px that evening",
        f"correct 'width_px' and 'height_px' in rigs/{rig.slug}.yaml, or add the change of that evening to 'changes'",
    )


def inferred_binning(found_um: float | None, pixel_um: float) -> int | None:
    """From the size of a binned pixel, where it is a whole multiple of the camera's."""
    if not found_um:
        return None
    times = round(found_um / pixel_um)
    return times if 1 <= times <= 16 and _near(found_um, times * pixel_um, TOLERANCE) else None


def _near(measured: float, wanted: float, tolerance: float) -> bool:
    return abs(measured - wanted) <= tolerance * wanted
