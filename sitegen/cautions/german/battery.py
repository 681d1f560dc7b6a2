"""German: see `cautions/battery.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import FROST
from sitegen.cautions.phrases import any_of

AKKU = (
    "*akku | *akkus | *zelle | *zellen | batterie | batterien | lipo* | powerbank* | powerstation* | 18650* | 21700* | "
    "starthilfe* | *pack | akkupack* | kraftpaket | akku der *"
)
GEBLÄHT = (
    "*gebläht | *blähte | gebläht* | kissen | rund wie * | beule | delle | ausgebeult* | bauch* | kugelrund | "
    "passt (nicht|kaum)* … | geplatzt | gewölbt | prall | schwanger | ballon* | bauchig | bauchige* | rund an den * | "
    "wölbt* | tickt | (so|ganz|recht|ziemlich) dick | dick (geworden|wie|und) * | ist (dick|dicker) | "
    "dicker (geworden|als) | aufgegangen | aufgequollen | aufgedunsen | weich geworden | keksdose | gewachsen"
)
LADEN = "lad* | *geladen | lädt | *ladegerät* | lader | gehängt | solarpanel | saft | balancer"
LOSE = "lose | *tasche | *taschen | rucksack* | werkzeugkiste | handschuhfach | klapper* | jacke | mantel | hose"
METALL = (
    "*schlüssel* | münze* | kleingeld | inbus* | schrauben* | werkzeug | nägel | messer | metall | feuerzeug | schlüsselbund"
)
HEISS = (
    "heiß | warm | zisch* | roch | riecht | gerochen | süßlich* | gestank | stank | stinkt | rauch* | qualm* | geschmort | "
    "schmorte | brann* | gebrannt | geschmolzen | flamme* | geplatzt | funken | blitz | glüht*"
)
MISSHANDELT = (
    "*lötet | lötkolben | angelötet | messer | gestochen | gebohrt | *gefallen | gequetscht | aufgeschnitten | aufgemacht | "
    "geöffnet | schutzplatine | schutzschaltung | überbrück* | ohne sicherung | falsch* ladegerät | autoladegerät | "
    "alten (rechnern|laptops|notebooks) | ausgeschlachtet | zusammengeklebt | parallel | krokodilklemme* | tiefentladen | "
    "namenlos* | no name | billig*"
)
UNBEWACHT = (
    "über nacht | ganze nacht | unbeaufsichtigt | schlaf* | geschlafen | unterm bett | unter dem bett | neben dem bett | "
    "schlafsack | kopfkissen | hausflur"
)
GEWÄRMT = "*ofen | heizung | kocher | lagerfeuer | föhn | heißluft* | warmwasser* | backrohr | mikrowelle | heizkörper"
BLEI = (
    "*bleiakku* | blei | autobatterie* | starterbatterie* | starterblock | gelbatterie* | gelakku* | lkw batterie* | "
    "traktorbatterie* | bordbatterie* | batterieblock"
)
GAST = (
    "faule* eier* | *blubber* | gluckert* | gast | gasen | zisch* | bett | koje | zelt | *mobil | wohnwagen | hütte | "
    "dicht | fenster | schlaf* | säure | löcher | leitungswasser | nachgefüllt | umgekippt | kerze* | zigarette | müffelt | "
    "gestank | stinkt | knallgas | schwefel*"
)
POLE = "pole | polen | klemmen | kontakte | plus und minus"
KURZ = "*schlüssel | quer | kurzschluss | kurzgeschlossen | blitz | funke* | funken | schraubendreher* | ring | *schweißt"

VOCABULARY = Vocabulary(
    dangers=(
        (
            "zellen | akkus | akku",
            "unfall* | roller | laptops | e bike | schrott | ausgeschlachtet | gebraucht* | sperrmüll | wertstoffhof",
            "klebeband | gelötet | gebündelt | heiß | block | treiben | betrieben", NEARBY,
        ),
        (
            "deckel | gehäuse | kasten | fach",
            "geht nicht mehr zu | schließt nicht mehr | passt nicht mehr | stein darauf | gurt drum",
            "akku* | *akku | zellen | lithium* | batterie*", NEARBY,
        ),
        ("akkukasten | akkufach | akkugehäuse", "geht nicht mehr zu | nicht mehr zu | stein | schließt nicht", NEARBY),
        (
            "schutz* | fühler | sensor | abschaltung | tiefentladeschutz",
            "überlistet | überbrückt | widerstand | ausgetrickst | abgeklemmt",
            "laden | lädt | geladen | akku* | zellen | null", NEARBY,
        ),
        (
            "zellen* | zellenwechsel | akkus | batterien", "fielen | gefallen | rollten | heruntergefallen",
            "feuerwerk | funken | blitz | glüh* | inbus* | werkzeug | schlüssel", NEARBY,
        ),
        (
            "sicherung", "herausgezogen | rausgenommen | weggelassen | überbrückt | entfernt",
            "akku | batterie | bleiakku | zellen", NEARBY,
        ),
        (
            "überbrückungskabel | starthilfekabel | krokodilklemmen | polklemmen",
            "geküsst | berührt | funk* | blitz | stern | knall*", NEARBY,
        ),
        ("kasten | pack | akku | block", "bauchig | wölbt* | tickt | gewölbt", "laden | lädt | muss | noch", NEARBY),
        (
            AKKU, GEBLÄHT,
            "noch | lade | lädt | lad* | geht | volt | gerade | trotzdem | klebeband | passt | gurt | hält | gehäuse", NEARBY,
        ),
        (AKKU, LADEN, FROST, NEARBY),
        ("*zelle | *zellen | 18650* | *akku | *akkus | 21700*", LOSE, METALL, NEARBY),
        ("*zelle | *zellen | 18650* | *akku", "*tasche | *taschen | jacke | hose", HEISS, NEARBY),
        (AKKU, HEISS, any_of(LADEN, MISSHANDELT, "tasche | bett | geblieben | trotzdem"), NEARBY),
        (AKKU, MISSHANDELT, NEXT),
        (AKKU, LADEN, UNBEWACHT, NEARBY),
        (
            AKKU, GEWÄRMT, "kalt* | aufwärm* | aufgewärmt | aufgetaut | wach | angesprungen | vorgewärmt | deckel | gewärmt",
            NEARBY,
        ),
        (BLEI, GAST, NEARBY),
        ("lader | ladegerät | laden | lädt | geladen", "faule* eier* | blubber* | knallgas | schwefel*", NEARBY),
        (POLE, KURZ, "blitz | funke* | funken | *schweißt | kurzschluss | quer", NEARBY),
        ("koffer | gepäck | aufgabegepäck | frachtraum", "*akku* | lipo* | powerbank* | zellen | lithium*", NEARBY),
        (
            "*akku* | batterie | batterien | powerbank* | *zelle | *zellen",
            "roch | riecht | gerochen | heiß* | brannte | gebrannt | geschmort | schmorte | rauch* | ausgebeult* | beule | "
            "heizung | ofen | dicker | explodiert*",
        ),
        ("*bleiakku* | autobatterie* | blei", "gartenhaus | lädt | geschlossene* fenster | schuppen | auto | kofferraum"),
        (
            "*lithium* | li ionen* | lipo* | powerbank*",
            "lad* | *geladen | *ladegerät* | lädt | frost* | minus | kälte | unter null | *tasche* | *gebläht | dicker | "
            "*lötet | *gepäck* | koffer* | schlüssel* | zelt* | *wärm*",
        ),
        (
            "autobatterie* | starterbatterie* | gelbatterie* | blei(akku|batterie|gel|säure)* | "
            "blei (akku|batterie|gel|säure)*",
            "lad* | *geladen | *ladegerät* | lädt | hütte | wohnwagen | wohnmobil | zelt* | bank | bett | kabine | säure | "
            "keller | gehoben",
        ),
        (
            "*akku | *akkus | batterie | batterien",
            "(hosen|jacken|mantel)tasche* | schlüssel* | *lötet | *gebläht | kurzschluss | kurzgeschlossen | ausgelaufen | "
            "säure | wohnwagen | ohne sicherung | geöffnet | aufgeschnitten | funken",
        ),
        (
            "(akku|akkus|batterie|batterien) … (lad*|*geladen|lädt|*ladegerät) | "
            "(lad*|*geladen|lädt) … (akku|akkus|batterie|batterien)",
            "frost* | minus | unter null | zelt* | hütte | schlaf* | über nacht | unbeaufsichtigt",
        ),
    ),
    harmless="(spiegel|solar|gewitter|regen|sturm)zelle* | (spiegel|solar|gewitter|regen|sturm)zellen",
)
