"""Ceres by the Swiss Ephemeris: osculating elements for compute/world/ceres.go and,
on other dates, where it stands, to hold them against.

Needs Debian's libswe2.0 and the folder of swe-basic-data (4.0-20221111), whose
file seas_18.se1 holds Ceres by numerical integration:

  python3 ceres.py EPHEMERIS-FOLDER elements    rows of compute/world/ceres.go
  python3 ceres.py EPHEMERIS-FOLDER places      ceres.csv
"""

import ctypes
import math
import sys

SWISS, HELIOCENTRIC, J2000_FRAME, NO_ABERRATION, TRUE_PLACE, RECTANGULAR, SPEED = 2, 8, 32, 1024, 16, 4096, 256
CERES = 17
GAUSS = 0.01720209895
lib = ctypes.CDLL("libswe.so.2")
lib.swe_set_ephe_path(sys.argv[1].encode())


def at(jd, flags):
    out, message = (ctypes.c_double * 6)(), ctypes.create_string_buffer(256)
    got = lib.swe_calc(ctypes.c_double(jd), CERES, flags, out, message)
    if got < 0 or not got & SWISS:
        sys.exit(message.value.decode())
    return list(out)


def elements(jd):
    """Axis au, eccentricity, inclination, node, argument of perihelion, mean
    anomaly in degrees, from position and velocity; ecliptic and equinox J2000."""
    s = at(jd, SWISS | HELIOCENTRIC | J2000_FRAME | NO_ABERRATION | TRUE_PLACE | RECTANGULAR | SPEED | 64)
    r, v = s[:3], s[3:]
    mu = GAUSS * GAUSS
    cross = lambda a, b: [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
    dot = lambda a, b: sum(x * y for x, y in zip(a, b))
    norm = lambda a: math.sqrt(dot(a, a))
    h = cross(r, v)
    pull = cross(v, h)
    e = [pull[i] / mu - r[i] / norm(r) for i in range(3)]
    a = 1 / (2 / norm(r) - dot(v, v) / mu)
    inclination = math.acos(h[2] / norm(h))
    node = math.atan2(h[0], -h[1])
    n = [math.cos(node), math.sin(node), 0]
    perihelion = math.atan2(dot(cross(n, e), h) / norm(h), dot(n, e))
    anomaly = math.atan2(dot(cross(e, r), h) / norm(h), dot(e, r))
    eccentric = math.atan2(math.sqrt(1 - norm(e) ** 2) * math.sin(anomaly), norm(e) + math.cos(anomaly))
    mean = eccentric - norm(e) * math.sin(eccentric)
    d = lambda x: math.degrees(x) % 360
    return a, norm(e), d(inclination), d(node), d(perihelion), d(mean)


def date(jd):
    y, m, d, h = ctypes.c_int(), ctypes.c_int(), ctypes.c_int(), ctypes.c_double()
    lib.swe_revjul(ctypes.c_double(jd), 1, ctypes.byref(y), ctypes.byref(m), ctypes.byref(d), ctypes.byref(h))
    return f"{y.value:04d}-{m.value:02d}-{d.value:02d}"


def julian(y):
    lib.swe_julday.restype = ctypes.c_double
    return lib.swe_julday(y, 1, 1, ctypes.c_double(0), 1)


if sys.argv[2] == "elements":
    for year in range(1950, 2101, 5):
        a, e, i, n, w, m = elements(julian(year))
        print(f"\t{{{julian(year) - 2451545:8.1f}, {a:.6f}, {e:.6f}, {i:.4f}, {n:.4f}, {w:.4f}, {m:.4f}}}, // {year}")
else:
    print("tt,longitude_deg,latitude_deg,sun_distance_au,distance_au")
    jd = julian(1950) + 0.5
    while jd < julian(2101):
        sun = at(jd, SWISS | HELIOCENTRIC | J2000_FRAME | NO_ABERRATION | TRUE_PLACE | 64)
        earth = at(jd, SWISS)
        print(f"{date(jd)}T12:00:00,{sun[0]:.4f},{sun[1]:.4f},{sun[2]:.5f},{earth[2]:.5f}")
        jd += 317
