"""A published number: what a source prints, how far one may be from it, and why that far."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Published:
    """tolerance is absolute, in the unit of the value; why says where it comes from."""

    value: float
    tolerance: float
    source: str
    why: str = "the last digit printed"

    def agrees(self, computed: float) -> bool:
        """Prints the source and both numbers where they differ, then says whether they agree."""
        if abs(float(computed) - self.value) <= self.tolerance:
            return True
        raise AssertionError(f"{self.source}: printed {self.value}, computed {computed}, allowed {self.tolerance} ({self.why})")


def degrees(whole: float, minutes: float = 0.0, seconds: float = 0.0) -> float:
    """Sexagesimal to decimal; the sign of `whole` holds for all."""
    return (abs(whole) + minutes / 60.0 + seconds / 3600.0) * (-1.0 if whole < 0 else 1.0)
