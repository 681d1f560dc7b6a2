"""The theme's own words, for charts under test."""

from pathlib import Path

from sitegen.charts.chart import Localizer
from sitegen.number_text import NumberText
from sitegen.pages.words import words_from

THEME = Path(__file__).resolve().parents[2] / "themes" / "default"
WORDS = words_from("en", ((THEME / "words" / "en.yaml").read_text("utf-8"),))
VOICE = Localizer(WORDS, NumberText("en", WORDS))
