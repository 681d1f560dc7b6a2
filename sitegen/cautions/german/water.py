"""German: see `cautions/water.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.phrases import any_of

AUSRÜSTUNG = (
    "stativ* | montierung | teleskop | fernrohr | tubus | ausrüstung | gepäck | kamera* | koffer | kisten | rucksack | "
    "schlitten | säule | dobson"
)
NACHGEBEND = (
    "ächz* | knack* | geknackt | knirsch* | krach* | riss | risse | sang | singt | dünn* | trug | trägt | hielt | hält | "
    "gehalten | wasser auf | matsch* | taut* | tauwetter | bricht | brach | eingebrochen | einbrach | loch | zentimeter | "
    "schmolz* | biegt* | bog | nachgab | dumpf* | donner* | wummer* | mürbe | langen ton | nasse* (ring|finger|fleck)* | "
    "in der mitte | sollte (tragen|halten)* | tragen | wasser um | pfütze*"
)
TIEF = (
    "knie* | hüfte* | bauch | brust | stoßstange | achse* | motorhaube | trittbrett | türschwelle | braun* | reißend* | "
    "steigt | stieg | gestiegen | geschwollen | trotzdem | durchgefahren | durchgewatet | gewatet | durch | mitgerissen | "
    "schwapp* | überspült* | voll | hochwasser | schnell | strömung | auspuff | tief | bis zu* | bis zum | bis über | "
    "eine elle | elle hoch | zog | weiter | betonplatte | fußraum | bugwelle"
)
ABGESCHNITTEN = (
    "abgeschnitten | auflaufend* | kam | kommt | stieg | steigt | rückweg | weg … weg | nasse füße | knöchel* | knietief | "
    "hüfte | umspült* | überspült* | eingeschlossen | zurück* | gewatet | voll | volllief | beeil* | welle* | gischt | "
    "eingesunken | versunken | steckte* | steckengeblieben | gezeitentabelle | gezeitenkalender | schwammen | schwimm* | "
    "frei | aufgeschwommen | unter wasser | knie"
)
GLATT = (
    "glitschig* | schmierig* | glatt* | rutschig* | nass* | algen* | moos* | vereist* | morsch* | ohne geländer | "
    "kein geländer | *rutscht* | *gerutscht | ausgeglitten | hineingefallen | reingefallen | beinahe | fast im | "
    "schaukel* | schwank* | wackel* | fehlt* | lücke* | gefallen | platsch* | seife | spiegelglatt | grün | "
    "geländer aufhört | seitlich | geschlurft | hinausgeschlurft | auf dem hosenboden"
)
BOOT = (
    "boot | *boot | kahn | kanu | kajak | floß | luftmatratze | tretboot | nachen | zille | paddelbrett | ruderboot | "
    "schlauchboot"
)
TREIBEND = (
    "weste* | ohne licht | im dunkeln | dunkel* | nacht* | insel | überladen | kentern | gekentert | kenter* | schaukel* | "
    "schwapp* | ausrüstung | stativ | knien | gepaddelt | gerudert | wellen | aufgestanden | wind | abgetrieben | strömung"
)
SUMPF = "moor | sumpf | morast | schlick | schlamm | matsch | treibsand | torf | ried"
VERSUNKEN = (
    "eingesunken | versunken | gesunken | steckte* | stecken | bis (zu|zum|über|an) * | stiefel | herausgezogen | "
    "festgesteckt | einsank | sank"
)
WAGENTEILE = (
    "motorhaube | scheinwerfer* | türen | türschwelle* | türgriff* | trittbrett | fußraum | fußmatte* | radkasten | "
    "radkästen | kotflügel | auspuff | reifen | räder | radnabe* | nabe* | achse* | stoßstange* | kühlergrill | wagen | "
    "auto | geländewagen | allrad | bus | traktor | transporter | fahrertür"
)
HOCHWASSER = (
    "wasser | bach | fluss | furt | brücke | strömung | braun* | schwamm | aufgeschwommen | aufschwimm* | gurgel* | "
    "blubber* | *gluckert* | überflutet* | überschwemmt* | hochwasser | pegel* | durchfahrt | gewitter | bachbett | "
    "flutmulde | dammbruch | wehr"
)

VOCABULARY = Vocabulary(
    dangers=(
        ("scholle | eisscholle", "ufer | wind | trieb* | schob | armlänge | riss*", NEARBY),
        (
            "geschwommen | schwamm | schwimmen", "nacht* | dunkel* | kamera | stativ | insel | plattform | horizont | sterne",
            NEARBY,
        ),
        (
            "bach | fluss | wasser",
            "über die (trittsteine|steine|brücke|ufer|straße) | gestiegen | angeschwollen | untergehakt | an der hand",
            "stiefel* | getastet | dobson | fernrohr | stativ | hinüber | rüber | gequert | koffer | knie*", NEARBY,
        ),
        (
            WAGENTEILE, HOCHWASSER,
            "*gefahren | fuhr | fuhren | durch | rüber | hinüber | drüber | gequert | querten | "
            "bis (zu|zum|zur|über|an) * | schwapp* | schwamm | trotzdem | gas | warten | erster gang | zweiter gang | "
            "drin | hinein",
            "tief | hoch | bis (zu|zum|zur|über|an) * | schwapp* | schwamm | aufgeschwommen | strömung | braun* | pegel* | "
            "hochwasser | überflutet* | nass* | fußraum | blubber* | gurgel* | gezogen | zog | furt | gewatet",
            NEARBY,
        ),
        (
            "furt | brücke | durchfahrt | straße", "gesperrt* | pegel* | schild | absperrung | schranke",
            "trotzdem | vorbei | durch | drüber | gefahren | hochwasser | wasser | überflutet*",
            "wasser | hochwasser | bach | fluss | überflutet* | pegel*", NEARBY,
        ),
        (
            "schlick | schlamm | watt | morast",
            "stiefel | einsinken | eingesunken | stehen bleibt | stehen bleiben | stecken", NEARBY,
        ),
        (
            "weiher | teich | see | tümpel | kanal", "eine haut | haut | dick genug | fest genug",
            "dick genug | hund | hinterher | kamera | stativ | drauf | hinaus*", NEARBY,
        ),
        ("brücke | hängebrücke | steg", "bretter fehlen | fehlen | morsch* | hochwasser | ohne geländer", NEARBY),
        (
            "um jeden fuß | draußen in der mitte | mitten auf dem | auf dem (see|weiher|teich)",
            "nass* | ton | knack* | wasser | flimmert | dünn* | hält | riss*", NEARBY,
        ),
        (
            "sand | sandbank | strand | watt | buhne | felsen",
            "schwammen | schwimm* | unter wasser | frei | mondaufgang | rückweg | tabelle",
            "stiefel | schuhe | rucksack | stativ | abendessen | mondaufgang | zurück", NEARBY,
        ),
        (
            "betonplatte | furt | brücke | straße | weg | durchfahrt",
            "elle | knie* | hoch | zog | strömung | braun* | wasser",
            "stand es | stand das wasser | zog | wasser | bach | überspült* | strömung", NEARBY,
        ),
        (
            "geländer | bohlen | bretter | ende | steg",
            "grün | spiegelglatt | glitschig* | schmierig* | geschlurft | rutsch*",
            "rohr | stativ | wasser | see | hinaus* | arm | spiegelung | steg", NEARBY,
        ),
        (
            "trittsteine* | steine | stamm | baumstamm", "wackel* | wackelte | rollte | kippte | rutsch*",
            "hinüber | rüber | bach | fluss | koffer | wasser", NEARBY,
        ),
        (
            "ufer | böschung | schneebrücke | wächte", "bein | fuß | eingebrochen | durchgebrochen | hüfte | nachgab",
            "wasser | nass | bach | fluss | see | hüfte", NEARBY,
        ),
        (
            "eis | eisdecke | eisfläche | zugefroren* | scholle*", NACHGEBEND,
            any_of(AUSRÜSTUNG, "ich | wir | mir | uns | ufer"),
            "see | weiher | teich | fluss | stausee | eisdecke | eisfläche | ufer | drauf | auf dem | auf das | aufs | "
            "hinaus* | mitten | mitte | unter (mir|uns|dem|den|meinen)",
            NEARBY,
        ),
        (
            "decke | fläche", "ächz* | knack* | geknackt | riss | wummer*", AUSRÜSTUNG,
            "hielt | trug | knack* | wasser | see | ufer | zentimeter", NEARBY,
        ),
        (
            "bach | furt | wehr | klamm | hochwasser | wildbach | flutmulde | überschwemm* | überflutet* | fluss | priel* | "
            "bachbett",
            TIEF,
            "*gefahren | gewatet | durch | rüber | hinüber | querten | gequert | durchquert | fuhren | fuhr | waten | "
            "überquert",
            "knie* | hüfte* | bauch | brust | stoßstange | achse* | motorhaube | trittbrett | türschwelle | braun* | "
            "reißend* | stieg | gestiegen | geschwollen | trotzdem | gewatet | mitgerissen | überspült* | voll | "
            "hochwasser | schwapp* | bis zu* | bis über | bis an | auspuff | strömung",
            NEARBY,
        ),
        ("flussbett | bachbett | trockenbett | wadi", "gezeltet | zelt* | aufgebaut | geschlafen | geparkt | lager*", NEARBY),
        (
            "flut | ebbe | watt | wattenmeer | priel* | springflut | sandbank | hallig | schlick* | gezeiten* | auflaufend*",
            ABGESCHNITTEN,
            "stativ* | strand | sand | watt | priel* | rückweg | füße | knie* | hüfte* | stiefel | insel | sandbank | "
            "montierung | fernrohr | teleskop | bis zur | bis zum | hallig | gewatet | schlick",
            NEARBY,
        ),
        (
            "strand | felsen | klippen | bucht | mole | buhne*", "welle* | gischt | brandung | flut",
            "nass | mitgenommen | überspült* | umspült* | erwischt | riss | geholt | weggespült | kam | über", NEARBY,
        ),
        (
            "*steg | anleger | anlegesteg | bohlen | kai | mole | slipanlage | ponton* | schwimmsteg | uferkante | "
            "trittsteine | wehr | staumauer | schleuse | buhne*",
            GLATT, NEARBY,
        ),
        (BOOT, TREIBEND, any_of(AUSRÜSTUNG, "nacht* | dunkel* | insel | see | westen | weste"), NEARBY),
        (
            SUMPF, VERSUNKEN, any_of(AUSRÜSTUNG, "ich | wir | stiefel | knie* | hüfte* | nacht"),
            "eingesunken | versunken | steckte* | stiefel | knie* | hüfte* | bis (zu|zum|über|an) * | treibsand | "
            "herausgezogen | festgesteckt | sank",
            NEARBY,
        ),
        (
            "wathose* | watstiefel* | brusttief | hüfttief", any_of(AUSRÜSTUNG, "nacht | dunkel* | see | fluss | wasser"),
            NEARBY,
        ),
        (
            "ohne (schwimmwesten|schwimmweste|westen|rettungswesten) | westen hatten wir keine | "
            "keine (schwimmwesten|westen|rettungswesten)",
        ),
        (
            "eis",
            "trug | trägt | tragfähig | stativ | montierung | mitte | knackte | brach | hinaus* | hinausgegangen | aufgebaut",
            "*see | weiher* | teich* | fluss* | stativ | montierung | ich | wir | uns | mir",
        ),
        (
            "kanu | kajak | schlauchboot | ruderboot | *gerudert | *gepaddelt | paddeln",
            "insel | teleskop | fernrohr | stativ | montierung | nacht | dunkel* | see | fluss | knie* | ausrüstung",
        ),
        ("*gewatet | waten | watete* | (schwimm|rettungs)weste* | (auf|über) (das|dem) *? eis | zugefroren*",),
        ("nass* (planke|steg|brett|stein|fels)*",),
        (
            "*steg | boot | kahn | furt | ufer | strand | flut | floß | mole | kai",
            "stativ | montierung | *fernrohr | teleskop | im dunkeln | nass* | rutsch* | wasser | getragen | gestanden | "
            "aufgebaut | gerudert | planke*",
        ),
        (
            "fluss | bach | see | teich | meer | weiher",
            "gewatet | durchquer* | ausgerutscht | hineingefallen | knietief | gerudert | dünne* eis | geschwommen | "
            "im wasser",
        ),
    ),
    harmless="ebbe im * | welle von * | (flut|welle) (der|von|an) * | gezeiten(schweif|arm|strom|kraft|kräfte|wechsel)* | "
    "sternstrom* | strom der sterne | fluss der milchstraße | meer der * | datenstrom | datenfluss | nebelbank | "
    "wolkenbank | wolkendecke | schneedecke | hochnebeldecke | nebeldecke | eiskristall* | stromausfall* | trockeneis | "
    "eisriese* | (sternbild|eridanus) … | wassermann | flutlicht*",
)
