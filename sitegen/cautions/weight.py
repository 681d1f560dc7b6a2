"""What falls, swings or is climbed on. The standard is that of ladders; of heavy tubes there is none."""

from sitegen.cautions.caution import COMMON_PRACTICE, NEXT, Caution, Vocabulary

CAUTION = Caution(
    "weight",
    ("EN 131-3", COMMON_PRACTICE),
    {
        "en": Vocabulary(
            stems="axis | dovetail | rung | inch | refractor | base | chair | crate | tube | mount | weight | "
            "telescope | pier | clutch | clamp | ladder | stool | hoist | kilo | kg | pound | truss | mirror",
            dangers=(
                (
                    "(#|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred) *? (kg|kilo|kilos|pound|pounds)",
                    "wrestl* | slipped | slip* | drop* | fell | manhandl* | wedge | shoulder*",
                ),
                (
                    "tube | telescope | counterweight* | bar | axis",
                    "(swing|swings|swung|swinging) … (hit|head|face|ear|up|down|free) | hit (me|you|him|her) | "
                    "without locking | unlocked",
                ),
                (
                    "stairs | staircase | attic | cellar",
                    "carried | carry* | lugged | hauled | heaved | dragged",
                ),
                (
                    "rung | rungs",
                    "stand* | stood | third | top | dark | hand",
                ),
                ("(stand|standing|stood|climb|climbed) on (a|the|an) (chair|stool|crate|table|box|barrel|bucket|wall)",),
                (
                    "dovetail | saddle | rings | bolt | bolts",
                    "undid | loosen* | slid out | slipped | let go | landed | released",
                ),
                (
                    "tube | mount | telescope | refractor | reflector | # inch | dobsonian | pier | mirror",
                    "one person | single handed* | good back | my back | bad back | two of us | three of us | "
                    "slid out | landed on | weighs | raised | on to its base",
                ),
                (
                    "ladder*",
                    "climb* | lean* | leant | rung* | stand* | stood | step* | up | top | foot | eyepiece | zenith | "
                    "hold* | held | fell | fall* | metre* | meter* | feet",
                    NEXT,
                ),
                ("step (stool|ladder)* | stepladder*",),
                (
                    "tube | mount | telescope | scope | pier | mirror | truss | counterweight* | cell | fork | dome | saddle",
                    "hoist* | heav(e|ed|ing) | winch* | "
                    "(lift|lifted|lifting|carry|carried) … (pier|saddle|alone|myself|stairs|off|on|onto|into|back)",
                ),
                (
                    "lift* | carr* | hold* | held | heav* | hoist* | drag*",
                    "(#|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred) *? "
                    "(kg|kilo|kilos|kilogram|kilograms|pounds|lbs)",
                    NEXT,
                ),
                (
                    "clutch* | clamp*",
                    "open* | loosen* | releas* | undid | undo* | slip* | swung | swing* | counterweight* | drop*",
                ),
                (
                    "tube | counterweight* | mount | telescope | mirror",
                    "(swung|swings|swing) (down|round|out) | fell | crashed | slipped out | dropped | toppled | tipped over",
                ),
                ("counterweight*", "off | remov* | shift* | slid* | foot | toe* | drop*"),
                ("on the (tube|clamp)", "two | three | nobody", "under | clamp | lift*"),
            ),
            harmless="(distance|cosmic|parallax) ladder* | ladder of distances | "
            "weight of (the)? (evidence|proof|numbers) | weighted | (its|their) own (weight|noise) | heavy dew",
        ),
        "de": Vocabulary(
            stems="stuhl | kiste | tisch | treppe | achse | wiegt | schwalbenschwanz | refraktor | stuhl | kiste | "
            "tubus | rohr | montierung | gewicht | säule | klemm | kupplung | leiter | kilo | kg | spiegel | hocker",
            dangers=(
                (
                    "stuhl | hocker | kiste | tisch",
                    "gestiegen | geklettert | wackel* | wackl*",
                ),
                (
                    "*rohr | tubus | gegengewicht* | achse",
                    "schoss | knallte | traf | gegen (die|den|meine|meinen) | nicht geklemmt | stirn | schläfe",
                ),
                (
                    "*treppe*",
                    "*getragen | trug* | *schlepp* | gewuchtet | gehievt",
                ),
                (
                    "*ig (kg|kilo|kilogramm)",
                    "*getragen | trug* | *hob* | *schlepp* | allein | alleine | treppe*",
                ),
                (
                    "*schwalbenschwanz* | *schiene | schellen | rohrschellen",
                    "lös* | gelöst | rutscht* | heraus* | *gefallen | losgelassen",
                ),
                (
                    "wiegt | wiegen | schwer",
                    "(#|zwanzig|dreißig|vierzig|fünfzig|sechzig|siebzig|achtzig|neunzig|hundert) (kg|kilo)*",
                    "*gerichtet | *hob* | *gehoben | *stellt | *gesetzt | *setzen | *tragen | trug* | montiert | "
                    "zu (zweit|dritt) | allein",
                ),
                (
                    "tubus | *rohr | montierung | säule | refraktor | teleskop",
                    "zu (zweit|dritt|viert) | kreuz verrenkt | hexenschuss | rücken | "
                    "aus der (schiene|halterung|hand) | gewuchtet",
                ),
                (
                    "(stand|stehe|stehend|steige|stieg) auf (einem|einen|dem|den|der|einer) "
                    "(stuhl|hocker|kiste|tisch|mauer|kasten)",
                ),
                (
                    "leiter | (steh|tritt|klapp|stell|anlege|holz|alu)leiter",
                    "*steig* | *stieg* | *kletter* | *lehn* | sprosse* | okular* | oben | zenit | stufe* | wackel* | "
                    "gekippt | halt* | hielt",
                    NEXT,
                ),
                ("tritthocker* | trittleiter*",),
                (
                    "tubus | *rohr | teleskop | montierung | gegengewicht* | säule | *spiegel | dobson | kuppel | gabel",
                    "*gehoben | hob | *heben | gehievt | hieven | gewuchtet | geschleppt | flaschenzug | kran | "
                    "seilwinde | alleine? getragen",
                ),
                (
                    "(#|zwanzig|dreißig|dreissig|vierzig|fünfzig|sechzig|siebzig|achtzig|neunzig|hundert) (kg|kilo|kilogramm)",
                    "*heb* | *hob | hieven | gehievt | trag* | trug* | *schlepp* | gewuchtet | halt* | hielt",
                    NEXT,
                ),
                (
                    "*klemme | *klemmung | *kupplung",
                    "geöffnet | gelöst | löse* | öffne* | lösen | öffnen | aufgemacht | rutsch* | gegengewicht*",
                ),
                (
                    "tubus | *rohr | gegengewicht* | montierung",
                    "schlug | *geschlagen | schwang | gekippt | kippte | *gefallen | herunterfiel | "
                    "auf den (fuß|fuss) | abgestürzt",
                ),
                ("gegengewicht*", "abgenommen | abnehmen | verschoben | entfernt | abgezogen | rutsch*"),
            ),
            harmless="entfernungsleiter | (leiter|leiterin) (der|des|unserer|von) | halbleiter* | spiegelbild*",
        ),
    },
)
