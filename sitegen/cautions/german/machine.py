"""German: see `cautions/machine.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.german.circumstances import SCHADEN
from sitegen.cautions.phrases import any_of

MASCHINE = (
    "flex | *winkelschleifer | trennschleifer | trennscheibe* | schleifscheibe* | schruppscheibe* | doppelschleifer | "
    "*kreissäge* | *säge | stichsäge* | bandsäge* | kappsäge* | kettensäge* | motorsäge* | sägeblatt | blatt | "
    "*bohrmaschine | bohrer | akkuschrauber | bohrfutter* | futter | spannfutter | lochsäge* | oberfräse* | fräse* | "
    "fräsmaschine | fräser | drehbank | drehmaschine | drehbankfutter | drehmeißel | spindel | futterschlüssel | "
    "bandschleifer | tellerschleifer | schleifbock | hobelmaschine | hobel | abrichte | multitool | stufenbohrer | "
    "heckenschere | schweißgerät | tischbohrmaschine | ständerbohrmaschine | häcksler | nagler | werkstück | schleifmaschine"
)
OHNE_SCHUTZ = (
    "schutzhaube* | haube | schutzbrille* | brille | gehörschutz | handschuh* | schiebestock | schiebeholz | spaltkeil | "
    "anschlag | zwinge* | schraubstock | freihändig | freihand | mit der (hand|linken|rechten|anderen) | "
    "mit dem (daumen|finger|fuß|knie)* | von hand | festgehalten | gehalten | hielt | halte | einhändig | "
    "auf dem (knie|schoß) | zwischen den knien | ärmel* | schal | krawatte | haare* | zopf | kette | kapuze | ring | ohne | "
    "schutz | runter | abgebaut | abgeschraubt | abgenommen | weggelassen | totmann* | notaus | laufend* | läuft | lief | "
    "noch drehte | dreht | auslaufen* | stecken* | steckte | eingeschaltet | gesprungen* | stumpf | eiert* | unwucht | "
    "leiter | span | späne* | sandalen | überkopf | drehte"
)
GEPACKT = (
    "verfangen | verfing* | erwischt | gepackt | hineingezogen | reingezogen | eingezogen | rückschlag | zurückgeschlagen | "
    "verkantet | *hakt | verhakt* | weggerissen | gerissen | riss | flog* | *geflogen | geschleudert | zersprang* | "
    "zersplittert* | geplatzt | gebrochen | abgerutscht | *rutscht | funken* | splitter* | blut* | genäht | stiche | "
    "fingerkuppe* | finger* | *daumen | auge | augen | handgelenk* | pflaster | verband | schnitt* | *wickelt | "
    "mitgedreht | drehte … mit | mitgerissen | gestoppt | stirn | ohr | hemd | ärmel | verbrannt | in mich hinein | "
    "zahn weg | flog ein zahn"
)
MESSER = (
    "messer | *messer | skalpell | cutter | stechbeitel | stemmeisen | rasierklinge | klinge | blechschere | feile | ahle"
)
GESCHNITTEN = (
    "abgerutscht | *rutscht* | genäht | stiche | blut* | tief | pflaster | verband | sehne | "
    "in den (daumen|finger|ballen|handballen)* | in die (hand|handfläche)* | geschnitten | finger*"
)
BEARBEITET = (
    "geschnitten | schneiden | *bohrt | bohr* | abgeschliffen | *schliffen | *gesägt | poliert | gefeilt | gefräst | "
    "gedreht | gekürzt | weggenommen | *trennt | entgratet | gehobelt | geschnitzt | geschweißt | schnitt | sägte | "
    "feilte | zugeschnitten"
)
WERKZEUG = (
    "bohrer | scheibe | spindel | blatt | zahn | zähne | krümel | späne | schmirgel* | *haube | motor | maschine | "
    "*maschine | werkbank | schraubstock | zwinge | futter | messer | blech | leiste | sperrholz | alu* | platte | stange | "
    "rohr | prisma | schiene | ring"
)
FLEISCH = (
    "finger* | *daumen | knie | kniescheibe | knien | oberschenkel | ärmel | auge | augen | augenhöhe | hemd | pulli | "
    "pullover | hose | jeans | handballen | *ballen | knöchel | handschuh* | nagel | schoß | haare | schal | bart | "
    "schürze | unterarm | stirn | backe"
)
PANNE = (
    "draufgekniet | daraufgekniet | herausgekommen | kam … heraus | löchlein | löcher | stört | schublade | türrahmen | "
    "plötzlich | auf einmal | kürzer | stiche | genäht | blut* | pflaster | zwischen den | abgerutscht | *rutscht | "
    "erwischt | gepackt | verfangen | flog | gerissen | aufgewickelt | zum stehen | stehen gekommen | noch nicht ganz | "
    "augenarzt | splitter* | zu mir her | zum körper"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "handschuhe* | handschuhen", "gedreht | bank | drehbank | bohr* | stange | maschine | spindel",
            "ausgezogen | heiß | erwischt | gepackt | aufgewickelt | weg", NEARBY,
        ),
        (
            "freihändig | von hand | augen halb zu | augen zu", "band | scheibe | schleif* | maschine | flex",
            "staub* | dünner | funken | abgeschliffen | gemacht", NEARBY,
        ),
        (
            any_of(MASCHINE, "hobeleisen | hammer | axt | beil | schere | stanze | presse"), SCHADEN,
            any_of(BEARBEITET, "hand | gehalten | abgerutscht | hinein | rutschte | spart"), NEARBY,
        ),
        (
            "visier | schutzbrille | brille | maske", "ohne | beschlägt | daheim | am haken | in der schublade",
            "zahn | schnitt | funken | scheibe | blatt | bohr* | säge* | späne", NEARBY,
        ),
        ("spart (den|das) (schraubstock|einspannen|festspannen) | ohne einzuspannen | ohne festzuspannen",),
        (BEARBEITET, WERKZEUG, FLEISCH, PANNE, NEARBY),
        (
            WERKZEUG, FLEISCH,
            "draufgekniet | löchlein | kürzer | stiche | genäht | kniescheibe | türrahmen | augenhöhe | zum stehen | "
            "verfangen | erwischt | gepackt | aufgewickelt | augenarzt",
            NEARBY,
        ),
        ("laufende* (spindel|maschine|werkstück|scheibe)", FLEISCH, NEARBY),
        (
            "*haube | schutz | schild", "stört | schublade | abgebaut | im weg | runter | weg",
            "zahn | scheibe | blatt | funken | augen | augenhöhe | säge | flex", NEARBY,
        ),
        (
            MASCHINE, OHNE_SCHUTZ,
            any_of(
                GEPACKT,
                "hand | linken | rechten | handschuh* | brille* | schutz* | schutzhaube* | haube | schiebestock | "
                "schiebeholz | freihändig | freihand | gehalten | festgehalten | hielt | laufend* | knie | finger* | "
                "daumen | ärmel* | futterschlüssel | leiter | span | späne* | zwinge* | einhändig",
            ),
            NEARBY,
        ),
        (
            "flex | *winkelschleifer | trennschleifer | trennscheibe* | *kreissäge* | bandsäge* | kettensäge* | "
            "motorsäge* | *bohrmaschine | bohrfutter* | lochsäge* | oberfräse* | fräse* | fräser | drehbank | "
            "drehmaschine | spannfutter | bandschleifer | hobelmaschine | sägeblatt | futter | stufenbohrer | bohrer | "
            "stichsäge* | schleifscheibe*",
            GEPACKT, NEARBY,
        ),
        (
            "span | späne* | splitter | metallspan*", "finger* | auge | augen | hand | gezogen | geblasen | gepustet",
            "drehbank | bohr* | laufend* | werkstück | metall* | stahl | fräs* | schraube | krankenhaus | augenarzt | "
            "flex | säge",
            NEARBY,
        ),
        (MESSER, GESCHNITTEN, NEXT),
        ("am blatt vorbei* | ans blatt | ins blatt | futterschlüssel | schiebestock | schutzhaube*",),
        (
            "*säge", "leiter | ast | äste | baum",
            "leiter | baum | einhändig | mit einer hand | geklettert | überkopf | gelehnt", NEARBY,
        ),
        (
            "funken*", "hemd | augen | gesicht | bart | brille | hose | stroh | sägemehl | gras",
            "flex* | schleif* | trenn* | schweiß* | stahl | schraube | blech", NEARBY,
        ),
        (
            "geschweißt | schweißen | schweißgerät",
            "ohne (maske|helm|schild|brille) | sonnenbrille | augen zu | sand in den augen | verblitzt | weggeschaut", NEARBY,
        ),
    ),
    harmless="(router|wlan) … | (korn|wind|wasser)mühle* | messer(schneide|schneiden)* | foucault* | ebook | "
    "(log|bild|daten)datei* | (objektiv|okular)messer | messerscharf* | entfernungsmesser | durchmesser* | spindeltrieb | "
    "blatt papier | blatt (des|der|im|mit) * | spektrographenspalt | (belichtungs|winkel|wind|licht|seeing|sqm)messer",
)
