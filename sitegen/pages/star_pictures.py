"""One measurement as a drawing of its own: the theme's map or sketch with its words, in the colours of the paper lamp."""

import re
from html import escape
from pathlib import PurePosixPath

from sitegen.number_text import NumberText
from sitegen.pages.star_maps import ring_sketches, whisker_maps
from sitegen.pages.star_words import pattern_words, ring_title, survey_title
from sitegen.pages.templating import environment
from sitegen.pages.theme import Theme
from sitegen.pages.words import Words
from sitegen.stars.measured import RingedFrame, SurveyedFrame

MARGIN, LINE, ABOVE = 18.0, 19.0, 24.0
CHARACTERS = 58  # of a line of the map's width
FONT = 'font-family="Liberation Sans, DejaVu Sans, sans-serif" font-size="13.6"'


def survey_svg(frame: SurveyedFrame, theme: Theme, words: Words, numbers: NumberText) -> str:
    """The whisker map, its title above and the pattern below."""
    drawn = whisker_maps([frame], words, numbers)[0]
    pattern = pattern_words(frame.pattern, words)
    said = words.say("stars.said", file=PurePosixPath(frame.file).name, pattern=pattern)
    inner = _macro("whisker_map(drawing, said, false)", theme, words, numbers, drawing=drawn, said=said)
    return _framed(inner, drawn.full_height, [survey_title([frame], words, numbers)], [pattern], frame.file, theme)


def ring_svg(frame: RingedFrame, theme: Theme, words: Words, numbers: NumberText) -> str:
    """The sketch of the rings, its title above, the numbers and the exaggeration below."""
    drawn = ring_sketches([frame], words, numbers)[0]
    said = words.say("ring.said", file=PurePosixPath(frame.file).name, words=drawn.words)
    inner = _macro("ring_sketch(drawing, said)", theme, words, numbers, drawing=drawn, said=said)
    scale = words["ring.to_scale"] if drawn.exaggeration == 1 else words.say("ring.exaggerated", times=drawn.exaggeration)
    return _framed(inner, drawn.height, [ring_title([frame], words, numbers)], [drawn.words, scale], frame.file, theme)


def _macro(call: str, theme: Theme, words: Words, numbers: NumberText, **values: object) -> str:
    env = environment(theme.folders, words, numbers)
    return env.from_string("{% import 'stars.html' as stars with context %}{{ stars." + call + " }}").render(**values).strip()


def _framed(inner: str, height: float, above: list[str], below: list[str], file: str, theme: Theme) -> str:
    heads = [line for text in above for line in _lines(text)]
    feet = [line for text in [*below, PurePosixPath(file).name] for line in _lines(text)]
    top = LINE * len(heads) + ABOVE - LINE / 2
    whole = top + height + LINE * len(feet) + LINE
    placed = inner.replace("<svg ", f'<svg x="0" y="{top:g}" width="400" height="{height:g}" ', 1)
    texts = [_text(line, LINE * (index + 1), "head") for index, line in enumerate(heads)]
    texts += [_text(line, top + height + LINE * (index + 1), "foot") for index, line in enumerate(feet)]
    wide, high = 400 + 2 * MARGIN, whole + MARGIN
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{-MARGIN:g} 0 {wide:g} {high:g}" width="{2 * wide:g}" '
        f'height="{2 * high:g}" {FONT}><style>{_style(theme)}</style>'
        f'<rect class="paper" x="{-MARGIN:g}" width="{wide:g}" height="{high:g}"/>{"".join(texts)}{placed}</svg>\n'
    )


def _text(line: str, y: float, kind: str) -> str:
    return f'<text class="{kind}" x="0" y="{y:g}">{escape(line)}</text>'


def _lines(text: str) -> list[str]:
    lines = [""]
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if len(longer) > CHARACTERS and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def _style(theme: Theme) -> str:
    """The theme's own rules, with the first colours it defines in place of its variables, which few drawing programs know."""
    files = dict(theme.look_files())
    look, stars = (files[name].decode("utf-8") for name in ("look.css", "stars.css"))
    colours = dict(re.findall(r"(--[\w-]+):\s*([^;]+);", look[: look.index("}")]))
    rules = re.findall(r"^\.(?:field-map|ring-sketch) [^{]*\{[^}]*\}", stars, re.M)
    own = [".paper{fill:var(--paper)}", ".head{fill:var(--ink);font-weight:bold}", ".foot{fill:var(--dim)}"]
    text = "".join([*own, *(rule for rule in rules if ":" not in rule.partition("{")[0])])
    return re.sub(r"var\((--[\w-]+)\)", lambda variable: colours[variable[1]], text)
