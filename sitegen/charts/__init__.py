"""Plain values -> SVG: one chart a file, drawn by matplotlib, coloured by the reader's lamp."""
