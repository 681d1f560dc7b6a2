"""English: see `cautions/electrical.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import HARM
from sitegen.cautions.phrases import any_of

PLUGS = (
    "plug | plugs | socket* | lead | leads | flex | extension* | adaptor* | adapter* | coupler* | connector | connectors | "
    "reel | strip | power strip* | multi plug* | multiplug* | cube tap | outlet* | switch | kettle lead | cable drum* | "
    "trailing lead* | wall wart* | four way* | joint | joints | junction | doorbell wire | choc block"
)
SUPPLY = (
    "brick | power supply | psu | supply | transformer* | power box | power unit | inverter* | charger | dew controller | "
    "controller | heater | dehumidifier* | kettle | fan heater* | switching supply | supplies | wall wart*"
)
WIRES = (
    "wire | wires | flex | cable | cables | core | cores | strands | conductors | lead | leads | feed | live | neutral | "
    "bell wire | lighting wire | speaker wire"
)
WET = (
    "rain* | drizzl* | puddle* | wet | soaked | dew | dewy | damp | snow | sleet | pond | bucket | flowerpot | flower pot | "
    "waterlogged | flood* | ditch | sprinkler | mud | bathtub | plastic bag | carrier bag | bin bag | water | soggy | "
    "slush | barefoot | bare feet"
)
SHOCK = (
    "tingl* | sizzl* | crackl* | buzz* | spark* | arc | arced | arcing | zap* | jolt* | electric shock | a shock | "
    "blue flash | (went|a) bang | (gave|gives|got) … (belt|kick|shock|jolt|tickle|bite|buzz)* | fizz* | hums | humming | "
    "smok* | scorch* | melted | browned | smell* | (gets|got|runs|is) (rather|very|quite|a bit|pretty|too)? (hot|warm) | "
    "bit me | fur stood | hair stood | tickl* | prickl* | hot plastic | blue star | blue stars | like fish | "
    "smell of fish | fishy | ozone | up to the elbow | up the arm | a reminder | kick up | threw me | thrown | numb arm | "
    "flickers | dims | crackle* | scorched"
)
OPENED = (
    "(lid|cover|case|casing|back|top|housing) … (off|open|opened) | off … (lid|cover|case|top|back) | "
    "opened (up)? the (case|supply|brick|box|psu|unit|transformer) | open case | prised | pried | "
    "unscrewed the (case|lid|back|cover) | inside (the|it)* | guts | took apart | taken apart | lid off | cover off"
)
LIVE = (
    "live | plugged in | with the power on | while (it was|it is|it's|they were) (on|running|plugged*) | still on | "
    "power still on | without switching off | when it's running | not switched off | switched on | under power | "
    "energised | energized | hot side"
)
POKED = (
    "screwdriver | prod | prodd* | poke | poked | poking | measur* | multimeter | meter | probe | bent | solder* | "
    "capacitor* | caps | cap | fuse | replaced | swap* | fiddl* | jiggl* | wiggl* | terminals | tweez* | finger*"
)
JOINED = (
    "twist* | tape | taped | tap | tapped | splic* | strip | stripped | choc block* | chocolate block* | terminal block* | "
    "joined | bodge* | brown to brown | red to red | blue to blue | wire nut* | crimped | cut off | chopped | "
    "insulating tape | electrical tape | duct tape | gaffer* | hosepipe | garden hose | hose | by my teeth | my teeth | "
    "bare (copper|wire|ends|end) | exposed"
)
FUSES = "breaker* | fuse | fuses | rcd | gfci | trip switch | cut out | trip | circuit breaker* | mcb"
DEFEATED = (
    "bigger | larger | nail | foil | paper clip | paperclip | wire across | bypass* | bridg* | taped | wedged | held in | "
    "match | 32 a* | thicker | keeps tripping | kept tripping | kept going | keeps going | no idea which | "
    "which (fuse|breaker) | piece of wire | bit of wire | jumper* | stronger | removed"
)
EARTH_PIN = (
    "(earth|ground|third|grounding|earthing|middle) (pin|prong|wire|lead|terminal|connection)* | green and yellow* | "
    "green yellow* | yellow green* | borrowed the neutral | the neutral from"
)
CUT = (
    "cut | cuts | snip* | remov* | pulled | taped | sawed | sawn | disconnect* | bent | off | clip* | unhook* | lift* | "
    "left out | missing | hum | nowhere | not connected"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "cord | flex | lead | plug | wires | cable", "two wires | myself | replaced | changed | rewired",
            "casing | case | nips | tickle* | tingl* | buzz* | bites | fan | lamp | heater | earth", NEARBY,
        ),
        (
            "case | casing | housing | chassis | body of | handle",
            "nips | nipped | bites | tickles | tingles | prickles | buzzes when", NEARBY,
        ),
        (
            "two cores | twin flex | cores | wire | wires | flex | cable",
            "lamp | porch | lawn | hedge | under the * | fence | jam jar | jar | plastic box | flowerpot | bucket",
            "connector* | strip of connectors | jam jar | jar | lawn | joined | ran | buried | tape* | twist*", NEARBY,
        ),
        ("plug | socket | lead | extension", "melt* | fused | welded | charred | browned", NEARBY),
        (
            "neutral | live | phase | circuit", "borrowed | next circuit | shared | stole | from the next | swapped | tapped",
            NEARBY,
        ),
        (
            "four way | multiway | power strip | extension | adaptor* | plug | plugs",
            "drips | rain | wet | nail | leak* | damp | soaked", "hung | hangs | lies | under | gets in | drips", NEARBY,
        ),
        (
            "lid of the (transformer|supply|inverter|box|charger) | cover of the (transformer|supply|inverter|box) | "
            "transformer",
            "off for cooling | off | open | mind your | reach | bare", NEARBY,
        ),
        (
            "plug | socket | lead | lamp holder | switch", "apart | opened | undid | unscrewed",
            "still in the wall | other end | still plugged | live | on",
            any_of(HARM, "dew | wet | reminder | wall | jolt* | kick | elbow"), NEARBY,
        ),
        (
            "up the garden | across the (garden|lawn|yard|lane) | under the (turf|lawn|grass|path|gravel) | "
            "through the hedge",
            "power | wire | cable | lead | flex | extension | feed | mains | doorbell wire", NEARBY,
        ),
        (
            "power | mains | current | socket | wire | cable | plug | supply | fuse",
            "elbow | up the arm | threw me | thrown | numb arm | hair stood | jolt* | kicked me", NEARBY,
        ),
        (
            "dome motor | motor | pump | heater | switch | relay | contactor",
            "blue star* | blue flash* | arc* | spark* | like fish | smell of fish | smok*",
            "tape | junction | box | wire* | plug | contacts | inside | start*", NEARBY,
        ),
        (
            "goes live | went live | became live | is live | copper showing | bare copper | frayed | chafed | "
            "insulation (gone|worn|cracked|split)*",
            "plug | lead | cable | door | tape | shed | handle | wire | flex | pier | socket", NEARBY,
        ),
        (
            "door handle | handle | latch | railing | pier", "back of (my|your|the) hand | prickl* | tingl* | bites | live",
            "plug* | shed | dome | touch | barefoot | power | mains", NEARBY,
        ),
        (
            "terminals | wires | contacts | connections",
            "licking | licked | wet finger | feeling along | with a finger | finger across", NEARBY,
        ),
        (
            "street light | street lamp | lamp post | neighbour's supply | meter",
            "tapped | tap into | hooked | bypass* | before the meter", NEARBY,
        ),
        ("(wall|double|mains|power|outdoor|garden) (socket|outlet)* | lighting circuit",),
        (
            "light switch | garage light | ceiling light | light fitting | lamp holder | ceiling rose | junction",
            any_of(JOINED, "wired | hung off | hangs off | hooked | connected | fed from | off the | spur"), WIRES, NEARBY,
        ),
        (
            PLUGS, any_of(WET, "hosepipe | garden hose"),
            any_of(
                SHOCK,
                "lay | lies | lying | stood | under | wrapped | sits | sat | dropped | fell | through | chained | ran | "
                "left | joint | outside",
            ),
            NEXT,
        ),
        (PLUGS, SHOCK),
        (
            PLUGS,
            "chained | daisy chain* | into (another|each other|one another) | end to end | plug on both ends | "
            "two male ends | male ends | suicide",
            NEXT,
        ),
        (
            "pier | mount | tripod | telescope | case | casing | rail | dome | box | tube | chassis | metal",
            "tingl* | electric shock | a shock | zapped | jolt* | a belt | prickl* | "
            "(gave|gives) me a (kick|tickle|jolt|bite)",
            "touch* | barefoot | bare feet | grab* | lean* | brush* | hand | hands | whenever | rubber | dew | wet", NEARBY,
        ),
        (SUPPLY, OPENED, any_of(LIVE, POKED, SHOCK), NEARBY),
        (SUPPLY, LIVE, POKED, NEARBY),
        (any_of(PLUGS, SUPPLY), "with the power on | while it was on | live"),
        ("pregnant | bulging | swollen", "caps | cap | capacitor*", NEARBY),
        (
            WIRES, JOINED,
            any_of(
                LIVE, SHOCK,
                "mains | house | shed | dome | garage | observatory | socket | plug | fuse | breaker | garden | strimmer | "
                "spade | lawn mower | brown | earth | feed | volts | ring main",
            ),
            NEARBY,
        ),
        ("brown to brown | blue to blue | black to black | (live|hot) (and|to|wire|side)* neutral",),
        ("(both|two) (wires|cores) (at once|at the same time)* | wrong wire",),
        (
            FUSES, DEFEATED, "tripp* | fuse* | breaker* | blew | blown | blow* | put in | night | rcd | dew | damp | heater*",
            NEXT,
        ),
        ("nail | foil | paper clip | paperclip | bit of wire | strand of wire", "fuse | fuses | fuse holder | fuseholder"),
        (EARTH_PIN, CUT, NEARBY),
        (
            "hum | hum bars | ground loop | earth loop | banding", "pin | prong | earth | (snip|cut)* | grinder",
            "plug | lead | pin | prong | earth", NEARBY,
        ),
        (
            "generator* | genny | genset | inverter*",
            "backfeed* | back feed* | backwards | both ends | male | house | shed | ring main | (rain|drizzle|wet) | "
            "indoors | wall socket",
            NEARBY,
        ),
        (
            "swap* | chang* | replac* | rewir* | connect* | clean* | work* on | fix*",
            "with the power on | while (it was|it is) (live|on) | power still on | still live | live end* | "
            "without switching (it)? off | hot swapped the mains",
            NEARBY,
        ),
        (
            "strimmer | spade | lawn mower | mower | digger | drill | nail",
            "(went|cut|hit|nicked|sliced) … (cable|feed|wire|lead|flex)* | through the (cable|feed|wire|flex|lead)", NEARBY,
        ),
        (
            "hard wired | hardwired | live wire* | three core | distribution (board|box)* | breaker box* | fuse board* | "
            "neutral wire* | earth wire*",
        ),
        (
            "cable* | lead | leads | wire | wires | plug | plugs",
            "kitchen | house circuit | ring main | circuit | mains | trench | dug | bury | buried | rain | puddle* | wet | "
            "cut off | spliced | joined",
        ),
        (
            "generator* | inverter*",
            "cable* | started | ran | running | tent | shed | exhaust | rain | wet | connect* | earth*",
        ),
        ("fuse | fuses", "bypass* | bridged | tripped | foil"),
        ("rewir* | residual current* | rcd* | rcbo* | gfci* | ground fault* | electrician* | fixed wiring",),
        ("mains (lead|cable|voltage|socket|side|outlet|plug|adapt|power|supply|wiring|electricity)*",),
        ("mains", "outdoors | wet | kill* | bare | open* | connect* | wir* | hand*"),
        ("(100|110|115|120|220|230|240|400) (v|volt|volts|vac) | (110|115|120|220|230|240|400)v",),
        ("extension (lead|cord|cable|reel)* | cable reel* | power strip* | junction box* | fuse box* | consumer unit*",),
        (
            "socket* | outlet* | *breaker* | lampholder* | power supply | power brick",
            "wired | wiring | open* | bypass* | bridged | install* | splic* | earthed | earth wire | live wire | "
            "capacitor* | tripped | replaced | cracked | solder* | wet grass | in the rain | tape*",
        ),
    ),
    harmless="all twelve volts | dew heater's lead … | (heater|heater's) … twelve volts | "
    "(only|just|all) (twelve|12|five|5|low) volt* | low voltage | connectors (now)? point down* | "
    "(heater|heaters|heater's|band's|camera's|mount's|focuser's|handset|handset's|hand box) (lead|leads|cable|plug|supply) |"
    " (usb|network|ethernet|hdmi|guide|data|camera|serial) (cable|lead|plug|adapter|hub)* | "
    "dew (heater|heaters|band|bands|strap|straps|strip|strips|shield|cap|controller)* | dust cap* | lens cap* | cap on | "
    "(guide|guiding) (lead|cable) | (twelve|12|five|5) (volt|volts|v) | lead to | lead the | lead us | in the lead | "
    "lead acid | led | (pencil|fishing) lead | switch to | switched (to|from) | extension tube* | barlow | "
    "filter (switch|change)",
)
