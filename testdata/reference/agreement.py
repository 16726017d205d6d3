"""Prints how far the libraries of each table differ from the first one: what
the tests' limits can lean on."""

import csv
import sys
from datetime import datetime

TABLES = {  # table: (columns that name a row, columns that hold values)
    "equation-of-time.csv": (["utc"], ["apparent_minus_mean_s"]),
    "sun-positions.csv": (["utc", "place"], ["ra_deg", "dec_deg", "distance_au", "azimuth_deg", "altitude_deg"]),
    "sun-days.csv": (["place", "date"], ["rise", "transit", "set"]),
    "moon-positions.csv": (["utc", "place"], ["ra_deg", "dec_deg", "distance_km", "azimuth_deg", "altitude_deg", "lit_limb_deg"]),
    "moon-days.csv": (["place", "date"], ["rise", "transit", "set"]),
    "geocentric.csv": (["body", "tt"], ["longitude_deg", "latitude_deg", "distance_au"]),
    "heliocentric.csv": (["body", "tt"], ["longitude_deg", "latitude_deg", "distance_au"]),
    "aspects.csv": (["body", "utc"], ["elongation_deg", "phase_angle_deg", "lit", "magnitude", "diameter_arcsec"]),
    "planet-days.csv": (["body", "place", "date"], ["rise", "transit", "set"]),
}

EVENTS = ("rise", "transit", "set")


def number(text):
    """A number, or an instant in seconds."""
    if text.endswith("Z"):
        return datetime.fromisoformat(text.replace("Z", "+00:00")).timestamp()
    return float(text)


def difference(column, a, b):
    if column in ("ra_deg", "azimuth_deg", "lit_limb_deg", "longitude_deg"):
        return abs((a - b + 180) % 360 - 180)
    return abs(a - b)


def compare(name, keys, values):
    """Worst differences by library, column and body, where there is one."""
    first, worst, odd = {}, {}, []
    with open(name) as file:
        rows = list(csv.DictReader(file))
    for row in rows:
        key = tuple(row[k] for k in keys)
        if key not in first:
            first[key] = row  # the first library that has this row
            continue
        for column in values:
            mine, theirs = first[key][column].split(";"), row[column].split(";")
            if len(mine) != len(theirs) or column in EVENTS and ("" in mine) != ("" in theirs):
                odd.append((key, row["library"], column))
                continue
            for a, b in zip(mine, theirs):
                if a and b:
                    entry = (difference(column, number(a), number(b)), key)
                    what = (row["library"], first[key]["library"], row.get("body", ""), column)
                    worst[what] = max(worst.get(what, entry), entry)
    for (library, other, body, column), (value, key) in sorted(worst.items()):
        print(f"{name}: {library} from {other}: {body} {column} {value:.6g} at {' '.join(key)}")
    for entry in odd:
        print(f"{name}: not the same events: {entry}")


for table in sys.argv[1:] or TABLES:
    compare(table, *TABLES[table])
