"""Vapours, flames, and coatings that dissolve. The basis is the safety data sheet that each product has."""

from sitegen.cautions.caution import NEXT, Caution, Vocabulary

CAUTION = Caution(
    "solvent",
    ("UN GHS",),
    {
        "en": Vocabulary(
            stems="lighter fluid | remover | turpentine | cleaner | aceton | alcohol | isoprop | solvent | thinner | "
            "ether | spirit | methanol | ethanol | ammonia | stripper | petrol | naphtha | degreas",
            dangers=(
                (
                    "lighter fluid | nail (polish|varnish) remover | turpentine | (brake|contact|carburettor|carb) cleaner*",
                    "lens | lenses | mirror* | optic* | glass | sticker* | glue | stain* | plate | sensor | eyepiece* | "
                    "filter* | paint | wip* | rubb*",
                ),
                (
                    "alcohol | acetone | isoprop* | methanol",
                    "pour* | run off | bottle | bath",
                ),
                (
                    "acetone | isoprop* | alcohol | solvent* | thinner* | (white|methylated) spirit* | methanol | "
                    "ethanol | ammonia | paint stripper | petrol | naphtha | degreaser | ether",
                    "lens | lenses | mirror* | optic* | corrector | wip* | rins* | swab* | tissue* | cotton | sensor | "
                    "filter* | plate | objective | eyepiece* | paint | grease | clean* | soak* | dissolv* | window | "
                    "coating* | cloth | drops | glue | remov*",
                    NEXT,
                ),
            ),
            harmless="molecule* … | (radio|spectr*|interstellar) … | thinner than | spirit level",
        ),
        "de": Vocabulary(
            stems="nagellack | reiniger | aceton | alkohol | isoprop | lösungsmittel | lösemittel | verdünn | benzin | "
            "spiritus | methanol | ethanol | ammoniak | salmiak | terpentin",
            dangers=(
                (
                    "nagellackentferner | (bremsen|kontakt|vergaser|silikon)reiniger | kontaktspray",
                    "linse* | *linse | spiegel | optik | glas | fleck* | kleber | aufkleber | platte | sensor | "
                    "okular* | *filter | wisch*",
                ),
                (
                    "aceton | isoprop* | *alkohol | lösungsmittel* | lösemittel* | *verdünner | *verdünnung | *benzin | "
                    "*spiritus | methanol | ethanol | ammoniak | salmiak* | terpentin*",
                    "linse* | *spiegel | optik | *wisch* | putz* | geputzt | *reinig* | *tupf* | *spül* | tropfen | "
                    "tuch | watte* | lack | sensor | filter* | korrektorplatte | objektiv* | okular* | fett | "
                    "entfern* | gelöst | kleber | pinsel",
                    NEXT,
                ),
            ),
            harmless="moleküle … | (radio*|spektr*|interstellar*) …",
        ),
    },
    from_memory=("UN GHS",),
)
