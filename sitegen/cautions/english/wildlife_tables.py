"""English: the tables of `wildlife.py`."""

BEAST = (
    "boar | boars | sow | sows | wild (pig|pigs|boar|hog|hogs|dog|dogs) | feral (pig|pigs|dog|dogs|cat|hog|hogs)* | hog | "
    "hogs | piglet* | striped (little ones|piglets|babies) | bear | bears | grizzly | cub | cubs | wolf | wolves | "
    "coyote* | cougar* | puma* | mountain lion* | lynx | leopard* | hyena* | jackal* | baboon* | elephant* | hippo* | "
    "buffalo* | bison | rhino* | moose | elk | stag | stags | bull | bulls | bullock* | cow | cows | cattle | heifer* | "
    "calf | calves | stallion | ram | kangaroo* | roo | emu | cassowary | crocodile* | croc | crocs | alligator* | gator* | "
    "dingo* | guard dog* | farm dog* | sheepdog* | stray dog* | strays | alsatian | dogs | fox | badger* | raccoon* | "
    "skunk* | porcupine* | bat | bats | rat | rats | monkey* | swan | goose | geese | owl | seal | seals | monitor lizard"
)
CRAWLER = (
    "snake* | adder* | viper* | rattlesnake* | rattler* | cobra* | mamba* | taipan* | copperhead* | brown snake | "
    "tiger snake | scorpion* | spider* | redback* | black widow* | recluse | tarantula* | funnel web* | centipede* | "
    "wasp* | hornet* | bee | bees | hive | swarm | yellowjacket* | yellow jacket* | fire ants | bull ants | ants | tick | "
    "ticks | leech* | horsefl* | mosquito* | processionary | caterpillar* | jellyfish | stingray | toad | kissing bug*"
)
CLOSE = (
    "metres | meters | yards | feet away | arm's length | came (close|closer|near|nearer|up|within|out|to)* | closer | "
    "nearer | circled | circling | surround* | charg* | chas* | snort* | grunt* | growl* | snarl* | hiss* | rattl* | "
    "bark* | huff* | stamp* | paw* | lunged | stood up | rear* | sniff* | nos* | nudg* | followed | between (me|us) and | "
    "under the | at the edge of | in the tent | in my tent | at the bins | cool box | coolbox | food | sausage* | bacon | "
    "biscuit* | sandwich* | fed | feed | feeding | threw | shoo* | clapp* | poke* | prodd* | kick* | stick | broom | "
    "torch in | flash | selfie | stroke* | pet | patted | curled | boot | boots | shoe | glove | case | lid | "
    "sleeping bag | tripod | mount | young | calf | calves | cubs | mother | mum | piglets | nest | hive | "
    "heavy breathing | breathing | nose in | blowing | hind legs | closer look | rinds | bait | loose | had hold of | "
    "rake | stamped"
)
BITTEN = (
    "bit | bite* | bitten | stung | sting* | nipp* | nip | prick* | two (little|small|tiny)? (holes|marks|dots|punctures) | "
    "fang* | puncture mark* | swoll* | swell* | swelling | like a balloon | up like a * | red ring | ring shaped | "
    "bull's eye | bullseye | rash | wheal* | welt* | burrow* | dug in | gorged | engorged | fat as a pea | tweezers | "
    "numb | antivenom | epipen | anaphyla* | rabies | rabid | lyme | fever | venom* | throb* | scratch* | claw mark*"
)
SIGNS = (
    "paw print* | footprints | tracks | droppings | claw mark* | scat | (two|four|green|red|yellow|glowing) eyes | "
    "eyes (shone|shining|glow*|in the|came)* | eyeshine | "
    "something (grunted|growled|snorted|rattled|hissed|rustled|moved|big|large|heavy|soft|furry|warm)* | a growl | grunt* | "
    "snort* | rattl* | howl* | roar*"
)
BLIND_REACH = (
    "reached (in|into|under|down|behind) | put my hand (in|into|under|on) | stuck my (hand|arm) | hand (in|into) the | "
    "felt (around|about|for) | groped | slipped my (foot|hand) (in|into) | pulled on my (boot|boots|glove|gloves) | "
    "barefoot | sat down on | turned over (a|the) (stone|rock) | lifted (a|the) (stone|rock|tarp*|lid|cover|log) | "
    "without looking"
)
LURKING = (
    "heavy breathing | something breathed | stripy | stripey | little ones | shoulders like | very large head | "
    "large head | hind legs | a nose | big shape | dark shape | tusks | antlers | horns | udder | fur | hooves | trotters | "
    "the size of a (sofa|fridge|calf|pony|barrel|car|cow|bus|wardrobe|small car|labrador|horse|table|pig)* | "
    "(black|dark|huge|big|bulky|hairy|furry|stocky|brown|bristly|massive|enormous|low) (shape|shadow|lump|back|thing|fellow|"
    "visitor|beast|animal|shoulders|bulk|head|customer|guest|gentleman|lady|lump|boy|one|body)* | on all fours | "
    "four legs | bristl* | trotter* | snout* | muzzle* | whisker* | mane | paws | claws | hide | stench | musky | litter | "
    "piglets | babies | cubs | herd | sounder | stripes | striped"
)
CURLED = (
    "fan belt | hosepipe that | hose that | rope that | stick that | eight legs | legs waving | many legs | papery ball | "
    "paper ball | grey ball | dry buzzing | dry rattle | buzzing came | red mark underneath | hourglass | zigzag | "
    "diamond pattern"
)
ANIMAL_ACTS = (
    "snuffl* | scuttl* | slither* | grunt* | growl* | snort* | hiss* | snarl* | pawed | pawing | sniff* | padded | prowl* | "
    "lumber* | pounc* | crawled | wriggl* | bared | grooves | claw* | gnaw* | rooting | rooted | bristl* | tail up | "
    "tail raised | reared | stamped"
)
FOOD = (
    "food | cooler | cool box | coolbox | esky | sandwich* | sausage* | bread | apple* | corn | maize | acorn* | crumbs | "
    "rubbish | bins | bin | larder | snacks | crisps | chocolate | cheese | ham | bacon | peanut butter | honey | jam | "
    "soup | lunch | supper | picnic | biscuit* | scraps | rinds | leftovers | provisions | hot dogs | burger* | fish"
)
MISTAKEN = (
    "(thought|took|mistook|taken|looked like|looks like|i reached for|grabbed|picked up) … "
    "(cable|cables|strap|hose|hosepipe|rope|belt|bungee|stick|branch|root|cord|dew band|lead|tie down|inner "
    "tube|twig|leaf|glove|tape)"
)
ANIMAL = (
    "horse | horses | pony | mare | foal | stallion | donkey | mule | goat | goats | billy goat | ram | llama* | alpaca* | "
    "tom | tomcat | cat | feral cat | polecat | ferret | weasel | stoat | marten | mink | otter | beaver | deer | stag | "
    "stags | hind | roe | buck | ibex | wallaby | wombat | possum* | goanna | lizard | python | tiger | lion | lions | "
    "lioness | panther | leopard | hyena* | warthog* | antelope | buffalo | rhino* | hippo* | elephant* | baboon* | "
    "monkey* | macaque* | eagle | hawk | buzzard | magpie | gull | gulls | geese | goose | swan | swans | owl | cockerel | "
    "bull | bulls | cow | cows | heifer* | bullock* | dog | dogs | sow | boar | badger | fox | rat | rats | seal | seals | "
    "kangaroo* | emu | ostrich | cassowary | moose | elk | bison"
)
ATTACKED = (
    "ran at | charg* | came at | came for | went for | butted | gored | lunged | dive bomb* | swoop* | attack* | chased | "
    "lashed out | snapped at | hisses | hissed | spat | reared | knocked (me|us|over|down)* | bit | nipped | bared | "
    "trampled | pecked | clawed | scratched | pinned | herded | blocked the | stood in the way | would not let | "
    "wouldn't let | kicked (me|us|out|at|him|her) | kicked my"
)
THORN = (
    "like a (staple|needle|thorn|pin|nail|splinter|bee|nettle|wire|match|cigarette|red hot *) | "
    "(a|some) (thorn|nettle|splinter|bramble|barb|staple) | thorn | barbed wire | nettles"
)
