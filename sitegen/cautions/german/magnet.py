"""German: see `cautions/magnet.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.german.circumstances import HÄNDE
from sitegen.cautions.phrases import any_of

MAGNETE = (
    "*magnet | *magnete | *magneten | *magnets | neodym* | supermagnet* | seltene* erd* | n52* | n45* | haftscheibe* | "
    "magnetscheibe* | topfmagnet* | magnetkugel* | zugkraft | haftkraft | haltekraft | bergetopf | bergemagnet* | angler*"
)
STÜCKE = (
    "scheibe | scheiben | *scheibchen | kugeln | silberkugel* | kügelchen | würfel* | klotz | klötze | verschluss | "
    "verschlüsse | haltering | deckel | *platte | *platten | festplatte | lautsprecher* | zylinder | halter* | ring | "
    "knöpfe | lasche"
)
ZUSAMMEN = (
    "*sprang* | sprangen | *schnapp* | flog | flogen | *gezogen | knallte* | klatschte* | klackte* | zuschnapp* | "
    "*gesprungen | angezogen | zusammen* | auseinander* | aufeinander* | riss | haute | hauten | krachte*"
)
VERLETZT = (
    "blut* | blase | blutblase* | fingerkuppe* | *daumen | finger* | haut | *klemm* | gequetscht | quetsch* | nagel | "
    "blau | dazwischen | pflaster | gezwickt | zwickt* | autsch | blau* fleck* | schwarz | nagel … schwarz | rechtzeitig"
)
ZERSPRUNGEN = (
    "splitter* | *splittert | zersprungen | zersprang* | muschel | ausbruch | abgeplatzt | gesprungen | riss | sprung | "
    "scherbe* | kratzer | macke* | bröselt*"
)
IMPLANTAT = (
    "*schrittmacher* | defi | defibrillator* | hörgerät* | insulinpumpe* | implantat* | herzgerät | piepste | piepte | "
    "kardiolog* | herzstolpern | herz stolper* | herz setzte aus | taktgeber | setzen | sich setzen | herzschwach* | "
    "schwindlig | drähte zum herzen | drähte im herzen | brusttasche"
)
VERSCHLUCKT = (
    "verschluckt* | der kleine | die kleine | kleinkind* | im mund | in den mund | gegessen | röntgen* | fehlt | fehlen | "
    "hund | welpe | notaufnahme | krabbel* | gefressen | abgezählt | baby | in der backe | katze"
)
GREIFER = "knopf | knöpfe | haftplatte* | greifer | klipp* | würfel | perlen | haft* | selbstschließend*"
KLAPPEN = "deckel | *deckel | klappe | maske | abdeckung | schublade | halter | taukappe"

VOCABULARY = Vocabulary(
    dangers=(
        (
            "ohrläppchen | lippe | nase | wange | zunge | nasenloch",
            "einen innen | auf jeder seite | beiden seiten | mit butter | wieder ab", NEARBY,
        ),
        (
            "seiten | hälften | teile | verschluss | klammern", "gefunden | zusammen* | getroffen",
            "*daumen | finger* | haut | nagel | dazwischen", NEARBY,
        ),
        (
            "zugkraft | haftkraft | haltekraft | bergetopf | kilo zug | bombenfest",
            any_of(
                ZUSAMMEN, VERLETZT,
                "aus der hand | gehüpft | gesprungen | geknallt | platte | glas | spiegel | daten | karte",
            ),
            NEARBY,
        ),
        (
            "aus der hand", "gehüpft | gesprungen | geflogen | gerissen | gezogen",
            "geknallt | geklatscht | dazwischen | daumen | finger* | platte | glas | spiegel | klebt*", NEARBY,
        ),
        (
            "*daumen | finger* | fingerkuppe* | haut", "dazwischen",
            "geknallt | knallte | zusammen* | geschnappt | schnappte | sprang | gesprungen | gehüpft | zugekracht | hält | "
            "haftet",
            NEARBY,
        ),
        (
            "inbus* | schraubenzieher* | schraubendreher* | zange | messer | taschenmesser | pinzette | schere | "
            "schraube* | mutter | bit | ratsche | werkzeug | *schlüssel | klinge | kugelschreiber",
            "sprang | schoss | hüpfte | satz | sauste | *gezogen | hing | klebte | flog | riss | gerissen | von selbst | "
            "selbständig | schnappte",
            "glas | linse | spiegel | *platte | korrektor | sucher | deckel | ring | halter* | kappe | fangspiegel | "
            "hauptspiegel | objektiv",
            NEARBY,
        ),
        (
            KLAPPEN, "*magnet* | haftet | haftend* | anzieh* | zieht | schnapp* | zuschnapp* | saugt | springt",
            "finger* | *daumen | haut | nagel | kuppe | quetsch* | blase | blut* | werkzeug | schraub* | glas | spiegel",
            NEARBY,
        ),
        (
            "kugeln | chromkugeln | perlen | murmeln | scheibchen",
            "die kleine | der kleine | kind* | enkel* | zuckerl | bonbon* | mund",
            "winzig* | halten | deckel | kappe | schutz | streulicht* | abdeckung", NEARBY,
        ),
        (
            "(zwei|beide*) (hälften|teile|scheiben|stücke|dinger|platten|ringe|klötze|blöcke|pillen|knöpfe|leisten) | "
            "aneinander | gegeneinander | zueinander | aufeinander | zusammen | zuschnapp* | *schnapp* | *schnappte",
            "*schnapp* | *schnappte | knallte* | klatschte* | klackte* | krachte* | sprang* | sprangen | flog* | schossen | "
            "*gesprungen | zusammen* | aufeinander* | schlug* | *geschlagen | wumms | klack | zack",
            "finger* | *fingerkuppe* | *daumen | *daumennagel | nagel | haut | handballen | blutblase* | blut* | "
            "dazwischen | knöchel",
            NEARBY,
        ),
        (
            "*magnet* | neodym* | haft*",
            "deckel | kappe | klappe | spiegel | werkzeug | schraube* | finger* | daumen | haut | nagel | glas | linse | "
            "karte* | handy",
            NEARBY,
        ),
        (
            "klotz | scheibe | würfel | block | stück", "in der linken | in der rechten | linken hand | andere hand",
            "haut | dazwischen | beide | plötzlich | zusammen", NEARBY,
        ),
        ("haltering | halter | deckel | platte", "brusttasche | herz* | drähte zum herzen | taktgeber", NEARBY),
        (
            GREIFER,
            "*sprang* | *schnapp* | nagel | *daumen | finger* | blut* | splitter* | krümel | backe | *schrittmacher* | "
            "taktgeber | defi | baby | verschluckt* | im mund",
            NEARBY,
        ),
        (
            KLAPPEN, "schnappt* | schnapp* | knallt* | knall* | wucht | zu", "nagel | *daumen | finger* | haut",
            "schwarz | blut* | blase | blau | eingeklemmt | dazwischen | *klemm* | gequetscht", NEARBY,
        ),
        (KLAPPEN, "taktgeber | *schrittmacher* | defi | insulin* | baby | verschluckt* | im mund", NEARBY),
        (
            "schere | inbus* | schraubenzieher* | zange | messer | pinzette | *schlüssel",
            "hing dann | hing am | klebte am | flog | sprang", "halter | ring | deckel | platte | maske | ärmel", NEARBY,
        ),
        ("spröde | splitter* | krümel", "würfel | scheiben | kugeln | klötze | aufeinander", NEARBY),
        (MAGNETE, any_of(ZUSAMMEN, VERLETZT, ZERSPRUNGEN, IMPLANTAT, VERSCHLUCKT, HÄNDE, "karte* | uhr"), NEARBY),
        (
            STÜCKE,
            "sprangen | sprang | schnapp* | schnappten | flog* | knallte* | klackte* | aufeinander* | gesprungen | "
            "auseinander*",
            "fingerkuppe* | *daumen | finger* | blutblase* | blut* | dazwischen | haut | nagel | splitter* | zersprungen | "
            "muschel",
            NEARBY,
        ),
        (
            any_of(STÜCKE, "abdeckung | maske"),
            "*schrittmacher* | defi | defibrillator* | insulinpumpe* | herzgerät | hörgerät*", NEARBY,
        ),
        (
            "silberkugel* | kügelchen | *kugeln | würfelchen | scheibchen",
            "fehlt | fehlen | verschluckt* | kleinkind* | der kleine | die kleine | im mund | hund | röntgen*", NEARBY,
        ),
        (
            "inbus* | schraubenzieher* | schraubendreher* | messer | schere | werkzeug | *schlüssel",
            "flog | aus der hand | gerissen | gesaugt | angezogen",
            "ring | haltering | halter* | deckel | glas | linse | spiegel | platte", NEARBY,
        ),
        (
            "festplatte* | lautsprecher* | mikrowelle",
            "finger* | *daumen | blutblase* | nagel | auseinander* | schnapp* | haut", NEARBY,
        ),
        ("neodym*",),
        (
            "*magnet | *magnete | *magneten | *magnets",
            "stark* | *schnapp* | finger* | daumen | *klemm* | quetsch* | karte* | *schrittmacher* | hält | halten | "
            "*deckel | *kappe | *auszug | geklebt | haut | *spiegel | linse | werkzeug* | schraube*",
        ),
        (
            "magnet(deckel|halter|verschluss|kappe|fuß|füße|band|folie|ring)* | "
            "magnetisch* (deckel|kappe|fuß|füße|ring|halter*)",
        ),
    ),
    harmless="magnetisch* (feld|linie)* | erdmagnet* | magnetfeld* | magnetar* | magnetisch* (feld|sturm|pol)* | elektromagnet*",
)
