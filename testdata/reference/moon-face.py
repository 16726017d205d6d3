"""Writes how the Moon turns to the Earth and to the Sun.

  moon-face.csv        longitude and latitude of the middle of the disc (libration), of
                       the place where the Sun is overhead, and the position angle of the
                       Moon's axis; east positive on the Moon. ephem gives the geocentric
                       ones and no position angle, astronomy-engine those of places too, by
                       its rotation axis of the Moon
  moon-terminator.csv  when the Sun's centre rises or sets at a crater, by
                       astronomy-engine's place at which the Sun is overhead: the moments
                       at which sin b0 sin b + cos b0 cos b cos (l - l0) is zero
"""

import math

from libraries import Engine, Ephem
from places import SCHOOLS, crossings, days, iso, write

# Centres in degrees, IAU gazetteer as compute/globe has them.
CRATERS = [("Ptolemaeus", -1.84, -9.16), ("Tycho", -11.22, -43.30), ("Copernicus", -20.08, 9.62),
           ("Plato", -9.38, 51.62), ("Theophilus", 26.28, -11.45), ("Clavius", -14.73, -58.62),
           ("Langrenus", 61.04, -8.86), ("Grimaldi", -68.36, -5.38)]


def ephem_face(library, d):
    m = library.body("moon", d)
    sun = (90 - math.degrees(m.colong) + 180) % 360 - 180
    return math.degrees(m.libration_long), math.degrees(m.libration_lat), sun, math.degrees(m.subsolar_lat)


def faces(ephem, engine):
    for i in range(37):
        d = days(2026, 1, 3, 1, 20) + 98.6137 * i
        yield (ephem.name, iso(d, 0), "", "", "", "", *(f"{x:.4f}" for x in ephem_face(ephem, d)), "")
        yield (engine.name, iso(d, 0), "", "", "", "", *(f"{x:.4f}" for x in engine.ask("moonFace", d, None)))
        for place in SCHOOLS[:3]:
            found = engine.ask("moonFace", d, [place.lat, place.lon, place.elevation])
            yield (engine.name, iso(d, 0), place.name, place.lat, place.lon, place.elevation, *(f"{x:.4f}" for x in found))


def terminator(engine):
    for name, lon, lat in CRATERS:
        def sun(d):
            _, _, over, b0, _ = engine.ask("moonFace", d, None)
            b, b0 = math.radians(lat), math.radians(b0)
            return math.sin(b0) * math.sin(b) + math.cos(b0) * math.cos(b) * math.cos(math.radians(lon - over))
        for begin in (days(2027, 4, 1), days(2030, 9, 5), days(2034, 12, 20)):
            rises, sets = crossings(sun, begin, begin + 29.5, step=0.5)
            for what, moments in (("rise", rises), ("set", sets)):
                for d in moments:
                    yield name, lon, lat, what, iso(d, 0)


def main():
    ephem, engine = Ephem(), Engine()
    write("moon-face.csv", ("library", "utc", "place", "latitude_deg", "longitude_deg", "elevation_m", "face_longitude_deg", "face_latitude_deg",
                            "sun_longitude_deg", "sun_latitude_deg", "axis_deg"), faces(ephem, engine))
    write("moon-terminator.csv", ("crater", "longitude_deg", "latitude_deg", "sun", "utc"), terminator(engine))


if __name__ == "__main__":
    main()
