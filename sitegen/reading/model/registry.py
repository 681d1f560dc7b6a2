"""The kinds of author files, in the order in which an author meets them."""

from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.diary_file import DIARY_FILE
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.model.rig_file import RIG_FILE
from sitegen.reading.model.site_file import SITE_FILE

AUTHOR_FILES: tuple[AuthorFile, ...] = (DIARY_FILE, SITE_FILE, RIG_FILE, ENTRY_FILE)
