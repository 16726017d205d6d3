"""Writes accents.tsv: letters with their canonical decompositions, from the Unicode
Character Database as Python's unicodedata carries it (version in the first line), and
prints the table of build/file/accents.go.

    python3 testdata/reference/accents.py > table
"""
import collections
import pathlib
import unicodedata

RANGES = [(0xC0, 0x24F), (0x370, 0x3FF), (0x400, 0x52F), (0x1E00, 0x1EFF), (0x1F00, 0x1FFF)]

lines = [f"# Unicode {unicodedata.unidata_version}: letter, its canonical decomposition (NFD)"]
by_mark = collections.defaultdict(list)
for first, last in RANGES:
    for code in range(first, last + 1):
        letter = chr(code)
        apart = unicodedata.normalize("NFD", letter)
        step = unicodedata.decomposition(letter).split()
        if apart == letter or len(step) != 2:  # some stand for one other letter, and in no file's name
            continue
        lines.append(f"{code:04X}\t" + " ".join(f"{ord(c):04X}" for c in apart))
        by_mark[int(step[1], 16)].append(chr(int(step[0], 16)) + letter)

pathlib.Path(__file__).with_suffix(".tsv").write_text("\n".join(lines) + "\n", encoding="utf-8")
for mark in sorted(by_mark):
    print(f"\t'\\u{mark:04x}': \"{''.join(by_mark[mark])}\",")
