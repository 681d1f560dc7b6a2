"""Every light frame with its target, rig, site and evening, or with the question that it waits for."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import date

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.places import catalogued, is_moving_name
from sitegen.authoring.captures.record import Frame, FrameFile
from sitegen.authoring.captures.sorting import Counted
from sitegen.authoring.harvest.known_logs import KnownLog, KnownLogs
from sitegen.authoring.harvest.pointings import CATALOGUE, NAMED, Shown, shown_by
from sitegen.authoring.harvest.questions import Answers, Question, asked_of
from sitegen.authoring.harvest.sites import Sites, only_sites
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS, match_filter
from sitegen.reading.capture_logs.unknown_filters import unknown_filter
from sitegen.sky.rough_altitude import sun_altitude_deg
from sitegen.sky.solar_time import evening_at

DAYLIGHT_DEG = -6.0
_NO_TARGET = "what do {} show? Neither header nor folder tells it"
_NO_SITE = "from where were {} taken? No header tells it"
_NO_FILTER = "through which filter were {} taken? No header tells it, and the rig has several"
_OTHER_CLOCK = "in which time zone ran the clock of {}? Read as UTC, the Sun was up in most of them"
_OTHER_SITE = "from where were {} taken? At the place in their headers the Sun was up in most of them"


class Light(Struct, frozen=True, gc=False):
    """`log` is where it is already; None for one that is new to the diary. `is_guessed` where no header tells its site."""

    counted: Counted
    shown: Shown
    rig: str
    site: str
    evening: date
    log: KnownLog | None = None
    is_guessed: bool = False

    @property
    def frame(self) -> Frame:
        return self.counted.frame


class PlacedLights(Struct, frozen=True):
    """`unclear` counts files: those that wait, each with a question, and copies of them are counted elsewhere."""

    lights: tuple[Light, ...]
    questions: tuple[Question, ...]


class LightRequest(Struct, frozen=True):
    rigs: Mapping[str, Rig]
    sites: Mapping[str, Site]
    places: Sites
    answers: Answers
    logs: KnownLogs


class _Waiting:
    """Lights that still have no question, and the questions of those that have one."""

    def __init__(self, lights: Iterable[tuple[Counted, str]]) -> None:
        self.lights = list(lights)
        self.taken_out: list[FrameFile] = []
        self.questions: list[Question] = []

    def ask(self, is_asked: Sequence[bool], wording: str, key: str, each_folder: bool = False) -> None:
        self.take_out(is_asked)
        self.questions += asked_of(wording, key, self.taken_out, each_folder)

    def take_out(self, is_asked: Sequence[bool]) -> None:
        if not any(is_asked):
            self.taken_out = []
            return
        pairs = list(zip(self.lights, is_asked, strict=True))
        self.taken_out = [_file_of(counted) for (counted, _), asked in pairs if asked]
        self.lights = [light for light, asked in pairs if not asked]


def _file_of(counted: Counted) -> FrameFile:
    assert counted.frame.file is not None
    return counted.frame.file


def place_lights(lights: Iterable[tuple[Counted, str]], request: LightRequest) -> PlacedLights:
    """`lights` are the counted ones, each with its rig."""
    named = list(lights)
    if request.answers.answers:
        named = [(_with_filter(counted, request.answers), rig) for counted, rig in named]
    logs = [request.logs.of(counted.frame) for counted, _ in named] if request.logs.logs else [None] * len(named)
    waiting = _Waiting(light for light, log in zip(named, logs, strict=True) if log is None)
    _ask_filters(waiting, request)
    in_logs = [_in_log(counted, rig, log) for (counted, rig), log in zip(named, logs, strict=True) if log is not None]
    sites, guessed = _ask_sites(waiting, in_logs, request)
    _ask_daylight(waiting, sites, request)
    shown = _ask_targets(waiting, in_logs, request.answers)
    placed = [
        Light(counted, shown[id(counted)], rig, site, evening_at(counted.frame.start, request.sites[site].longitude_deg),
              is_guessed=id(counted) in guessed)
        for counted, rig in waiting.lights if (site := sites[id(counted)])
    ]  # fmt: skip
    return PlacedLights((*placed, *in_logs), tuple(waiting.questions))


def _with_filter(counted: Counted, answers: Answers) -> Counted:
    answered = answers.about(counted.frame.file).filter
    if answered is None:
        return counted
    exposure = counted.exposure
    record = replace(exposure.frame.record, filter_words=answered)
    return replace(counted, exposure=replace(exposure, frame=replace(exposure.frame, record=record)))


def _in_log(counted: Counted, rig: str, log: KnownLog) -> Light:
    """What a log tells of it is not asked again."""
    site = log.front_matter.site if log.front_matter is not None else None
    slug = site.slug if site is not None else ""
    return Light(counted, Shown(CATALOGUE, ""), rig, slug, evening_at(counted.frame.start, log.longitude_deg), log)


def _ask_filters(waiting: _Waiting, request: LightRequest) -> None:
    """Unknown words wait until the rig has them, one question each; frames without a word for an answer."""
    counts = Counter((rig, counted.frame.record.filter_words) for counted, rig in waiting.lights)
    named = {pair for pair in counts if pair[1].casefold() not in NO_FILTER_WORDS}
    unknown = {(rig, word) for rig, word in named if match_filter(word, request.rigs[rig]) is None}
    nameless = {(rig, word) for rig, word in counts.keys() - named if request.rigs[rig].filters}
    for rig, word in sorted(unknown):
        waiting.questions.append(_filter_question(word, request.rigs[rig], counts[rig, word]))
    if unknown or nameless:
        waiting.take_out([(rig, counted.frame.record.filter_words) in unknown for counted, rig in waiting.lights])
        asked = [(rig, counted.frame.record.filter_words) in nameless for counted, rig in waiting.lights]
        waiting.ask(asked, _NO_FILTER, "filter: FILTER", each_folder=True)


def _filter_question(word: str, rig: Rig, count: int) -> Question:
    frames = "1 frame waits" if count == 1 else f"{count} frames wait"
    key = f"rigs/{rig.slug}.yaml: filters"
    return Question(f"what is the filter '{word}' of '{rig.slug}'? {frames} for it", key, unknown_filter(word, rig)[1], count)


def _ask_sites(waiting: _Waiting, in_logs: Sequence[Light], request: LightRequest) -> tuple[dict[int, str], set[int]]:
    """By the identity of the light: the author's answer, the header's place, the diary's only site, else the only one of its rig,
    which is a guess."""
    only = next(iter(request.sites)) if len(request.sites) == 1 else None
    sites = [_site_of(counted, request) or only for counted, _ in waiting.lights]
    of_logs = ((light.rig, light.site) for light in in_logs)
    of_rig = only_sites([*of_logs, *((rig, site) for (_, rig), site in zip(waiting.lights, sites, strict=True))])
    site_of = {id(counted): site or of_rig.get(rig, "") for (counted, rig), site in zip(waiting.lights, sites, strict=True)}
    guessed = {id(counted) for (counted, _), site in zip(waiting.lights, sites, strict=True) if site is None}
    wording = _NO_SITE if request.sites else f"{_NO_SITE}, and the diary has no site yet: describe it in sites/NAME.yaml"
    waiting.ask([not site_of[id(counted)] for counted, _ in waiting.lights], wording, "site: SITE")
    return site_of, guessed


def _site_of(counted: Counted, request: LightRequest) -> str | None:
    """Without a place in the header, a clock that the author named says it where only one site goes by that clock."""
    answer = request.answers.about(counted.frame.file)
    if answer.site in request.sites or (place := request.places.of(counted.frame)) is None:
        of_clock = [slug for slug, site in request.sites.items() if site.time_zone == answer.time_zone]
        return answer.site if answer.site in request.sites else of_clock[0] if len(of_clock) == 1 else None
    return place


def _ask_daylight(waiting: _Waiting, sites: Mapping[int, str], request: LightRequest) -> None:
    """Groups of one folder, rig and clock most of whose frames were taken in daylight: a clock or a place is wrong."""
    lit = _in_daylight(waiting, sites, request)
    if not any(lit):
        return
    groups: dict[tuple[str, ...], list[int]] = {}
    for number, (counted, rig) in enumerate(waiting.lights):
        frame = counted.frame
        folder = _file_of(counted).below.partition("/")[0]
        groups.setdefault((sites[id(counted)], rig, folder, frame.clock or ""), []).append(number)
    bright = [numbers for numbers in groups.values() if 2 * sum(lit[number] for number in numbers) > len(numbers)]
    asked = {number for numbers in bright for number in numbers if _is_doubtful(waiting.lights[number][0], request)}
    clockless = [number in asked and counted.frame.clock == "UTC" for number, (counted, _) in enumerate(waiting.lights)]
    elsewhere = [number in asked and not clockless[number] for number in range(len(waiting.lights))]
    others = [flag for flag, is_taken in zip(elsewhere, clockless, strict=True) if not is_taken]
    waiting.ask(clockless, _OTHER_CLOCK, "time_zone: ZONE")
    waiting.ask(others, _OTHER_SITE, "site: SITE")


def _is_doubtful(counted: Counted, request: LightRequest) -> bool:
    """What the author has answered is not asked again; the Sun, the Moon and planets are taken by day."""
    answered = request.answers.about(counted.frame.file)
    is_answered = answered.site and (answered.time_zone or counted.frame.clock is None)
    return not is_answered and not is_moving_name(counted.frame.record.object)


def _in_daylight(waiting: _Waiting, sites: Mapping[int, str], request: LightRequest) -> list[bool]:
    lit = [False] * len(waiting.lights)
    by_site: dict[str, list[int]] = {}
    for number, (counted, _) in enumerate(waiting.lights):
        by_site.setdefault(sites[id(counted)], []).append(number)
    for slug, numbers in by_site.items():
        site = request.sites[slug]
        moments = np.array([waiting.lights[number][0].frame.start.timestamp() for number in numbers])
        altitudes = sun_altitude_deg(moments, site.latitude_deg, site.longitude_deg)
        for place in np.flatnonzero(altitudes > DAYLIGHT_DEG):
            lit[numbers[place]] = True
    return lit


def _ask_targets(waiting: _Waiting, in_logs: Sequence[Light], answers: Answers) -> dict[int, Shown]:
    """Frames in logs tell what those beside them show."""
    shown: dict[int, Shown] = {}
    by_rig: dict[str, list[Counted]] = {}
    for counted, rig in waiting.lights:
        by_rig.setdefault(rig, []).append(counted)
    for rig, lights in by_rig.items():
        beside = (light.frame for light in in_logs if light.rig == rig)
        for counted, what in zip(lights, shown_by([*(counted.frame for counted in lights), *beside]), strict=False):
            answered = answers.about(counted.frame.file).target
            if (target := _answered(answered) if answered else what) is not None:
                shown[id(counted)] = target
    waiting.ask([id(counted) not in shown for counted, _ in waiting.lights], _NO_TARGET, "target: TARGET",
                each_folder=True)  # fmt: skip
    return shown


def _answered(target: str) -> Shown:
    sky_object = catalogued(target)
    return Shown(CATALOGUE, sky_object.name) if sky_object is not None else Shown(NAMED, target)
