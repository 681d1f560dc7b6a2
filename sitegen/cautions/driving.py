"""The way home after a night without sleep."""

from sitegen.cautions.caution import COMMON_PRACTICE, NEXT, Caution, Vocabulary

CAUTION = Caution(
    "driving",
    (COMMON_PRACTICE,),
    {
        "en": Vocabulary(
            stems="motorway | highway | the road home | drove | drive | driving | wheel",
            dangers=(
                (
                    "motorway | highway | at the wheel | behind the wheel | the road home | long way home",
                    "eyes | tired | sleep* | asleep | awake | nodd* | exhaust* | no sleep | yawn*",
                ),
                (
                    "asleep | nodd* off | dozed | dozing | eyes (fell|closed|shut) | microsleep*",
                    "wheel | drove | driv* | motorway",
                ),
                (
                    "drove | drive | drives | driving",
                    "home | back | kilomet* | miles | km | hours",
                    "tired | awake | sleep | slept | sleepless | sleepy | asleep | exhaust* | yawn* | eyes | "
                    "window down | all night | dawn | at (two|three|four|five) | half past (one|two|three|four) | "
                    "sunrise | straight (to|on) | without a (break|stop) | coffee",
                    NEXT,
                ),
                ("(who is|is|was|who's) driving", "awake | tired | slept"),
            ),
            harmless="(mount|drive|motor|clock|hard|disk|direct|belt|worm|focuser) (drove|drive|drives|driving|motor) | "
            "drive home of the story | tired of | (day's|hour's|hours'|long) drive",
        ),
        "de": Vocabulary(
            stems="autobahn | landstraße | lenkrad | fahren | fahrt | fuhr | steuer | sekundenschlaf",
            dangers=(
                (
                    "*gefahren | *fahrt | fuhr* | *fahren | autobahn | zurück ging es | kilometer",
                    "müdigkeit* | hundemüde | todmüde | übernächtigt",
                    "*heim* | nach hause | zurück* | kilometer | auto* | zurück ging es",
                ),
                (
                    "autobahn | landstraße | lenkrad | am steuer | heimweg",
                    "*nickt* | *schlaf* | müde | übermüdet | augen | gähn* | wach",
                ),
                ("am steuer", "*schlaf* | müde | augen | *nick* | wach"),
                ("sekundenschlaf",),
                (
                    "*gefahren | *fahrt | fuhr* | *fahren",
                    "*heim* | nach hause | zurück* | kilometer | km | rückfahrt",
                    "übermüdet | müde | *schlaf* | durchwacht* | durchgemacht* | augen | gähn* | wach | "
                    "um (halb)? (zwei|drei|vier|fünf|sechs) | morgengrauen | fenster offen | in einem stück | kaffee",
                    NEXT,
                ),
            ),
            harmless="(nachführung|montierung) (lief|fuhr) | (heimfahrt|rückfahrt) von der tagung",
        ),
    },
)
