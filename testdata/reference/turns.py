"""Writes phases.csv and seasons.csv. A principal phase is the moment at which
the apparent geocentric ecliptic longitude of the Moon exceeds the Sun's by 0,
90, 180 or 270 degrees; a season begins when the Sun's is 0, 90, 180 or 270.
Both longitudes carry light time, aberration and nutation. All times are TT; for
2026 to 2035 UTC is 69.184 s earlier."""

import math

from libraries import Engine, Ephem, Erfa, Swiss, ecliptic
from places import crossings, days, iso, write

PHASES = ("new", "first-quarter", "full", "last-quarter")
SEASONS = ("march-equinox", "june-solstice", "september-equinox", "december-solstice")
FAR_YEARS = (1950, 1963, 1977, 1988, 2000, 2013, 2044, 2061, 2083, 2099)


def longitude(library, body, d):
    ra, dec, _ = library.apparent_tt(body, d)
    return ecliptic(ra, dec, d)[0]


def quarters(angle, begin, end, step, names):
    """The moments at which the angle, in radians and growing, passes each quarter."""
    found = []
    for i, name in enumerate(names):
        sine = lambda d: math.sin(angle(d) - i * math.pi / 2)
        found += [(t, name) for t in crossings(sine, begin, end, step)[0]]
    return sorted(found)


def phases(libraries):
    for library in libraries:
        age = lambda d: longitude(library, "moon", d) - longitude(library, "sun", d)
        for begin, end in [(days(2026), days(2036))] + [(days(y), days(y, 5)) for y in FAR_YEARS]:
            for t, name in quarters(age, begin, end, 3, PHASES):
                yield library.name, iso(t, 1, ""), name


def seasons(libraries):
    for library in libraries:
        for year in sorted({*range(1950, 2100, 6), *range(2026, 2036), 2099}):
            for t, name in quarters(lambda d: longitude(library, "sun", d), days(year), days(year + 1), 15, SEASONS):
                yield library.name, iso(t, 1, ""), name


def main():
    erfa, swiss, ephem, engine = Erfa(), Swiss(), Ephem(), Engine()
    write("phases.csv", ("library", "tt", "phase"), phases([swiss, ephem, engine]))
    write("seasons.csv", ("library", "tt", "season"), seasons([erfa, swiss, ephem, engine]))


if __name__ == "__main__":
    main()
