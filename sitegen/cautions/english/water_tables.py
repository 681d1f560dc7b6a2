"""English: the tables of `water.py`."""

GEAR = (
    "tripod | mount | telescope | scope | tube | gear | kit | rig | case | cases | camera | bag | battery | tripods | "
    "equipment | eyepieces | chairs | pier | sledge | sled | counterweight*"
)
GIVING = (
    "groan* | boom* | crack* | creak* | sang | singing | moan* | thin | slush* | wet on top | meltwater | melt* | thaw* | "
    "held | holds | bear* us | flex* | bow* | dark line | thick | inches | centimetres | cm | "
    "water (came|welled|on top|seeped)* | hole | open water | went through | broke through | fell through | sagged | gave | "
    "auger | zing* | spongy | rotten | soft | grey | ping* | whoomp* | fishermen | skat* | whine* | whin* | finger of wet | "
    "ring of | wet round | should (carry|hold|bear)* | carries | carry a | bears | bear a | sagging | pool* | puddle | "
    "seep* | gone through | gave a long | in the middle | skin on it | had a skin | thick enough"
)
DEEP = (
    "knee* | knee deep | waist* | waist deep | thigh* | chest | ankle deep | axle* | sill | sills | hubs | wheels | "
    "bonnet | bumper | brown | swollen | fast | quick | rising | rose | risen | up to the | up to my | door | doors | "
    "current | push* | swept | spate | high | wade* | waded | wading | float* | flood* | deep | second gear | low range | "
    "rain upstream | upstream | over the top of | slick | covered | under water | washed | flash flood* | exhaust | "
    "over the concrete | tugg* | drag* at | pull* at | back end | foot and a half | a foot of | two feet of | "
    "half a metre of | on we went | anyway | bow wave | shipping water | footwell | carpet* | floor mats"
)
CUT_OFF = (
    "cut off | coming in | turned | rising | rose | ankle deep | knee deep | waist deep | way back | gone | covered | "
    "stranded | marooned | wet feet | wet to the | lapp* | round the (legs|tripod|back|feet|mount)* | "
    "had to (wade|run|swim|hurry)* | waded | hurr* | tide table* | behind us | behind me | creep* | crept | channel | "
    "filled | swallow* | wave | waves | swell | surf | spray | soaked | swept | took the | washed | quicksand | mud | "
    "sank | sinking | barefoot | floating | floated | afloat | bare at | table | under water | boots were | wet my | swam | "
    "lapping | nearly high | neap | the way we came | way out"
)
SLIPPERY = (
    "slimy | slime | slick | slippery | greasy | algae | weed | seaweed | moss* | wet | icy | frost* | no rail | "
    "no railing | no handrail | rotten | missing board* | loose board* | slid | slipp* | skid* | lost my footing | "
    "fell in | splash | heave* | rock* | sway* | wobbl* | bob* | one foot in | nearly in | overboard | gap | gaps | "
    "narrow | soap | legs (over|dangl*)* | like glass | green | shuffl* | sideways | handrail stops | rail stops | "
    "end of the rail | on my backside | hands and knees | hugging"
)
BOAT = (
    "boat | rowing boat | rowboat | dinghy | kayak* | canoe* | inflatable | raft | paddle board* | paddleboard* | sup | "
    "punt | skiff | tender | pedalo | airbed | lilo | ferry | outboard"
)
ADRIFT = (
    "no (vests|vest|life jacket|life jackets|lifejacket|lifejackets|lights|light|oars|lamp) | "
    "without (a|any)? (life jacket|life jackets|vest|vests|lifejacket|light|lights|lamp) | after (dark|sunset) | "
    "in the dark | midnight | overload* | freeboard | gunwale* | capsiz* | tipp* | rock* | wobbl* | shipped water | bail* | "
    "leak* | kilos of | between my knees | island | islet | mid lake | out on the | gear | kit | tripod | mount | night | "
    "paddl* | row* | waves | wind got up | current | drift* | stood up | stand up | balanc*"
)
BOG = "bog | bogs | marsh | swamp | mire | quicksand | mud | mudflat* | peat | quagmire | fen | slough | silt"
SUNK = (
    "sank | sink* | stuck | to my (knee|knees|thigh|thighs|waist|hips) | up to (my|the|our) * | swallow* | sucked | "
    "lost a boot | boot stayed | deep | wade* | waders | pull* me out | couldn't get"
)
CAR_PARTS = (
    "axle* | sill | sills | hub | hubs | door handle* | doors | bumper | bonnet | wheel arch* | footwell* | floor mats | "
    "carpet | headlights | exhaust | tyres | wheels | running boards | radiator | grille | number plate | numberplate | "
    "engine | air intake | seats"
)
FLOODING = (
    "water | river | creek | stream | ford | bridge | current | brown | flood* | crossing | rapids | burn | beck | "
    "torrent | storm | wash | causeway | culvert | spate | dip in the road | low bridge"
)
