"""A beam that meets an eye or a cockpit."""

from sitegen.cautions.caution import NEXT, Caution, Vocabulary

CAUTION = Caution(
    "laser",
    ("IEC 60825-1",),
    {
        "en": Vocabulary(
            stems="laser",
            dangers=(
                ("laser pointer* | laser collimat* | laser beam* | laser finder* | laser diode* | collimat* laser*",),
                ("(green|red|blue) laser* | beam of (a|the|my|our|his|her) laser",),
                (
                    "laser*",
                    "point* | aim* | shin* | shone | swept | sweep* | collimat* | beam* | focuser | finder | mirror | "
                    "primary | secondary | reflect* | dot | spot | plane | planes | aeroplane* | aircraft | airliner* | "
                    "helicopter* | cockpit* | eye* | align* | adjust* | milliwatt* | # mw | class (2|3|4)*",
                ),
                ("laser*", "point* | aimed | shone | swept | beam | dot | aircraft | helicopter* | milliwatt*", NEXT),
            ),
            harmless="laser (print|cut|engrav|sinter|weld|disc|jet|show)* | laser(print|cut|engrav|jet)* | "
            "laser … guide star* | laser … sodium* | (sodium|guide star) … laser* | (no|without) (a|any)? laser* | "
            "instead of (a|the) laser | laser ranging",
        ),
        "de": Vocabulary(
            stems="laser",
            dangers=(
                ("laser pointer* | laserpointer* | laserkollimator* | laserstrahl* | lasersucher* | laserdiode*",),
                ("justierlaser* | kollimationslaser* | (grün|rot|blau)* laser*",),
                (
                    "*laser*",
                    "zeig* | gezeigt | richte* | gerichtet | *strahl* | *leucht* | justier* | kollimier* | "
                    "okularauszug* | *spiegel* | punkt* | reflex* | flugzeug* | hubschrauber* | flieger* | pilot* | "
                    "sucher* | auge* | blick* | schau* | ziel* | visier* | milliwatt | # mw",
                ),
                ("laser*", "gerichtet | strahl* | leuchte* | flugzeug* | hubschrauber* | milliwatt", NEXT),
            ),
            harmless="laser (druck|schn|gravur|show)* | laser(druck|schn|gesch|grav|schwei|show)* | "
            "laser … *leitstern* | laser … natrium* | *leitstern* … laser* | (kein*|ohne) (einen)? laser* | "
            "statt (eines|des) lasers",
        ),
    },
)
