"""Writes the tables of planets, and of Sun and Moon far from today.

  geocentric.csv    apparent geocentric places at instants in TT, 1950 to 2100
  heliocentric.csv  geometric heliocentric places, ecliptic and equinox of J2000
  aspects.csv       elongation, phase, magnitude, diameter
  planet-days.csv   rise, transit and set: the topocentric, geometric altitude
                    of the centre passes -34'
"""

import math

from libraries import TT_MINUS_UTC, Engine, Ephem, Erfa, Swiss, ecliptic
from places import SCHOOLS, crossings, date, days, iso, local_day, offset_hours, write
from sun import hour_angle

HORIZON = -34 / 60
PLANETS = ("mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune")
SPREAD = [days(1950, 1, 10) + i * 1489.37 for i in range(37)]  # to 2100


def geocentric(libraries):
    for library in libraries:
        for body in library.bodies:
            for d in SPREAD:
                ra, dec, au = library.apparent_tt(body, d)
                lon, lat = ecliptic(ra, dec, d)
                yield (library.name, body, iso(d, 0, ""), *(f"{math.degrees(x):.5f}" for x in (ra, dec, lon, lat)), f"{au:.7f}")


def heliocentric(libraries):
    for library in libraries:
        for body in PLANETS + ("pluto",):
            for d in SPREAD[::2]:
                lon, lat, au = library.heliocentric(body, d)
                yield library.name, body, iso(d, 0, ""), f"{lon:.5f}", f"{lat:.5f}", f"{au:.7f}"


def shown(value, decimals):
    return "" if value is None else f"{value:.{decimals}f}"


def aspects(libraries):
    """The side of the Sun is that of the difference of ecliptic longitudes."""
    for library in libraries:
        for body in ("moon",) + PLANETS + ("pluto",):
            for i in range(28):
                d = days(2026, 1, 3) + i * 131
                elongation, phase, lit, magnitude, diameter = library.aspect(body, d)
                at = [ecliptic(*library.apparent(b, d)[:2], d + TT_MINUS_UTC / 86400)[0] for b in (body, "sun")]
                east = math.sin(at[0] - at[1]) > 0
                yield (library.name, body, iso(d, 0), f"{elongation:.3f}", "east" if east else "west", shown(phase, 3),
                       f"{lit:.4f}", f"{magnitude:.2f}", shown(diameter, 2))


def planet_days(libraries):
    for library in libraries:
        for place in SCHOOLS[:5]:
            for body in PLANETS[:5]:
                for i in range(7):
                    day = days(2026, 3, 9) + 487 * i
                    begin = local_day(place, day)
                    above = lambda d: library.horizontal(body, d, place)[1] - HORIZON
                    rises, sets = crossings(above, begin, begin + 1, step=1 / 96)
                    noons = crossings(lambda d: math.sin(math.radians(hour_angle(library, place, d, body))), begin, begin + 1, 1 / 24)[0]
                    yield (library.name, body, place.name, place.lat, place.lon, place.elevation, offset_hours(place), date(day),
                           ";".join(map(iso, rises)), ";".join(map(iso, noons)), ";".join(map(iso, sets)))


def main():
    erfa, swiss, ephem, engine = Erfa(), Swiss(), Ephem(), Engine()
    write("geocentric.csv", ("library", "body", "tt", "ra_deg", "dec_deg", "longitude_deg", "latitude_deg", "distance_au"),
          geocentric([erfa, swiss, ephem, engine]))
    write("heliocentric.csv", ("library", "body", "tt", "longitude_deg", "latitude_deg", "distance_au"), heliocentric([swiss, engine]))
    write("aspects.csv", ("library", "body", "utc", "elongation_deg", "side", "phase_angle_deg", "lit", "magnitude", "diameter_arcsec"),
          aspects([swiss, ephem, engine]))
    write("planet-days.csv", ("library", "body", "place", "latitude_deg", "longitude_deg", "elevation_m", "utc_offset_h", "date",
                              "rise", "transit", "set"), planet_days([swiss, ephem, engine]))


if __name__ == "__main__":
    main()
