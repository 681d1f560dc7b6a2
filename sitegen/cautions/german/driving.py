"""German: see `cautions/driving.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import AUF_DER_STRASSE
from sitegen.cautions.phrases import any_of

NICKEN = (
    "*nicken | sekundenschlaf | *lider | augen … (zu|zugefallen|zufielen|schwer|offen*|brannten) | augen zu* | zugefallen | "
    "gähn* | kopf … (sackte|fiel|nickte|gesackt) | kinn auf der brust | hochgeschreckt | schreckte* | aufgeschreckt | "
    "geweckt | aufgewacht | wieder zu mir | weggetreten | autopilot | dösen | gedöst | weggedöst | weggesackt | "
    "schlangenlinien | kinn … brust | lider | alles doppelt | ein auge zu | die augen auf | augen auf* | munter | "
    "sekunde weg | wach (bleiben|halten|zu) | gegen den schlaf | kurz weg | einschlafen | eingeschlafen | einschlief* | "
    "schlief … ein | im schlaf | halbschlaf | schlafend | schläfrig* | schlaf* übermann* | eingenickt | weggenickt | "
    "nickte … ein | geschnarcht | schnarch*"
)
SCHLAFLOS = (
    "kein* schlaf | ohne schlaf | nicht geschlafen | kaum geschlafen | stunden schlaf | schlaflos* | übernächtigt | "
    "übermüdet | todmüde | hundemüde | saumüde | müdigkeit | fix und fertig | durchgemacht | durchwacht* | dritte* nacht | "
    "zweite* nacht | vierte* nacht | nächte* (hintereinander|in folge|am stück) | in folge | "
    "seit (gestern|#|zwanzig|dreißig|vierundzwanzig)* … (auf|wach) | wach seit | stunden (auf den beinen|wach|auf) | "
    "kein auge zu* | wie gerädert | gerädert | nachtdienst* | nachtschicht* | frühdienst* | frühschicht* | doppelschicht* | "
    "stunden seit | zuletzt geschlafen | zuletzt im bett | nicht im bett | schlafen kann ich | schlaf kann warten | "
    "wenig schlaf | kaum schlaf | am stück wach | (so|sehr|völlig|total|ganz|zum umfallen) müde | "
    "müde (nach|heim|wie|und|ins|gefahren) | war müde | völlig erschöpft | ganz kaputt"
)
WACHHALTEN = (
    "fenster … (runter|offen|auf|unten) | radio … (laut|an|voll*) | musik … laut | ohrfeige* | *geohrfeigt | energydrink* | "
    "energy drink* | koffein* | espresso | kaffee | cola | lauthals | gesungen | kaugummi | wange* (geschlagen|gekniffen) | "
    "gekniffen | offene* fenster | kaltes wasser | laut gezählt | gezählt | thermoskanne | pfefferminz* | hörbuch | "
    "lieder | singen | sang | kalte luft | scheibe unten | traubenzucker"
)
ABGEKOMMEN = (
    "rüttelstreifen | leitplanke* | bankett | standstreifen | seitenstreifen | mittellinie | mittelstreifen | "
    "gegenfahrbahn | gegenspur | gehupt | hup* | lkw | laster | graben | bordstein* | ausfahrt (verpasst|übersehen) | "
    "fehlt* … erinnerung | keine erinnerung | erinnere … nicht | weiß nicht (mehr)? … | filmriss | kies | schotter | "
    "rote* ampel | dinge gesehen | nicht da (waren|war) | halluzin* | gespenster | reh* … nicht | randstein | rumpel* | "
    "gerumpelt | alles weg | ist weg | keine ahnung, wie | keine ahnung wie | radkappe | entgegenkommend* | gegenverkehr | "
    "lichthupe | das letzte, woran | fing die straße an | straße … atmen | auto kennt den weg | von allein gefahren | "
    "wie von selbst"
)
OHNE_LICHT = (
    "ohne (licht|scheinwerfer|abblendlicht) | licht aus | scheinwerfer aus | im standlicht | bei mondlicht | "
    "mit der stirnlampe"
)
AUFBRUCH = (
    "zusammengepackt | abgebaut | eingepackt | losgefahren | los | ab nach hause | heim* | *gefahren | nach hause | "
    "aufgebrochen | ins auto | auf die (bahn|autobahn)"
)
FRÜH = (
    "um (halb)? (zwei|drei|vier|fünf|sechs) | um # | morgengrauen | sonnenaufgang | in der früh | "
    "gegen (drei|vier|fünf|sechs) | um acht | um sieben | um neun | berufsverkehr"
)
RÄDER = (
    "*gefahren | fuhr | *fahrt | fahren | autobahn | steuer | lenkrad | landstraße* | bundesstraße* | ausfahrt* | "
    "leitplanke* | lkw | laster | spur | mittellinie | ampel* | raststätte | parkplatz | standstreifen | seitenstreifen | "
    "kilomet* | heimweg | rückweg | tempo* | kurve* | randstein | bordstein* | maut* | auto | wagen | pfosten | "
    "leitpfosten | kreisverkehr | tankstelle | radkappe | beifahrer* | hupe | gas | bremse | kupplung | gang | straße | "
    "scheibenwischer | navi | talwärts | bahn"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "polizist* | polizei | streife | beamte*", "scheibe | klopfte | spur | standstreifen | angehalten",
            "spur | scheibe | auto | ordentlich | schlaf* | straße", NEARBY,
        ),
        ("blinker | gebremst | bremste", "seit der brücke | für nichts | vor nichts | grundlos", NEARBY),
        (
            "passstraße | straße | straßenrand | fahrbahn | heimweg | rückweg | kurve*",
            "der dann ein | die dann ein | das dann ein | gar nicht da | nicht da war | gespenst* | andauernd ein | "
            "jedes mal ein",
            NEARBY,
        ),
        ("(vierte|dritte|fünfte) nacht", any_of(RÄDER, "passstraße | heimweg"), NEARBY),
        (
            "das letzte, woran | woran ich mich | fing die straße an | die straße (atmete|schwamm|wackelte|verschwamm) | "
            "auto kennt den weg | das auto fuhr von",
            any_of(RÄDER, "einfahrt | garage | daheim | tor | zweimal | bett"), NEARBY,
        ),
        (
            "bett (auslassen|ausgelassen) | ohne bett | schlaf auslassen | bis zum morgen",
            "stunden (an|nach|heim|zurück|fahrt)* | gleich die * stunden | küste | ampel", NEARBY,
        ),
        ("ampel | kreuzung | stau", "geschnarcht | eingeschlafen | gehupt | geschlafen | eingenickt", NEARBY),
        (
            "alles weg | ist weg | filmriss | fehlt mir | erinnerung",
            "mautstelle | kilomet* | strecke | heimfahrt | rückweg | ausfahrt | bis zur | bis zum", NEARBY,
        ),
        (NICKEN, RÄDER, NEARBY),
        (ABGEKOMMEN, RÄDER, any_of(SCHLAFLOS, NICKEN, WACHHALTEN, FRÜH, "munter | wach | weg"), NEARBY),
        (SCHLAFLOS, "kilomet* | km", NEARBY),
        (WACHHALTEN, RÄDER, "wach | kinn | brust | augen | müde | schlaf* | gesunken", NEARBY),
        ("rüttelstreifen | sekundenschlaf",),
        (
            NICKEN,
            "*gefahren | fuhr | *fahrt | autobahn | steuer | lenkrad | landstraße* | bundesstraße* | ausfahrt* | "
            "leitplanke* | lkw | laster | spur | mittellinie | ampel* | raststätte | parkplatz | standstreifen | "
            "seitenstreifen | kilomet* | gas | heimweg | rückweg | radio | tempo* | kurve*",
            NEARBY,
        ),
        (
            SCHLAFLOS,
            "*gefahren | fuhr | *fahrt | fahren | autobahn | bahn | steuer | lenkrad | landstraße* | kilomet* | km | "
            "heimweg | rückweg | ab nach hause | büro | zur arbeit | arbeit | leitplanke* | ausfahrt",
            "heim* | nach hause | *gefahren | fahren | fuhr | bahn | autobahn | kilomet* | km | büro | arbeit | steuer | "
            "rückweg | leitplanke* | zurück*",
            NEARBY,
        ),
        (
            WACHHALTEN,
            any_of(NICKEN, SCHLAFLOS, "um (drei|vier|fünf|sechs|halb vier|halb fünf) | morgengrauen | sonnenaufgang | wach"),
            AUF_DER_STRASSE, NEARBY,
        ),
        ("fenster … (runter|unten|offen)", "radio … laut | musik … laut | augen", NEARBY),
        (
            ABGEKOMMEN,
            "geweckt | aufgewacht | zu mir | nah | hup* | gehupt | erinnerung | erinnere | weiß nicht* | verpasst | knapp | "
            "eingenickt | augen | müde | nacht",
            AUF_DER_STRASSE, NEARBY,
        ),
        (
            "(letzten|letzte) * kilomet* | (letzten|letzte) (stunde|halbe)* | heimweg | heimfahrt | rückfahrt",
            "erinner* | filmriss | weiß … nicht | weg | verschwommen", NEARBY,
        ),
        ("wie ich (heim|nach hause|zurück)* …", "weiß … nicht | keine ahnung | rätsel*", NEARBY),
        (
            OHNE_LICHT, "*gefahren | gerollt | fuhr | feldweg | weg | auto | straße",
            "auto | *gefahren | gerollt | fuhr | nachtsicht | dunkeladapt*", NEARBY,
        ),
        (AUFBRUCH, FRÜH, "büro | arbeit | schicht | vorlesung | dienst | schreibtisch | besprechung", NEARBY),
        ("bier | biere | wein | glühwein | schnaps | radler", "*gefahren | ans steuer | fuhr", NEARBY),
        (
            "*gefahren | *fahrt | fuhr* | *fahren | autobahn | zurück ging es | kilometer",
            "müdigkeit* | hundemüde | todmüde | übernächtigt",
            "*heim* | nach hause | zurück* | kilometer | auto* | zurück ging es",
        ),
        (
            "autobahn | landstraße | lenkrad | am steuer | heimweg",
            "eingenickt | eingeschlafen | einschlafen | nickte | schläfrig* | schlief | müde | übermüdet | augen | gähn* | "
            "wach",
        ),
        ("am steuer", "eingeschlafen | schlief | einschlafen | müde | augen | *nickt | wach"),
        ("sekundenschlaf",),
        (
            "*gefahren | *fahrt | fuhr* | *fahren", "*heim* | nach hause | zurück* | kilometer | km | rückfahrt",
            "übermüdet | müde | eingeschlafen | schlaflos* | ohne schlaf | stunden schlaf | nicht geschlafen | "
            "kaum geschlafen | durchwacht* | durchgemacht* | augen | gähn* | wach | "
            "um (halb)? (zwei|drei|vier|fünf|sechs) | morgengrauen | fenster offen | in einem stück | kaffee",
            NEXT,
        ),
    ),
    harmless="dann fuhr uns * | fuhr uns | fuhr mich | ausgeschlafen … | ausgeschlafen* | geschlafen bis | erst geschlafen | "
    "schlafsack* | schlafzimmer | nachführung … | "
    "(kamera|rechner|montierung|laptop|kuppel) … (aufgewacht|eingeschlafen|geweckt) | bildfahrt | "
    "(motor|auszug|fokussierer) (fuhr|fährt|gefahren)* | milchstraße* | sternstraße* | staubband* | "
    "(nachführung|montierung) (lief|fuhr) | (heimfahrt|rückfahrt) von der tagung",
)
