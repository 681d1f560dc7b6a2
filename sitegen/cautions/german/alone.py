"""German: see `cautions/alone.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.german.circumstances import DUNKEL, OHNE_LAMPE
from sitegen.cautions.phrases import any_of

ORTE = (
    "*nacht* | dunkel | dunklen | empfang | niemand | keiner | *pass | *wald | *berg | steinbruch | gipfel | moor | "
    "klippe | schlucht | dach | feld | straße | küste | hütte | hügel | kilometer | see"
)
VERSCHWIEGEN = (
    "niemand* (bescheid|gesagt|wusste|weiß|erzählt) | keine* (bescheid|gesagt|wusste|weiß|erzählt) | niemandem | "
    "keinem gesagt | ohne (bescheid|zettel|ein wort|nachricht) | kein* zettel | "
    "(frau|mann|mutter|eltern|familie|alle|daheim|freundin|freund|sie) … (glaubt*|denkt|dachte*|meint*|meinten|glaubten|"
    "dachten) | davongeschlichen | weggeschlichen | rausgeschlichen | hinausgeschlichen | fortgeschlichen | "
    "keiner (weiß|wusste|ahnt) | niemand (weiß|wusste|ahnt|erwartet*|vermisst*) | offiziell | angeblich | "
    "keiner (vermisst|erwartet)* | in wahrheit | tatsächlich"
)
EINSAM = (
    "allein | alleine | mutterseelenallein | nur ich | ganz für mich | einsam* | niemand sonst | keiner sonst | "
    "keine menschenseele | weit und breit | kein mensch | nächste* (haus|hof|dorf|ort|straße|hütte|mensch|licht)* | "
    "niemand (da|in der nähe) | keine seele | mit mir selbst | ich und die | ich und der"
)
ABGESCHNITTEN = (
    "kein* (empfang|netz|handy|telefon|balken) | "
    "(handy|telefon|funk|akku) … (leer|tot|aus|daheim|zuhause|auto|vergessen|ladegerät|küchentisch) | "
    "ohne (empfang|netz|handy|telefon) | funkloch* | eine stunde (weit|weg|zu fuß)* | stunden (zu fuß|entfernt|weit) | "
    "forststraße | nur noch notruf | notruf"
)
GELÄNDE = (
    "kante | *kante | rand | abgrund | abhang | steilhang | *hang | klippe* | schlucht | klamm | geröll* | felsband | "
    "steinbruch | bruch | stollen | *schacht | bunker | ruine | grube | tagebau | grat | gipfel* | *berg | bergen | *pass | "
    "hochebene | moor | wald | wüste | sims | vorsprung | hinabgeht | hinab | hinunter | runtergeht | runter | tief | "
    "absturz | turm | alm | joch | sattel | felsen | fels | karst | gletscher | vulkan | krater | düne* | kies | halde | "
    "wildnis"
)
MISSGESCHICK = (
    "umgeknickt | umknickt* | knöchel | verstaucht | gestolpert | stolper* | *rutscht* | *rutschte | gestürzt | "
    "hingefallen | gefallen | wegrieselte | bröckel* | gebröckelt | nachgab | nachgegeben | wegbrach | verlaufen | "
    "verirrt | stecken* geblieben | steckengeblieben | eingesunken | festgefahren | knie | blut* | gebrochen | humpel* | "
    "gehumpelt"
)
TASTEN = (
    "*tastet | tastend | getastet | *gehangelt | entlang* | auf allen vieren | gekrochen | geklettert | gestiegen | "
    "gelaufen | gegangen | gefolgt | abstieg | aufstieg | hinauf* | hinunter* | über den zaun | zaun"
)
VERBOTEN = (
    "betreten verboten | absperrung | absperrband | zaun | warnschild | sprengung* | schranke | lebensgefahr | "
    "sperrgebiet | verbotsschild | gesperrt*"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "felsen | grat | wand | schrofen | schlucht | geröll | gipfel",
            "nebel | abkürzung | wolke* | verstiegen | verlaufen",
            "handy | notruf | zurück | nacht | dunkel* | allein | abgrund", NEARBY,
        ),
        (
            "dach | balken | boden | treppe | dielen",
            "alte* mühle | ruine | scheune | verfallen* | turm | bunker | silo | fabrik",
            "hält | halten | nägel | morsch | löcher | knarr* | fehlen", NEARBY,
        ),
        (
            "aufseher | wächter | ranger | tor | zaun | schranke",
            "loch | lücke | sperrt | gesperrt | drüber | bis (montag|dienstag|mittwoch|donnerstag|freitag|morgen)",
            "schacht | grube | bruch | stollen | kante | niemand weiß | keiner weiß | brunnen | abgrund", NEARBY,
        ),
        ("loch im zaun", "schacht | grube | bruch | dunkel* | nacht | stativ | steinbruch | stollen", NEARBY),
        (
            "keiner (ahnt|weiß|wusste), wo ich | niemand (ahnt|weiß|wusste), wo ich | keiner ahnt | niemand ahnt | "
            "unauffindbar",
        ),
        (
            "schritt zurück | schritt rückwärts | ferse | zurückgetreten | nächste schritt",
            "kein* (fels|boden|halt) | ins leere | nichts | luft", NEARBY,
        ),
        ("sendemast* | funkmast* | handymast*", "kein* | weit und breit | kilometer", NEARBY),
        (
            "grube | steinbruch | bruch | schacht | kante | abbruch",
            "kein* zaun | ohne zaun | kein geländer | schritte* gezählt | schritte",
            "stativ | nacht | dunkel* | sternenlicht | aufgebaut", NEARBY,
        ),
        (
            "im plan stand | ausgemacht war | angekündigt", "gegangen bin ich | bin ich auf | anderen | sendemast* | empfang",
            NEARBY,
        ),
        (
            "links | rechts | daneben | darunter", "gar nichts | nichts mehr | luft | leere | tief",
            "pfad | fels | hand | steig | weg | kante", NEARBY,
        ),
        (
            "habe ich gesagt | hab ich gesagt | sagte ich",
            "stunden später | gerät | leer | kar | gipfel | grat | steinbruch | wald", NEARBY,
        ),
        (
            VERSCHWIEGEN,
            any_of(
                ABGESCHNITTEN,
                "steinbruch | grat | gipfel | klippe* | schlucht | moor | wald | *berg | bergen | kante | abgrund | "
                "hochebene | alm | pass | bunker | stollen | ruine | bruch | halde | joch | tagebau",
            ),
            NEARBY,
        ),
        (
            EINSAM,
            any_of(
                ABGESCHNITTEN, MISSGESCHICK,
                "abgrund | klippe* | schlucht | steinbruch | stollen | schacht | felskante | geröll* | grat | hochebene",
            ),
            NEARBY,
        ),
        (
            ABGESCHNITTEN, GELÄNDE,
            any_of(
                MISSGESCHICK, DUNKEL, EINSAM, VERSCHWIEGEN,
                "nacht | bis (drei|vier|fünf|sechs) | aufgebaut | stand ich | saß ich | morgen",
            ),
            NEARBY,
        ),
        (
            OHNE_LAMPE,
            "kante | *kante | abgrund | abhang | schlucht | geröll* | felsband | steinbruch | grat | abstieg | steig | "
            "pfad | hang | gipfel | wald | fels | felsen",
            any_of(TASTEN, MISSGESCHICK), NEARBY,
        ),
        (
            "abgrund | klippe* | steilkante | felskante | bruchkante | steinbruch | kante | hinabgeht | runtergeht | "
            "hinab | steilhang",
            "schritte | schritt | hinter (mir|dem|uns) | zentimeter | meter | bröckel* | wegrieselte | kies | nachgab | "
            "beinahe | fast | gemerkt | rückwärts | zurückgetreten",
            "stativ | nacht | aufgebaut | dunkel* | okular | horizont | fernrohr | montierung | stand | geht es | teleskop",
            NEARBY,
        ),
        (
            VERBOTEN,
            "steinbruch | bruch | bunker | stollen | flugplatz | turm | ruine | grube | tagebau | kante | schacht | silo | "
            "staumauer | hinab",
            NEARBY,
        ),
        (
            "festgefahren | steckengeblieben | eingesunken | liegengeblieben",
            "niemand | keiner | kein* (netz|empfang) | montag | zu fuß | allein", NEARBY,
        ),
        (
            "niemand sonst | keiner sonst | keine menschenseele | mutterseelenallein | niemandem (bescheid|gesagt) | "
            "ohne bescheid",
            "alm | berg* | *pass | wald | moor | nacht | hütte | gipfel | feld | netz | empfang | straße | kilometer | "
            "hügel | see | morgen",
        ),
        ("(ich|wir|er|sie|war|bin|stand|saß) … (allein|alleine) | (allein|alleine) … (ich|wir)", ORTE),
        ("(niemand|keiner) wusste (wo|dass) (ich|wir) | (niemand|keiner) wusste, (wo|dass) (ich|wir)",),
    ),
    harmless="bildrand | am rand (der|des) (bildes|feldes|galaxie|wolke)* | rand des (bildes|feldes|nebels|mondes|chips)* | "
    "kante des (chips|sensors|bildes|spiegels) | kantenstellung | tiefpass | hochpass | bandpass | "
    "(nicht|nie|niemand|keiner|von|schon|liegt|steht) (allein|alleine) | lass* … (allein|alleine) | "
    "(allein|alleine) (schon|durch|mit) | (allein|alleine) in (einem|dem|ihrem|seinem) *? (feld|bild)*",
)
