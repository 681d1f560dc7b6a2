"""Cells that burn, gas or freeze. That lithium cells are not charged below freezing is their makers' common advice."""

from sitegen.cautions.caution import Caution, Vocabulary

CAUTION = Caution(
    "battery",
    ("IEC 62133-2", "IEC 62485-4"),
    {
        "en": Vocabulary(
            stems="batter | lithium | lipo | li-ion | power bank | powerbank | lead-acid | lead acid",
            dangers=(
                (
                    "batter(y|ies) | lithium* | cell | cells | power bank* | lipo*",
                    "bulg* | bloat* | hot to the touch | smell* | smelt | smok* | caught fire | burn* | melted | "
                    "exploded | hissing",
                ),
                (
                    "lithium* | lipo* | li ion | power bank* | powerbank*",
                    "charg* | recharg* | minus | frost* | freez* | snow | below (zero|freezing) | pocket* | swollen | "
                    "swell* | puff* | punctur* | solder* | luggage | baggage | suitcase | loose | keys | tent | bed | "
                    "warm* | heat*",
                ),
                (
                    "(lead acid|lead|gel|car|truck|leisure) batter* | lead acid",
                    "charg* | cabin | hut | shed | caravan | tent | bunk | bed | indoors | van | acid | lift* | boot of",
                ),
                (
                    "batter(y|ies) | cells",
                    "solder* | pocket* | swollen | swell* | puffed | leaked | leaking | short circuit* | shorted | "
                    "bunk | caravan | opened | spark* | no fuse | fuse out | without a fuse | loose | keys | acid",
                ),
                (
                    "(battery|batteries|pack) … charg* | charg* … (battery|batteries|pack)",
                    "frost* | freez* | minus | below (zero|freezing) | tent | cabin | sleep* | asleep | overnight | unattended",
                ),
            ),
            harmless="batter(y|ies) of (tests|test|questions|checks|exams) | cabin bag*",
        ),
        "de": Vocabulary(
            stems="zelle | akku | batterie | lithium | lipo | powerbank | bleiakku | blei-",
            dangers=(
                (
                    "*akku* | batterie | batterien | powerbank* | *zelle | *zellen",
                    "roch | riecht | gerochen | heiß* | brannte | gebrannt | geschmort | schmorte | rauch* | "
                    "ausgebeult* | beule | heizung | ofen | dicker | explodiert*",
                ),
                (
                    "*bleiakku* | autobatterie* | blei*",
                    "gartenhaus | lädt | geschlossene* fenster | schuppen | auto | kofferraum",
                ),
                (
                    "*lithium* | li ionen* | lipo* | powerbank*",
                    "lad* | *geladen | *ladegerät* | lädt | frost* | minus | kälte | unter null | *tasche* | *gebläht | "
                    "dicker | *lötet | *gepäck* | koffer* | schlüssel* | zelt* | *wärm*",
                ),
                (
                    "autobatterie* | starterbatterie* | gelbatterie* | blei(akku|batterie|gel|säure)* | "
                    "blei (akku|batterie|gel|säure)*",
                    "lad* | *geladen | *ladegerät* | lädt | hütte | wohnwagen | wohnmobil | zelt* | bank | bett | "
                    "kabine | säure | keller | gehoben",
                ),
                (
                    "*akku | *akkus | batterie | batterien",
                    "(hosen|jacken|mantel)tasche* | schlüssel* | *lötet | *gebläht | dick | kurzschluss | "
                    "kurzgeschlossen | ausgelaufen | säure | wohnwagen | ohne sicherung | geöffnet | aufgeschnitten | "
                    "funken",
                ),
                (
                    "(akku|akkus|batterie|batterien) … (lad*|*geladen|lädt|*ladegerät) | "
                    "(lad*|*geladen|lädt) … (akku|akkus|batterie|batterien)",
                    "frost* | minus | unter null | zelt* | hütte | schlaf* | über nacht | unbeaufsichtigt",
                ),
            ),
        ),
    },
    from_memory=("IEC 62133-2",),
)
