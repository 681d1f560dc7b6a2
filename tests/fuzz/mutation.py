"""Mutations that know a format's structure: lines, cells, cards, bytes. All chance comes from one `Random`, so that a seed
gives the same input again, and hypothesis or libFuzzer may stand behind it as well."""

from collections.abc import Callable, Sequence
from random import Random

from tests.reading.mangled import KEYS, MARKS

Mutate = Callable[[bytes, Random], bytes]

NUMBERS = (
    b"0",
    b"-1",
    b"1e999",
    b"-1e-999",
    b"nan",
    b"inf",
    b"9" * 400,
    b"1" + b"0" * 30,
    b"0x10",
    b"1_000",
    b"1,5",
    b"1/0",
    b"-0",
    b"\xd9\xa3",
)
WORDS = tuple(word.encode("utf-8", "surrogatepass") for word in (*MARKS, *KEYS))
MARKDOWN = (
    *(
        b"[a](javascript:alert(1)) ![x](data:text/html,x) <b onclick=x> <script>alert(1)</script> &#106;avascript: &colon; "
        b"[](fact:integration.total_s) ![](figure:nights) [^1] [^1]: | - ** __ ` ``` ~~~ # > \\ [ ]( ) <http://x> "
        b"<javascript:x> &#0; &lt; "
        b"| |-| : ~ --- === 1. * + \x09 [x]: java\tscript:x \xe2\x80\xa8 \xc2\xa0 <!-- --> <![CDATA[ \xef\xbb\xbf".split(b" ")
    ),
    b"\n",
    b"\n\n",
    b"    ",
    b" ",
    b"\n: ",
)
CARDS = (
    b"NAXIS1  =          99999999999",
    b"NAXIS   =                  999",
    b"BITPIX  =                    7",
    b"DATE-OBS= '2026-02-30T99:99:99'",
    b"EXPTIME =               -1e400",
    b"EXPTIME = 'five'",
    b"TIMESYS = 'TT'",
    b"TIMESYS = 'MOON'",
    b"FILTER  = '''''''",
    b"CONTINUE  'more&'",
    b"HIERARCH a b = 1",
    b"END",
    b"CCD-TEMP= (1,2)",
    b"XPIXSZ  = NaN",
    b"FOCALLEN= 0",
    b"OBJECT  = '\xff\xfe'",
    b"XTENSION= 'BINTABLE'",
    b"PCOUNT  = -1",
    b"GCOUNT  = 0",
    b"IMAGETYP= 'Light",
    b"DATE-BEG= '0000-00-00'",
    b"CRVAL1  = 1E309",
    b"CD1_1   = 0",
    b"CTYPE1  = 'RA---TAN'",
    b"XBINNING= 0",
)


def _few(chance: Random) -> int:
    """Mostly one slip: what has more is mostly refused for the first."""
    return chance.choice((1, 1, 1, 1, 2, 3, 6))


def of_bytes(content: bytes, chance: Random) -> bytes:
    """Bytes changed, lost, doubled, moved; lengths and counts made extreme."""
    found = bytearray(content)
    for _ in range(_few(chance)):
        at, size = chance.randint(0, max(0, len(found) - 1)), chance.choice((1, 1, 2, 4, 8, 60))
        kind = chance.randint(0, 6)
        if kind == 0 and found:
            found[at] = chance.randint(0, 255)
        elif kind == 1 and found:
            found[at] ^= 1 << chance.randint(0, 7)
        elif kind == 2:
            del found[at : at + size]
        elif kind == 3:
            found[at:at] = found[at : at + size] * chance.randint(1, 3)
        elif kind == 4:
            found[at : at + size] = chance.choice((b"\xff" * size, b"\0" * size, b"\x7f" + b"\xff" * (size - 1)))
        elif kind == 5:
            del found[at:]
        else:
            other = chance.randint(0, len(found))
            found[at:at] = found[other : other + size]
    return bytes(found)


def of_text(words: Sequence[bytes]) -> Mutate:
    """Pieces of text put in, taken out, doubled, swapped; now and then single bytes."""

    def mutate(content: bytes, chance: Random) -> bytes:
        for _ in range(_few(chance)):
            kind = chance.randint(0, 5)
            at = chance.randint(0, len(content))
            end = min(len(content), at + chance.randint(0, 40))
            if kind <= 1:
                content = content[:at] + chance.choice(words) + content[at:]
            elif kind == 2:
                content = content[:at] + content[end:]
            elif kind == 3:
                content = content[:end] + content[at:end] * chance.randint(1, 4) + content[end:]
            elif kind == 4:
                content = _lines_moved(content, chance)
            else:
                content = of_bytes(content, chance)
        return content

    return mutate


def _lines_moved(content: bytes, chance: Random) -> bytes:
    lines = content.split(b"\n")
    one, other = chance.randint(0, len(lines) - 1), chance.randint(0, len(lines) - 1)
    kind = chance.randint(0, 2)
    if kind == 0:
        lines[one], lines[other] = lines[other], lines[one]
    elif kind == 1:
        lines[one:one] = [lines[other]]
    else:
        lines[one] = b" " * chance.randint(0, 8) + lines[one].lstrip()
    return b"\n".join(lines)


def of_table(content: bytes, chance: Random) -> bytes:
    """Cells of a table changed for numbers, words and marks; whole columns too many or too few."""
    lines = content.split(b"\n")
    for _ in range(_few(chance)):
        row = chance.randint(0, len(lines) - 1)
        cells = lines[row].split(b",")
        cell = chance.randint(0, len(cells) - 1)
        kind = chance.randint(0, 4)
        if kind <= 1:
            cells[cell] = chance.choice((*NUMBERS, *WORDS))
        elif kind == 2:
            cells[cell] = chance.choice((b'"', b"'", b'""', b"")) + cells[cell] + chance.choice((b'"', b"\r", b"\n", b"\t", b";"))
        elif kind == 3:
            cells[cell:cell] = [cells[cell]] * chance.randint(1, 3)
        else:
            del cells[cell]
        lines[row] = b",".join(cells)
    content = b"\n".join(lines)
    return of_text(WORDS)(content, chance) if chance.random() < 0.3 else content


def of_header(content: bytes, chance: Random) -> bytes:
    """Cards of a FITS header changed, doubled, lost, swapped; their values cut or made extreme."""
    cards = [content[at : at + 80] for at in range(0, min(len(content), 28_800), 80)]
    rest = content[28_800:]
    for _ in range(_few(chance)):
        at = chance.randint(0, max(0, len(cards) - 1))
        kind = chance.randint(0, 5)
        if kind == 0:
            cards[at:at] = [chance.choice(CARDS).ljust(80)]
        elif kind == 1:
            cards[at] = chance.choice(CARDS).ljust(80)
        elif kind == 2:
            cards[at] = cards[at][:10] + chance.choice(NUMBERS)[:70].rjust(20).ljust(70)
        elif kind == 3:
            del cards[at]
            cards = cards or [b" " * 80]
        elif kind == 4:
            cards[at] = of_bytes(cards[at], chance)
        else:
            cards.insert(chance.randint(0, len(cards)), cards[at])
    return b"".join(cards) + rest
