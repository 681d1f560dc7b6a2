"""German: what several dangers have in common, such as who stands near and how cold, dark and wet it is."""

FLUGZEUGE = (
    "*flugzeug* | flieger* | *hubschrauber* | heli | helikopter | pilot* | cockpit* | flugplatz* | flughafen* | "
    "segelflieger* | landebahn* | landeanflug* | airbus | im anflug | blinklicht* | blinkende* (licht*|punkt*) | maschine | "
    "rettungsflieger* | positionslicht* | segelfluggelände | fluggelände | flugfeld | fallschirm* | ballonfahrer | "
    "fluglotse* | flugsicherung | drachenflieger | landelicht* | landescheinwerfer* | positionslampen | rotor* | "
    "propellermaschine* | spätmaschine* | frachtmaschine* | nachtflug* | postmaschine* | rettungsheli | gleitschirm* | "
    "ultraleicht*"
)
ZUSCHAUER = (
    "leute* | kind | kinder* | junge | jungs | mädchen | besucher* | gäste* | nachbar* | gruppe | publikum | zuschauer* | "
    "schüler* | klasse | hund | katze* | katzen | menge | menschen | alle | autofahrer* | windschutzscheibe* | "
    "campingplatz | enkel* | neffe* | nichte* | tochter | sohn | passanten"
)
AUGEN = (
    "auge | augen | gesicht* | stirn | hineingeschaut | hineingesehen | hineinschauen | reingeschaut | reinschauen | "
    "geblendet | blendete* | nachbild* | netzhaut | blinder fleck | schlieren | fleck im (auge|blick) | gelinst | linste | "
    "alles rot | hineingelinst | durch das loch | hineingelugt"
)
HIMMEL = "stern | sterne* | himmel | sternbild* | polarstern | wega | großen wagen | sirius | milchstraße | planet*"
FROST = (
    "minus (#|eins|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|elf|zwölf|*zehn|zwanzig|dreißig)* | grad minus | "
    "-# (°|°c|grad) | -#°c | unter null | frost | *frost | frostig* | gefroren | frieren | *kälte | kalt* | eisig* | "
    "eiskalt* | schnee | (zehn|zwanzig|dreißig|fünfzehn) unter null | bei dreißig unter"
)
DUNKEL = "dunkel* | dunkeln | finster* | stockfinster* | stockdunkel* | ohne (lampe|licht|taschenlampe) | tastend*"
OHNE_LAMPE = (
    "(lampe|stirnlampe|taschenlampe|licht) … (leer|aus|geist|kaputt|tot|unten|vergessen|auto) | "
    "(keine|ohne) (stirnlampe|taschenlampe|lampe|licht)"
)
AUF_DER_STRASSE = (
    "*gefahren | fuhr* | *fahrt | fahren | *autobahn | bahn | landstraße* | bundesstraße* | straße | lenkrad | steuer | "
    "ausfahrt* | kreuzung | spur | mittelstreifen | mittellinie | seitenstreifen | standstreifen | leitplanke* | lkw | "
    "laster | auto | heim | heimweg | nach hause | zuhause | daheim | büro | kilomet* | km | rückweg | arbeit | "
    "kreisverkehr | raststätte | parkplatz | bordstein* | ampel*"
)
HÄNDE = (
    "hand | hände* | finger* | *daumen | zeigefinger* | handgelenk* | knöchel* | kuppe* | fingernagel | handfläche* | linken"
)
GESCHLOSSEN = (
    "(tür|türen|fenster|luken|zelt|luke|klappe*) … (zu|geschlossen*|dicht|verrammelt) | "
    "geschlossene* (tür|fenster|raum|kuppel) | alles (dicht|zu) | bei geschlossen* * | ungelüftet | "
    "ohne (lüftung|zu lüften) | kein* (fenster|lüftung) | abgedichtet | (tür|fenster) zu | kellerraum"
)
FLAMME = (
    "flamme* | kerze* | zigarette* | kippe | geraucht | rauchte | rauchend | feuerzeug | streichholz* | pfeife | "
    "gasheizung | *brenner | *kocher | *ofen | heizstrahler* | *heizung | heizlüfter* | feuer | funke* | funken | glüh* | "
    "glut | brannte | petroleum* | kochplatte | lötkolben | heißluft* | grill | laterne* | föhn | teelicht* | lagerfeuer | "
    "flämmchen | *stövchen* | heizkessel | heizungskeller | wumms | therme | boiler | herd | gasherd | kochte | köchel* | "
    "gasflamme | backofen | kamin | ofenfeuer | bratpfanne"
)
SCHADEN = (
    "schienbein* | zeh | zehe | zehen | zehennagel | schlüsselbein* | rippe* | ellbogen* | ellenbogen | knöchel | "
    "kniescheibe | schädel | augenbraue* | kinn | kiefer | lippe | schläfe | handgelenk* | nase | stirn | wange | backe | "
    "knie | schulter | oberschenkel | wade | ferse | *daumen | daumennagel | fingerkuppe* | genäht | stiche | "
    "blau* fleck* | prellung* | blut* | geblutet | blase | blasen | brandblase* | narbe* | platzwunde* | schramme* | "
    "abgeschürft | schürfwunde* | geschwollen | schwoll | angeschwollen | humpel* | gehumpelt | arzt | ärztin | "
    "krankenhaus | notaufnahme | rettung | sanitäter* | röntgen* | pflaster | verband | schiene am | schlinge | krücke* | "
    "schmerztablette* | salbe | arnika | jod | gehirnerschütterung | haut | hautlappen | beule | veilchen | verstaucht | "
    "gebrochen | pinzette | autsch | aufgeschrien | geflucht | tat weh | weh getan | schmerz* | pocht | pochte | "
    "eisbeutel | nagel | nägel | erste hilfe | in mich | mich hat es | hat es mich | barfuß | sandale* | neun finger | "
    "finger ist"
)
HIER = (
    "ich | mir | mich | mein* | wir | uns | unser* | stativ* | montierung | teleskop | fernrohr | kuppel | zelt | koffer | "
    "*koffer | kiste | stiefel | lager | hütte | auto | wagen | stuhl | ausrüstung | okular* | sucher* | er | sie | sein* | "
    "ihn | ihr | säule"
)
