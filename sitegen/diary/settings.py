"""The diary's own page of settings (content/diary.yaml)."""

from typing import Literal

from msgspec import Struct

PositionPrivacy = Literal["rounded", "hidden", "exact"]


class Privacy(Struct, frozen=True):
    """How exactly the site tells where the observer stands."""

    site_position: PositionPrivacy = "rounded"
    round_to_deg: float = 0.1


class MoonRule(Struct, frozen=True):
    """Both fractions 0..1: above the first the Moon is bright, above the second it is up for most of the dark hours."""

    illuminated_above: float = 0.5
    up_share_above: float = 0.5


class OutlookSettings(Struct, frozen=True):
    published: bool = False
    nights: int = 30
    minimum_altitude_deg: float = 30.0


class CaptureAnswer(Struct, frozen=True):
    """What the author says of the files that match the shell glob `files`; None for what is left to their headers."""

    files: str
    target: str | None = None
    rig: str | None = None
    site: str | None = None
    filter: str | None = None
    time_zone: str | None = None
    leave_out: bool = False


class CaptureSettings(Struct, frozen=True):
    """`discarded` are shell globs of frames that were thrown away; empty leaves it to what folders and names say. The last of
    the `answers` that matches a file and says something wins."""

    discarded: tuple[str, ...] = ()
    answers: tuple[CaptureAnswer, ...] = ()


class Settings(Struct, frozen=True):
    title: str
    author: str | None = None
    tagline: str | None = None
    language: str = "en"
    address: str | None = None
    theme: str = "default"
    licence: str | None = None
    privacy: Privacy = Privacy()
    moon_rule: MoonRule = MoonRule()
    outlook: OutlookSettings = OutlookSettings()
    captures: CaptureSettings = CaptureSettings()
