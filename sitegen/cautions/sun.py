"""Sunlight through optics, or on an eye. The standard is that of viewers without optics; nothing of the kind covers filters for
telescopes."""

from sitegen.cautions.caution import NEXT, Caution, Vocabulary

CAUTION = Caution(
    "sun",
    ("ISO 12312-2",),
    {
        "en": Vocabulary(
            stems="sunlight | white light | white-light | midday | lunchtime | broad daylight | transit | sun | solar | "
            "eclipse | prominence | daylight | by day | broad day | noon | venus | mercury",
            dangers=(
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
                    "finder | eyepiece* | binocular* | lens | objective | polariser* | nd filter* | burn* | melt* | "
                    "smoke | smok* | scorch* | singe*",
                ),
                (
                    "eclipse",
                    "lens | nd filter* | camera | telescope | tube | binocular* | eyepiece",
                ),
                ("solar (filter|film|telescope|scope|viewer|projection|observ|imaging|disc|disk|eclipse|wedge)* | prominence*",),
                (
                    "(look|stare|star|gaz|peer|glanc|point|aim|slew|turn|mov|centr|focus)* … "
                    "(at|on|to|toward|towards|into|past) the sun | "
                    "(swing|swung) … (to|at|on|towards) the sun",
                ),
                (
                    "(telescope|tube|refractor|reflector|finder|binocular|eyepiece|camera|lens|scope|optics)* … "
                    "(at|on|to|toward|towards|from|into|past|near|beside) the sun",
                ),
                (
                    "sun",
                    "unfiltered | unprotected | projected | projecting | projection* | eyepiece | film | solar filter | "
                    "sunspot* | spot* on | eclipse | transit | cap off | capped | filter over | over the front | "
                    "through (a|an|the|our|my) *? (telescope|tube|refractor|finder)",
                ),
                (
                    "(from|of|beside|near|next to) the sun",
                    "swept | sweep* | search* | open tube | looked for | hunt*",
                    NEXT,
                ),
                ("eclipse | second contact | totality | partial phase*", "filter* | glasses | unscrew* | film | viewer*"),
                (
                    "by day | daylight | sunlight | broad day | afternoon | noon",
                    "collimat* | artificial star* | (steel|ornament|glass) ball*",
                ),
                (
                    "venus | mercury",
                    "by day | daylight | broad day | noon | afternoon | the sun",
                    "swept | sweep* | search* | found | finder | binocular* | telescope | looked",
                ),
                ("sun", "(ball|bearing|point of light) | artificial star*", "makes | glint* | bright*"),
            ),
            harmless="(warm|warmed|dried|lay|left|stood|sat|dry|parked) … in the sun | total eclipse of the moon | "
            "sun (had|has|was|is|were)? (set|sets|setting|rose|risen|rises|rising|below|under|low|down|up) | "
            "sun (goes|going|went|gone|came|comes|comes) (down|up|under) | sun … (degrees|°) (below|under) … | "
            "sun's (altitude|mass|age|light|height|centre|radius|spectrum|neighbourhood) | "
            "(mass|masses|age|radius|luminosity|times|than|as|like) (of|as)? (that)? (of)? the sun | daylight saving* | "
            "solar (mass|system|neighbo|luminosit|radi|panel|metallicit)* | lunar eclipse* | eclips* of the moon | "
            "eclipsing binar*",
        ),
        "de": Vocabulary(
            stems="fleckengruppe | transit | sonn | finsternis | protuberanz | tageslicht | hellen tag | am tag | mittag",
            dangers=(
                ("merkurtransit* | venustransit* | sonnentransit*",),
                (
                    "sonnenlicht | bei tag | mittags | tagsüber",
                    "glitzer* | funkel* | hauptspiegel | fangspiegel | schrauben | isolator* | reflex*",
                ),
                (
                    "*fleckengruppe* | *sonnenfleck*",
                    "*filter* | okular* | fernrohr | teleskop | tubus | objektiv* | rohr",
                ),
                (
                    "sonne",
                    "sucher* | okular* | fernglas* | feldstecher* | objektiv* | *filter | graufilter* | verbrannt* | "
                    "versengt* | geschmolzen | schmolz | rauch*",
                ),
                (
                    "sonnenfinsternis | finsternis | transit",
                    "objektiv* | graufilter* | kamera | teleskop | tubus | fernglas | feldstecher* | okular*",
                ),
                (
                    "in die sonne",
                    "*schaut* | *schau* | *sehen | sah | blick* | *blickt",
                ),
                ("sonnen(filter|folie|teleskop|projektion|beobachtung|scheib|finsternis|fleck|fernrohr|okular)* | protuberanz*",),
                (
                    "sonne",
                    "ungefiltert* | ungeschützt* | ohne filter | projizier* | *okular* | *folie* | rettungsdecke* | "
                    "*finsternis* | transit | deckel | vor (das|die) (objektiv|öffnung) | "
                    "durch (das|ein|den) (fernrohr|teleskop|sucher|fernglas)",
                ),
                (
                    "(auf|in|gegen|nach|an|neben|bei|nahe|richtung) (die|der)? sonne",
                    "*rohr* | tubus | teleskop* | sucher* | fernglas* | optik | objektiv* | kamera* | linse* | "
                    "schwenk* | geschwenkt | richte* | gerichtet | blick* | schau* | geschaut | gesehen | abgefahren | "
                    "gesucht",
                ),
                (
                    "*finsternis* | totalität | zweite* kontakt",
                    "*filter* | *brille* | *folie* | rettungsdecke* | abgeschraubt | abgenommen",
                ),
                (
                    "am tag | tageslicht | sonnenlicht | hellen tag | *nachmittag* | mittag*",
                    "kollimier* | justier* | künstliche* stern* | stahlkugel* | christbaumkugel* | glaskugel*",
                ),
                (
                    "venus | merkur",
                    "hellen tag | am tag | tageslicht | mittag* | sonne",
                    "sucher* | fernglas* | abgefahren | gesucht | gefunden | fernrohr* | teleskop*",
                ),
            ),
            harmless="(lag|stand|stehen|trocknet*|warm) … in der sonne | "
            "sonne (ging|geht|war|ist|stand|steht) … (unter|auf|untergegangen|aufgegangen) | "
            "sonne (unterging|aufging) | mond*finsternis* | (masse|alter|leuchtkraft|radius) der sonne | "
            "sonnen(untergang|aufgang|masse|system|leuchtkraft|radi)* | sonntag* | # grad unter dem horizont",
        ),
    },
)
