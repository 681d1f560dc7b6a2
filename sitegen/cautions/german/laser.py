"""German: see `cautions/laser.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import AUGEN, FLUGZEUGE, HIMMEL, ZUSCHAUER
from sitegen.cautions.phrases import any_of

ZEIGER = (
    "zeiger | leuchtzeiger | sternzeiger | *pointer | "
    "(grün*|violett*|blau*|lila) (stift|stab|licht|punkt|zeiger|ding|finger) | lichtschwert* | leuchtstab* | "
    "(#|fünf|zehn|zwanzig|fünfzig|hundert) (mw|milliwatt) | milliwatt | 532 nm | zauberstab | grüner | mein grüner | "
    "justierteil | stift | grünen strahlen | zwei grüne* | modul | bleistiftstrahl | *strahl | strahler"
)
STRAHL = "strahl | strahls | strahlen | (grün*|violett*|blau*) (linie|licht|strahl)"
STARK = (
    "mw | milliwatt | watt | luftballon* | streichholz* | streichhölzer | brennt löcher | filter ausgebaut | 532 nm | "
    "405 nm | klasse (3|4) | wasserturm | kirchturm | baustelle* | gegenüberliegend* | wolken | kilometer weit | "
    "bis zum * turm"
)
KOLLIMATOR = "*kollimator* | justiergerät | justierhilfe | justierpunkt | justierteil | justierding | justierlicht"
AM_STRAHL = (
    "punkt | strahl | eingeschaltet* | an war | angeschaltet* | reflex | rückreflex | blendete | in den tubus | ins rohr"
)
GESCHWENKT = (
    "gezogen | geschwenkt | gezielt | gerichtet | gefolgt | verfolgt* | geleuchtet | angeleuchtet | leuchte* | gewunken | "
    "eingefangen | getroffen | traf | gestreift | gezeigt | zeige* | fangen gespielt | gemalt | gekritzelt | gewedelt | "
    "gefuchtelt | gewinkt | gewackelt | nachgefahren | entlanggefahren"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "*grüner | *grünen | der grüne", "namen | dunst | segelflug* | flugplatz | schreibt | beschwert | flug*",
            "dunst | wolken | segelflug* | fluggelände | himmel | flug*", NEARBY,
        ),
        ("laser | lasers | laser(pointer|kollimator|strahl|sucher|diode|punkt)*",),
        ("(justier|kollimations|kollimier|zeige|taschen)laser*",),
        (ZEIGER, any_of(FLUGZEUGE, ZUSCHAUER, AUGEN, HIMMEL, STARK, GESCHWENKT), NEARBY),
        (STRAHL, any_of(FLUGZEUGE, AUGEN, STARK), NEARBY),
        (STRAHL, GESCHWENKT, any_of(ZUSCHAUER, HIMMEL), NEARBY),
        ("(grün*|violett*|blau*) (strahl|linie|licht)", any_of(ZUSCHAUER, GESCHWENKT), NEARBY),
        (any_of(KOLLIMATOR, "punkt vom justier*"), any_of(AUGEN, AM_STRAHL), NEXT),
        ("(rot*|grün*) (punkt|fleck)", "stirn | gesicht* | hund | katze* | nachbar* | brust | rücken"),
    ),
    harmless="zeiger (der|einer|des) * (uhr|waage|tacho*|thermomet*|baromet*|*messers) | zeiger * auf | "
    "strahl (mondlicht|licht|sonne|hoffnung) | laser (graviert|gravier|thermomet|wasserwaage|druck|schn|gravur|show)* | "
    "mit dem laser (graviert|geschnitten) | (cd|dvd) … laser* | laser(druck|schn|gesch|grav|schwei|show)* | "
    "laser … *leitstern* | laser … natrium* | *leitstern* … laser* | (kein*|ohne) (einen)? laser* | "
    "statt (eines|des) lasers | (maus|uhr|stunden|minuten|sekunden|mess)zeiger* | "
    "(strahl|strahlen) (der|einer|des|eines) (lampe|taschenlampe|stirnlampe|leuchtturms|scheinwerfer*) | "
    "(licht|sonnen|rand)strahl*",
)
