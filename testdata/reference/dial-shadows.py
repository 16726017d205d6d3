"""Writes dial-shadows.csv: where the shadow of a style falls on a plate, for
styles and plates that are right and wrong, with the Sun of ERFA. The shadow is
found from points: a point of the style is carried along the Sun's ray to the
plate, by a linear system of three equations, and its bearing is read between
two directions that lie in the plate.

The plate is level, or its side at tilt_toward_deg is lowered by tilt_deg, style
and all; bearings on it are counted clockwise, seen from above it, from the line
that pointed true north before it was tilted."""

import math

import numpy as np
from scipy.spatial.transform import Rotation

from libraries import Erfa
from places import Place, days, iso, write

SCHOOLS = [
    Place("alder-reach", 46.09, -64.77, 20),
    Place("south-island", -45.87, 170.50, 0),
    Place("arctic", 69.6, 18.9, 10),
    Place("equator-north", 1.4, 103.8, 15),
]

# name, style azimuth and elevation from the true style's, tilt toward, tilt
STANDS = [
    ("true", 0, 0, 0, 0),
    ("slope-10-more", 0, 10, 0, 0),
    ("upright", 0, None, 0, 0),
    ("turned", -16.2, 0, 0, 0),
    ("leaning", 8, 5, 0, 0),
    ("tilted-south", 0, 0, 180, 3),
    ("tilted-south-west", 0, 0, 225, 6),
    ("turned-tilted-east", 12, -4, 90, 5),
]


def direction(azimuth, altitude):
    a, h = math.radians(azimuth), math.radians(altitude)
    return np.array([math.cos(h) * math.sin(a), math.cos(h) * math.cos(a), math.sin(h)])


def tilt(toward, by):
    """The rotation that lowers the side at the bearing: about the level axis to
    the left of one who looks that way."""
    a = math.radians(toward)
    left = np.array([-math.cos(a), math.sin(a), 0])
    return Rotation.from_rotvec(math.radians(by) * left)


def bearing(sun, azimuth, elevation, rotation):
    """Bearing of the shadow on the plate, or None where the Sun does not shine
    on it or the style points within 5 degrees of the Sun's line."""
    normal, north, east = (rotation.apply(v) for v in ([0, 0, 1], [0, 1, 0], [1, 0, 0]))
    edge = rotation.apply(direction(azimuth, elevation))
    if sun @ normal < math.sin(math.radians(1)) or abs(sun @ edge) > math.cos(math.radians(5)):
        return None
    # edge = a * north + b * east + c * sun: (a, b) is the foot of the ray.
    a, b, _ = np.linalg.solve(np.array([north, east, sun]).T, edge)
    return math.degrees(math.atan2(b, a)) % 360


def rows():
    erfa = Erfa()
    for place in SCHOOLS:
        pole = 0 if place.lat >= 0 else 180
        for month in (1, 3, 4, 6, 9, 11):
            for hour in range(24):
                d = days(2027, month, 20, hour)
                azimuth, altitude = erfa.horizontal("sun", d, place)
                if altitude < 5:
                    continue
                for name, turn, more, toward, by in STANDS:
                    elevation = 90 if more is None else abs(place.lat) + more
                    if elevation < 2 or (place.name == "equator-north" and name == "turned-tilted-east"):
                        continue
                    style = (pole + turn) % 360
                    foot = bearing(direction(azimuth, altitude), style, elevation, tilt(toward, by))
                    if foot is not None:
                        yield (place.name, place.lat, place.lon, iso(d, 0), name, style, round(elevation, 4), toward, by,
                               f"{foot:.4f}")


def main():
    write("dial-shadows.csv", ("place", "latitude_deg", "longitude_deg", "utc", "stand", "style_azimuth_deg",
                               "style_elevation_deg", "tilt_toward_deg", "tilt_deg", "shadow_deg"), rows())


if __name__ == "__main__":
    main()
