"""German: see `cautions/weight.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import SCHADEN
from sitegen.cautions.phrases import any_of

SCHWER = (
    "*montierung | *tubus | *rohr | teleskop | gabel | dobson | *zöller | *zoll | säule | *spiegel | gegengewicht* | "
    "gewicht* | stange | *kuppel | kuppelspalt | klappe | stativ | refraktor | newton | spiegelzelle | rockerbox | platte | "
    "betonplatte | kilo | kg | zentner | brocken | ungetüm | trumm | sechzehnzöller | vierzehnzöller | wiege | ballast | "
    "kiste"
)
GEHOBEN = (
    "*getragen | trug* | trage | *schlepp* | *wucht* | *gehievt | *hob | *gehoben | *heben | *gezogen | zerrte | gezerrt | "
    "geschultert | *rollt | *umarm* | bugsier* | gestemmt | am seil | mit dem seil | flaschenzug | herunter* | runter* | "
    "hinauf* | hoch* | rückwärts"
)
ALLEINE = (
    "allein | alleine | ohne hilfe | *treppe* | stufe* | leiter | rückwärts | keiner da | niemand da | schliefen alle | "
    "kofferraum | seil | über (den|die) (zaun|mauer)* | einhändig | mit einer hand | im dunkeln"
)
VERHOBEN = (
    "kreuz | rücken | hexenschuss | verhoben | leiste* | leistenbruch | bandscheib* | ischias | schmerztablette* | ibu* | "
    "gezerrt | geknackt | knacks | knackte im | schulter | nicht mehr gerade | verrissen | verrenkt | wirbel*"
)
GETROFFEN = (
    "traf mich | am (kinn|kopf|ohr|schienbein|auge)* | auf (die|den|meine|meinen) (zehen|fuß|zeh|finger|hand|kopf)* | "
    "*kinn | *zehen | zeh | schienbein* | stirn | nase | blau* fleck* | beule | platzwunde | finger | *daumen | "
    "gequetscht | eingeklemmt | knapp | haarscharf | zentimeter (neben|vor)* | neben (meinem|meinen) (fuß|zeh)* | "
    "sandale* | rippe* | delle | loch im (boden|parkett|deck)*"
)
BEWEGT = (
    "*rutscht* | rutschte | fiel | *gefallen | *gekippt | kippte | *stürzt* | schwenkte | schwang | schlug | schnellte | "
    "sauste | *rauscht* | knallte | krachte | kam herunter | kam runter | runtergekommen | nachgegeben | zack | rumms | "
    "wumms | plumps* | klappte | schoss | löste sich | sackte"
)
GELÖST = (
    "gelöst | lös* | aufgemacht | (kupplung|klemme|schraube|hebel) auf | ging auf | kupplung | klemmung | klemme | "
    "klemmhebel | ohne endschraube | endschraube | "
    "sicherungsschraube* | keine * mehr | losgelassen | vergessen | nicht festgezogen | abgenommen | *gebaut | austarier* | "
    "ausbalancier* | balancier* | letzte schraube | handfest | kopflastig"
)
UNTERSATZ = (
    "*stuhl | *hocker | eimer | *kiste | *kasten | tisch | tonne | regentonne | fass | mauer | brüstung | heckklappe | "
    "motorhaube | bank | palette | bierkasten | getränkekiste | kühlbox | geländer | fensterbrett | drehstuhl | "
    "ziegelstein* | stapel | anhänger* | dachträger | wasserfass | kisten | zwei kisten | bierbank | reifen | "
    "kabeltrommel | baumstumpf | holzstapel | trampolin | zaunpfahl | stoßstange"
)
GESTANDEN = (
    "gestanden | stand | stehe | stehen | stehend | steh | geklettert | kletter* | gestiegen | steige | *stieg | balanc* | "
    "zehenspitzen | streckt | gestreckt | strecken | wackel* | wackl* | kipp* | auf einem bein | einem bein | umgedreht* | "
    "turn* | gestapelt | reck* | stapele | stapel* | festhalten | halte mich | klammer* | türm*"
)
OBEN = (
    "okular* | zenit | sucher | deckel | fokus* | oben | taukappe | dunkel* | stockfinster* | heran | ran | tubus | dach* | "
    "kappe | über (#|vierzig|fünfzig|sechzig|siebzig|achtzig) grad | siebzig grad | gitterrohr | hoch oben"
)
LEITER = "leiter | *leiter | sprosse* | leitersprosse* | oberste* stufe | tritt"
AUF_LEITER = (
    "freihändig | schief | kies | wackel* | wackl* | kippt* | kippel* | oberste* | oben | nass* | rutsch* | matsch | "
    "angelehnt | gelehnt | steig* | stieg* | kletter* | fiel | *gefallen | vereist* | morsch* | verlängert | angebunden | "
    "dach* | eine hand | einer hand | beide hände"
)
DACH = (
    "dach | flachdach* | *dach | dachrinne* | regenrinne* | dachkante | first | dachfirst | dachziegel* | ziegel | "
    "dachfenster* | gaube | kuppeldach | vordach | carport | dachluke"
)
AUF_DACH = (
    "geklettert | kletter* | gestiegen | hochgezogen | gezogen | *rutsch* | schnee* | vereist* | nass* | rittlings | "
    "getreten | gegengetreten | balanc* | hinauf* | außen hoch | barfuß | socken | kante | gekrochen | gekraxelt | "
    "kraxel* | raus | hinaus*"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "stufen | stufe | tritt | leiter | sprosse* | hocker",
            "dreht sich | wackel* | locker | morsch* | angebrochen | fehlt | am rand | gibt nach",
            "okular | rand | auftreten | trete | zenit | dritte | oben | kuppel", NEARBY,
        ),
        (
            "wäscheleine | schnur | seil | spanngurt | hundeleine | strick",
            "spiegel | montierung | tubus | rohr | kuppel | säule | balken",
            "getragen | aufzug | gehoben | hängt | hält | geächzt | gehalten | gezogen | herunter* | riss", NEARBY,
        ),
        (
            "darunter | daruntergekrochen | druntergekrochen | drunter", "gedrückt | gestemmt | gehalten | beinen | rücken",
            "sockel | säule | montierung | spiegel | tubus | kuppel | platte | gabel", NEARBY,
        ),
        (
            "klemme | knopf | schraube | schwalbenschwanz* | sattel",
            "ausgeleiert | fehlt | gebrochen | wandert | rutscht | abgenutzt | locker", "tubus | rohr | refraktor | fernrohr",
            NEARBY,
        ),
        (
            "montierung | *spiegel | spiegelkiste | tubus | fernrohr | säule | gegengewicht* | gewichte | stange | wagen | "
            "kiste | stativ | kuppel | klappe | platte | treppe | stufen | leiter | rampe | kilo | gabel | dobson | dach",
            SCHADEN, any_of(BEWEGT, GEHOBEN, GELÖST, "rollte | gebremst | losgelassen | gelernt | abgerutscht | gelandet"),
            NEARBY,
        ),
        ("schwerpunkt | kopflastig | unausgeglichen", any_of(SCHADEN, "schwang | gelernt | kippte"), NEARBY),
        (
            "brocken | trumm | montierung | spiegel | säule | tubus", "auf die schulter | auf der schulter | umarm*",
            "klickt | knackt | seitdem | zwickt | zieht", NEARBY,
        ),
        (
            "kamera | gewichte | gegengewicht*", "ab | runter", "alles herum | stirn | nase | kinn | schwang | schiene",
            "stirn | nase | kinn | beule", NEARBY,
        ),
        (SCHWER, GEHOBEN, any_of(ALLEINE, VERHOBEN, GETROFFEN), NEXT),
        (
            SCHWER, VERHOBEN,
            "gehoben | *hob | getragen | *wuchtet | gezogen | kofferraum | allein | *treppe* | geschleppt | kilo | "
            "seitdem | umgesetzt | *stellt",
            NEARBY,
        ),
        (
            "*montierung | *tubus | *rohr | teleskop | gabel | dobson | *zöller | säule | *spiegel | gegengewicht* | "
            "gewicht* | stange | gegengewichtsstange | kuppel | kuppelspalt | klappe | stativ | refraktor | platte | kilo | "
            "kg",
            BEWEGT, GETROFFEN, NEXT,
        ),
        (
            "gegengewicht* | gewicht* | stange | gegengewichtsstange | kilo | kg | tubus | rohr | gabel | refraktor", GELÖST,
            any_of(
                "zack | rumms | wumms | schwenkte | schwang | schlug | krachte | sauste | *rauscht* | knallte | kippte | "
                "stürzte | schnellte | kopfüber",
                GETROFFEN,
            ),
            NEARBY,
        ),
        (
            "endschraube* | sicherungsschraube* | endanschlag | zehenretter*",
            "keine | ohne | fehlt* | verloren | vergessen | nie", NEXT,
        ),
        (UNTERSATZ, GESTANDEN, OBEN, NEXT),
        ("zehenspitzen", any_of(UNTERSATZ, "okular* | leiter | stufe | sprosse*"), NEARBY),
        ("(stuhl|hocker|kiste|eimer|leiter) auf (der|dem|die|den|einer|einem|zwei) *",),
        (
            LEITER, AUF_LEITER,
            "okular* | dach* | kuppel | tubus | schelle | zenit | nacht | dunkel* | ast | äste | kies | rinne | wand | "
            "säule | sucher | kamera | oben | spalt",
            NEARBY,
        ),
        (
            DACH, AUF_DACH,
            "geklettert | kletter* | gestiegen | gezogen | *rutsch* | rittlings | *getreten | balanc* | gekrochen | "
            "kraxel* | gekraxelt | hinauf* | hoch | turn*",
            NEARBY,
        ),
        (
            "rollendach* | rolldach* | dach | klappe | kuppel | spalt", "hoch | geklettert | gestiegen | hinauf",
            "bein | tonne | gegengetreten | getreten | eimer | mauer | regenrinne | zaun | finster*", NEARBY,
        ),
        (
            "klappe | spalt | kuppel | deckel | falltür | luke",
            "zugefallen | zugeschlagen | heruntergekracht | zuschlug | zufiel | fiel zu",
            "arm | hand | finger | kopf | rücken | mir", NEARBY,
        ),
        (
            "seil* | flaschenzug | winde | gurt* | kran",
            "montierung | tubus | säule | *spiegel | dobson | platte | stativ | *zöller",
            "riss | gerissen | *rutsch* | hochgezogen | herunter* | hing | baumel* | losgelassen | drunter | balkon | "
            "brüstung | gezogen",
            NEARBY,
        ),
        ("stuhl | hocker | kiste | tisch", "gestiegen | geklettert | wackel* | wackl*"),
        (
            "*rohr | tubus | gegengewicht* | achse",
            "schoss | knallte | traf | gegen (die|den|meine|meinen) | nicht geklemmt | stirn | schläfe",
        ),
        ("*treppe*", "*getragen | trug* | *schlepp* | gewuchtet | gehievt"),
        ("*ig (kg|kilo|kilogramm)", "*getragen | trug* | *hob* | *schlepp* | allein | alleine | treppe*"),
        (
            "*schwalbenschwanz* | *schiene | schellen | rohrschellen",
            "lös* | gelöst | rutscht* | heraus* | *gefallen | losgelassen",
        ),
        (
            "wiegt | wiegen | schwer",
            "(#|zwanzig|dreißig|vierzig|fünfzig|sechzig|siebzig|achtzig|neunzig|hundert) (kg|kilo)*",
            "*gerichtet | *hob* | *gehoben | *stellt | *gesetzt | *setzen | *tragen | trug* | montiert | zu (zweit|dritt) | "
            "allein",
        ),
        (
            "tubus | *rohr | montierung | säule | refraktor | teleskop",
            "zu (zweit|dritt|viert) | kreuz verrenkt | hexenschuss | rücken | aus der (schiene|halterung|hand) | gewuchtet",
        ),
        ("(stand|stehe|stehend|steige|stieg) auf (einem|einen|dem|den|der|einer) (stuhl|hocker|kiste|tisch|mauer|kasten)",),
        (
            "leiter | (steh|tritt|klapp|stell|anlege|holz|alu)leiter",
            "*steig* | *stieg* | *kletter* | *lehn* | sprosse* | okular* | oben | zenit | stufe* | wackel* | gekippt | "
            "halt* | hielt",
            NEXT,
        ),
        ("tritthocker* | trittleiter*",),
        (
            "tubus | *rohr | teleskop | montierung | gegengewicht* | säule | *spiegel | dobson | kuppel | gabel",
            "*gehoben | hob | *heben | gehievt | hieven | gewuchtet | geschleppt | flaschenzug | kran | seilwinde | "
            "alleine? getragen",
        ),
        (
            "(#|zwanzig|dreißig|dreissig|vierzig|fünfzig|sechzig|siebzig|achtzig|neunzig|hundert) (kg|kilo|kilogramm)",
            "*heb* | *hob | hieven | gehievt | trag* | trug* | *schlepp* | gewuchtet | halt* | hielt", NEXT,
        ),
        (
            "*klemme | *klemmung | *kupplung",
            "geöffnet | gelöst | löse* | öffne* | lösen | öffnen | aufgemacht | rutsch* | gegengewicht*",
        ),
        (
            "tubus | *rohr | gegengewicht* | montierung",
            "schlug | *geschlagen | schwang | gekippt | kippte | *gefallen | herunterfiel | auf den (fuß|fuss) | abgestürzt",
        ),
        ("gegengewicht*", "abgenommen | abnehmen | verschoben | entfernt | abgezogen | rutsch*"),
    ),
    harmless="(schweif|komet|stern|mond|orion|milchstraße|planet|sternbild*) … (klettert|steigt|mauer|dach|zehenspitzen)* | "
    "(kolli|meta)*leiter | dunkelstrom | (sternschnuppe|sternschnuppen) (fiel|fielen) | tau fiel | "
    "(temperatur|halbwertsbreite|seeing) fiel | (nacht|dunkelheit) fiel | gestapelt (aus|wurden) | "
    "stapel (von|aus) (bildern|aufnahmen)* | meridian* umschlag* | entfernungsleiter | "
    "(leiter|leiterin) (der|des|unserer|von) | halbleiter* | spiegelbild*",
)
