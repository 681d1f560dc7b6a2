"""What a rebuild made and kept, and where its time went."""

from collections import Counter
from time import perf_counter

from msgspec import Struct, field


class BuildStats(Struct):
    """Counts by kind of product, seconds by stage; `notes` are lines for the author about what was kept."""

    made: Counter[str] = field(default_factory=Counter)
    kept: Counter[str] = field(default_factory=Counter)
    seconds: dict[str, float] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    since: float = field(default_factory=perf_counter)

    def count(self, kind: str, done: int, all_of_them: int) -> None:
        self.made[kind] += done
        self.kept[kind] += all_of_them - done

    def step(self, name: str) -> None:
        """The time since the last one ended went into this stage."""
        now = perf_counter()
        self.seconds[name] = self.seconds.get(name, 0.0) + now - self.since
        self.since = now
