"""Plain values -> SVG: one chart a file, plots written as text, maps drawn by matplotlib, coloured by the reader's lamp."""
