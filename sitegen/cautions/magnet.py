"""Strong magnets beside glass, fingers and pacemakers."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution, Vocabulary

CAUTION = Caution(
    "magnet",
    (COMMON_PRACTICE,),
    {
        "en": Vocabulary(
            stems="magnet | neodym",
            dangers=(
                ("neodymium",),
                (
                    "magnet | magnets",
                    "strong | snap* | finger* | thumb* | pinch* | card | pacemaker* | hold* | held | cap | lid | "
                    "focuser | shield | cover | glu* | drawer | screw* | compass | skin | mirror | lens | sensor | tool*",
                ),
                ("magnetic (cap|lid|cover|catch|holder|mount|adapter|base|strip|tape|foot|feet|clamp|ring|disc)*",),
            ),
            harmless="magnetic (field|storm|activity|pole|north|declination|compass)* | (magnet|magnets) for | "
            "magnetar* | electromagnet*",
        ),
        "de": Vocabulary(
            stems="magnet | neodym",
            dangers=(
                ("neodym*",),
                (
                    "*magnet | *magnete | *magneten | *magnets",
                    "stark* | *schnapp* | finger* | daumen | *klemm* | quetsch* | karte* | *schrittmacher* | hält | "
                    "halten | *deckel | *kappe | *auszug | geklebt | haut | *spiegel | linse | werkzeug* | schraube*",
                ),
                (
                    "magnet(deckel|halter|verschluss|kappe|fuß|füße|band|folie|ring)* | "
                    "magnetisch* (deckel|kappe|fuß|füße|ring|halter*)",
                ),
            ),
            harmless="magnetfeld* | magnetar* | magnetisch* (feld|sturm|pol)* | elektromagnet*",
        ),
    },
)
