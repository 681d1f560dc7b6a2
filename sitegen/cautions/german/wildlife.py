"""German: see `cautions/wildlife.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import HIER
from sitegen.cautions.german.wildlife_tables import (
    ANGEGRIFFEN,
    BLIND_GEGRIFFEN,
    DUNKLES,
    ESSEN,
    GEBISSEN,
    KRABBLER,
    NAH,
    TIER,
    TIERE,
    TIERISCH,
    VERWECHSELT,
    ZEICHEN,
)
from sitegen.cautions.phrases import any_of

VOCABULARY = Vocabulary(
    dangers=(
        (
            "schwan | schwäne | gans | gänse | ganter",
            "unterarm | flügel | fauch* | gefielen nicht | gefiel | gehackt | zwick* | reichweite | nest | seite", NEARBY,
        ),
        (
            "hufe | hufen | hufgetrappel | herde", "dunkel* | hinter der säule | vorbei | beiden seiten | boden bebte | nah",
            NEARBY,
        ),
        (
            "hornisse* | wespe* | biene* | *spinne* | skorpion* | *schlange* | ameise*",
            "schnipp* | wisch* | weg* | blas* | wohn* | eingezogen | nisten | gebaut",
            "sucher* | *halterung | okular* | auszug | kuppel | kasten | koffer | spalt | handschuh | stiefel | hand | "
            "finger",
            NEARBY,
        ),
        (
            "lämmer | kälber | fohlen | jungen | kitze", "vater | mutter | widder | stier | bock | hengst",
            "delle | beule | schaute mich an | gesenkt* | schnaub* | scharrt* | gestoßen | hörner", NEARBY,
        ),
        (
            "rot* (ring|kringel|kreis|kreise|fleck|flecken|hof|stelle|scheibe|rand) | kringel | *röte",
            "wade | schenkel | oberschenkel | knie | kniekehle | bein | arm | schienbein | bauch | hals | leiste | haut | "
            "rücken | achsel*",
            NEARBY,
        ),
        (
            "im hohen gras | in der wiese | im gras | im farn | durchs gebüsch | unterholz",
            "kniekehle | wade | leiste | achsel* | haut | bein",
            "rot* | juckt* | punkt | kringel | ring | beinchen | festgebissen | schwarz* | stich | biss | gezogen | pinzette",
            NEARBY,
        ),
        (
            "(zwei|beide) … (punkte|löcher|stiche|zähne|male|einstiche|pünktchen)",
            "handgelenk | hand | finger | daumen | knöchel | wade | bein | arm | fuß | hals", NEARBY,
        ),
        (TIERE, ANGEGRIFFEN, HIER, NEXT),
        (
            "hundert davon | dutzende davon | ein schwarm | wolke davon | summ* | brumm*",
            "lippe | lid | augenlid* | gesicht | hals | wie eine (zwetschge|pflaume|kartoffel) | gestochen | stich | "
            "stiche | geschwollen",
            NEARBY,
        ),
        (
            "lippe | lid | augenlid | hand | finger | daumen | ohr | nase | fuß | knöchel",
            "wie eine (zwetschge|pflaume|kartoffel|wurst|melanzani|aubergine) | wie ein (ballon|ei|tennisball|golfball) | "
            "bis zum (handgelenk|ellbogen|knie) | doppelt so dick",
            NEARBY,
        ),
        (
            "viech* | vieh | biest* | holzbock | blutsauger* | sauger | krabbeltier* | tierchen | zeckenzange* | "
            "zeckenkarte*",
            "bein | wade | knie | kniekehle | schenkel | haut | arm | hals | leiste | achsel* | bauch | rücken | kopf | "
            "eingebohrt | festgebissen | gezogen | gedreht | herausgedreht | gesaugt | drin | steckt* | stich | gestochen | "
            "gebissen",
            NEARBY,
        ),
        (
            "kopf | rest | beißwerkzeug*", "drin | dringeblieben | stecken* | abgerissen | abgebrochen",
            "haut | wade | bein | knie | pinzette | finger* | gezogen | herausgedreht | leiste | achsel* | bauch", NEARBY,
        ),
        ("eingebohrt | festgesaugt | festgebissen | vollgesogen* | borreliose | wanderröte | fsme",),
        (
            "wie (ein|eine|einer|von einem) (dorn|nadel|nadelstich|splitter|nagel|brennnessel|biene|wespe) | dorn | "
            "brennnessel*",
            "finger | daumen | hand | knöchel | fuß | wade | bein | arm | ferse",
            "geschwollen | schwoll | dick | taub | kribbel* | blau | pocht* | zwei | punkte | steif | übel | schwindlig | "
            "stein | holz | plane | spinnweb*",
            NEARBY,
        ),
        (
            any_of(DUNKLES, ZEICHEN, TIERISCH),
            any_of(
                ESSEN,
                "geworfen | warf | geklatscht | gerufen | geschrien | verscheucht | gefüttert | selfie | blitz* | lampe | "
                "still gestanden | erstarrt | gerannt | losgerannt | näher | meter | zwischen | süß | niedlich | herzig",
            ),
            HIER, NEARBY,
        ),
        (
            ESSEN,
            "tatzen* | pfoten* | kratzspur* | zerfetzt | zerrissen | aufgerissen | verschleppt | ausgeräumt | geplündert | "
            "spuren | umgeworfen | weg",
            "zelt | draußen | offen | auto | wieder | nacht | morgen | lager | hängen | vergessen",
            "tatzen* | pfoten* | kratz* | groß* | riesig* | spuren | zerfetzt | verschleppt | bär* | brumm* | schnauf*",
            NEARBY,
        ),
        (
            VERWECHSELT,
            "bewegte* | zisch* | warm | glitt | hand | biss | züngel* | kopf | ringel* | lebt* | losgelassen | fallen | "
            "zähne",
            NEARBY,
        ),
        (
            "stich | stiche | zwicken | gestochen | gebissen | biss | gepiekst | pieks",
            "finger | *daumen | hand | knöchel | handgelenk | lippe | lid | ohr | fuß | zeh | wade | hals | bein | arm",
            "taub | kribbel* | blau | schwarz | dick | pocht* | geschwollen | schwoll | doppelt | zwei | arzt | "
            "schwindlig | übel | fieber | heiß | steif | gegriffen | koffer | holz | stein | handschuh | stiefel | gras | "
            "plane | weiter*",
            NEARBY,
        ),
        (
            "(schwarz*|dunkl*|klein*|winzig*|braun*) "
            "(punkt|pünktchen|fleck|ding|muttermal|leberfleck|stecknadelkopf|korn|perle|knubbel|etwas)",
            "bein | beine | beinchen | bewegt* | wandert* | krabbel* | geht nicht ab | ging nicht ab | sitzt fest | "
            "festgesaugt | steckt* | gewachsen | dicker | juckt*",
            "haut | knie | kniekehle | bein | schenkel | oberschenkel | arm | bauch | hals | leiste | achsel* | knöchel | "
            "wade | socke* | rücken | nacken | haar*",
            NEARBY,
        ),
        (
            "untermieter* | blinde* passagier* | mitbringsel | anhängsel | souvenir | mitbewohner* | gast",
            "knie | kniekehle | bein | haut | schenkel | achsel* | leiste | bauch | hals | wade | socke | pinzette | blut | "
            "kopf",
            "gras | wiese | farn | gedreht | gezogen | öl | klebstoff | pinzette | kopf | beinchen | dick | vollgesogen | "
            "festgebissen | abgekratzt | mitgebracht | juckt*",
            NEARBY,
        ),
        (
            "*röte | roter | rote | ring | kreis | hof | fleck",
            "wade | schenkel | oberschenkel | knie | kniekehle | bein | arm | schienbein | bauch | hals | leiste | haut",
            "wächst | gewachsen | wandert | größer | breitet | handteller* | woche* | seit der | wiese | juckt* | "
            "heller mitte",
            NEARBY,
        ),
        (
            "hund | hunde | hofhund* | streuner* | köter", "knurr* | fletsch* | bell* | zähne | kette | halsband | los",
            "mich | mir | uns | wir | ich", NEARBY,
        ),
        (
            TIERISCH, "stativ | zelt | zaun | schuh* | stiefel | gras | familie | kleinen | foto | kiste | autotür",
            "ich | wir | mir | uns | mich",
            "familie | die große | kleinen | zaun | zwischen | nah* | kam | kamen | gefangen | glas | topf | schuh* | "
            "stiefel | mitten",
            NEARBY,
        ),
        ("zwei (punkte|löcher|stiche|zähne|male)", "knöchel | bein | hand | wade | finger | gras | zwicken | steif", NEARBY),
        (
            "zwicken | stechen | stich | biss | pieks",
            "knöchel | wade | ferse | handgelenk | im hohen gras | unter dem (stein|holz)",
            "gras | stein | steif | dick | geschwollen | punkte | taub", NEARBY,
        ),
        ("zwischen (die große|die mutter|kuh|sau|bache) und *",),
        (
            DUNKLES, "näher | foto | ran | zwischen mir | gatter | blies | stativ | kasten | licht | lampe | blitz",
            "ich | mir | mich | wir | uns", NEARBY,
        ),
        (
            "speck* | schwarten | reste | brotreste | würstchen | wurst* | hundefutter | katzenfutter",
            "jede nacht | näher | traut | kommt | holt", "näher | nase | schulter* | er | sie | traut", NEARBY,
        ),
        (
            "stiefel | handschuh | schlafsack | ärmel | schuh | koffer",
            "gewehrt | bewegte | etwas | zappel* | gestochen | gebissen",
            "fuß | hand | finger | blau | dick | pflaume | geschwollen | zeh | etwas", NEARBY,
        ),
        (
            "dusche | leiste | kniekehle | achsel* | hinterm ohr | haaransatz",
            "schwarzes | strampel* | abgekratzt | vollgesogen | beinchen | gezogen | steckte", NEARBY,
        ),
        (
            TIER, NAH, "ich | mir | mich | uns | wir | stativ | montierung | zelt",
            "meter | schritte | näher | kam | kamen | stand | standen | umring* | umkreist* | angegriffen | schnaub* | "
            "*schnaubt | grunz* | *grunzt | knurr* | *knurrt | fauch* | bellte* | heul* | gefüttert | brot* | wurst* | "
            "würstchen | geworfen | warf | verscheucht | vertrieben | verjagt | besen | stock | frischling* | kälber | "
            "kalb | jungen | gestreichelt | geblitzt | schnüffel* | futter*",
            NEARBY,
        ),
        (TIER, "gebissen | biss | tollwut | getreten | angegriffen | umgerannt | gezwickt | geschnappt | schnappte", NEXT),
        (
            KRABBLER, any_of(NAH, GEBISSEN, BLIND_GEGRIFFEN),
            "hand | finger | stiefel | schuh* | *koffer | kiste | zelt | schlafsack | deckel | kasten | kuppel | nest | "
            "gestochen | stich | stiche | gebissen | biss | geschwollen | stativ | montierung | besen | stock | bein | "
            "arm | hals | wade | kniekehle | pinzette | haut | unter | gekrabbelt | zisch* | klapper* | angegriffen | "
            "vertrieben | verscheucht | verjagt",
            NEARBY,
        ),
        (
            ZEICHEN,
            "stativ | zelt | kühlbox | wurst* | würstchen | futter* | müll | näher | rotlicht | geworfen | weitergemacht | "
            "weiterbelichtet | mais | schilf | gebüsch | unterholz | ufer",
            "ich | wir | mir | uns | dann | vor", NEARBY,
        ),
        (
            BLIND_GEGRIFFEN,
            "pelzig* | gestochen | gebissen | stich | biss | dick | geschwollen | schwoll | löcher | bewegte* | weich* | "
            "gezwickt | haarig* | krabbel* | zappel*",
            NEARBY,
        ),
        (
            "roter ring | rote* (ring|kreis|hof) | wanderröte | vollgesogen* | festgebissen* | kopf steckt*",
            "bein | wade | *schenkel | kniekehle | arm | haut | stich | biss | wiese | gras | hals | achsel* | leiste | "
            "bauch | abgerissen | finger* | pinzette",
            NEARBY,
        ),
        (
            "kniekehle | leiste | achselhöhle | wade",
            "saß | steckte | vollgesogen | gezogen | abgerissen | herausgedreht | krabbelte",
            "eine | noch | zecke* | finger* | pinzette | vollgesogen", NEARBY,
        ),
        (
            "*nest | bienenstock | schwarm",
            "besen | stock | gestochert | gesprüht | spray | geschüttelt | abgeschlagen | summ* | brumm* | rollkasten | "
            "kuppel | spalt",
            "wespen* | hornissen* | bienen* | gestochen | kuppel | dach | rollkasten | tubus | kasten | sucher*", NEARBY,
        ),
        ("fledermaus | igel | marder | siebenschläfer", "hand | bloß* | hände* | aufgehoben | finger*", NEARBY),
        ("(hornissen|wespen|bienen)nest* | bienenschwarm*",),
        (
            "wildschwein* | bache | bachen | keiler | *schlange | *schlangen | kreuzotter* | viper* | skorpion* | spinne | "
            "spinnen | bär | bären | wolf | wölfe* | hornisse* | wespe* | bulle | bullen | kühe | elch | elche | stier | "
            "rotte",
            "meter | unter (der|dem) | verjagt | stein | mit der hand | bloße* hand | gebissen | biss | gestochen | stich | "
            "nest | knurr* | fauch* | jungen | kalb | kälber | zelt | hütte | schuppen | *koffer | *kiste | stiefel | "
            "schuh | stativ* | montierung | angegriffen | angriff | wühl*",
            HIER, NEXT,
        ),
        ("zecke | zecken | zecken(biss|stich|kontrolle)*",),
    ),
    harmless="(des|im|am) "
    "(skorpion|skorpions|stier|stiers|löwen|wolf|wolfs|krebs|krebses|bären|widder|widders|adler|adlers|schwan|schwans) | "
    "eulennebel | wolf rayet* | fuchspelz* | krebsnebel | pferdekopf* | wildenten* | "
    "(tarantel|krebs|eulen|schwan|adler|pelikan|fledermaus|elefantenrüssel)*nebel | "
    "schwarm (von|aus) (galaxien|sternen|satelliten)* | sternschwarm | "
    "(sternbild|haufen|nebel|galaxie|kopf|schwanz|stachel|herz) (der|des|im|in)? * | wasserschlange* | "
    "(große|kleine|grosse)* (bär|bären|wagen|hund) | (skorpion|stier|wolf) (geht|steht|stand|ging|hängt|klettert) … | "
    "fangspiegelspinne* | netz der spinnen | spinnen(netz|nebel|arm)*",
)
