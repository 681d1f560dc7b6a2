"""The keys of content/diary.yaml."""

from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.value_types.address import WebAddress
from sitegen.reading.value_types.choice import Choice, YesOrNo
from sitegen.reading.value_types.collections import ListOf
from sitegen.reading.value_types.folder_name import FolderName
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.language import Language
from sitegen.reading.value_types.number import Number
from sitegen.reading.value_types.text import LINE, NAME
from sitegen.reading.value_types.time_zone import TimeZone

SHARE = Number(least=0, most=1)
# Finer than this it names the village, or the house: that is no rounding.
ROUNDING = Number(
    unit="degrees", least=0.01, most=10, below_least="0.01° is a kilometre: for a finer place write 'site_position: exact'"
)

PRIVACY = Group(
    (
        Key("site_position", Choice(("rounded", "hidden", "exact")), "How exactly the site tells where you observe.", "rounded",
            default="rounded"),
        Key("round_to_deg", ROUNDING, "The grid a rounded position is moved to.", "0.1",
            default="0.1"),
    ),
    called="privacy",
)  # fmt: skip

MOON_RULE = Group(
    (
        Key("illuminated_above", SHARE, "Above this lit fraction the Moon is bright.", "0.5", default="0.5"),
        Key("up_share_above", SHARE, "Up for more than this part of the dark hours, a bright Moon leaves only narrowband.", "0.5",
            default="0.5"),
    ),
    called="moon_rule",
)  # fmt: skip

OUTLOOK = Group(
    (
        Key("published", YesOrNo(), "Whether the coming nights are a page of the site: it tells the world where you will be.",
            "false",
            default="false"),
        Key("nights", Number(unit="nights", least=1, most=400, whole=True), "How many nights to look ahead.", "30", default="30"),
        Key("minimum_altitude_deg", Number(unit="degrees", least=0, most=89), "Lower than this a target is not worth a sub.",
            "30",
            default="30"),
    ),
    called="outlook",
)  # fmt: skip

ANSWER = Group(
    (
        Key("files", LINE, "A shell glob of files: the end of their paths.", "'old camera/*'", required=True),
        Key("target", LINE, "What they show.", "M 33"),
        Key("rig", NAME, "Which rig took them.", "dome-newtonian"),
        Key("site", NAME, "From where.", "school-roof"),
        Key("filter", NAME, "Through which filter of the rig.", "L"),
        Key("time_zone", TimeZone(), "The clock by which they were stamped.", "Europe/Athens"),
        Key("leave_out", YesOrNo(), "Whether they are left out of the diary.", "true", default="false"),
    ),
    called="an answer",
)  # fmt: skip

CAPTURES = Group(
    (
        Key("discarded", ListOf(LINE), "Shell globs of frames thrown away, as paths below the folder gathered or as names; "
            "without any, folders and names that begin with words like 'rejected' or 'bad' say it.",
            "['rejected/*', 'cloudy_*']"),
        Key("answers", ListOf(ANSWER), "What 'sitegen harvest' asked and no header answers, each for the files of a shell glob; "
            "the last that says something of a file wins.",
            "[{files: 'old camera/*', time_zone: Europe/Athens}]"),
    ),
    called="captures",
)  # fmt: skip

DIARY_FILE = AuthorFile(
    name="diary",
    pattern="diary.yaml",
    explained="The diary itself: its title, its author, and what holds for all of it.",
    group=Group(
        (
            Key("title", LINE, "What the diary is called.", "Nights above the school roof", required=True),
            Key("author", LINE, "Whose diary it is.", "The keeper"),
            Key("tagline", LINE, "One line under the title.", "What one small dome sees"),
            Key("language", Language(), "The language you write in, as a BCP 47 tag.", "en", default="en"),
            Key("address", WebAddress(site=True), "Where the site is published; feeds and search engines need it.",
                "https://example.org/diary/"),
            Key("theme", FolderName(), "The folder under themes/ that gives the site its look.", "default", default="default"),
            Key("licence", LINE, "Of the pictures: an SPDX id or a sentence.", "CC-BY-4.0"),
            Key("privacy", PRIVACY, "How much of the observing place becomes public.", "{site_position: rounded}"),
            Key("moon_rule", MOON_RULE, "When the Moon is too much for broadband.", "{illuminated_above: 0.5}"),
            Key("outlook", OUTLOOK, "The coming nights of entries still gathering.", "{nights: 30}"),
            Key("captures", CAPTURES, "What 'sitegen gather' and 'sitegen harvest' have to know of your captures.",
                "{discarded: ['rejected/*']}"),
        ),
        called="the diary",
    ),
)  # fmt: skip
