"""English: see `cautions/sun.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.phrases import any_of

OPTICS = (
    "scope | scopes | telescope* | tube | refractor* | reflector* | newtonian | dob | dobsonian | finder* | crosshair* | "
    "guide scope | guidescope | guider | binocular* | binos | eyepiece* | lens | objective | camera | sensor | # mm | "
    "spotting scope | little scope | monocular | 10x50* | 7x50* | 15x70*"
)
DAY = (
    "noon | midday | mid day | lunch | lunchtime | afternoon | by day | daylight | broad day | daytime | in the blue | "
    "blue sky | breakfast | in the morning | all morning | this morning | coffee break | o'clock | eleven | "
    "(at|half past) (one|two|three) | on the lawn at noon | sunny | in the sunshine"
)
HIGH_DAY = "noon | midday | lunch | lunchtime | daylight | broad day | daytime | blue sky | by day | breakfast | afternoon"
BURNT = (
    "(smell*|smelt|smell of|whiff of|reek*) … (hot|burning|burnt|burned|singed|melted|scorched)* * | hot plastic | "
    "burning (paint|plastic|rubber) | scorch* | singe* | charred | melt* | saggy | sagged | "
    "(brown|black|burnt|burn|white) (line|hole|spot|streak|mark|patch) | burnt | curl of smoke | wisp of smoke | "
    "smoke (from|out) * | smoked | smoking | started to smoke | went crack | cracked | warped | blister* | "
    "hole in (the|my)* | burned | burning"
)
UNCOVERED = (
    "uncapped | cap off | caps off | (lost|without) (a|its|the) cap | no cap | "
    "cap (was|had|is) (off|missing|fallen*|gone) | forgot* … cap | left … (open|uncovered) | open tube | uncovered | "
    "unshielded | cover off | no cover | has no filter | lens open | wide open | nothing in front | without its cap | "
    "front open"
)
MAKESHIFT = (
    "welder* | welding (glass|helmet|mask|goggles|shield) | smoked glass | sooted | soot | "
    "(rescue|space|foil|emergency|survival) blanket* | mylar | crisp (bag|packet)* | cd | cds | floppy | exposed film | "
    "film (negative|leader|strip)* | negatives | x ray (film|plate)* | sunglasses | shades | "
    "eclipse (specs|spectacles|glasses|viewer|viewers) | (bin|rubbish) (bag|liner)* | photo* filter* | nd filter* | "
    "grey filter* | # stop* | polaris* | dark glass | eyepiece filter* | dark (little|screw in)? filter* | "
    "little dark filter | filter that screws | moon filter* | kitchen foil | chocolate wrapper | variable polar* | smoked | "
    "wine bottle"
)
SUN_SEEN = (
    "spots | sunspot* | sun spot* | partial (phase|eclipse|phases) | partials | crescent | eclipse | eclipsed | "
    "white light | granul* | facula* | prominence* | (the|solar|bright|whole) disc | disk | limb | "
    "(first|second|third|fourth) contact | totality | transit | inner planet | diamond ring | the sun | solar"
)
FILTER = (
    "filter | filters | film | foil | foils | cover | blanket | card | glass | cell | sheet | solar sheet | solar film | "
    "sun film"
)
FAILING = (
    "wind | gust | gusts | breeze | slip* | fell | falls | blew | blow* | whip* | pinhole* | pin hole* | scratch* | hole | "
    "holes | tear | torn | crack* | tape* | loose | rubber band | elastic | wrinkl* | peel* | marker pen | patch* | "
    "flapp* | taped | half off | halfway off | wobbl* | came away | came off | creas* | punctur*"
)
SEARCH = (
    "swept | sweep* | search* | hunt* | chas* | scann* | panned | panning | fists | degrees (off|from|away) | "
    "tracked down | picked up | star hopp* | by eye | lowest power | looked for | looking for | go to | goto | found | "
    "finder | binocular* | nudg*"
)
DIM = (
    "dim and red | red enough | needed nothing | needed no filter | no filter (was)? needed | without (any|a) filter | "
    "nothing in front | dim enough | did without | bare eyepiece | so low that | deep red | dull red | orange ball | "
    "easy on the eye | not too bright | no need for (a|any|the)? filter | comfortable | bearable | without protection"
)
SETTING = (
    "watch* (it|her|him) (set|go down|rise|come up) | sunset | sunrise | the disc | setting | as it (set|rose|sank) | "
    "sank | going down"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "binocular* | telescope | scope | eyepiece* | magnifier | lens | crystal ball | mirror",
            "conservatory | window sill | windowsill | patio | balcony | sun lounge | greenhouse | living room | car",
            "stripe | burn* | scorch* | smok* | melt* | brown | singed | hole", NEARBY,
        ),
        (
            "eclipse glasses | eclipse specs | filter glasses | filter",
            "only one | one pair | between (us|five|four|three|two) | shared | took turns | not enough",
            "scope | spotting | binocular* | the rest | quick | without | others | telescope", NEARBY,
        ),
        (
            "solar (sheet|film|filter|foil|cap|cover) | filter sheet | filter film | front filter | foil",
            "milky | stars in it | pinhole* | pin holes | light comes through | daylight shows | scratch* | crease* | "
            "crack* | torn | tear | holes | faded | thin | hold it up | years old",
            NEARBY,
        ),
        (
            "(the)? bright (thing|one|bit|side|star of ours) | our star | old sol | the big light | you know what",
            "aim* | point* | scope | refractor | look* | finder | lens | cap | binocular*",
            "cap | lens | refractor | scope | finder | hole | stop* | binocular* | eyepiece", NEARBY,
        ),
        (
            "disc | image | sun",
            "on a (card|sheet|screen|paper|board) | card behind the eyepiece | onto (a|the) (card|screen|wall|paper)",
            "eyepiece | threw | throw | cast | projected | bent down | see for herself | see for himself", NEARBY,
        ),
        (
            "finder | telescope | tube | scope",
            "shadow (vanished|disappeared|was smallest|was gone|shrank) | smallest shadow | until the shadow",
            "peek* | look* | peep* | eye | glimpse | eyepiece | daytime | sun", NEARBY,
        ),
        (
            "mirror | lens | magnifying | finder | eyepiece",
            "lawn | noon | sunny | sunshine | window sill | windowsill | daylight | back seat",
            "smell* | melted | smok* | scorch* | burnt | line across | hole | singed | caught fire", NEARBY,
        ),
        (
            "front (cover|cap|filter) (away|off) | (cover|cap|filter) away | pulled the (front)? (cover|filter|cap)",
            "haze | thin cloud* | clouds thinned | maximum | eclipse | partial | crescent | sun | disc", NEARBY,
        ),
        (
            "welding shop | welding supplies | welder | shade (#|ten|eleven|twelve|nine|eight|thirteen|fourteen)",
            "eye | eyepiece | sun | hold | spots | eclipse | disc", NEARBY,
        ),
        (
            "haze | thin cloud* | mist | smoke | fog",
            "as a filter | instead of a filter | good enough a filter | no filter needed | natural filter", NEARBY,
        ),
        (
            "no time for the (front)? cap | no time for the filter | without the front (cap|filter) | no filter for * | "
            "skipped the filter | left the (filter|cap) off",
            "spot* | group | sun | disc | eclipse | transit | blink* | low power", NEARBY,
        ),
        (
            "blinked | blinking a lot | watered | everything is greenish | greenish | green blotch | purple blotch | "
            "blind spot",
            "star | sun | shadow | low power | peep | eyepiece | group | spots",
            "cap | front | shadow | sun | noon | group | eclipse | spots", NEARBY,
        ),
        (
            "smallest shadow | shortest shadow | shadow of the tube",
            "peep | peek | look | looked | check | glimpse | eyepiece | squint*", NEARBY,
        ),
        (
            "dob | dobson* | telescope | scope | reflector | mirror | refractor",
            "round hole | neat hole | burnt hole | smoking | smoke | scorch* | melted | burn mark",
            "chair | fence | cushion | wall | grass | deck | jacket | curtain | bag | terrace", NEARBY,
        ),
        (
            "glasses off | took the (cardboard)? glasses off | without the glasses | glasses (came)? off | filter off",
            "ring | peak | totality | annular* | partial | eclipse | second contact | crescent", NEARBY,
        ),
        (BURNT, OPTICS, HIGH_DAY, NEARBY),
        ("hot plastic | burning (paint|plastic|rubber)", any_of(OPTICS, "cap"), DAY, NEARBY),
        (MAKESHIFT, SUN_SEEN, any_of(OPTICS, "look* | view* | watch* | saw | showed | held | taped | cover*"), NEARBY),
        (
            FILTER, FAILING,
            "spots | sunspot* | partial phase* | eclipse | transit | crescent | white light | the sun | solar | the disc",
            OPTICS, NEARBY,
        ),
        (
            FILTER, FAILING, "white light | transit | eclipse | sunspot* | solar", "look* | watch* | view* | kept on | image",
            NEARBY,
        ),
        (
            "foil | film | white light (cover|cap)", "objective | front | aperture",
            "pinhole* | pin holes | tear | torn | scratch* | wrinkl* | tape*", NEARBY,
        ),
        (
            "venus | mercury | jupiter | inner planet | crescent | daytime moon",
            "noon | midday | lunch* | afternoon | daylight | by day | daytime | in the blue | blue sky | glare | broad day",
            SEARCH, NEARBY,
        ),
        (
            "glare | you know what | bright side of the sky",
            "swept | sweep* | degrees off | handful of degrees | fists | hunt* | chas* | search*", NEARBY,
        ),
        (UNCOVERED, HIGH_DAY, OPTICS, "noon | midday | lunch* | breakfast | sun | south | sunlight | hot | smell*", NEARBY),
        (SETTING, DIM, OPTICS, NEARBY),
        ("squint*", "disc | noon | midday | the sun | daylight | eclipse | sunlight", NEXT),
        (
            "(white|bright|blinding) flash | blind spot | green blob | (seeing|saw) spots | blinded | after image* | "
            "dark patch in my *",
            OPTICS, HIGH_DAY, NEARBY,
        ),
        (
            "(filters|filter|film|cap|foil) … (back on|off|on again)",
            "contact | totality | diamond ring | partial phase | crescent", NEARBY,
        ),
        (
            "(disc|image|sun|crescent|spots) … (card|paper|screen|wall)",
            "eyepiece* | bent down | look* in* | kids | children | projected",
            "sun | spots | eclipse | noon | disc | crescent", NEARBY,
        ),
        (
            "burn* | burnt | scorch* | hole | streak", "sensor | shutter | curtain | dome | wall | bag",
            "sun | noon | midday | lunch* | breakfast | by eleven | open lens | lens open", NEARBY,
        ),
        ("white light (film|filter)* | film over the (objective|lens|front|tube|aperture)",),
        (
            "sunlight | by day | midday | lunchtime | in daylight",
            "glint* | mirrors | secondary | primary | screws | insulator*",
        ),
        (
            "sunspot* | spot group* | solar disc | transit of (mercury|venus)",
            "filter* | eyepiece* | tube | telescope | lens | finder | view* | drew | card",
        ),
        (
            "sun",
            "finder | eyepiece* | binocular* | lens | objective | polariser* | nd filter* | burn* | melt* | smoke | smok* | "
            "scorch* | singe*",
        ),
        ("eclipse", "lens | nd filter* | camera | telescope | tube | binocular* | eyepiece"),
        ("solar (filter|film|telescope|scope|viewer|projection|observ|imaging|disc|disk|eclipse|wedge)* | prominence*",),
        (
            "(look|stare|star|gaz|peer|glanc|point|aim|slew|turn|mov|centr|focus)* … (at|on|to|toward|towards|into|past) "
            "the sun | (swing|swung) … (to|at|on|towards) the sun",
        ),
        (
            "(telescope|tube|refractor|reflector|finder|binocular|eyepiece|camera|lens|scope|optics)* … "
            "(at|on|to|toward|towards|from|into|past|near|beside) the sun",
        ),
        (
            "sun",
            "unfiltered | unprotected | projected | projecting | projection* | eyepiece | film | solar filter | sunspot* | "
            "spot* on | eclipse | transit | cap off | capped | filter over | over the front | "
            "through (a|an|the|our|my) *? (telescope|tube|refractor|finder)",
        ),
        ("(from|of|beside|near|next to) the sun", "swept | sweep* | search* | open tube | looked for | hunt*", NEXT),
        ("eclipse | second contact | totality | partial phase*", "filter* | glasses | unscrew* | film | viewer*"),
        (
            "by day | daylight | sunlight | broad day | afternoon | noon",
            "collimat* | artificial star* | (steel|ornament|glass) ball*",
        ),
        (
            "venus | mercury", "by day | daylight | broad day | noon | afternoon | the sun",
            "swept | sweep* | search* | found | finder | binocular* | telescope | looked",
        ),
        ("sun", "(ball|bearing|point of light) | artificial star*", "makes | glint* | bright*"),
    ),
    harmless="eclipse film at * | sun had (faded|bleached|dried|warmed) … | (planetarium|school|theatre|cinema) … | "
    "sun (fades|faded|bleached|dried) | "
    "film of (water|dew|dust|oil|ice|moisture|grease|damp|frost|cloud|condensation|haze) | "
    "(warm|warmed|dried|lay|left|stood|sat|dry|parked) … in the sun | total eclipse of the moon | "
    "sun (had|has|was|is|were)? (set|sets|setting|rose|risen|rises|rising|below|under|low|down|up) | "
    "sun (goes|going|went|gone|came|comes|comes) (down|up|under) | sun … (degrees|°) (below|under) … | "
    "sun's (altitude|mass|age|light|height|centre|radius|spectrum|neighbourhood) | "
    "(mass|masses|age|radius|luminosity|times|than|as|like) (of|as)? (that)? (of)? the sun | daylight saving* | "
    "solar (mass|system|neighbo|luminosit|radi|panel|metallicit)* | lunar eclipse* | eclips* of the moon | eclipsing binar*",
)
