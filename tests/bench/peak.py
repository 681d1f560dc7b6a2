"""The largest process of a measured program; apart from the scripts that measure, since it is loaded by what is measured."""

import resource
import sys
from pathlib import Path


def tell_peak() -> None:
    """Kilobytes of the largest process, this one or one it started, on standard error. The system's own record of a process
    counts what its parent held when it was started, so that this one is asked for its memory since."""
    status = Path("/proc/self/status")
    lines = status.read_text().splitlines() if status.exists() else []
    own = [int(line.split()[1]) for line in lines if line.startswith("VmHWM")]
    print(max(*(own or [0]), resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss), file=sys.stderr)
