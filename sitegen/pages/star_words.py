"""What measured stars say, in sentences of the theme: titles, the pattern, its evidence."""

from collections.abc import Sequence

from sitegen.number_text import NumberText
from sitegen.pages.star_maps import percent_words
from sitegen.pages.words import Words
from sitegen.stars.measured import RingedFrame, SurveyedFrame
from sitegen.stars.pattern import NOTICEABLE
from sitegen.stars.records import Effect, FieldPattern

ALIKE = 0.03  # two widths nearer than a zone is measured to are called alike


def survey_title(frames: Sequence[SurveyedFrame], words: Words, numbers: NumberText) -> str:
    """The first against the last, or what the only one shows."""
    first, last = frames[0].survey.fwhm_px, frames[-1].survey.fwhm_px
    shorts = [short_pattern(frame.pattern, words, numbers) for frame in (frames[0], frames[-1])]
    if len(frames) == 1 or first is None or last is None:
        return words.say("stars.one", fwhm=width_of(frames[-1], numbers), pattern=shorts[-1])
    sizes = [frame.survey.fwhm_arcsec or frame.survey.fwhm_px or 0.0 for frame in (frames[0], frames[-1])]
    change = sizes[1] / sizes[0] - 1
    key = "stars.stayed" if abs(change) < ALIKE else "stars.shrank" if change < 0 else "stars.grew"
    widths = {"first": width_of(frames[0], numbers), "last": width_of(frames[-1], numbers)}
    return words.say(key, **widths, before=shorts[0], after=shorts[1])


def width_of(frame: SurveyedFrame, numbers: NumberText) -> str:
    survey = frame.survey
    if survey.fwhm_arcsec is not None:
        return f"{numbers.figures(survey.fwhm_arcsec, 2)}″"
    return numbers.quantity(survey.fwhm_px, "px")


def short_pattern(pattern: FieldPattern, words: Words, numbers: NumberText) -> str:
    """'one side worse by 21 %'."""
    main = _main_effect(pattern)
    key = f"stars.short.{'tilt_both' if main and main.name == 'both sides' else pattern.kind}"
    return words.say(key, size=f"{numbers.number(100 * main.size, 0)}\u202f%" if main else "")


def pattern_words(pattern: FieldPattern, words: Words) -> str:
    """The pattern in a sentence, with what to look at."""
    main = _main_effect(pattern)
    if pattern.kind == "tilt" and main and main.name == "side to side":
        return words.say("stars.pattern.tilt", side=words[f"stars.side.{round((pattern.direction_deg or 0) / 45) % 8}"])
    if pattern.kind == "tilt":
        return words.say("stars.pattern.tilt_both", axis=words[f"stars.axis.{round((pattern.direction_deg or 0) / 45) % 4}"])
    if pattern.kind == "outward" and pattern.orientation:
        return words[f"stars.pattern.outward_{pattern.orientation}"]
    return words[f"stars.pattern.{pattern.kind}"]


def evidence_words(frame: SurveyedFrame, words: Words, numbers: NumberText) -> tuple[str, ...]:
    """What was counted; every effect that can be noticed, or that none can; how sure it is."""
    pattern, survey = frame.pattern, frame.survey
    zones = sum(zone.fwhm_px is not None for zone in survey.zones)
    sentences = [words.say("stars.counted", stars=survey.star_count, zones=zones, of=len(survey.zones))]
    noticed = [effect for effect in pattern.effects if effect.size >= NOTICEABLE[effect.name][1]]
    sentences += [words.say(f"stars.effect.{_key(effect)}", size=_size(effect, numbers)) for effect in noticed]
    if pattern.effects and not noticed:
        sentences.append(words["stars.effect.none"])
    if pattern.kind != "unclear":
        sentences.append(words.say("stars.sure", share=numbers.percent(pattern.sureness)))
    return tuple(sentences)


def _main_effect(pattern: FieldPattern) -> Effect | None:
    """Of those that speak for the pattern, the one that stands out most."""
    own = [effect for effect in pattern.effects if NOTICEABLE[effect.name][0] == pattern.kind]
    return max(own, key=lambda effect: effect.size) if own else None


def _key(effect: Effect) -> str:
    return effect.name.replace(" ", "_")


def _size(effect: Effect, numbers: NumberText) -> str:
    return f"{numbers.number(100 * effect.size, 0)} ± {numbers.number(max(1, 100 * effect.error), 0)}\u202f%"


def ring_title(frames: Sequence[RingedFrame], words: Words, numbers: NumberText) -> str:
    first, last = frames[0].ring, frames[-1].ring
    if len(frames) > 1:
        return words.say("ring.moved", first=percent_words(first, numbers), last=percent_words(last, numbers))
    key = "ring.centred" if last.direction_deg is None else "ring.off"
    return words.say(key, percent=percent_words(last, numbers))
