"""German: see `cautions/cold.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import FROST, SCHADEN
from sitegen.cautions.phrases import any_of

KÖRPER = (
    "*finger* | *daumen | hand | hände* | zeh | zehen | fuß | füße* | füsse | ohr | ohren | *ohrläppchen | nase* | lippe* | "
    "haut | *kuppen | wange* | wimpern | knie | zunge | beine | spitzen"
)
ZITTERN = (
    "zähne klapper* | klapperten … zähne | zähneklappern* | klapperten … die zähne | schlotter* | *schlottert | zitter* | "
    "*zittert | bibber* | gebibbert | lallte | lallend | gelallt | verwirrt | angenehm warm | wohlig* | plötzlich warm | "
    "schläfrig* | dösig* | schlafen | einschlafen | dämmer* | hinlegen | hingelegt | durchgefroren | steifgefroren | "
    "ausgekühlt | unterkühl* | geschüttelt | schüttelte"
)
AUFGEHÖRT = "aufhörte | aufgehört | hörte … auf | ließ nach | weg | vorbei | plötzlich | auf einmal | von selbst | von allein"
DÜNN = (
    "t shirt | kurze* hose* | turnschuhe* | sandalen | hausschuhe* | schlafanzug | dünn* jacke | dünne* * | "
    "ohne (handschuhe|mütze|jacke|socken|schlafsack|stiefel) | kein* (handschuhe|mütze|jacke|schlafsack) | "
    "bloß* (hand|händen|finger|fingern)* | handschuhe (aus|lagen|vergessen|ausgezogen|runter)* | pulli | hemdsärmel* | "
    "in socken | bademantel | dünnen schuhen | dünne schuhe | dünnen stiefeln | dünnen socken | halbschuhe*"
)
NASS = (
    "durchnässt* | klatschnass* | nass* (socken|schuhe*|füße*|hose|jacke|hosen|handschuhe*) | durchgeschwitzt | "
    "nassgeschwitzt | feuchte* (socken|schuhe|hose) | verschwitzt* | schweißnass* | nassen hemd"
)
LANGE = (
    "stunden | ganze* nacht | bis (vier|fünf|drei|zwei|zum morgen|sonnenaufgang|zum schluss) | durchgehalten | "
    "ausgehalten | ausgeharrt | geblieben | weitergemacht | noch eine | aufnahmen | nacht | bilder"
)
SCHNAPS = (
    "rum | schnaps | obstler | whisky | wodka | weinbrand | flachmann | glühwein | grog | korn | jagertee | kräuterlikör"
)
METALL = (
    "metall | schiene | stativbein* | stativ | griff | aluminium | alu | stahl | schelle* | klemme | geländer | "
    "gewindestange"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "eingeschlafen | eingenickt | geschlafen | weggedöst", "liegestuhl | stuhl | decke | wiese | draußen | boden",
            "reif | frost | schnee | kalt* | ohren | eis | minus", NEARBY,
        ),
        ("ohren | nase | wangen | finger | zehen | lippen", "geschält | schälten | blasen | schwarz geworden", NEARBY),
        (
            "handschuhe | fäustlinge | fausthandschuhe", "nicht mehr an* | wusste nicht * | ging nicht mehr | bekam … nicht",
            NEARBY,
        ),
        (
            "spitzen | fingerspitzen | finger | zehen | hände",
            "nicht mehr wollen | wollen nicht mehr | wachsfarben | kerzenfarben | streik* | kreideweiß | wachsbleich", NEARBY,
        ),
        (FROST, SCHADEN, "schuh* | nägel | zehen | haut | finger* | handschuh* | füße* | hände* | ohren | nase", NEARBY),
        (NASS, "wind | gesessen | gefroren | geschüttelt | frühstück", NEARBY),
        ("zog die jacke aus | jacke aus | mütze ab", "obstler | schnaps | gut | warm | gelacht | schnee | frost", NEARBY),
        (
            "stift | schlüssel | knopf | schraube | reißverschluss",
            "nicht mehr halten | nicht mehr drehen | kaum halten | nicht mehr zu", NEARBY,
        ),
        ("jacke", "zog … aus | ausgezogen", "gut | warm | obstler | schnaps | gelacht | kalt* | schnee", NEARBY),
        ("ohren | ohr", "wie glas | klangen | knackten | weiß", NEARBY),
        (
            "zähneklapper* | klapperten … zähne | zähne klapper* | zähne … (klapper*|aufeinander*) | blaue lippen | "
            "durchgefroren | steifgefroren | eisklötze | frostbeule*",
        ),
        (
            KÖRPER,
            "taub* | gefühllos* | wie holz | klamm* | eisklötze | wachs* | abgestorben | "
            "nicht mehr (gespürt|spürte|gefühlt|zu spüren)",
            NEXT,
        ),
        (
            "*kuppen | finger* | zehen | ohren | nase* | wange* | *ohrläppchen",
            "weiß* | blau | schwarz | hart | wachs* | taub* | wieder leben | aufgetaut | blase*",
            "kalt* | frost* | minus | hart | handschuh* | leben | warm* | wasser* | schnee | taub* | stunden | morgen | "
            "kälte*",
            NEARBY,
        ),
        (
            "haut", "kleben* | klebte* | hängen | blieb | festgefroren | abgerissen | fetzen",
            any_of(METALL, "minus | frost | kalt* | rohr | tubus | ring"), NEARBY,
        ),
        (ZITTERN, AUFGEHÖRT, "warm | wohlig* | schnee | schlaf* | müde | kalt* | frost | dös* | liegen", NEARBY),
        (
            "schlotter* | *schlottert | bibber* | gebibbert | zitter* | *zittert",
            any_of(LANGE, "bis | kaum | schraube* | verwackelt | aufhörte | vor kälte"), NEARBY,
        ),
        (
            "lallte | lallend | gelallt | wirr* | verwirrt | unzusammenhängend* | stolper*",
            "kalt* | kälte* | frost | minus | sprachmemo* | diktiergerät", NEARBY,
        ),
        (DÜNN, FROST, NEARBY),
        (NASS, any_of(FROST, LANGE, "wind"), NEARBY),
        (SCHNAPS, "warm* | kalt* | kälte | frost* | gewärmt | frieren | aufwärm*", NEXT),
        (
            "im schnee | in den schnee | auf dem eis | im frost",
            "geschlafen | schlafen | hingelegt | gelegen | eingenickt | liegen | einschlafen | ausgestreckt", NEARBY,
        ),
        ("eis | reif | eiszapfen | frost", "*brauen | wimpern | *bart | haaren | schlafsack | schal", NEARBY),
        ("kein* gefühl (mehr)? in | gefühl … verloren",),
        (
            "minus * | -# (°c|grad) | -#°c",
            "ganze* nacht | stunden | gesessen | gestanden | saß | stand | ofen | bart | durchgehalten | ohne",
        ),
        ("erfrier* | erfror* | unterkühl*",),
        ("(zehen|finger|füße|füsse|hände) … (nicht mehr|taub|gefühllos|klamm|klebte*|blau|steif)",),
        ("(nicht mehr|taub*|gefühllos*|klamm*|steif*) … (zehen|finger|füße|füsse|hände)",),
        (
            FROST,
            "*finger* | *handschuh* | zehen | füße | füsse | hände | socken | haut | gefühllos* | zitter* | wärmflasche*",
        ),
    ),
    harmless="weißabgleich | weiße* (zwerg|licht|stern)* | handbox | handsteuer* | hand in hand | steifer (wind|brise) | "
    "blau* filter | (kamera|sensor|chip) … -#* | (sensor|kamera|chip|kühlung) … (minus *|-#) | "
    "kalte* (wolke|staub|gas|front)* | kaltfront* | sonne … (minus *|-#) (grad|°)",
)
