"""Four general-purpose libraries behind one face.

Each gives, for a body and an instant in UTC (days from 2000-01-01 12:00 UTC):

  apparent(body, d)              geocentric right ascension and declination of the
                                 true equator and equinox of date, radians, with
                                 light time and aberration, and the distance, au
  sidereal(d)                    Greenwich apparent sidereal time, radians
  horizontal(body, d, place)     azimuth from north through east and altitude,
                                 degrees, topocentric, without air
  apparent_tt(body, d)           as apparent, the instant being in TT

One clock for all: UT1 is taken as UTC, and TT - UTC as 69.184 s (37 leap
seconds and 32.184 s), as today. That holds for the years 2026 to 2035; further
off, tables are in TT.
"""

import ctypes
import json
import math
import os
import subprocess

import ephem
import erfa
import numpy as np

TT_MINUS_UTC = 69.184  # s
J2000 = 2451545.0
AU_KM = 149597870.7
HERE = os.path.dirname(os.path.abspath(__file__))


def topocentric(ra, dec, au, gast, place):
    """Azimuth and altitude by plain vectors: the observer on the WGS 84
    ellipsoid is taken from the body, both turning with the sidereal time.
    Diurnal aberration (0.3") is left out."""
    return horizontal_of(topocentric_vector(ra, dec, au, gast, place), place)


def topocentric_vector(ra, dec, au, gast, place):
    """From the observer to the body, km, in axes that turn with the Earth."""
    lat, lon, height = math.radians(place.lat), math.radians(place.lon), place.elevation
    x, y, z = erfa.gd2gc(1, lon, lat, height)
    ha = gast - ra
    body = np.array([math.cos(dec) * math.cos(ha), -math.cos(dec) * math.sin(ha), math.sin(dec)])
    return body * au * AU_KM - np.array([x, y, z]) / 1000


def horizontal_of(body, place):
    lat, lon = math.radians(place.lat), math.radians(place.lon)
    east = np.array([-math.sin(lon), math.cos(lon), 0])
    north = np.array([-math.sin(lat) * math.cos(lon), -math.sin(lat) * math.sin(lon), math.cos(lat)])
    up = np.array([math.cos(lat) * math.cos(lon), math.cos(lat) * math.sin(lon), math.sin(lat)])
    e, n, u = body @ east, body @ north, body @ up
    return math.degrees(math.atan2(e, n)) % 360, math.degrees(math.atan2(u, math.hypot(e, n)))


def ecliptic(ra, dec, d_tt):
    """Longitude and latitude on the true ecliptic and equinox of date, radians:
    IAU 2006 obliquity and 2000A nutation for every library."""
    _, nutation = erfa.nut06a(J2000, d_tt)
    eps = erfa.obl06(J2000, d_tt) + nutation
    x, y, z = math.cos(dec) * math.cos(ra), math.cos(dec) * math.sin(ra), math.sin(dec)
    y, z = y * math.cos(eps) + z * math.sin(eps), z * math.cos(eps) - y * math.sin(eps)
    return math.atan2(y, x) % (2 * math.pi), math.asin(z)


class Erfa:
    """ERFA, the IAU's algorithms, here for the Sun alone: epv00 (VSOP2000 cut, 5
    km), IAU 2006 precession, 2000A nutation."""

    name, version = "erfa", erfa.__version__
    bodies = ("sun",)

    def apparent(self, body, d):
        return self.apparent_tt(body, d + TT_MINUS_UTC / 86400)

    def apparent_tt(self, body, d):
        pvh, pvb = erfa.epv00(J2000, d)
        earth, velocity = pvb["p"], pvb["v"]
        light = float(np.linalg.norm(pvh["p"])) * 499.004784 / 86400
        then_h, then_b = erfa.epv00(J2000, d - light)
        sun = then_b["p"] - then_h["p"] - earth
        au = float(np.linalg.norm(sun))
        beta = velocity * 499.004784 / 86400
        seen = erfa.ab(sun / au, beta, au, math.sqrt(1 - beta @ beta))
        ra, dec = erfa.c2s(erfa.rxp(erfa.pnm06a(J2000, d), seen))
        return float(ra) % (2 * math.pi), float(dec), au

    def sidereal(self, d):
        return float(erfa.gst06a(J2000, d, J2000, d + TT_MINUS_UTC / 86400))

    def horizontal(self, body, d, place):
        return topocentric(*self.apparent(body, d), self.sidereal(d), place)


class Ephem:
    """pyephem (libastro). Its own delta T runs high (73.8 s in 2026, 83.5 s in
    2035), so it is asked for the instant that makes its TT ours."""

    name, version = "ephem", ephem.__version__
    bodies = ("sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune", "pluto")

    def body(self, body, d):
        """The body at the instant d in UTC."""
        return self.body_tt(body, d + TT_MINUS_UTC / 86400)

    def body_tt(self, body, d):
        ut = d + 36525.0  # counted from 1899-12-31 12:00
        for _ in range(3):
            ut = d + 36525.0 - ephem.delta_t(ephem.Date(ut)) / 86400
        made = getattr(ephem, body.capitalize())()
        made.compute(ephem.Date(ut), epoch=ephem.Date(ut))
        return made

    def apparent(self, body, d):
        b = self.body(body, d)
        return float(b.g_ra), float(b.g_dec), b.earth_distance

    def apparent_tt(self, body, d):
        b = self.body_tt(body, d)
        return float(b.g_ra), float(b.g_dec), b.earth_distance

    def sidereal(self, d):
        greenwich = ephem.Observer()
        greenwich.lon, greenwich.date = 0, ephem.Date(d + 36525.0)
        return float(greenwich.sidereal_time())

    def horizontal(self, body, d, place):
        return topocentric(*self.apparent(body, d), self.sidereal(d), place)

    def aspect(self, body, d):
        """Elongation and phase angle in degrees (None where not offered), lit
        fraction, magnitude, diameter in seconds of arc."""
        b = self.body(body, d)
        return abs(math.degrees(b.elong)), None, b.phase / 100, b.mag, b.size


class Swiss:
    """The Swiss Ephemeris library with its built-in series (Moshier's), which
    need no data files; horizontal places are its own."""

    name = "swisseph"
    bodies = ("sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune", "pluto")
    MOSHIER, EQUATORIAL, TOPOCENTRIC, SPEED = 4, 2048, 32768, 256

    def __init__(self):
        self.lib = ctypes.CDLL("libswe.so.2")
        for name in ("swe_sidtime", "swe_deltat"):
            getattr(self.lib, name).restype = ctypes.c_double
        self.lib.swe_set_delta_t_userdef(ctypes.c_double(TT_MINUS_UTC / 86400))
        version = ctypes.create_string_buffer(256)
        self.lib.swe_version(version)
        self.version = version.value.decode()

    def calc(self, body, jd, flags, tt=False):
        out, message = (ctypes.c_double * 6)(), ctypes.create_string_buffer(256)
        call = self.lib.swe_calc if tt else self.lib.swe_calc_ut
        number = self.bodies.index(body)
        if call(ctypes.c_double(jd), number, self.MOSHIER | flags, out, message) < 0:
            raise RuntimeError(message.value.decode())
        return list(out)

    def apparent(self, body, d):
        ra, dec, au, *_ = self.calc(body, J2000 + d, self.EQUATORIAL)
        return math.radians(ra), math.radians(dec), au

    def apparent_tt(self, body, d):
        ra, dec, au, *_ = self.calc(body, J2000 + d, self.EQUATORIAL, tt=True)
        return math.radians(ra), math.radians(dec), au

    def sidereal(self, d):
        return self.lib.swe_sidtime(ctypes.c_double(J2000 + d)) * math.pi / 12

    def horizontal(self, body, d, place):
        self.lib.swe_set_topo(ctypes.c_double(place.lon), ctypes.c_double(place.lat), ctypes.c_double(place.elevation))
        ra, dec, au, *_ = self.calc(body, J2000 + d, self.EQUATORIAL | self.TOPOCENTRIC)
        where = (ctypes.c_double * 3)(place.lon, place.lat, place.elevation)
        seen, out = (ctypes.c_double * 3)(ra, dec, au), (ctypes.c_double * 3)()
        self.lib.swe_azalt(ctypes.c_double(J2000 + d), 1, where, ctypes.c_double(0), ctypes.c_double(0), seen, out)
        return (out[0] + 180) % 360, out[1]  # it counts from the south

    def aspect(self, body, d):
        out, message = (ctypes.c_double * 20)(), ctypes.create_string_buffer(256)
        if self.lib.swe_pheno_ut(ctypes.c_double(J2000 + d), self.bodies.index(body), self.MOSHIER, out, message) < 0:
            raise RuntimeError(message.value.decode())
        return out[2], out[0], out[1], out[4], out[3] * 3600

    def heliocentric(self, body, d):
        """Geometric place at an instant in TT: longitude and latitude on the mean
        ecliptic and equinox of J2000, degrees, and au."""
        HELIO, TRUE, J2000_EQUINOX, NO_NUTATION = 8, 16, 32, 64
        return self.calc(body, J2000 + d, HELIO | TRUE | J2000_EQUINOX | NO_NUTATION, tt=True)[:3]

    KINDS = ((32, "hybrid"), (4, "total"), (8, "annular"), (16, "partial"), (64, "penumbral"))

    def eclipse_call(self, name, d, *more):
        """One of the library's eclipse searches: flags, kind, times as days, attributes."""
        times, attributes, message = (ctypes.c_double * 10)(), (ctypes.c_double * 20)(), ctypes.create_string_buffer(256)
        jd = ctypes.c_double(J2000 + d)
        if name == "swe_sol_eclipse_when_loc":
            flags = self.lib[name](jd, self.MOSHIER, more[0], times, attributes, 0, message)
        else:
            flags = self.lib[name](jd, self.MOSHIER, 0, times, 0, message)
        if flags < 0:
            raise RuntimeError(message.value.decode())
        kind = next(kind for bit, kind in self.KINDS if flags & bit)
        return flags, kind, [t - J2000 if t else None for t in times], list(attributes)

    def solar_eclipse(self, d):
        """The next one: greatest, kind, latitude and longitude of greatest."""
        _, kind, times, _ = self.eclipse_call("swe_sol_eclipse_when_glob", d)
        where, attributes, message = (ctypes.c_double * 10)(), (ctypes.c_double * 20)(), ctypes.create_string_buffer(256)
        self.lib.swe_sol_eclipse_where(ctypes.c_double(J2000 + times[0]), self.MOSHIER, where, attributes, message)
        return times[0], kind, where[1], where[0]

    def lunar_eclipse(self, d):
        """The next one: greatest, kind, contacts P1 U1 U2 U3 U4 P4, penumbral and umbral magnitude."""
        _, kind, t, _ = self.eclipse_call("swe_lun_eclipse_when", d)
        attributes, message = (ctypes.c_double * 20)(), ctypes.create_string_buffer(256)
        self.lib.swe_lun_eclipse_how(ctypes.c_double(J2000 + t[0]), self.MOSHIER, (ctypes.c_double * 3)(), attributes, message)
        return t[0], kind, (t[6], t[2], t[4], t[5], t[3], t[7]), attributes[1], attributes[0]

    def local_solar_eclipse(self, d, place):
        """The next one of which anything is seen: kind, contacts, the greatest
        and, unless it falls below the horizon, its moment, magnitude (part of
        the diameter), obscuration and the Sun's altitude."""
        MAX_VISIBLE = 256
        where = (ctypes.c_double * 3)(place.lon, place.lat, place.elevation)
        flags, kind, t, a = self.eclipse_call("swe_sol_eclipse_when_loc", d, where)
        greatest = (t[0], a[0], min(a[2], 1), a[5]) if flags & MAX_VISIBLE else (None,) * 4
        return t[0], kind, (t[1], t[2], t[3], t[4]), greatest


class Engine:
    """astronomy-engine under Node, asked line by line through engine.mjs;
    horizontal places are its own."""

    name = "astronomy-engine"
    bodies = ("sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune", "pluto")

    def __init__(self):
        self.node = subprocess.Popen(["node", os.path.join(HERE, "engine.mjs"), str(TT_MINUS_UTC)],
                                     stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1)
        self.version = self.ask("version")

    def ask(self, *question):
        self.node.stdin.write(json.dumps(question) + "\n")
        self.node.stdin.flush()
        return json.loads(self.node.stdout.readline())

    def apparent(self, body, d):
        return tuple(self.ask("apparent", body, d))

    def apparent_tt(self, body, d):
        return tuple(self.ask("apparent", body, d - TT_MINUS_UTC / 86400))

    def sidereal(self, d):
        return self.ask("sidereal", d)

    def horizontal(self, body, d, place):
        return tuple(self.ask("horizontal", body, d, place.lat, place.lon, place.elevation))

    def aspect(self, body, d):
        return tuple(self.ask("aspect", body, d))

    def heliocentric(self, body, d):
        return tuple(self.ask("heliocentric", body, d - TT_MINUS_UTC / 86400))

    def solar_eclipse(self, d):
        greatest, kind, axis, lat, lon = self.ask("solarEclipse", d)
        return greatest, kind, lat, lon, axis

    def lunar_eclipse(self, d):
        """The library gives half durations in minutes."""
        greatest, kind, penumbral, partial, total = self.ask("lunarEclipse", d)
        before = [greatest - half / 1440 if half else None for half in (penumbral, partial, total)]
        after = [greatest + half / 1440 if half else None for half in (total, partial, penumbral)]
        return greatest, kind, (*before, *after), None, None

    def local_solar_eclipse(self, d, place):
        kind, obscuration, *t = self.ask("localSolarEclipse", d, place.lat, place.lon, place.elevation)
        greatest = (t[2], None, obscuration, self.horizontal("sun", t[2], place)[1])
        return t[2], kind, (t[0], t[1], t[3], t[4]), greatest
