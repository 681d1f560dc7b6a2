"""German: see `cautions/electrical.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.phrases import any_of

STECKER = (
    "*stecker* | *steckdose* | *kabel* | kupplung | mehrfach* | *verteiler* | verlängerung* | *leiste | adapter* | "
    "*leitung* | schalter | lichtschalter | dose | kabeltrommel*"
)
NETZTEIL = (
    "*netzteil* | trafo* | *netzgerät* | wechselrichter* | ladegerät* | heizlüfter* | regler | schaltnetz* | steuerkasten | "
    "stromversorgung"
)
DRÄHTE = (
    "draht | drähte* | ader | adern | litze* | kabel* | strippe | leitung* | phase | nullleiter | klingeldraht | "
    "lautsprecherkabel"
)
NASS = (
    "regen* | nieselregen | nieselte | pfütze* | nass* | tau | taunass* | feucht* | schnee* | eimer | blumentopf | "
    "plastiktüte | tüte | gras | wiese | schlamm* | teich | barfuß | tropf* | gießkanne | wasser"
)
SCHLAG = (
    "kribbel* | *knistert* | knister* | brummt* | gefunkt | funkt* | funken* | gewischt | "
    "(einen|eine) (schlag|gewischt|geschossen) | stromschlag | *schmort* | *britzel* | gezwiebelt | knallte | geknallt | "
    "blitz | verbrannt* | (wird|wurde) … (warm|heiß) | riecht | roch | lichtbogen | zuckte | blitzt | blitzte | "
    "blaue* stern* | nach fisch | fischig | ozon | bis zum ellbogen | gerissen | in den arm | bizzel*"
)
GEÖFFNET = (
    "(auf|offen)geschraubt | aufgemacht | geöffnet | deckel (ab|runter) | aufgeschraubt | offen* | "
    "gehäuse … (auf|ab|offen) | zerlegt | aufgehebelt"
)
UNTER_STROM = (
    "unter (strom|spannung) | eingesteckt* | nicht ausgesteckt | laufen* | im betrieb | eingeschaltet* | "
    "ohne auszuschalten | am netz"
)
GESTOCHERT = (
    "schraubenzieher* | schraubendreher* | *gemessen | messen | elko* | *kondensator* | gelötet | *gebogen | gestochert | "
    "multimeter | klemmen | getauscht"
)
VERBUNDEN = (
    "angezapft | *gedreht | *zwirbelt | verzwirbelt | verdrillt | *gelötet | isolierband | klebeband | panzerband | "
    "lüsterklemme* | geflickt | abgezweigt | abisoliert | *gebastelt | blank* | gartenschlauch* | zusammengesteckt | "
    "abgeschnitten | gespleißt | marmeladenglas | einmachglas | verbunden | zusammengeschlossen"
)
SICHERUNG = "*sicherung* | fi | fi schalter* | *automat | schutzschalter*"
UMGANGEN = (
    "überbrück* | alufolie | nagel | draht | größere* | stärkere* | dickere* | festgeklemmt | umgangen | fliegt | flog* | "
    "welche | ausgebaut | büroklammer*"
)
ERDE = "schutzleiter* | erdung* | erde | gelbgrün* | grüngelb* | gelb grün* | grün gelb* | schutzkontakt*"
GETRENNT = (
    "abgeknipst | abgezwickt | abgeklemmt | gekappt | ab | abgeschnitten | weggelassen | abgeklebt | durchtrennt | lose | "
    "fehlt* | ohne | nicht angeschlossen | *brumm*"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "kabel | stecker | drähte | leitung", "selbst (getauscht|gewechselt|angeschlossen|repariert)* | zwei drähte",
            "gehäuse | zwickt | kribbelt | kitzelt | lüfter | lampe | heizung | schutzleiter", NEARBY,
        ),
        ("gehäuse | griff | klinke | metall", "zwickt | kribbelt | kitzelt | beißt", NEARBY),
        (
            "drähte | draht | adern | kabel | leitung", "rasen | wiese | hecke | garten | zaun",
            "lampe* | *lampe | glas | marmeladenglas | verbunden | gezogen | vergraben | dose", NEARBY,
        ),
        (
            "grün gelb* | gelb grün* | grüngelb* | gelbgrün* | schutzleiter*",
            "ohne | weg* | ab* | zwei adern | nicht | geht auch", NEARBY,
        ),
        (
            "abzweigung | stecker | steckdose | dose | klemme | schalter | leitung | kabel",
            "blitzt | blitzte | funkt* | nach fisch | schmort | ozon", NEARBY,
        ),
        (
            "stecker | steckdose | lampe | schalter", "zerlegt | aufgemacht | aufgeschraubt | auseinander*",
            "in der wand | anderes ende | andere ende | noch (drin|an|eingesteckt)* | ellbogen | gerissen", NEARBY,
        ),
        (
            "strom | stecker | draht | kabel | netz | leitung", "ellbogen | bis zur schulter | hat es mich | in den arm",
            NEARBY,
        ),
        (
            "unter (dem rasen|der wiese|dem gras|der hecke) | durch (den garten|die hecke) | "
            "quer über (den rasen|die wiese|den hof)",
            "strom | draht | kabel | leitung | klingeldraht", NEARBY,
        ),
        (
            "türklinke | klinke | griff | geländer | blech", "prickelt | kribbelt | kitzelt | zwickt",
            "stecker | strom | einsteckt | barfuß | kuppel | hütte", NEARBY,
        ),
        (
            "kupfer | blanke stelle | durchgescheuert | aufgescheuert | isolierung",
            "klebeband | isolierband | schaut | sieht | blank | hält", NEARBY,
        ),
        ("straßenlaterne | laterne | zähler", "angezapft | abgezweigt | vor dem zähler", NEARBY),
        (STECKER, NASS, any_of(SCHLAG, "lag | liegt | stand | hing* | steckt* | unter | umwickelt | eingewickelt"), NEXT),
        (STECKER, any_of(SCHLAG, "zwei steckern | beiden enden | hintereinander")),
        ("kupplung", "nass* | gras | regen | tau | pfütze*", "*knister* | steckt* | lag | brumm* | kabel* | funk*", NEARBY),
        (
            "säule | montierung | stativ* | gehäuse | teleskop | kuppel | rohr | metall",
            "kribbel* | gewischt | stromschlag | schlag bekommen | gezwiebelt | elektrisiert", NEARBY,
        ),
        ("gewischt | stromschlag | elektrisiert | eine gefeuert", "griff | anfassen | angefasst | berühr* | barfuß", NEARBY),
        (NETZTEIL, GEÖFFNET, any_of(UNTER_STROM, GESTOCHERT, SCHLAG), NEARBY),
        (NETZTEIL, UNTER_STROM, GESTOCHERT, NEARBY),
        (
            DRÄHTE, VERBUNDEN,
            any_of(
                SCHLAG,
                "dose | steckdose* | lampe | licht | garage* | hütte | schuppen | haus | sicherung* | keller | notstrom* | "
                "garten | volt",
            ),
            NEARBY,
        ),
        ("(beide|zwei) (adern|drähte) (auf einmal|gleichzeitig|zugleich)* | beide adern",),
        (
            "dose", "strippe | angezapft | adern | sicherung* | kabel | gesetzt",
            "strippe | angezapft | adern | sicherung* | unterputz | draht | drähte", NEARBY,
        ),
        (
            "lampe | licht | deckenlampe | garagenlicht | lichtschalter | lampenfassung",
            "*gedreht | *geklemmt | angezapft | abgezweigt | gehängt",
            "drähte | draht | heizmatte* | heizung | kabel | versorgt | strom", NEARBY,
        ),
        (
            SICHERUNG, UMGANGEN,
            "sicherung* | fi | fi schalter* | *automat | tau | feucht* | raus* | dauernd | immer | läuft", NEXT,
        ),
        (ERDE, GETRENNT, "stecker* | kabel* | brumm* | schutz* | gelbgrün* | grüngelb* | erdung* | netz*", NEARBY),
        (
            "notstrom* | stromerzeuger* | stromaggregat* | generator",
            "speis* | stecker* | haus | schuppen | regen | nass* | rückwärts | steckdose*", NEARBY,
        ),
        (
            "ohne (den)? strom abzuschalten | bei eingeschaltetem strom | unter (spannung|strom)",
            "getauscht | gewechselt | angeschlossen | geklemmt | umgebaut | repariert | gearbeitet", NEARBY,
        ),
        (
            "spaten | bagger | rasenmäher | freischneider | bohrer", "kabel* | leitung*",
            "durch | getroffen | erwischt | gekappt | angebohrt", NEARBY,
        ),
        ("trafo* | transformator* | netzklemme*", "offen* | blank* | geöffnet | angeschlossen"),
        ("*leitung", "zusammengelötet | zusammengedreht | geflickt | verlegt | selbst"),
        ("*steckdose* | schutzleiter* | nullleiter*",),
        ("erdkabel* | verteilerdose* | stromkasten | heizlüfter* | unterverteil*",),
        (
            "*stecker* | *kabel* | verteiler",
            "keller | haus | graben | vergraben | eingegraben | regen | pfütze* | nass* | abgeschnitten | geklemmt | "
            "phase | geflickt | zusammengedreht",
        ),
        (
            "phase | nullleiter | schutzleiter | außenleiter",
            "*klemme | klemmt | *geklemmt | draht | ader* | angeschlossen | gelegt",
        ),
        (
            "*generator | *aggregat | wechselrichter",
            "kabel | lief | läuft | zelt | hütte | abgas* | regen | nass* | angeschlossen",
        ),
        (
            "verlängerungs(kabel|schnur|leitung)* | kabeltrommel* | mehrfachsteckdose* | sicherungskasten | abzweigdose* | "
            "lüsterklemme*",
        ),
        ("netz(spannung|strom|leitung)* | (220|230|240|400) (v|volt) | fi (schalter|schutz)* | fehlerstrom*",),
        ("elektro(fachkraft|installat)* | elektriker*",),
        (
            "*steckdose* | schuko* | strom(leitung|kabel)* | sicherung* | netzteil* | leitungsschutz*",
            "verkabelt | verdraht* | verlegt | angeschlossen | überbrück* | abgeklemmt | installier* | geflickt | nass* | "
            "im regen | im freien | aufgeschraubt | geöffnet | aufgemacht | *kondensator* | *gelötet | ausgetauscht | "
            "montiert | repariert",
        ),
    ),
    harmless="(usb|netzwerk|hdmi|guider|kamera|zwölf volt|12 v) (kabel|stecker)* | tau(heiz|kapp|schutz|band|bänder)* | "
    "lichtschalter … (schild|aus) | (zwölf|12) volt",
)
