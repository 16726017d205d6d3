"""Prints how far the libraries of each table differ from the first one that has
the row: what the limits of the tests can lean on."""

import csv
import sys
from datetime import datetime

DAY = ("rise", "transit", "set", "rising", "falling")
PLACE = ("longitude_deg", "latitude_deg", "distance_au")
CONTACTS = ("first", "second", "third", "fourth", "greatest")
TABLES = {  # table: (columns that name a row, a number says how many letters of them; columns compared)
    "equation-of-time.csv": (("utc",), ("apparent_minus_mean_s",)),
    "sun-positions.csv": (("utc", "place"), ("ra_deg", "dec_deg", "distance_au", "azimuth_deg", "altitude_deg")),
    "sun-days.csv": (("place", "date"), DAY[:3]),
    "sun-twilights.csv": (("place", "date", "altitude_deg"), ("rising", "falling")),
    "moon-positions.csv": (("utc", "place"), ("ra_deg", "dec_deg", "distance_km", "azimuth_deg", "altitude_deg", "lit_limb_deg")),
    "moon-days.csv": (("place", "date"), DAY[:3]),
    "geocentric.csv": (("body", "tt"), PLACE),
    "heliocentric.csv": (("body", "tt"), PLACE),
    "aspects.csv": (("body", "utc"), ("elongation_deg", "side", "phase_angle_deg", "lit", "magnitude", "diameter_arcsec")),
    "planet-days.csv": (("body", "place", "date"), DAY[:3]),
    "phases.csv": (("phase", "tt:10"), ("tt",)),
    "seasons.csv": (("season", "tt:10"), ("tt",)),
    "solar-eclipses.csv": (("greatest:10",), ("greatest", "kind", "axis_km")),
    "lunar-eclipses.csv": (("greatest:10",), ("greatest", "kind", "p1", "u1", "u2", "u3", "u4", "p4", "penumbral_magnitude", "umbral_magnitude")),
    "local-eclipses.csv": (("place", "first:10"), (*CONTACTS, "kind", "magnitude", "obscuration", "sun_altitude_deg")),
}
TURNS = ("ra_deg", "azimuth_deg", "lit_limb_deg", "longitude_deg")
WORDS = ("kind", "side")


def number(text):
    """A number, or an instant in seconds."""
    if "T" in text:
        return datetime.fromisoformat(text.removesuffix("Z")).timestamp()
    return float(text)


def difference(column, a, b):
    if column in TURNS:
        return abs((number(a) - number(b) + 180) % 360 - 180)
    return abs(number(a) - number(b))


def key_of(row, columns):
    parts = (column.partition(":") for column in columns)
    return tuple(row[name][: int(length)] if length else row[name] for name, _, length in parts)


def compare(name, keys, values):
    """Worst differences by library, column and body, where there is one."""
    first, worst, odd, alone = {}, {}, [], set()
    with open(name) as file:
        for row in csv.DictReader(file):
            key = key_of(row, keys)
            if key not in first:
                first[key] = row
                alone.add(key)
                continue
            alone.discard(key)
            for column in values:
                mine, theirs = first[key][column].split(";"), row[column].split(";")
                if column in WORDS and mine != theirs and "" not in mine + theirs or len(mine) != len(theirs) or (
                        column in DAY and ("" in mine) != ("" in theirs)):
                    odd.append((key, row["library"], column, mine, theirs))
                    continue
                for a, b in zip(mine, theirs):
                    if a and b and column not in WORDS:
                        what = (row["library"], first[key]["library"], row.get("body", ""), column)
                        entry = (difference(column, a, b), key)
                        worst[what] = max(worst.get(what, entry), entry)
    for (library, other, body, column), (value, key) in sorted(worst.items()):
        print(f"{name}: {library} from {other}: {body} {column} {value:.6g} at {' '.join(key)}")
    for entry in odd:
        print(f"{name}: unlike: {entry}")
    for key in sorted(alone):
        print(f"{name}: one library alone: {key}")


for table in sys.argv[1:] or TABLES:
    compare(table, *TABLES[table])
