"""The words of claims in German."""

from sitegen.claims.vocabulary import Vocabulary, numbered, phrases, words

GERMAN = Vocabulary(
    numbers=numbered(
        "ein,eine,einer,einem,einen,eins zwei,zwo drei vier fünf sechs sieben acht neun zehn elf zwölf", 1),
    ordinals=numbered(
        "erste,ersten,erster,erstes zweite,zweiten,zweiter,zweites dritte,dritten,dritter vierte,vierten,vierter "
        "fünfte,fünften,fünfter sechste,sechsten siebte,siebten achte,achten neunte,neunten zehnte,zehnten", 0),
    months=numbered(
        "januar,jänner,jan februar,feber,feb märz,mär april,apr mai juni,jun juli,jul august,aug september,sep,sept oktober,okt "
        "november,nov dezember,dez", 1),
    weekdays=numbered("montag dienstag mittwoch donnerstag freitag samstag,sonnabend sonntag", 0),
    on_a_day=words("am an"),
    before_day=words("der den dem , . am"),
    aside=words(
        "wird werden würde würden könnte könnten kann können soll sollen sollte sollten muss müssen müsste will wollen wollte "
        "wollten möchte plan pläne geplant planen plane ziel wunsch hoffe hoffen wenn falls sofern bis fehlen fehlt brauchen "
        "braucht bräuchte nötig nächste nächsten nächstes nächster morgen bald vorgesehen erwartet "
        "er jemand man andere anderen anderer freund freunde nachbar nachbarn kollege kollegen kollegin verein besucher buch "
        "bücher forum ihr ihre ihrer seine seiner anderswo "
        "jede jeden jeder jedes immer nie niemals oft meist meistens gewöhnlich üblicherweise normalerweise selten manchmal "
        "gestern früher vorher einst voriges vorigen letztes jahre jahren vergangenes"),
    negations=words("nicht kein keine keinen keiner keinem nie ohne kaum weder"),
    several=words("nächte nächten abende abenden beide beiden beider"),
    at_times=words(
        "als während bis bevor vor nach dann später um gegen ab seit wieder bald endlich schon zuerst anfangs zwischen "
        "aufging unterging kurz gerade da zunächst danach"),
    hedges=words(
        "etwa ca rund fast knapp gut über mehr weniger mindestens höchstens bis ungefähr gegen nahezu beinahe nur jede oder "
        "als vielleicht zwischen - – / × x ~ < > ≈ ± + = # . :"),
    parts=words(
        "erste ersten letzte letzten nächste nächsten andere anderen weitere weiteren übrigen restlichen je pro jede jeden der "
        "dieser von davon vom"),
    between=words(
        "gute guten brauchbare brauchbaren ganze ganzen volle vollen klare klaren mondlose mondlosen lange langen kurze kurzen "
        "einzelne einzelnen verworfene verworfenen schlechte scharfe scharfen helle dunkle dunklen mondhelle mondhellen"),
    seasons=words("winter sommer frühling frühjahr herbst saison"),
    habits=words("steht geht kommt liegt hängt ist sind steigt sinkt erreicht kulminiert"),
    clauses=words(", ; : ( ) und oder aber während wo welche welcher dass weil bis mit hinter"),
    in_picture=words("bild bilder bildes bildfeld feld ecke rand seite arm arme wie des der von"),
    taking=words("genommen aufgenommen gesammelt sammelten belichtet aufgezeichnet gewonnen entstanden"),
    subs=words("aufnahmen einzelaufnahmen einzelbilder einzelbildern belichtungen einzelbelichtungen frames subs"),
    hours=words("stunden"),
    nights=words("nächte nächten"),
    night=words("nacht abend"),
    half_more=(),
    whole=phrases("insgesamt | zusammen | alles in allem | in summe | im ganzen | in der summe"),
    over=words("in aus über während an von"),
    of=words("in durch im mit"),
    belonging=words("von vom des der"),
    light=words("licht belichtung belichtungszeit integration daten integrationszeit"),
    gathering=words(
        "nahmen nahm genommen aufgenommen sammelten sammelte gesammelt behalten behielten verworfen verwarfen verwarf "
        "weggeworfen warfen verloren kamen kam bekam bekamen belichtet belichteten gewonnen kosteten kostete machten gemacht "
        "entstanden ergaben gelangen brachten brachte"),
    kept=words("behalten behielten brauchbare brauchbar verwendet"),
    discarded=words("verworfen verworfene verworfenen verwarfen verwarf weggeworfen verloren verdorben kostete kosteten"),
    filters={
        "luminanz": words("l lum luminance"), "rot": words("r red"), "grün": words("g green"), "blau": words("b blue"),
        "wasserstoff": words("ha h-alpha halpha hα"), "hα": words("ha h-alpha halpha hα"), "ha": words("ha h-alpha halpha hα"),
        "sauerstoff": words("oiii o3"), "oiii": words("oiii o3"), "schwefel": words("sii s2"), "sii": words("sii s2"),
    },
    joining=words("und oder plus + & , mit"),
    all_night=phrases(
        "die ganze nacht | die ganze zeit | durchgehend | die ganze nacht über | die ganze nacht hindurch | "
        "von anfang bis ende | von der dämmerung bis zur letzten aufnahme"),
    moon=words("mond"),
    moon_up=phrases(
        "stand am himmel | über dem horizont | war aufgegangen | schien | mond oben | stand noch am himmel | "
        "stand schon am himmel | am himmel stand | war oben"),
    moon_down=phrases(
        "war untergegangen | unter dem horizont | war schon untergegangen | war längst untergegangen | mond unten | war weg | "
        "war verschwunden | untergegangen war | war bereits untergegangen"),
    moon_waning=phrases("wie der mond | wie vom mond"),
    moonless=words("mondlos mondlose mondlosen"),
    no_moon=phrases("mondlose nacht | mondlosen nacht | war mondlos | ohne mond | kein mond | keinen mond"),
    target=words("ziel objekt galaxie nebel sternhaufen haufen komet planet"),
    low=phrases("tief | niedrig | dicht über dem horizont | knapp über dem horizont | nahe am horizont"),
    high=phrases("hoch"),
    overhead=phrases("im zenit | nahe dem zenit | beim zenit | in zenitnähe"),
    directions={"norden": "N", "süden": "S", "westen": "W", "osten": "E", "nordwesten": "NW", "südwesten": "SW",
                "nordosten": "NE", "südosten": "SE"},
    in_the=(("im",), ("in", "dem")),
    calm=words("windstill ruhig kein wind still stille windstille keiner keine"),
    calm_phrases=phrases("kein wind | windstill | keinen wind | ohne wind | windstille | kein windhauch | keinen windhauch"),
    clear=words("keine kein klar wolkenlos wolken"),
    throughout=words("die ganze nacht über völlig ganz sehr vollkommen absolut durchgehend es war himmel , ."),
    wind=phrases("wind | böe | böig | bö | sturm"),
    cloud=phrases("wolke | bewölk | cirrus | zirren | schleier"),
    added=words("nachtrag nachgetragen ergänzt ergänzung aktualisiert"),
    ago={("vor", "einem", "jahr"): 1.0, ("vor", "zwei", "jahren"): 2.0, ("vor", "drei", "jahren"): 3.0,
         ("vor", "vier", "jahren"): 4.0, ("vor", "fünf", "jahren"): 5.0, ("vor", "einem", "halben", "jahr"): 0.5},
)  # fmt: skip
