"""Water, ice and their edges in the dark."""

from sitegen.cautions.caution import Caution, Vocabulary

CAUTION = Caution(
    "water",
    ("ISO 12402-10",),
    {
        "en": Vocabulary(
            stems="rowed | rowing | paddl | kayak | island | knee | jetty | boat | canoe | raft | ford | wade | "
            "wading | life jacket | life-jacket | ice | frozen | wet  | wharf | quay | tide | shore | beach | river | "
            "creek | lake | pond | stream | lagoon | pontoon | surf | reef",
            dangers=(
                (
                    "ice",
                    "walked | tripod | mount | thick | held | cracked | crack* | lake | pond | river | skat*",
                ),
                (
                    "rowed | rowing | paddl* | kayak* | canoe*",
                    "island | gear | telescope | tube | mount | tripod | dusk | dark | night | lamp | lake | river | across",
                ),
                (
                    "tide",
                    "in | out | rising | came | coming | turned",
                ),
                (
                    "wade | waded | wading | life jacket* | (on|onto|over|across|on to) the *? ice | "
                    "frozen (lake|pond|river|dam|bay|sea)",
                ),
                ("wet (plank|rock|board)*",),
                (
                    "jetty | boat | canoe | raft | ford | wharf | quay | tide | riverbank | shore | beach | sandbank | "
                    "water's edge | stepping stones | pontoon | surf | reef",
                    "tripod | mount | telescope | carried | carry | packed | slip* | stood in | knee | crossed | wet | "
                    "set up | in the dark | rising | came in | swam | rowed | paddl*",
                ),
                (
                    "river | creek | lake | pond | stream | lagoon | sea | dam | channel",
                    "crossed | swam | swim* | fell in | slipp* | knee deep | stood in | rowed | paddl* | thin ice | walked out",
                ),
            ),
            harmless="ice (giant|cream|age|core|cold)* | (water|dry) ice | tidal tail* | "
            "(stars|dolphin|fish|swan|milky way|constellation) … | ice (giant|cream|age|core)* | dry creek bed*",
        ),
        "de": Vocabulary(
            stems="kanu | kajak | paddel | ruder | insel | tide | steg | boot | kahn | furt | wate | ufer | strand | "
            "flut | eis | gefroren | planke | weste | fluss | bach | see | teich | meer | weiher | mole | kai | nass",
            dangers=(
                (
                    "eis",
                    "trug | trägt | tragfähig | stativ | montierung | mitte | knackte | brach | *see | weiher* | teich* | fluss*",
                ),
                (
                    "kanu | kajak | schlauchboot | ruderboot | *gerudert | *gepaddelt | paddeln",
                    "insel | teleskop | fernrohr | stativ | montierung | nacht | dunkel* | see | fluss | knie* | ausrüstung",
                ),
                ("*gewatet | waten | watete* | (schwimm|rettungs)weste* | (auf|über) (das|dem) *? eis | zugefroren*",),
                ("nass* (planke|steg|brett|stein|fels)*",),
                (
                    "*steg | boot | kahn | furt | ufer | strand | flut | floß | mole | kai",
                    "stativ | montierung | *fernrohr | teleskop | im dunkeln | nass* | rutsch* | wasser | getragen | "
                    "gestanden | aufgebaut | gerudert | planke*",
                ),
                (
                    "fluss | bach | see | teich | meer | weiher",
                    "gewatet | durchquer* | ausgerutscht | hineingefallen | knietief | gerudert | dünne* eis | "
                    "geschwommen | im wasser",
                ),
            ),
            harmless="trockeneis | eisriese* | (sternbild|eridanus) … | wassermann | flutlicht*",
        ),
    },
)
