"""A log written to disk and read as an entry would have it read."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Train
from sitegen.diary.site import Site
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest

ReadLog = Callable[..., LogReading]

FILTERS = {
    "L": Filter("L", "Luminance", "broadband", (550.0,), 300.0),
    "R": Filter("R", "Red", "broadband", (635.0,), 90.0),
    "Ha": Filter("Ha", "Hydrogen alpha", "narrowband", (656.3,), 7.0),
    "OIII": Filter("OIII", "Doubly ionised oxygen", "narrowband", (500.7,), 7.0),
}


@pytest.fixture
def rig() -> Rig:
    """A 200 mm f/4 newtonian that lost its 0.95 corrector in May 2026."""
    camera = Camera("mono camera", 3.76, 6248, 4176, "mono")
    plain = Telescope("newtonian", 200.0, 70.0, 800.0)
    reduced = Telescope("newtonian", 200.0, 70.0, 800.0, 0.95)
    return Rig("newtonian", "Newtonian", (Train(None, reduced, camera), Train(date(2026, 5, 1), plain, camera)), FILTERS)


@pytest.fixture
def bare_rig() -> Rig:
    """A camera with a lens and no filters."""
    lens, camera = Telescope("lens", 18.0, None, 50.0), Camera("colour camera", 4.0, 6000, 4000, "colour")
    return Rig("lens", "Lens", (Train(None, lens, camera),))


@pytest.fixture
def site() -> Site:
    return Site("plain", "Plain", -32.6, 139.0, 500.0, "Australia/Adelaide")


@pytest.fixture
def read(tmp_path: Path, rig: Rig, site: Site) -> ReadLog:
    """`read(name, content, …)` with any field of a LogRequest; content None leaves the file as it is."""

    def read_one(name: str, content: str | bytes | None = None, **asked: Any) -> LogReading:
        path = tmp_path / name
        if content is not None:
            path.write_bytes(content.encode() if isinstance(content, str) else content)
        fields: dict[str, Any] = {
            "rig": rig, "site": site, "target": 0, "filter": None, "time_zone": None,
            "item_place": ("entries/e.md", 7, 5), "today": date(2026, 12, 1),
        }  # fmt: skip
        return read_log(LogRequest(path=path, shown_path=f"logs/{name}", source=f"logs/{name}", **(fields | asked)))

    return read_one
