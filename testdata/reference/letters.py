"""Writes letters.csv: how wide letters are in free fonts that the style sheet names or
that stand in for one, in thousandths of the size of the letters, from the fonts' own
tables cmap and hmtx (ISO/IEC 14496-22). Only the standard library is used.

    python3 letters.py FOLDER… > letters.csv
    python3 letters.py FOLDER… --go     the rows of build/typeset/widths.go

The folders are looked through for the files below (Debian fonts-noto-core,
fonts-urw-base35, fonts-dejavu-core, fonts-liberation)."""
import csv
import struct
import sys
from pathlib import Path

FONTS = [  # face, font, regular, bold
    ("text", "P052", "P052-Roman.otf", "P052-Bold.otf"),
    ("text", "Noto Serif", "NotoSerif-Regular.ttf", "NotoSerif-Bold.ttf"),
    ("label", "Noto Sans", "NotoSans-Regular.ttf", "NotoSans-Bold.ttf"),
    ("label", "Liberation Sans", "LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
    ("label", "DejaVu Sans", "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
]
LETTERS = [*range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x391, 0x3CA)]
LETTERS += [0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026, 0x202F, 0x2032, 0x2033]
LETTERS += [0x2070, *range(0x2074, 0x207A), 0x207B, 0x2192, 0x2212, 0x221A, 0x2248]
SKIPPED = {0xAD, 0x3A2}


def tables(data):
    count = struct.unpack(">H", data[4:6])[0]
    found = {}
    for i in range(count):
        tag, _, offset, length = struct.unpack(">4sLLL", data[12 + 16 * i:28 + 16 * i])
        found[tag.decode()] = data[offset:offset + length]
    return found


def glyphs(cmap):
    """Letters to glyphs, by the first subtable of format 4 for Windows' Unicode."""
    for i in range(struct.unpack(">H", cmap[2:4])[0]):
        platform, encoding, offset = struct.unpack(">HHL", cmap[4 + 8 * i:12 + 8 * i])
        sub = cmap[offset:]
        if (platform, encoding) == (3, 1) and struct.unpack(">H", sub[:2])[0] == 4:
            break
    else:
        raise ValueError("no format 4")
    n = struct.unpack(">H", sub[6:8])[0] // 2
    words = lambda at: struct.unpack(f">{n}H", sub[at:at + 2 * n])
    ends, starts, deltas, ranges = words(14), words(16 + 2 * n), words(16 + 4 * n), words(16 + 6 * n)
    found = {}
    for k in range(n):
        for c in range(starts[k], min(ends[k], 0xFFFE) + 1):
            if ranges[k] == 0:
                g = (c + deltas[k]) % 65536
            else:
                at = 16 + 6 * n + 2 * k + ranges[k] + 2 * (c - starts[k])
                g = struct.unpack(">H", sub[at:at + 2])[0]
                g = (g + deltas[k]) % 65536 if g else 0
            if g:
                found[c] = g
    return found


def widths(path):
    found = tables(path.read_bytes())
    em = struct.unpack(">H", found["head"][18:20])[0]
    many = struct.unpack(">H", found["hhea"][34:36])[0]
    advance = lambda g: struct.unpack(">H", found["hmtx"][4 * min(g, many - 1):4 * min(g, many - 1) + 2])[0]
    return {c: round(1000 * advance(g) / em) for c, g in glyphs(found["cmap"]).items()}


def main():
    folders = [Path(a) for a in sys.argv[1:] if a != "--go"]
    find = lambda name: next(p for f in folders for p in sorted(f.rglob(name)))
    columns = [(face, bold, f"{font}{' Bold' if bold else ''}", widths(find(files[bold])))
               for face, font, *files in FONTS for bold in (0, 1)]
    letters = [c for c in sorted(LETTERS) if c not in SKIPPED]
    if "--go" in sys.argv:
        row = []
        for c in letters:
            most = [max((w.get(c, 0) for f, b, _, w in columns if (f, b) == kind), default=0)
                    for kind in (("text", 0), ("text", 1), ("label", 0), ("label", 1))]
            row.append("{0x%04x, %d, %d, %d, %d}," % (c, *most))
        for i in range(0, len(row), 4):
            print("\t" + " ".join(row[i:i + 4]))
        return
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["letter", *(f"{face}: {name}" for face, _, name, _ in columns)])
    for c in letters:
        out.writerow([f"{c:04x}", *(w.get(c, "") for *_, w in columns)])


main()
