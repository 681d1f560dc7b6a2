"""Loads beforehand what a rebuild needs: for a process that stays, and whose first rebuild loaded little."""

from datetime import date
from importlib import import_module

from sitegen.assembly.rehearsal import rehearse
from sitegen.diary.settings import Settings
from sitegen.folders import Folders
from sitegen.number_text import NumberText
from sitegen.pages.templating import environment
from sitegen.pages.theme import open_theme
from sitegen.pages.words import words_from
from sitegen.reading.frame import DiaryReading, read_frame

USED = ("assembly.assemble", "assembly.entry_facts", "assembly.entry_drawing", "assembly.lists", "assembly.feeds_of_all",
        "assembly.entry_texts", "writing.publish")  # fmt: skip


def warm(folders: Folders, today: date) -> None:
    """The code, the templates of the diary's theme, the words in its language, and what its newest entry needs. A diary with
    errors warms what it can."""
    for name in USED:
        import_module(f"sitegen.{name}")
    frame = read_frame(folders.content, today, str(folders.content))
    settings = (None if isinstance(frame, DiaryReading) else frame.settings) or Settings("")
    theme, problems = open_theme(settings.theme, folders.themes)
    if problems:
        return
    words = words_from(settings.language, theme.word_texts(settings.language))
    templates = environment(theme.folders, words, NumberText(settings.language, words))
    for name in templates.list_templates(extensions=["html"]):
        templates.get_template(name)
    rehearse(folders, today)
