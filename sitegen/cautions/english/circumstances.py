"""English: what several dangers have in common, such as who stands near and how cold, dark and wet it is."""

AIRCRAFT = (
    "aircraft | airliner* | plane | planes | aeroplane* | airplane* | jet | jets | helicopter* | chopper* | cockpit* | "
    "pilot* | airfield | airport | runway | glider* | landing lights | flight path | on approach | air ambulance | "
    "control tower | wheels down | blinking (one|ones|light|lights) | final approach | red eye flight | wing lights | "
    "air strip | airstrip | the strip | flying club | gliding club | parachut* | hang glider* | balloonist* | air traffic | "
    "tower phoned | approach lights | final | landing light | navigation lights | strobe* | rotor* | cabin lights | "
    "something with * lights | late plane | flight to * | red eye | the mail plane | charter | night flight | contrail | "
    "air taxi | crop duster | microlight | paraglid*"
)
ONLOOKERS = (
    "kid | kids | child | children | boy | boys | girl | girls | toddler* | baby | scouts | pupils | class | guests | "
    "visitor* | audience | crowd | folk | folks | people | neighbour* | neighbor* | nephew | niece | son | daughter | "
    "grandson | dog | dogs | cat | cats | picnic* | driver* | windscreen* | campsite | passers by | spectators | "
    "onlookers | queue | everyone | everybody | the others | each other"
)
EYES = (
    "eye | eyes | eyeball* | face | faces | forehead* | peer* | stared | staring | blob | after image* | afterimage* | "
    "dazzl* | smudge | blind* | squint* | retina* | pupil | saw spots | seeing spots | spot in my (eye|vision|sight) | "
    "red everywhere | squint | quick squint | look through the hole | hole in the primary | colours | dazzling"
)
SKY = (
    "star | stars | sky | constellation* | plough | dipper | polaris | pole star | vega | arcturus | orion | milky way | "
    "planet* | southern cross | sirius"
)
FREEZING = (
    "minus (#|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|*teen|twenty|thirty)* | -# (°|°c|degrees|c) | "
    "-#°c | -# °c | below (zero|freezing) | frost | frosts | frosty | freezing | froze | frozen | icy | subzero | "
    "sub zero | snow | degrees of frost | (ten|twenty|thirty|forty|fifteen|twenty five) below | # below | below thirty | "
    "below twenty | at that temperature | thermometer gave up"
)
DARK = "dark | darkness | pitch black | pitch dark | no moon | moonless | black as | without a (lamp|torch|light) | by feel"
NO_LAMP = (
    "(torch|lamp|headlamp|headtorch|head torch|flashlight|light|headlight) (died|gave up|gave out|went "
    "out|dead|failed|empty) | (no|without|forgot*) (a|the|my|any)? (torch|lamp|headlamp|headtorch|flashlight) | "
    "torch was (dead|flat|in the car)"
)
SHUT_IN = (
    "(door|doors|window|windows|flap|flaps|vent|vents|hatch|roof) (was|were)? (shut|closed|zipped|sealed) | "
    "(shut|closed|closing|close|sealed|zipped) (all|up)? (the|every|both)? (door|doors|window|windows|flap|flaps|vents|"
    "hatch) | "
    "(closed|small|tiny|unventilated|airtight|sealed|stuffy) (shed|room|dome|garage|cellar|tent|van|hut|cupboard|workshop|"
    "space) | no (ventilation|window|windows|draught|draughts) | unventilated | zipped up | draught proof* | buttoned up"
)
FLAME = (
    "flame | flames | candle* | cigarette* | smoking | a smoke | lighter | match | matches | pipe | gas heater | burner | "
    "stove | camp stove | primus | woodburner | heater | fire | spark | sparks | glow* | lit | paraffin | hot plate | "
    "blowtorch | heat gun | soldering iron | pilot light | barbecue | brazier | lantern | hairdryer | hair dryer | boiler | "
    "lit with a thump | thump | pilot | furnace | water heater | simmer* | cooker | hob | on the gas | gas ring | frying | "
    "supper on | kettle on | toaster | oven | grill | fireside | fireplace | hearth"
)
HARM = (
    "shin | shins | toe | toes | toenail* | collarbone | collar bone | rib | ribs | elbow | elbows | knuckle* | kneecap | "
    "ankle | ankles | skull | scalp | eyebrow* | "
    "my (chin|jaw|lip|ear|temple|wrist|nose|brow|forehead|cheek|knee|shoulder|thigh|calf|arm|hip|neck|teeth|tooth|foot|"
    "heel) | (the|a) (chin|jaw|temple|wrist|knee|nose) | thumb | thumbs | thumbnail | fingertip* | stitch | stitches | "
    "stitched | bruis* | blood | bloody | bleed* | bled | blister* | scar | scars | gash* | graze* | grazed | cut my | "
    "cut myself | swell* | swollen | swelled | limp* | hobbl* | doctor | surgery | a and e | hospital | casualty | "
    "ambulance | nurse | clinic | paramedic* | x ray* | plaster | sticking plaster | bandage* | splint | sling | crutch* | "
    "tetanus | painkiller* | ibuprofen | paracetamol | arnica | iodine | concuss* | fainted | flap | skin | lump on | "
    "bump on | egg on | black eye | sprain* | fractur* | broken (toe|finger|wrist|rib|arm|leg|nose) | tweezers | ouch | "
    "yelp* | yelled | swore | screamed | hurt | hurts | sore | aching | throb* | ice pack | frozen peas | "
    "nail (came|went|is|has)* | nails have | first aid | got me | into me | in two places | a size (bigger|smaller) | "
    "flip flop* | bare feet | sandal* | one finger | nine fingers | finger is | fingers are"
)
HERE = (
    "i | me | my | we | us | our | tripod | mount | scope | telescope | dome | tent | case | box | boot | boots | camp | "
    "hut | car | van | chair | rig | gear | eyepiece* | finder | he | she | his | him | her | someone | somebody"
)
