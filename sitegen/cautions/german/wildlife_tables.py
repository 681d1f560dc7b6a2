"""German: the tables of `wildlife.py`."""

TIER = (
    "wildschwein* | bache* | keiler | frischling* | rotte | sau | eber | bär | bären | *bärin | wolf | wölfe* | luchs* | "
    "elch* | hirsch* | bulle* | stier* | kuh | kühe* | mutterk* | rind* | kalb | kälber | weidevieh | herde | hengst | "
    "widder | fuchs* | dachs* | waschbär* | marder | hütehund* | hofhund* | herdenschutzhund* | streunende* | *hund | "
    "hunde | fledermaus | fledermäuse* | ratte* | affe* | pavian* | krokodil* | schwan | gans"
)
KRABBLER = (
    "*schlange | *schlangen | kreuzotter* | *otter | *viper* | skorpion* | *spinne | *spinnen | hornisse* | wespe* | "
    "biene* | hummel* | *schwarm | zecke* | bremse* | mücke* | blutegel | tausendfüßer | skolopender | eichenprozession* | "
    "raupe* | ameise* | feuerqualle* | pelzig*"
)
NAH = (
    "meter | schritte | näher | kam | kamen | vor (mir|uns|dem stativ|der montierung)* | um uns herum | umring* | "
    "umkreist* | eingekreist | angegriffen | angriff | losgerannt | schnaub* | *schnaubt | grunz* | *grunzt | knurr* | "
    "*knurrt | fauch* | *faucht | bell* | bellte* | zisch* | klapper* | *klappert | heul* | schnüffel* | gefüttert | "
    "füttern | brot* | wurst* | würstchen | geworfen | warf | verscheucht | vertrieben | verjagt | gestupst | gestoßen | "
    "stock | besen | stiefel | schuh* | kiste | koffer | *koffer | zelt | schlafsack | jungen | frischling* | kälber | "
    "kalb | nest | stativ | montierung | gestreichelt | streichel* | geblitzt | futter* | näher heran | näher ran | "
    "schnauf* | schnaufte | blies | nüstern | speck* | schwarten"
)
GEBISSEN = (
    "gebissen | biss* | gestochen | stich | stiche | sticht | gezwickt | geschwollen* | schwoll | angeschwollen | "
    "doppelt so dick | dick | roter ring | rote* (ring|kreis|hof) | *röte | wandernd* | zwei (kleine)? (löcher|punkte) | "
    "vollgesogen* | festgebissen | kniekehle | pinzette | taub | fieber | borreliose | tollwut | gift* | allergisch* | "
    "atemnot | pocht* | ausschlag | quaddel* | abgerissen | herausgedreht | gekratzt | wie eine pflaume | blau wie * | "
    "gewehrt | strampelte | abgekratzt | leiste | schwarzes | "
    "rot* (ring|kringel|kreis|kreise|fleck|hof|stelle|scheibe|rand) | *kringel"
)
ZEICHEN = (
    "tatzen* | pfotenabdrück* | spuren | losung | (zwei|grüne|rote|gelbe|leuchtende) augen | "
    "augen … (leucht*|funkel*|glüh*) | es (grunzte|knurrte|schnaubte|raschelte|fauchte|klapperte) | "
    "etwas (grunzte|knurrte|schnaubte|großes|pelziges|warmes|weiches|schweres)* | grunz* | geheul | gebrüll | heulte* | "
    "knurren"
)
BLIND_GEGRIFFEN = (
    "gegriffen | hineingegriffen | griff | hingelangt | hineingelangt | hand hinein | hineingefasst | gefasst | barfuß | "
    "geschlüpft | hineingeschlüpft | angezogen | daraufgesetzt | stein umgedreht | angehoben | hochgehoben | ohne hinzusehen"
)
DUNKLES = (
    "schnaufte | schnaufen | gestreifte | frischlinge | die mama | riesiger kopf | nüstern | hauer | geweih | hörner | "
    "schwarzes etwas | hufe | pelz"
)
TIERISCH = (
    "schnüffel* | schnaub* | *schnaubt | grunz* | *grunzt | knurr* | *knurrt | fauch* | *faucht | zisch* | *zischt | "
    "krabbel* | *krabbelt | wühlt* | kratzspur* | gescharrt | geschlängelt | schlängel* | gebleckt | stachel | gestakst | "
    "getrottet | tappte* | wuselte* | huschte* | scharrte"
)
ESSEN = (
    "essen | kühlbox | kühltasche | brot* | wurst* | würstchen | semmel* | apfel | äpfel | mais | eicheln | krümel | "
    "müll* | mülltonne* | vorräte | vorrat | schokolade | käse | speck* | schinken | honig | erdnussbutter | suppe | "
    "jause | vesper | proviant | kekse* | reste | brotzeit | leberkäse"
)
VERWECHSELT = (
    "(hielt|gehalten für|sah aus wie|dachte|griff nach|aufgehoben) … "
    "(kabel|gurt|schlauch|seil|riemen|stock|ast|wurzel|schnur|heizband|zweig|blatt|handschuh)"
)
TIERE = (
    "pferd | pferde | pony | stute | fohlen | hengst | esel | maultier | ziege* | ziegenbock | bock | widder | lama | "
    "alpaka | kater | katze | iltis | wiesel | marder | hirsch* | reh | rehbock | steinbock | löwe* | tiger | leopard | "
    "büffel | nashorn | nilpferd | elefant* | affe* | pavian* | adler | bussard | elster | möwe* | gänse | gans | schwan | "
    "schwäne | hahn | bulle* | stier* | kuh | kühe* | rind* | kalb | hund | hunde | sau | keiler | bache | dachs | fuchs | "
    "ratte* | robbe* | elch* | murmeltier*"
)
ANGEGRIFFEN = (
    "los auf | auf mich los | auf uns los | auf das stativ los | ist sie auf | ging … los | angegriffen | attackiert | "
    "getreten | trat nach | ausgeschlagen | gestoßen | biss | gebissen | geschnappt | schnappte | fauchte | faucht | "
    "spuckte | stieg hoch | umgerannt | gejagt | verfolgt* | gekratzt | gehackt | aufgespießt | versperrt* | nicht vorbei"
)
