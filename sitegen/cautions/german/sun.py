"""German: see `cautions/sun.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.phrases import any_of

OPTIK = (
    "*fernrohr* | teleskop* | tubus | refraktor* | *newton* | dobson* | *sucher* | fadenkreuz | leitrohr* | *feldstecher* | "
    "*fernglas* | *okular* | *objektiv* | kamera* | *sensor* | linse | # mm | spektiv* | (60|70|80|90|100|120)er | rohr | "
    "optik | leuchtpunktsucher"
)
VERBRANNT = (
    "verschmort* | geschmort | verbrannt* | versengt* | angesengt | geschmolzen | schmolz* | angekokelt | verkohlt | "
    "(roch|riecht|stank|gerochen) … (verschmort*|verbrannt*|heiß*|plastik|gummi|lack|angesengt) | brandfleck* | brandloch | "
    "rauchfahne* | qualm* | rauchte | gesprungen | knack | sprung | loch im * | zu rauchen | rauchwölkchen | heiß"
)
UNGESCHÜTZT = (
    "kappe (vergessen|ab|verloren|fehlte) | (kappe|deckel) … (vergessen|abgenommen|verloren|fehlte|ab|unten) | "
    "ohne (kappe|deckel|schutz|filter) | nicht abgedeckt | unabgedeckt | offen* | ungeschützt* | ungefiltert*"
)
BEHELF = (
    "schweiß*glas* | schweißer* | schweißmaske* | rußglas* | berußt* | rettungsdecke* | rettungsfolie* | cd | diskette* | "
    "filmstreifen | negative | röntgenbild* | sonnenbrille* | finsternisbrille* | sofibrille* | graufilter* | "
    "okularfilter* | polfilter* | mülltüte* | müllsack* | chipstüte* | alufolie | dunkle* glas | mondfilter* | "
    "flaschenboden | geschwärzt* glas"
)
SONNE_GESEHEN = (
    "flecken | *fleckengruppe* | sonnenfleck* | sichel | teilphase | *finsternis* | sofi | weißlicht* | granulation | "
    "fackeln | protuberanz* | scheibe | sonnenscheibe | sonnenrand* | (erste*|zweite*|dritte*|vierte*) kontakt | "
    "totalität | halbschatten | diamantring | *transit* | die sonne"
)
SCHUTZ = "*filter | *filters | folie | *filterfolie | sonnenfolie | schutzfolie | *abdeckung | *glas | decke | brille"
SCHADHAFT = (
    "wind | windstoß | böe | *rutsch* | *gefallen | flog | fliegt | weggeflogen | löcher* | loch | kratzer | *kratzt | "
    "riss | risse | gerissen | sprung | klebeband | lose | locker* | gummiband | falten | filzstift | edding | geflickt | "
    "abgezogen | abgerissen | warm | heiß"
)
SUCHE = (
    "gesucht | suche* | abgefahren | abgesucht | geschwenkt | gejagt | nebenan | neben | handbreit* | "
    "grad (neben|daneben|weg|entfernt) | sucher* | fernglas* | feldstecher* | gefunden | aufgestöbert | dachkante | "
    "hausecke | dachfirst"
)
GRELL = "grell* | gleißend* | blendend* | helle* fleck | zu nahe am licht"

VOCABULARY = Vocabulary(
    dangers=(
        (
            "finsternisbrille* | brille* | filter", "nur eine | zu fünft | zu viert | abgewechselt | geteilt | reihum",
            "spektiv | fernglas | feldstecher | fernrohr | kurz | ohne | anderen", NEARBY,
        ),
        (
            "feldstecher | fernglas | fernrohr | teleskop | lupe | spiegel",
            "wintergarten | fensterbank | terrasse | balkon | wohnzimmer",
            "streifen | brand* | versengt | geschmolzen | loch | braun*", NEARBY,
        ),
        (
            "folie | sonnenfolie | filterfolie", "sterne | löcher | gegen das licht | milchig | kratzer | knick | riss",
            "granulation | flecken | sonne | trotzdem | licht | protuberanzen", NEARBY,
        ),
        (
            "unser* stern | das helle ding | die helle | dem hellen",
            "gerichtet | fernrohr | sucher | kappe | linse | feldstecher | okular", NEARBY,
        ),
        (
            "schatten (verschwand|weg war|am kleinsten) | kleinste* schatten", "sucher | fernrohr | teleskop | tubus | rohr",
            NEARBY,
        ),
        (
            "dunst | schleierwolken | nebel | hochnebel", "als filter | statt filter | statt eines filters | reicht als",
            NEARBY,
        ),
        (
            "spiegel | linse | lupe | okular", "mittags | in der sonne | wiese | fensterbank",
            "geschmolzen | roch | rauch* | versengt | angesengt | loch", NEARBY,
        ),
        (
            "dobson* | teleskop* | fernrohr | spiegel | refraktor | newton",
            "kreisrund* loch | loch | brandloch | angesengt | verkohlt | geschmolzen | rauch*",
            "stuhl | gartenstuhl | zaun | terrasse | kissen | wand | jacke | liege | tasche", NEARBY,
        ),
        (
            "gruppe | flecken | fleckengruppe", "folie | kappe | filter",
            "keine zeit | nicht gefunden | ohne | geblinzelt | nur kurz | blinzel*", NEARBY,
        ),
        ("brille* (ab|abgenommen|weg|runter)* | ohne brille", "ring* | *finsternis* | totalität | sichel", NEARBY),
        (
            VERBRANNT, OPTIK,
            "mittag* | mittags | nachmittag* | *nachmittags | am tag | tagsüber | frühstück* | vormittag* | sonne", NEARBY,
        ),
        (BEHELF, SONNE_GESEHEN, NEARBY),
        (
            BEHELF, "okular* | feldstecher* | fernglas*",
            "sonne | flecken | scheibe | helle* | finsternis* | warm | heiß | sprung", NEARBY,
        ),
        (
            SCHUTZ, SCHADHAFT,
            "flecken | *finsternis* | *transit | sichel | weißlicht* | die sonne | sonnenscheibe | teilphase", NEARBY,
        ),
        (
            "venus | merkur | jupiter | mondsichel",
            "*mittag* | *nachmittags | *vormittags | taghimmel* | am tag | tageslicht | helllicht* | im blauen | grell*",
            SUCHE, NEARBY,
        ),
        (GRELL, SUCHE, "*mittag* | *nachmittags | am tag | venus | merkur | tageslicht", NEARBY),
        (UNGESCHÜTZT, OPTIK, "mittags | mittag | mittagspause | in die sonne | zur sonne | frühstück*", NEARBY),
        (
            "untergang | untergehen* | sonnenuntergang | sank | tiefstehend*",
            "geschaut | angeschaut | gesehen | betrachtet | beobachtet",
            any_of(OPTIK, "einfach so | ohne alles | ohne filter"),
            "rot | orange | ohne (alles|filter) | einfach so | nicht (mehr)? hell | schwach", NEARBY,
        ),
        ("scheibe | sichel", "okularfilter* | schweiß* | geblinzelt | blinzelnd", NEARBY),
        ("merkurtransit* | venustransit* | sonnentransit*",),
        (
            "sonnenlicht | bei tag | mittags | tagsüber",
            "glitzer* | funkel* | hauptspiegel | fangspiegel | schrauben | isolator* | reflex*",
        ),
        ("*fleckengruppe* | *sonnenfleck*", "*filter* | okular* | fernrohr | teleskop | tubus | objektiv* | rohr"),
        (
            "sonne",
            "sucher* | okular* | fernglas* | feldstecher* | objektiv* | *filter | graufilter* | verbrannt* | versengt* | "
            "geschmolzen | schmolz | rauch*",
        ),
        (
            "sonnenfinsternis | finsternis | transit",
            "objektiv* | graufilter* | kamera | teleskop | tubus | fernglas | feldstecher* | okular*",
        ),
        ("in die sonne", "*schaut* | *schau* | *sehen | sah | blick* | *blickt"),
        ("sonnen(filter|folie|teleskop|projektion|beobachtung|scheib|finsternis|fleck|fernrohr|okular)* | protuberanz*",),
        (
            "sonne",
            "ungefiltert* | ungeschützt* | ohne filter | projizier* | *okular* | *folie* | rettungsdecke* | *finsternis* | "
            "transit | deckel | vor (das|die) (objektiv|öffnung) | durch (das|ein|den) (fernrohr|teleskop|sucher|fernglas)",
        ),
        (
            "(auf|in|gegen|nach|an|neben|bei|nahe|richtung) (die|der)? sonne",
            "*rohr* | tubus | teleskop* | sucher* | fernglas* | optik | objektiv* | kamera* | linse* | schwenk* | "
            "geschwenkt | richte* | gerichtet | blick* | schau* | geschaut | gesehen | abgefahren | gesucht",
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
            "venus | merkur", "hellen tag | am tag | tageslicht | mittag* | sonne",
            "sucher* | fernglas* | abgefahren | gesucht | gefunden | fernrohr* | teleskop*",
        ),
    ),
    harmless="(lag|stand|stehen|trocknet*|warm) … in der sonne | "
    "sonne (ging|geht|war|ist|stand|steht) … (unter|auf|untergegangen|aufgegangen) | sonne (unterging|aufging) | "
    "mond*finsternis* | (masse|alter|leuchtkraft|radius) der sonne | "
    "sonnen(untergang|aufgang|masse|system|leuchtkraft|radi)* | sonntag* | # grad unter dem horizont",
)
