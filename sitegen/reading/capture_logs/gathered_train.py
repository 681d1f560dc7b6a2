"""Whether the private columns of a gathered log agree with the rig that its entry names: the headers themselves lie elsewhere."""

from collections import Counter
from collections.abc import Sequence

from sitegen.diary.rig import Rig
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.standing_train import (
    Disagreement,
    focal_length_disagrees,
    frame_disagrees,
    inferred_binning,
    pixel_disagrees,
    train_at,
)


def tell_trains(subs: Sequence[Sub], request: LogRequest, problems: LogProblems) -> None:
    """Each disagreement once, with the number of its light frames."""
    if request.rig is None:
        return
    lights = [sub for sub in subs if sub.kind == "light" and sub.origin is not None]
    counted = Counter(disagreement for sub in lights for disagreement in _disagreements(sub, request.rig, request))
    for (wrong, remedy), count in counted.items():
        problems.warn(f"{wrong} (so of {count} of {len(subs)} subs)", remedy)


def _disagreements(sub: Sub, rig: Rig, request: LogRequest) -> tuple[Disagreement, ...]:
    origin = sub.origin
    if origin is None:
        return ()
    train = train_at(rig, request.site, sub.start)
    binning = sub.binning or inferred_binning(origin.pixel_um, train.camera.pixel_um) or 1
    frame_px = origin.width_px, origin.height_px
    return (
        *focal_length_disagrees("focal_length_mm", origin.focal_length_mm, rig, train),
        *pixel_disagrees("pixel_um", origin.pixel_um, binning, rig, train),
        *frame_disagrees("width_px × height_px", frame_px, binning, rig, train, any_way_up=True),
    )
