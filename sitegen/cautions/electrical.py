"""Mains voltage, above all outdoors."""

from sitegen.cautions.caution import Caution, Vocabulary

CAUTION = Caution(
    "electrical",
    ("IEC 60364-4-41",),
    {
        "en": Vocabulary(
            stems="wall socket | cable | plug | lead | generator | inverter | wir | mains | socket | outlet | breaker | "
            "residual | rcd | gfci | volt | 0 v | 0v | extension | electrician | fuse | power | junction | "
            "consumer unit | cable reel",
            dangers=(
                ("(wall|double|mains|power|outdoor|garden) (socket|outlet)* | lighting circuit | light switch",),
                (
                    "hard wired | hardwired | live wire* | three core | distribution (board|box)* | breaker box* | "
                    "fuse board* | neutral wire* | earth wire*",
                ),
                (
                    "cable* | lead | leads | wire | wires | plug | plugs",
                    "kitchen | house circuit | ring main | circuit | mains | trench | dug | bury | buried | rain | "
                    "puddle* | wet | cut off | spliced | joined",
                ),
                (
                    "generator* | inverter*",
                    "cable* | started | ran | running | tent | shed | exhaust | rain | wet | connect* | earth*",
                ),
                ("fuse | fuses", "bypass* | bridged | tripped | foil"),
                ("rewir* | residual current* | rcd* | rcbo* | gfci* | ground fault* | electrician* | fixed wiring",),
                ("mains (lead|cable|voltage|socket|side|outlet|plug|adapt|power|supply|wiring|electricity)*",),
                ("mains", "outdoors | wet | kill* | bare | open* | connect* | wir* | hand*"),
                ("(100|110|115|120|220|230|240|400) (v|volt|volts|vac) | (110|115|120|220|230|240|400)v",),
                ("extension (lead|cord|cable|reel)* | cable reel* | power strip* | junction box* | fuse box* | consumer unit*",),
                (
                    "socket* | outlet* | *breaker* | lampholder* | power supply | power brick",
                    "wired | wiring | open* | bypass* | bridged | install* | splic* | earthed | earth wire | "
                    "live wire | capacitor* | tripped | replaced | cracked | solder* | wet grass | in the rain | tape*",
                ),
            ),
        ),
        "de": Vocabulary(
            stems="trafo | leitung | schutzleiter | nullleiter | lichtschalter | phase | erdkabel | stecker | "
            "verteiler | kabel | phase | stromkasten | generator | aggregat | wechselrichter | steckdose | verkabel | "
            "verdraht | netz | 230 | 400 v | fi- | fehlerstrom | kabeltrommel | verlänger | sicherung | elektri | "
            "elektro | schuko | strom | abzweig | lüsterklemme",
            dangers=(
                (
                    "trafo* | transformator* | netzklemme*",
                    "offen* | blank* | geöffnet | angeschlossen",
                ),
                (
                    "*leitung",
                    "zusammengelötet | zusammengedreht | geflickt | verlegt | selbst",
                ),
                ("*steckdose* | schutzleiter* | nullleiter* | lichtschalter*",),
                ("erdkabel* | verteilerdose* | stromkasten | heizlüfter* | unterverteil*",),
                (
                    "*stecker* | *kabel* | verteiler",
                    "keller | haus | graben | vergraben | eingegraben | regen | pfütze* | nass* | abgeschnitten | "
                    "geklemmt | phase | geflickt | zusammengedreht",
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
                    "verlängerungs(kabel|schnur|leitung)* | kabeltrommel* | mehrfachsteckdose* | sicherungskasten | "
                    "abzweigdose* | lüsterklemme*",
                ),
                ("netz(spannung|strom|leitung)* | (220|230|240|400) (v|volt) | fi (schalter|schutz)* | fehlerstrom*",),
                ("elektro(fachkraft|installat)* | elektriker*",),
                (
                    "*steckdose* | schuko* | strom(leitung|kabel)* | sicherung* | netzteil* | leitungsschutz*",
                    "verkabelt | verdraht* | verlegt | angeschlossen | überbrück* | abgeklemmt | installier* | "
                    "geflickt | nass* | im regen | im freien | aufgeschraubt | geöffnet | aufgemacht | *kondensator* | "
                    "*gelötet | ausgetauscht | montiert | repariert",
                ),
            ),
        ),
    },
)
