"""A beam that meets an eye or a cockpit. Whoever writes of a laser in such a diary mostly holds it, so what is harmless is told
instead."""

from sitegen.cautions.caution import Caution, Vocabulary

CAUTION = Caution(
    "laser",
    ("IEC 60825-1",),
    {
        "en": Vocabulary(
            stems="laser",
            dangers=(("laser | lasers | laserpointer* | lasered",),),
            harmless="laser (print|cut|engrav|sinter|weld|disc|jet|show|thermomet|range|level|eye|physic|medic)* | "
            "laser(print|cut|engrav|jet)* | laser … guide star* | laser … sodium* | (sodium|guide star) … laser* | "
            "(cd|dvd|disc|player) … laser* | reading … needs a laser | (no|without) (a|any)? laser* | "
            "instead of (a|the) laser | laser ranging",
        ),
        "de": Vocabulary(
            stems="laser",
            dangers=(
                ("laser | lasers | laser(pointer|kollimator|strahl|sucher|diode|punkt)*",),
                ("(justier|kollimations|kollimier|zeige|taschen)laser*",),
            ),
            harmless="laser (graviert|gravier|thermomet|wasserwaage|druck|schn|gravur|show)* | "
            "mit dem laser (graviert|geschnitten) | (cd|dvd) … laser* | laser(druck|schn|gesch|grav|schwei|show)* | "
            "laser … *leitstern* | laser … natrium* | *leitstern* … laser* | (kein*|ohne) (einen)? laser* | "
            "statt (eines|des) lasers",
        ),
    },
)
