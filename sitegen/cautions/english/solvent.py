"""English: see `cautions/solvent.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import FLAME, SHUT_IN
from sitegen.cautions.phrases import any_of

LIQUID = (
    "acetone | isoprop* | ipa | rubbing alcohol | surgical spirit | alcohol | solvent* | thinner | thinners | "
    "white spirit | methylated spirit* | meths | methanol | ethanol | ammonia | paint stripper | petrol | gasoline | "
    "naphtha | degreaser* | ether | lighter fluid | turps | turpentine | nail (polish|varnish) remover | "
    "(brake|contact|carb|carburettor|lens|oven|drain) cleaner* | paraffin | kerosene | benzine | xylene | toluene | "
    "hand (sanitizer|sanitiser|gel) | cellulose | white gas | diesel | sanitiser | sanitizer | four star | unleaded | "
    "strong stuff | from the chemist* | brush cleaner | tar remover | resin remover | label remover | sticker remover | "
    "starter fluid | contact spray | spirits | fuel | lamp oil | varnish remover | wood alcohol | denatured | de icer | "
    "screen wash | antifreeze | panel wipe | creosote"
)
FUMING = (
    "spray* | aerosol* | rattle can | rattle cans | paint* | lacquer* | varnish* | primer | epoxy | resin | glue* | glued | "
    "gluing | superglue | contact cement | adhesive* | polyurethane | expanding foam | etch* | silicone | sealant | "
    "stripper | bleach | hardener | two part | flock* | coat of | coats of | matt black | flux | chlorine | cans of black | "
    "cans of | black | creosote | wood stain | preservative | tar | bitumen | roofing felt | wood oil | floor paint | "
    "linseed | stain"
)
ILL = (
    "headache* | woozy | dizzy | light headed | lightheaded | light in the head | giddy | sick | queasy | nausea* | "
    "nauseous | splitting head* | swimming head | head swam | head swim* | head was spinning | head spin* | passed out | "
    "faint* | drunk on | high as | cough* | wheez* | eyes (stream*|water*|sting*|stung|burn*) | choking | choked | throat | "
    "lungs | tight chest | groggy | blackout | blacked out | floaty | merry | tipsy | giggl* | funny head | sore head | "
    "thick head | heavy head | keeled over | woke up * head | stars in front | tongue like * | "
    "could hardly (sit|stand|get|walk) | pink cheeks | cherry red | more stars than | stars (that|which) (are|were) not | "
    "eyes like * | red eyes | felt (funny|odd|strange|ill|weird|peculiar) | legs like * | wobbly | everything was funny | "
    "slept like the dead | hard to wake | would not wake | wouldn't wake | threw up | vomit* | poorly | retch* | fuzzy | "
    "muzzy | hung over | hangover | singing | canary | temples | nose bleed* | nosebleed | staggered | "
    "tasted (it|metal|of)* | thumping | pounding | throbbing head | saw double | band round my (head|forehead) | "
    "reading * twice | tight head | head was ringing | ringing | head like * | drummed | buzzing head | head buzz*"
)
FUEL = (
    "petrol | gasoline | meths | methylated spirit* | paraffin | kerosene | white gas | fuel | spirit | lighter fluid | "
    "diesel | lamp oil | gas (canister|cartridge|bottle|cylinder)* | cartridge | alcohol | jerry can | jerrycan | tank | "
    "white spirit | turps | heating oil | kerosine | butane | propane | gas can | fuel can | bottle of gas | lamp fuel | "
    "stove fuel | coleman | unleaded | two stroke"
)
REFUEL = (
    "topp* up | top* up | refill* | refuel* | pour* | filled | filling | splash* | decant* | spill* | slosh* | squirt* | "
    "leak* | chang* | swapp* | dribbl* | glug | fed | tipped | slop* | ran over | dripped | jug | funnel"
)
BURNING = (
    "still (lit|hot|burning|going|running|warm) | while it | was lit | running | flame | flames | glow* | burning | lit | "
    "hot exhaust | spark* | whoomp* | whoosh* | whump | fireball | eyebrow* | singe* | poof | blue flame | caught fire | "
    "went up | flare* | candle* | cigarette* | stove | burner | heater | lantern | barbecue | whoosh | hot bit | "
    "hot (cylinder|exhaust|engine|pipe|manifold|metal) | match to | lovely blue | flash | roll up | rollie | fag | cigar | "
    "glowed"
)
CO_SOURCE = (
    "charcoal | barbecue | bbq | brazier | gas heater | stove | camp stove | gas lamp | gas fire | "
    "paraffin (heater|lamp|stove)* | kerosene heater | catalytic heater | burner | engine | generator | genny | exhaust | "
    "woodburner | coals | embers | gas ring | hob | tent heater | patio heater | catalytic | propane | butane | primus | "
    "tea lights | catalytic thing | purring | tilley | disposable barbecue | the engine | gas bottle | diesel heater | "
    "camping stove | alcohol stove | hexamine | fire bowl | fire pit | log burner | lamp"
)
SHUT_ROOM = any_of(
    SHUT_IN,
    "tent | caravan | van | camper | campervan | dome | shed | hut | cabin | garage | car | container | sleeping bag | "
    "bivvy | warm room | cellar | awning | bothy",
    "zips | zipped | everything closed | close everything | closed everything | all closed | windows fog* | taped up | "
    "vents taped | blankets over | inner tent | porch | between our feet",
)
IDLING = (
    "idl* | ticking over | running | kept (us|me|the)* | all night | overnight | dozed | slept | asleep | woke | while we | "
    "warm* | toasty | cosy | snug | lit | glow* | until the windows | purr* | hiss* | hours of warmth | between our feet | "
    "repeat"
)
CORROSIVE = (
    "drain cleaner | caustic* | lye | sodium hydroxide | ferric chloride | hydrochloric | nitric | sulphuric | sulfuric | "
    "muriatic | acid | silver nitrate | silvering | bleach | ammonia | oven cleaner | peroxide | brick acid | descaler | "
    "mercury | lead paint | cyanide"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "varnish | paint | lacquer* | tar | wax | oil | glue | thinner* | solvent*",
            "warmed | heated | hot plate | hotplate | ring | hob | stove | flame | burner | candle",
            "lit | caught | flow | flame* | smok* | fire | tin | can", NEARBY,
        ),
        (
            "vents | vent | flue | air bricks | gaps | window", "stuffed | blocked | taped | sealed | socks | rags | closed",
            "heater | stove | burner | slept | van | tent | fire | lamp", NEARBY,
        ),
        (
            "oxygen | co2 | alarm | detector",
            "buzz* | beep* | ignored | watch | always finds | false alarm | took the battery",
            "heater | stove | van | tent | slept | hut | dome", NEARBY,
        ),
        (
            "lamp | lantern | stove | heater",
            "with (panel wipe|petrol|thinner*|spirit*|meths|acetone|alcohol|white spirit|diesel) | "
            "burns (a bit|rather|too) (high|yellow|fierce*)",
            NEARBY,
        ),
        (
            "creosote | stain | preservative | paint* | lacquer* | varnish* | glue* | tar | bitumen",
            "shut it up | shut up | closed up | shut for | from in there | in there | slept in | sat in", NEARBY,
        ),
        (
            "petrol | gasoline | paraffin | kerosene | white spirit | thinner* | acetone | degreas* | lighter fluid | "
            "turps | naphtha | meths",
            "simmer* | cooker | hob | on the gas | gas ring | supper | kettle | kitchen | worktop | oven | fireside | "
            "fireplace | hearth | stove | toaster | candle*",
            NEARBY,
        ),
        (
            "petrol | fuel | tank | generator | genny | gas | can | jerry can | jerrycan | filler | paraffin | stove | "
            "heater | lamp",
            "topp* | top* up | refill* | refuel* | pour* | fill* | decant* | funnel | splash* | spill* | spilt",
            "without (stopping|shutting|switching|turning|letting|killing)* | still running | kept it running | "
            "left it running | chug* | putter* | mid (sub|exposure|run|frame) | while it (ran|was) | hot | lit | burning | "
            "running | by (candle|lamp|match) * | cigarette | glow*",
            NEARBY,
        ),
        (
            "petrol | gasoline | paraffin | kerosene | meths | methylated spirit* | lighter fluid | diesel | white gas | "
            "white spirit | lamp oil | stove fuel | fuel can | gas canister* | jerry can | jerrycan | fuel bottle | "
            "unleaded | two stroke | spirit | turps | can of fuel | gas bottle | gas cylinder | fuel",
            "bonfire | campfire | camp fire | fire | wood | logs | kindling | charcoal | barbecue | coals | wick | stove | "
            "heater | candle* | embers | glow* | cigarette* | match | matches | sparks | exhaust | hot | flame* | burner | "
            "lantern | lamp | brazier | primus | lit | lighter | pipe | eyebrow* | singe* | whoomp* | whoosh*",
            "i | we | my | our | it | me | us",
            "topp* | top* up | fill* | refill* | refuel* | pour* | splash* | spill* | spilt | leak* | drip* | slop* | "
            "glug | cupful | next to | beside | close to | by the light | near | over the | tipp* | decant* | swap* | "
            "chang* | squirt* | whoomp* | whoosh* | eyebrow* | singe* | still",
            NEARBY,
        ),
        (
            "stove | heater | lamp | lantern | generator | genny | burner | primus | tank",
            "topped up | topping up | refilled | refuelled | filled | filling | refill | refuel | top up",
            "candle* | lit | still | hot | flame* | running | going | by the light | cigarette | glow* | burning | "
            "without | while | whoomp* | singed | eyebrow*",
            NEARBY,
        ),
        (
            "wick | pilot | flame | candle | embers | spark", "fuel | petrol | paraffin | spirit | meths | can | gas",
            "pour* | fill* | topp* | splash* | drip* | leak* | spill* | whoomp* | whoosh* | singe* | jump* | caught", NEARBY,
        ),
        (
            "lacquer* | varnish* | paint* | spray* | thinner* | petrol | spirit* | glue*",
            "boiler | furnace | pilot light | water heater | wood stove | log burner | oven | fireplace", NEARBY,
        ),
        (
            "struck a match | match too soon | lit a match | lighter | struck a light",
            "gas | petrol | spirit* | meths | fuel | tin | hair on | eyebrow* | whoomp* | prime*", NEARBY,
        ),
        (
            "flaps | shutters | slit | hatch | vents | roof", "shut | closed",
            "stove | heater | paraffin | burner | gas | charcoal | lamp", NEARBY,
        ),
        (
            "cigarette* | cigar | roll up | fag | pipe | lighter | candle",
            "degreaser | petrol | solvent | spirit* | thinner* | alcohol | acetone | fuel | meths | gears", NEARBY,
        ),
        (
            "engine | motor | exhaust",
            "running the | run the | idl* | left running | tick* over | kept running | on for heat | for the heater | "
            "running until",
            "close* | closed | shut | sleep | slept | garage | van | snow | windows | warm | fog* | barn", NEARBY,
        ),
        (
            "genny | generator | stove | lantern | heater | engine | lamp",
            "tipped | ran over | slop* | spill* | spilt | topp* | pour* | jug | refill* | refuel*",
            "hot | flame* | lit | whoosh | whoomp* | blue | flash | running | singed | match", NEARBY,
        ),
        (
            LIQUID,
            "hot | electric bars | bar fire | bars of | radiant | match | roll up | rollie | fag | cigar | dry it quicker | "
            "dry quicker | burns off | radiator",
            NEARBY,
        ),
        (
            LIQUID, "garage | sat in there | in there with | tin of | bath of | tray of | indoors | afternoon in the",
            "sing* | woozy | head | eyes | shut | closed | cough* | match | smok* | roll up | cigar* | door", NEARBY,
        ),
        (
            FUMING, any_of("garage shut | shut so | with the garage | indoors | no dust", SHUT_IN),
            "can | cans | coat* | black | paint* | spray* | goo | resin | stir* | mix*",
            any_of(ILL, "dust | shut | closed | indoors"), NEARBY,
        ),
        ("goo | resin | hardener | epoxy | blank | varnish | glue", ILL, NEARBY),
        (
            LIQUID, any_of(FLAME, ILL),
            any_of(
                "lit | flame* | cigarette* | candle* | heater | stove | burner | glow* | spark* | smok* | match | lighter | "
                "fire | whoomp* | poof | pilot light | blowtorch | heat gun | soldering iron | hot plate | hairdryer | "
                "hair dryer | lantern | pipe",
                ILL,
            ),
            NEARBY,
        ),
        (LIQUID, SHUT_IN, NEARBY),
        (
            FUMING, SHUT_IN,
            any_of(
                "spray* | paint* | coat* | glue* | epoxy | resin | varnish* | lacquer* | fume* | vapour* | smell* | "
                "stink* | dust",
                ILL,
            ),
            NEARBY,
        ),
        (
            FUMING, ILL,
            "spray* | paint* | coat* | glue* | gluing | epoxy | resin | varnish* | lacquer* | fume* | vapour* | bleach | "
            "adhesive* | aerosol* | sealant | primer | cement | stripper | afterwards | shed | room",
            NEARBY,
        ),
        (
            "fume | fumes | vapour* | vapor*",
            any_of(
                ILL, SHUT_IN,
                "flame* | spark* | ignit* | heater | thick | strong | stink* | breath* | cloud of | pong | stench | "
                "open a window | eye watering",
            ),
            NEARBY,
        ),
        (FUEL, REFUEL, BURNING, NEARBY),
        (
            "stove | burner | heater | generator | genny | lantern | lamp | barbecue | fire", REFUEL,
            "still (lit|hot|burning|going|running) | while it was | was lit | without (turning|switching|letting)* | "
            "flame* | splash* | petrol | fuel | whoomp* | singed | eyebrow*",
            NEARBY,
        ),
        (CO_SOURCE, SHUT_ROOM, IDLING, NEARBY),
        (
            CO_SOURCE, "tent | caravan | van | camper* | garage | dome | shed | hut | cabin | bivvy | awning | car",
            any_of(ILL, SHUT_IN), NEARBY,
        ),
        ("(co|carbon monoxide) (alarm|detector|monitor|poison*)* | carbon monoxide",),
        (
            CORROSIVE,
            "mirror | coating | aluminium | silver* | optic* | glass | eyes | skin | gloves | fizz* | bath | sink | "
            "bubbl* | fume* | jar | bottle | shelf | mould | mold | mildew | mix* | pour* | strip* | drops | plate | "
            "brass | etch* | dissolv* | leftover",
            "mix* | pour* | strip* | clean* | soak* | bath | sink | rins* | etch* | dissolv* | shelf | splash* | gloves | "
            "fizz* | fume* | off | wip* | leftover | jar | bottle | stream* | burn*",
            NEARBY,
        ),
        ("bleach | chlorine", "vinegar | ammonia | acid | limescale | descaler | toilet cleaner", NEARBY),
        (
            "silvering solution | silver nitrate | silvering",
            "leftover | shelf | standing | stood | jar | weeks | dried | days | later | stored", NEARBY,
        ),
        (
            "aerosol* | spray can | spray cans | air duster | canned air | spray bottle | gas (canister|cartridge)*", FLAME,
            "lit | flame* | candle* | heater | stove | glow* | spark* | hot | fire | lighter | cigarette | warm* | burst | "
            "bang",
            NEARBY,
        ),
        (
            "soak* | rag | rags | cloth* | cotton", LIQUID,
            "heater | pile | bin | radiator | stove | lamp | glow* | bare hands | no gloves", NEARBY,
        ),
        (
            "lighter fluid | nail (polish|varnish) remover | turpentine | (brake|contact|carburettor|carb) cleaner*",
            "lens | lenses | mirror* | optic* | glass | sticker* | glue | stain* | plate | sensor | eyepiece* | filter* | "
            "paint | wip* | rubb*",
        ),
        ("alcohol | acetone | isoprop* | methanol", "pour* | run off | bottle | bath"),
        (
            "acetone | isoprop* | alcohol | solvent* | thinner* | (white|methylated) spirit* | methanol | ethanol | "
            "ammonia | paint stripper | petrol | naphtha | degreaser | ether",
            "lens | lenses | mirror* | optic* | corrector | wip* | rins* | swab* | tissue* | cotton | sensor | filter* | "
            "plate | objective | eyepiece* | paint | grease | clean* | soak* | dissolv* | window | coating* | cloth | "
            "drops | glue | remov*",
            NEXT,
        ),
    ),
    harmless="alcohol free | (stars|star|suns|galaxies|sun) … (fuel|gas) | (fuel|gas) … (stars|star|core|fusion) | "
    "never (a|an|any|use|light|run|bring|take|leave) … (tent|van|room|indoors|shed|dome|inside|car|hut|garage) | "
    "alcohol in the cloud | gas (giant|cloud|clouds|and dust|phase|planet) | paint* (the|a) picture | engine of | "
    "(search|rendering|main|central) engine | (astap) | resin print* | printed resin | coat of (dust|snow|frost|ice) | "
    "fire in the sky | match (the|our|up) | matched | spirit of | dew heater* | sun spot* | lit (by|up) * | moonlit | "
    "sunlit | starlit | starlight | hot pixel* | full tank | tank top | water tank | tanks hill | two tanks | molecule* … | "
    "(radio|spectr*|interstellar) … | thinner than | spirit level",
)
