"""The words of claims in English."""

from sitegen.claims.vocabulary import Vocabulary, numbered, phrases, words

ENGLISH = Vocabulary(
    numbers=numbered("one two three four five six seven eight nine ten eleven twelve", 1),
    ordinals=numbered("first second third fourth fifth sixth seventh eighth ninth tenth", 0),
    months=numbered(
        "january,jan february,feb march,mar april,apr may june,jun july,jul august,aug september,sep,sept october,oct "
        "november,nov december,dec", 1),
    weekdays=numbered("monday tuesday wednesday thursday friday saturday sunday", 0),
    on_a_day=words("on that"),
    before_day=words("the of , st nd rd th"),
    aside=words(
        "will would could should shall may might must can plan plans planned planning want wants wanted hope hopes hoped wish if "
        "unless until goal aim missing need needs needed intend intended expected expect next tomorrow soon promise promised "
        "he she they somebody someone anybody others friend friends neighbour neighbours colleague colleagues club visitors "
        "book books forum their his her elsewhere another "
        "every always never usually often each normally generally typically rarely sometimes "
        "ago yesterday earlier formerly previous previously once last-year annual years"),
    negations=words("not no nor neither none never without hardly barely n't isn't wasn't weren't didn't don't aren't"),
    several=words("nights evenings both either sessions"),
    at_times=words(
        "when while until till before after then later at towards toward around about from since by for as again soon finally "
        "already during between rose rising setting just"),
    hedges=words(
        "about some nearly almost over than least most to roughly around approximately under only every or up perhaps maybe "
        "between beyond like - – / × x ~ < > ≈ ± + = # . :"),
    parts=words("first last next other another further more every each per these of remaining final same extra"),
    between=words("good usable whole full clear moonless long short single kept discarded sharp bad light separate consecutive "
                  "different dark moonlit"),
    seasons=words("winter summer spring autumn season"),
    habits=words("passes stands climbs rises sets lies hangs is are comes goes reaches sinks"),
    clauses=words(", ; : ( ) and or but while when where which that because as until with behind"),
    in_picture=words("frame frames picture pictures image field corner edge side arm arms like to of"),
    taking=words("taken gathered collected captured exposed shot recorded"),
    subs=words("subs sub-exposures subexposures exposures frames lights"),
    hours=words("hours"),
    nights=words("nights"),
    night=words("night evening session"),
    half_more=(("and", "a", "half"),),
    whole=phrases("in all | altogether | in total | all told | all in all | in sum"),
    over=words("in over from during across on"),
    of=words("of in through"),
    belonging=words("of"),
    light=words("light integration exposure data"),
    gathering=words("took taken gathered collected captured exposed shot recorded kept discarded rejected threw thrown lost cost "
                    "came got gave went yielded"),
    kept=words("kept used"),
    discarded=words("discarded rejected lost cost thrown threw spoiled ruined"),
    filters={
        "luminance": words("l lum luminance"), "red": words("r red"), "green": words("g green"), "blue": words("b blue"),
        "hydrogen": words("ha h-alpha halpha hα"), "hα": words("ha h-alpha halpha hα"), "ha": words("ha h-alpha halpha hα"),
        "oxygen": words("oiii o3"), "oiii": words("oiii o3"), "sulphur": words("sii s2"), "sulfur": words("sii s2"),
        "sii": words("sii s2"),
    },
    joining=words("and or plus + & , with"),
    all_night=phrases(
        "all night | all night long | the whole night | throughout | the whole time | all the time | from dusk to dawn | "
        "from dusk till dawn | from beginning to end | from end to end | from the first sub to the last | "
        "from dusk to the last sub"),
    moon=words("moon"),
    moon_up=phrases("was up | stood above | above the horizon | was in the sky | stayed up | stood up | moon up | shone | "
                    "was still up | was already up"),
    moon_down=phrases("was down | had set | was set | below the horizon | under the horizon | moon down | had gone | was gone | "
                      "stayed down | was already down | was below"),
    moon_waning=phrases("was down to | was up to | like the moon"),
    moonless=words("moonless"),
    no_moon=phrases("moonless night | was moonless | no moon | without a moon | without moon | without the moon"),
    target=words("target object galaxy nebula cluster comet planet"),
    low=phrases("low | close to the horizon | near the horizon | just above the horizon"),
    high=phrases("high | high up"),
    overhead=phrases("overhead | in the zenith | at the zenith | near the zenith"),
    directions={"north": "N", "south": "S", "west": "W", "east": "E", "north-west": "NW", "northwest": "NW", "south-west": "SW",
                "southwest": "SW", "north-east": "NE", "northeast": "NE", "south-east": "SE", "southeast": "SE"},
    in_the=(("in", "the"),),
    calm=words("calm windless still none wind no"),
    calm_phrases=phrases("no wind | windless | dead calm | it was calm | night was calm | air was calm | without wind"),
    clear=words("none no clear cloudless clouds cloud"),
    throughout=words("all night the whole dead completely quite very perfectly throughout absolutely long a at sky time , ."),
    wind=phrases("gust | wind | squall"),
    cloud=phrases("cloud | cirrus | overcast"),
    added=words("added update updated addendum postscript later"),
    ago={("a", "year", "ago"): 1.0, ("one", "year", "ago"): 1.0, ("two", "years", "ago"): 2.0, ("three", "years", "ago"): 3.0,
         ("four", "years", "ago"): 4.0, ("five", "years", "ago"): 5.0, ("half", "a", "year", "ago"): 0.5},
)  # fmt: skip
