"""The rule of thumb: common practice without a source."""

import pytest

from sitegen.sky.advice import advice, followed


@pytest.mark.parametrize(
    ("illuminated", "up_share", "expected"),
    [
        (0.62, 0.71, "narrowband"),
        (0.62, 0.5, "broadband-while-moon-down"),
        (0.62, 0.0, "broadband-while-moon-down"),
        (0.5, 0.9, "any"),
        (0.1, 0.9, "any"),
        (0.1, None, "any"),
        (0.62, None, None),
        (None, 0.9, None),
    ],
)
def test_advice(illuminated: float | None, up_share: float | None, expected: str | None) -> None:
    """Above both thresholds narrowband, lit but up for less broadband while it is down, else any; unknown stays unknown."""
    assert advice(illuminated, up_share, 0.5, 0.5) == expected


def test_thresholds_are_the_diarys() -> None:
    """The same night gets other advice where the diary sets other thresholds."""
    assert advice(0.4, 0.3, 0.3, 0.2) == "narrowband"
    assert advice(0.4, 0.3, 0.3, 0.4) == "broadband-while-moon-down"
    assert advice(0.4, 0.3, 0.4, 0.2) == "any"


NARROW, DUAL = ("narrowband", 20.0), ("dual-band", 20.0)
UP, DOWN, OPEN = ("broadband", 20.0), ("broadband", -5.0), ("broadband", None)


@pytest.mark.parametrize(
    ("advised", "kept", "expected"),
    [
        ("any", [UP], None),
        (None, [UP], None),
        ("narrowband", [], None),
        ("narrowband", [NARROW, DUAL], True),
        ("narrowband", [NARROW, DOWN], False),
        ("narrowband", [NARROW, OPEN], False),
        ("narrowband", [NARROW, (None, 20.0)], None),
        ("broadband-while-moon-down", [DOWN, NARROW], True),
        ("broadband-while-moon-down", [DOWN, UP], False),
        ("broadband-while-moon-down", [NARROW, DUAL], True),
        ("broadband-while-moon-down", [DOWN, OPEN], None),
        ("broadband-while-moon-down", [OPEN, UP], False),
        ("broadband-while-moon-down", [(None, -5.0)], True),
        ("broadband-while-moon-down", [("broadband", 0.0)], True),
    ],
)
def test_followed(advised: str | None, kept: list[tuple[str | None, float | None]], expected: bool | None) -> None:
    """Every kept sub must obey; the advice any, nothing kept, or a doubt that decides leaves it open."""
    assert followed(advised, kept) is expected
