"""Writes files/night.ods with odfpy 1.4.1: python -m tests.authoring.recorded.build_ods. The library is not installed with the
tests, as it comes without a wheel."""

from pathlib import Path

from odf.opendocument import OpenDocumentSpreadsheet  # type: ignore[import-not-found]
from odf.table import CoveredTableCell, Table, TableCell, TableRow  # type: ignore[import-not-found]
from odf.text import P  # type: ignore[import-not-found]

HERE = Path(__file__).parent / "files/night.ods"


def cell(value: object, kind: str = "string", text: str = "") -> TableCell:
    names = {"date": "datevalue", "time": "timevalue", "float": "value"}
    made = TableCell(valuetype=kind, **({names[kind]: value} if kind in names else {}))
    made.addElement(P(text=text or str(value)))
    return made


def main() -> None:
    document = OpenDocumentSpreadsheet()
    table = Table(name="April")
    rows = [
        [cell("Datum"), cell("Beginn"), cell("Filter"), cell("Belichtung (s)"), cell("Anzahl")],
        [TableCell(valuetype="date", datevalue="2026-04-18", numberrowsspanned=2),
         cell("PT21H36M00S", "time", "21:36"), cell("Ha"),
         cell(300.5, "float", "300,5"), cell(2, "float")],
        [CoveredTableCell(), cell("PT23H50M00S", "time", "23:50"), cell("OIII"), cell(300, "float"), cell(1, "float")],
        [TableCell(numbercolumnsrepeated=1),
         cell("PT00H10M00S", "time", "00:10"), cell("OIII"), cell(300, "float"), cell(1, "float")],
        [cell("Summe"), TableCell(numbercolumnsrepeated=3), cell(4, "float")],
    ]  # fmt: skip
    for cells in rows:
        row = TableRow()
        for one in cells:
            row.addElement(one)
        table.addElement(row)
    empty = TableRow(numberrowsrepeated=1_048_000)
    empty.addElement(TableCell(numbercolumnsrepeated=1024))
    table.addElement(empty)
    document.spreadsheet.addElement(table)
    document.save(str(HERE))


if __name__ == "__main__":
    main()
