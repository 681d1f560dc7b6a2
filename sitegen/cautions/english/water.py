"""English: see `cautions/water.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import HERE
from sitegen.cautions.english.water_tables import (
    ADRIFT,
    BOAT,
    BOG,
    CAR_PARTS,
    CUT_OFF,
    DEEP,
    FLOODING,
    GEAR,
    GIVING,
    SLIPPERY,
    SUNK,
)
from sitegen.cautions.phrases import any_of

VOCABULARY = Vocabulary(
    dangers=(
        ("floe", "bank | shore | wind | drift* | pushed | arm's length | crack*", NEARBY),
        ("swim | swam | swimming", "night | dark | camera | dry bag | tripod | platform | island | horizon | stars", NEARBY),
        (
            "slip | slipway | weed line | tide mark | high water mark | rocks | shingle | foreshore",
            "next one | wave | waves | came to my | up to my | belt | knees | tripod | parked | last degree",
            "belt | knees | waist | chest | wave | waves | soaked | wet | next one | weed | below the", NEARBY,
        ),
        (
            "beck | stream | river | creek | burn | brook",
            "over the stones | over the bridge | over the path | linked arms | hand in hand | felt for | risen | come up | "
            "burst",
            "boots | felt | arms | dob | scope | mount | carried | crossed | across | case | kit | night | dark", NEARBY,
        ),
        (
            "wade | waded | wading",
            "ford | river | stream | creek | lake | mud | tide | sandbar | sandbank | knee* | thigh* | waist* | shore | "
            "water | current | bridge",
            NEARBY,
        ),
        (
            CAR_PARTS, FLOODING,
            "drove | drive | driving | through | crossed | cross | deep | up to the | over the | lapp* | float* | wave | "
            "bow wave | gear | pushed | tugg* | slid | did not wait | didn't wait | we did not | wait | went for it | "
            "second gear | low range | hub deep | at the door* | swam",
            "deep | up to the | over the | lapp* | float* | bow wave | pushed | tugg* | wait | hub deep | at the door* | "
            "swam | rising | rose | brown | current | wet | inside | in the footwell | soaked | through | flood*",
            NEARBY,
        ),
        (
            "ford | crossing | low bridge | floodwater | flooded road | causeway | dip",
            "gauge | depth post | marker | sign | closed | barrier | road closed",
            "drove | anyway | through | went | past | round", NEARBY,
        ),
        (
            "mud | silt | sand | flats | ooze", "takes a boot | took a boot | took my boot | boots | boot | stop | sink*",
            "stop | sink* | back | kilos | pounds | pull* | suck* | tide | spit | stuck", NEARBY,
        ),
        (
            "pontoon* | jetty | raft | dock | landing stage | quay | boat",
            "leg | foot | side | over the edge | over the side | edge | rocked | wash | wake",
            "tripod | scope | mount | telescope | leg",
            "went over | over the side | slid | slipped | pulled it back | strap | tilt* | nearly | rocked | toppl*", NEARBY,
        ),
        (
            "pond | lake | tarn | loch | canal | puddle | reservoir",
            "had a skin | skin on | thick enough | firm enough | solid enough | glazed | frozen hard", NEARBY,
        ),
        (
            "flats | sands | wreck | bar | reef | mud", "walked out | way back | channel",
            "channel | way back | singing | filling | running | water | tide | rising", NEARBY,
        ),
        (
            "bridge | footbridge | planks | boards", "planks missing | missing | rotten | swing | rope | flood | no rail",
            "river | flood | below | water | stream | kilos | mount", NEARBY,
        ),
        (
            "shelves off | shelves away | drops off | drop off | steeply", "water | waders | bottom | lake | tripod | river",
            NEARBY,
        ),
        (
            "groan* | boom* | crack* | creak* | whin*", "centimetres | inches | cm | thick",
            "under | plenty | enough | tripod | hold* | held", NEARBY,
        ),
        (
            "(a|one) (foot|metre|leg|boot|wheel) … (through|in|under)", "hip | knee | thigh | wet | cold",
            "snow | bank | ice | lake | river | bank stops | crust", NEARBY,
        ),
        (
            "bank | shore | edge", "snow (had)? (hidden|covered|hid) | overhang* | undercut | stops | gave way | crumbl*",
            "wet | water | river | lake | through | hip", NEARBY,
        ),
        (
            "whine* | groan* | boom* | creak* | crack* | sang",
            "out in the middle | in the middle | round each foot | each foot | wet | should carry | tarn | lake | frozen",
            any_of(GEAR, "i | we"), NEARBY,
        ),
        (
            "tarn | lake | pond | loch | reservoir | canal | bay",
            "should (carry|hold|bear) * | carries a | carry a man | bears a | would bear | "
            "minus (one|two|three|four|five) for | frozen over | two nights of frost",
            NEARBY,
        ),
        (
            "spit | sandbank | sand | flats | beach | island | causeway | rocks",
            "boots were | floating | afloat | swimming | under water | bare at | tide table | the table",
            "moon rose | boots | supper | set up | tripod | forgot | back", NEARBY,
        ),
        (
            "over the (concrete|road|bridge|slab|ford|track)",
            "foot | feet | knee* | tugg* | pull* | on we went | current | brown | back end | wheels", NEARBY,
        ),
        (
            "far end | handrail | rail | boards | planks | slats", "green | like glass | slick | slimy | slipp* | shuffl*",
            "reflection | water | lake | hugging | sideways | tube | tripod | end", NEARBY,
        ),
        (
            "stones | stepping stones | boulders | log | rocks", "rolled | wobbl* | slipp* | tipped | rocked | turned under",
            "crossed | across | over | hopp* | stream | river | case | carr*", NEARBY,
        ),
        (
            "looks firm | looked firm | quaking | crust | quicksand | mud | ooze | stuff",
            "boot | boots | give me back | let go of me | sucked | thigh* | pulled | sank | swallow*",
            "boot | boots | leg | knee* | thigh* | sank", NEARBY,
        ),
        (
            "below the dam | below the weir | gully | river bed | riverbed | spillway | gorge | canyon",
            "horn | siren | open the gates | release* | warning | slept | camp* | set up | pitched",
            "gates | siren | horn | storm* | rain* | flood* | upstream | water | release*", NEARBY,
        ),
        (
            "groyne | breakwater | rocks | sea wall | headland | pier | harbour wall | ledge",
            "every (seventh|few|third) | wet my | breaker* | roller* | swell | spray | wave*",
            "knees | wet | soak* | boots | stood | tripod | shot", NEARBY,
        ),
        (
            "punt | dinghy | rowing boat | canoe | kayak | raft | inflatable | boat",
            "two people | overload* | one mount | one and a half | low in the water | gunwale* | tipp* | rock* | sank | "
            "shipped | bail*",
            NEARBY,
        ),
        (
            "ice | frozen (lake|pond|river|dam|bay|sea|loch|tarn|reservoir|fjord|canal) | floe", GIVING,
            any_of(GEAR, "i | we | us | shore"),
            "lake | pond | loch | tarn | river | reservoir | shore | middle | frozen | walked | sledge | sled | mount | "
            "tripod | across | onto | under (me|us|my|the|our)*",
            NEXT,
        ),
        (
            "groan* | boom* | crack* | creak* | sang",
            "under (me|us|my|the|our) * | centimetres | inches | shore | between the legs",
            any_of(GEAR, "boots | feet | lake | ice"),
            "centimetres | inches | shore | ice | frozen | lake | pond | thick | hole | melt* | sledge | skat*", NEARBY,
        ),
        ("crack like | a crack", "shore | lake | dark line", NEARBY),
        (
            "river | creek | ford | wash | wadi | crossing | causeway | torrent | beck | culvert | arroyo | floodwater | "
            "flooded (road|track|ford|bridge) | water crossing | the stream | stream | burn",
            DEEP,
            "drove | drive | driv* | gear | car | van | truck | through | crossed | cross | wade* | waded | we | i | "
            "camp* | headlights | across",
            "knee* | waist* | thigh* | axle* | sill | sills | hubs | wheels | bonnet | bumper | brown | swollen | fast | "
            "rising | rose | risen | waded | wading | wade | spate | swept | flood* | up to the | up to my | float* | "
            "current | under water | second gear | doors",
            NEARBY,
        ),
        (
            "water",
            "axle* | sill | sills | bonnet | up to the (doors|door|bumper|wheels) | over the (bonnet|road|track|bridge) | "
            "headlights",
            "drove | through | gear | crossing | car | van | ford", NEARBY,
        ),
        (
            "dry (wash|riverbed|river bed|creek|creek bed|gully|watercourse) | wadi | arroyo | riverbed",
            "camp* | set up | slept | parked | pitched",
            "storm* | lightning | upstream | rain* | thunder* | clouds | flat | out of the wind | shelter*", NEARBY,
        ),
        (
            "tide | tides | spring tide | ebb | high water | sandbar | sand bar | sandbank | mudflat* | mud flat* | "
            "causeway | estuary | skerry | islet | saltmarsh | salt marsh | foreshore | quicksand | tidal island",
            CUT_OFF, NEARBY,
        ),
        (
            "beach | rocks | shingle | cove | sea wall | spit | breakwater | groyne", "wave | waves | tide | swell | surf",
            "took | soaked | swept | came over | round the | lapp* | rising | ran | grabbed | bag | tripod | knocked | "
            "up to | cut off | higher",
            NEARBY,
        ),
        (
            "jetty | quay | wharf | landing stage | pontoon* | slipway | boat ramp | dock | boardwalk | duckboard* | "
            "gangway | gangplank | harbour wall | breakwater | lock gate* | weir | dam wall | stepping stones | boards | "
            "planks | riverbank",
            SLIPPERY, any_of(GEAR, "i | we | dark | water | arms"),
            "water | end of | lake | river | harbour | sea | jetty | pontoon* | quay | weir | landing stage | slipway | "
            "dam | dock | slid | splash | fell in | pond | tide",
            NEARBY,
        ),
        (BOAT, ADRIFT, any_of(GEAR, "dark | night | midnight | sunset | island | islet | lake"), NEARBY),
        (
            BOG, SUNK, any_of(GEAR, "i | we | boot | thigh* | knee* | dark | night"),
            "sank | sinking | stuck | to my * | thigh* | waist | knee* | swallow* | sucked | lost a boot | boot stayed | "
            "quicksand | waders | pull* me out",
            NEARBY,
        ),
        (
            "waders | chest deep | waist deep", any_of(GEAR, "reflection* | night | dark | milky way | lake | river | water"),
            NEARBY,
        ),
        (
            "weir | spillway | sluice | lock gate* | dam wall",
            "set up | stood | on top | walked | slick | narrow | either side | crossed | balanc*", NEARBY,
        ),
        ("no (vests|vest|life jackets|lifejackets|life jacket) | without (life jackets|lifejackets|a life jacket|vests)",),
        (
            "ice",
            "walked | walking | tripod | mount | thick | held | hold* | cracked | crack* | creak* | skat* | sledge | "
            "set up | stood",
            "lake | pond | river | loch | tarn | tripod | mount | held | thick | us | me | my | we | i",
        ),
        (
            "rowed | rowing | paddl* | kayak* | canoe*",
            "island | gear | telescope | tube | mount | tripod | dusk | dark | night | lamp | across", HERE,
        ),
        ("tide", "(came|come|comes|coming|was|is|went|going) (in|out) | rising | rose | came | coming | turned", HERE, NEXT),
        ("life jacket* | (on|onto|over|across|on to) the *? ice | frozen (lake|pond|river|dam|bay|sea)",),
        ("wet (plank|rock|board)*",),
        (
            "jetty | boat | canoe | raft | ford | wharf | quay | tide | riverbank | shore | beach | sandbank | "
            "water's edge | stepping stones | pontoon | surf | reef",
            "tripod | mount | telescope | carried | carry | packed | slip* | stood in | knee | crossed | wet | set up | "
            "in the dark | rising | swam | rowed | paddl*",
        ),
        (
            "river | creek | lake | pond | stream | lagoon | sea | dam | channel",
            "crossed | swam | swim* | fell in | slipp* | knee deep | (i|we|he|she|legs) stood in | tripod stood in | "
            "rowed | paddl* | thin ice | walked out",
        ),
    ),
    harmless="drown* in | "
    "waded through (the|a|my|all|these)? (subs|frames|images|pictures|data|menus|manual*|files|comments|mail|literature|"
    "catalogue) | waded through with | tide table* (hangs|hung) | tide clock | tide of * | tide turned against | "
    "flood of (light|stars|visitors|questions|data|messages) | wave of (visitors|clouds|nostalgia|heat) | "
    "waves of (cloud|clouds|visitors) | "
    "tidal (tail|tails|stream|streams|bridge|arm|force|forces|interaction|disruption|locking|debris) | (tidally) * | "
    "(red|gravitational) tide* | river of (stars|light) | milky way * river | sea of (stars|tranquility|clouds|fog|light) | "
    "(mare|sea) (of)? * | bay of rainbows | bridge of (stars|gas|light|matter) | stream of (stars|gas) | "
    "(star|stellar|gas|jet|data|meteor|live) stream* | streams of (stars|gas) | lagoon nebula | fog bank | cloud bank | "
    "bank of (fog|cloud|clouds) | bank holiday | star bridge | "
    "ice on the (lens|mirror|corrector|window|dome|glass|roof|path|windscreen|sensor|chip) | ice crystal* | ice cold | "
    "icing | sheet of (paper|film|foil|glass) | ice (giant|cream|age|core|cold)* | (water|dry) ice | tidal tail* | "
    "(stars|dolphin|fish|swan|milky way|constellation) … | ice (giant|cream|age|core)* | dry creek bed*",
)
