"""What falls, swings or is climbed on. The standard is that of ladders; of heavy tubes there is none."""

from sitegen.cautions.caution import COMMON_PRACTICE, NEXT, Caution, Vocabulary

CAUTION = Caution(
    "weight",
    ("EN 131-3", COMMON_PRACTICE),
    {
        "en": Vocabulary(
            stems="tube | mount | weight | telescope | pier | clutch | clamp | ladder | stool | hoist | kilo | kg | "
            "pound | truss | mirror",
            dangers=(
                (
                    "ladder*",
                    "climb* | lean* | leant | rung* | stand* | stood | step* | up | top | foot | eyepiece | zenith | "
                    "hold* | held | fell | fall* | metre* | meter* | feet",
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
            stems="tubus | rohr | montierung | gewicht | säule | klemm | kupplung | leiter | kilo | kg | spiegel | hocker",
            dangers=(
                (
                    "leiter | (steh|tritt|klapp|stell|anlege|holz|alu)leiter",
                    "*steig* | *stieg* | *kletter* | *lehn* | sprosse* | okular* | oben | zenit | stufe* | wackel* | "
                    "gekippt | halt* | hielt",
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
