"""What a process needs can be sent to another, also after it has been used in this one."""

import pickle
from pathlib import Path
from types import SimpleNamespace
from typing import Any

from sitegen.assembly.bench import Bench


def test_a_bench_that_was_used_still_travels(tmp_path: Path) -> None:
    """Whatever it has worked out for itself stays behind; a few jobs done here, then many shared out, must not fail."""
    plain: Any = SimpleNamespace()
    bench = Bench(tmp_path, tmp_path, plain, plain, plain, "code", "pictures", "stars", "look")
    bench.__dict__["site_frame"] = pickle  # a module, as the template engine holds many
    assert pickle.loads(pickle.dumps(bench)) == bench
