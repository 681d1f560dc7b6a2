"""German: see `cautions/solvent.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import FLAMME, GESCHLOSSEN
from sitegen.cautions.phrases import any_of

LÖSER = (
    "aceton | isoprop* | *alkohol | lösungsmittel* | lösemittel* | *verdünner | *verdünnung | *benzin | *spiritus | "
    "methanol | ethanol | ammoniak | salmiak* | terpentin* | nitro | nitroverdünn* | nagellackentferner | "
    "(bremsen|kontakt|vergaser|silikon|kalt)reiniger | petroleum | feuerzeugbenzin | entfetter | abbeizer | "
    "desinfektionsmittel | pinselreiniger | diesel | kraftstoff | sprit | schale super | super gebadet | normalbenzin | "
    "waschbenzin | zaponlack* | aus der apotheke | scheibenreiniger | frostschutz*"
)
DÄMPFE = (
    "*sprüh* | *gespritzt | sprühdose* | spraydose* | lack* | *lack | lackiert* | *kleber | geklebt | verklebt | "
    "klebstoff | epoxid* | harz | grundierung | farbe | schwarz (gesprüht|gestrichen) | chlor* | bauschaum | härter | "
    "dämpfe | dunst | lasiert | lasur | holzschutz* | teer | bitumen | gestrichen | carbolineum | imprägnier* | wachs"
)
ÜBEL = (
    "kopfweh | kopfschmerz* | schwummrig | schwindlig* | schwindel* | benommen* | übel | übelkeit | brummschädel | "
    "schädel | tränten | tränen* | brannten | husten | gehustet | duselig | beduselt | rausch | high | umgekippt | "
    "ohnmächtig | weggetreten | rauschig | beschwipst | blümerant | flau | gekratzt | kratzte | schwarz vor augen | "
    "speiübel | aufstehen | sterne, die | in keinem katalog | übergeben | rote augen | augen wie * | komisch | "
    "zunge wie * | torkel* | wankte | schwer im kopf | dumpf | kaum noch | reifen um den kopf | druck im kopf | "
    "kopf schwer | dröhnte | dröhnt | hämmerte | pochte der | summte der kopf"
)
TREIBSTOFF = (
    "*benzin | *spiritus | petroleum | sprit | diesel | brennstoff | gaskartusche* | kartusche* | gasflasche* | kanister | "
    "lampenöl | tank | alkohol"
)
NACHGEFÜLLT = (
    "nachgefüllt | aufgefüllt | nachgekippt | nachgegossen | gegossen | eingefüllt | gekippt | verschüttet | getankt | "
    "betankt | nachgetankt | gewechselt | getauscht | ausgelaufen | nachschütten | nachgeschüttet | umgefüllt | "
    "geschüttet | schwappte* | danebengegangen | übergelaufen | kanister | trichter | nachgeleert"
)
BRENNEND = (
    "brannte | brennt | brennend* | flamme* | heiß* | läuft | lief | laufend* | glüh* | stichflamme* | funke* | verpufft* | "
    "verpuffung | wupp | augenbrauen | angesengt | versengt* | feuer | kerze* | zigarette* | kippe | *ofen | *kocher | "
    "*brenner | laterne | feuerball | heißen zylinder | blau geleuchtet | geleuchtet | selbstgedrehte* | zigarre* | "
    "pfeife | streichholz"
)
KOHLENMONOXID = (
    "holzkohle* | grill | kohlen | glut | gasheizung | gasofen | gasstrahler | heizstrahler | *kocher | gaskocher | "
    "petroleum* | motor | aggregat | generator | auspuff | abgas* | gaslampe* | katalytofen | brenner | heizpilz | "
    "standheizung | öfchen | lämpchen | den wagen laufen | wagen laufen | gasflamme | dieselheizung | einweggrill | "
    "feuerschale | heizer"
)
RAUM = any_of(
    GESCHLOSSEN,
    "zelt | wohnwagen | wohnmobil | bus | kuppel | schuppen | hütte | garage | auto | keller | vorzelt | schlafsack | "
    "kabine | container",
    "vorzelt | zugezogen* | zugesperrt* | alles zu | scheiben beschlagen | innenzelt | biwak*",
)
DAUER = (
    "ganze nacht | über nacht | geschlafen | schlaf* | eingeschlafen | lief | laufen | brannte | glühte | warm | "
    "gemütlich | kuschelig | mollig | aufgewacht | am morgen | durch | summte | brummte | belichten | beschlagen | schnurrte"
)
ÄTZEND = (
    "rohrreiniger | abflussreiniger | ätznatron | natronlauge | lauge | eisenchlorid | eisen iii chlorid | salzsäure | "
    "salpetersäure | schwefelsäure | säure | silbernitrat | versilber* | chlorreiniger | bleiche | ammoniak | "
    "backofenspray | wasserstoffperoxid | entkalker | quecksilber"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "*lack | lack | farbe | teer | wachs | kleber | *verdünnung",
            "herdplatte | kochplatte | angewärmt | erwärmt | erhitzt | flamme | brenner | kerze", NEARBY,
        ),
        (
            "lüftung | schlitze | lüftungsschlitze | kamin | fenster",
            "zugestopft | verstopft | abgeklebt | socken | zugeklebt",
            "heiz* | ofen | kocher | geschlafen | bus | zelt | wohn*", NEARBY,
        ),
        (
            "lasiert | lasur | gestrichen | lackiert | holzschutz* | geklebt | teer* | imprägnier*",
            "tür zu | fenster zu | zugemacht | geschlossen | daneben gesessen | drin gesessen | drin geschlafen | kopf",
            NEARBY,
        ),
        (
            "*benzin | petroleum | *verdünnung | *verdünner | aceton | nitro | terpentin* | *spiritus | entfetter | isoprop*",
            "herd | gasherd | kochte | köchel* | gasflamme | küche | kamin | *ofen | therme | kerze*", NEARBY,
        ),
        (
            "*benzin | petroleum | *spiritus | sprit | diesel | brennstoff | gaskartusche* | kartusche* | gasflasche* | "
            "kanister | lampenöl | feuerzeugbenzin | grillanzünder",
            "feuer | lagerfeuer | holz | scheite* | holzkohle | grill | glut | docht | kocher | ofen | kerze* | flamme* | "
            "zigarette* | kippe | streichholz* | funken | auspuff | heiß* | brenner | laterne | lampe | brannte | "
            "feuerzeug | augenbrauen | angesengt | stichflamme* | verpuff* | wumm*",
            "nach* | gegossen | gekippt | geschüttet | gefüllt | verschüttet | getropft | tropf* | gespritzt | neben | "
            "daneben | direkt | gewechselt | ausgelaufen | leck* | schluck | becher | angesengt | stichflamme* | wumm* | "
            "noch",
            NEARBY,
        ),
        (
            "lackiert | lackieren | lack | gesprüht | kleber | farbe",
            "heizungskeller | heizkessel | brenner | therme | ofen | kamin", NEARBY,
        ),
        (
            "klappen | *klappen | luken | fenster | schlitz | spalt", "zu | geschlossen* | dicht",
            "petroleum* | *ofen | gas* | heizer | kocher | grill | katalyt*", NEARBY,
        ),
        (
            "nachschütten | nachfüllen | nachgießen | auffüllen | nachgefüllt | nachgekippt",
            "heiß* | zylinder | auspuff | flamme* | glüh* | geleuchtet | stichflamme* | brannte", NEARBY,
        ),
        (
            "(lassen|ließ|ließen|lass) … (laufen|an) | motor … (laufen|lief|an)",
            "alles zu | fenster | scheiben | warm | heizung | schlaf* | garage | zu und",
            "wagen | motor | auto | bus | diesel", NEARBY,
        ),
        (any_of(LÖSER, "super"), "selbstgedrehte* | zigarre* | kippe | zigarette* | pfeife | streichholz* | heiß*", NEARBY),
        ("dosen | dose | mattschwarz | lack | sprühdose* | harz | kleber", GESCHLOSSEN, NEARBY),
        (
            "mattschwarz | zwei dosen | dosen schwarz | sprühdose* | lack",
            "zugesperrt* | geschlossen* | garage | keller | türen zu", NEARBY,
        ),
        (LÖSER, any_of(FLAMME, ÜBEL), NEARBY),
        (LÖSER, GESCHLOSSEN, NEARBY),
        (
            DÄMPFE, GESCHLOSSEN, any_of("*sprüh* | *spritzt | lack* | kleb* | *klebt | farbe | dämpfe | staub* | harz", ÜBEL),
            NEARBY,
        ),
        (DÄMPFE, ÜBEL, NEARBY),
        ("dämpfe | gase | ausdünstung* | schwaden", any_of(ÜBEL, GESCHLOSSEN, FLAMME), NEARBY),
        (TREIBSTOFF, NACHGEFÜLLT, BRENNEND, NEARBY),
        (
            "*kocher | *ofen | *brenner | aggregat | generator | stromerzeuger | laterne | lampe | grill", NACHGEFÜLLT,
            "brannte | brennt | lief | läuft | heiß* | laufend* | während | stichflamme* | noch an | glüh* | augenbrauen",
            NEARBY,
        ),
        (KOHLENMONOXID, RAUM, any_of(DAUER, ÜBEL), NEARBY),
        ("kohlenmonoxid* | co melder* | co warner*",),
        (
            ÄTZEND,
            "spiegel | belag | schicht | glas | handschuhe* | augen | haut | *bad | waschbecken | schimmel | flasche | "
            "regal | gemischt | mischen | brodel* | schäum* | tropfen | alu*",
            NEARBY,
        ),
        ("chlor* | bleiche", "essig | ammoniak | säure | entkalker", NEARBY),
        ("spraydose* | sprühdose* | druckluftspray | kartusche*", FLAMME, NEARBY),
        (
            "lappen | tuch | watte | pinsel", LÖSER, "heizung | haufen | ofen | lampe | ohne handschuhe | bloßen händen",
            NEARBY,
        ),
        (
            "nagellackentferner | (bremsen|kontakt|vergaser|silikon)reiniger | kontaktspray",
            "linse* | *linse | spiegel | optik | glas | fleck* | kleber | aufkleber | platte | sensor | okular* | *filter | "
            "wisch*",
        ),
        (
            "aceton | isoprop* | *alkohol | lösungsmittel* | lösemittel* | *verdünner | *verdünnung | *benzin | *spiritus | "
            "methanol | ethanol | ammoniak | salmiak* | terpentin*",
            "linse* | *spiegel | optik | *wisch* | putz* | geputzt | *reinig* | *tupf* | *spül* | tropfen | tuch | watte* | "
            "lack | sensor | filter* | korrektorplatte | objektiv* | okular* | fett | entfern* | gelöst | kleber | pinsel",
            NEXT,
        ),
    ),
    harmless="alkoholfrei* | lackschicht der * | sternfeuer | feuerkugel | wasserbenzin | moleküle … | "
    "(radio*|spektr*|interstellar*) …",
)
