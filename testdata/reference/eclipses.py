"""Writes the tables of eclipses, 2026 to 2040.

swisseph and astronomy-engine use their own searches. The rows of ephem are plain
geometry on pyephem's places, done here: two discs for the Sun as seen from the
ground, the Earth's shadow by Danjon's rule for the Moon (the Earth's parallax
enlarged by 1/100), radii of 695 700 km and 1737.4 km."""

import math

import numpy as np
from scipy.optimize import brentq, minimize_scalar

from libraries import AU_KM, Engine, Ephem, Swiss, topocentric_vector
from places import PLACES, Place, days, iso, write

BEGIN, END = days(2026), days(2041)
SUN_RADIUS, MOON_RADIUS, EARTH_RADIUS = 695700.0, 1737.4, 6378.137  # km
SECOND = 1 / 86400


def vector(library, body, d):
    """Geocentric apparent place, km."""
    ra, dec, au = library.apparent(body, d)
    return au * AU_KM * np.array([math.cos(dec) * math.cos(ra), math.cos(dec) * math.sin(ra), math.sin(dec)])


def axis(library, d):
    """How far the axis of the Moon's shadow passes the Earth's centre, km,
    positive when it passes north."""
    sun, moon = vector(library, "sun", d), vector(library, "moon", d)
    along = (moon - sun) / np.linalg.norm(moon - sun)
    foot = moon - (moon @ along) * along
    return math.copysign(np.linalg.norm(foot), foot[2])


def least(f, guess, reach=0.15):
    return minimize_scalar(f, bounds=(guess - reach, guess + reach), method="bounded", options={"xatol": 1e-7}).x


def solar(swiss, ephem, engine):
    d = BEGIN
    while True:
        greatest, kind, lat, lon = swiss.solar_eclipse(d)
        if greatest > END:
            return
        yield swiss, greatest, kind, axis(swiss, greatest), lat, lon
        other, kind, lat, lon, km = engine.solar_eclipse(greatest - 5)
        yield engine, other, kind, math.copysign(km, axis(engine, other)), lat, lon
        other = least(lambda t: abs(axis(ephem, t)), greatest)
        yield ephem, other, "", axis(ephem, other), None, None
        d = greatest + 10


def shadow(library, d):
    """Angles at the Earth's centre, radians: from the Moon to the shadow's axis,
    the radii of umbra, penumbra and Moon."""
    sun, moon = vector(library, "sun", d), vector(library, "moon", d)
    to_sun, to_moon = np.linalg.norm(sun), np.linalg.norm(moon)
    distance = math.atan2(np.linalg.norm(np.cross(moon, sun)), -(moon @ sun))
    parallaxes = 1.01 * math.asin(EARTH_RADIUS / to_moon) + math.asin(EARTH_RADIUS / to_sun)
    sun_radius = math.asin(SUN_RADIUS / to_sun)
    return distance, parallaxes - sun_radius, parallaxes + sun_radius, math.asin(MOON_RADIUS / to_moon)


def lunar_geometry(library, guess):
    greatest = least(lambda t: shadow(library, t)[0], guess)
    distance, umbra, penumbra, moon = shadow(library, greatest)
    penumbral, umbral = (penumbra + moon - distance) / (2 * moon), (umbra + moon - distance) / (2 * moon)
    touches = (lambda t: shadow(library, t)[0] - shadow(library, t)[2] - shadow(library, t)[3],
               lambda t: shadow(library, t)[0] - shadow(library, t)[1] - shadow(library, t)[3],
               lambda t: shadow(library, t)[0] - shadow(library, t)[1] + shadow(library, t)[3])
    before = [brentq(f, greatest - 0.2, greatest) if f(greatest) < 0 else None for f in touches]
    after = [brentq(f, greatest, greatest + 0.2) if f(greatest) < 0 else None for f in reversed(touches)]
    kind = "total" if umbral >= 1 else "partial" if umbral > 0 else "penumbral" if penumbral > 0 else "none"
    return greatest, kind, (*before, *after), penumbral, max(umbral, 0)


def lunar(swiss, ephem, engine):
    d = BEGIN
    while True:
        found = swiss.lunar_eclipse(d)
        if found[0] > END:
            return
        yield swiss, *found
        other = engine.lunar_eclipse(found[0] - 5)
        if abs(other[0] - found[0]) < 1:
            yield engine, *other
        other = lunar_geometry(ephem, found[0])
        if other[1] != "none":
            yield ephem, *other
        d = found[0] + 10


def discs(library, place, d):
    """Topocentric, radians: distance of the centres, radii of Sun and Moon, altitude of the Sun."""
    gast = library.sidereal(d)
    sun = topocentric_vector(*library.apparent("sun", d), gast, place)
    moon = topocentric_vector(*library.apparent("moon", d), gast, place)
    to_sun, to_moon = np.linalg.norm(sun), np.linalg.norm(moon)
    lat, lon = math.radians(place.lat), math.radians(place.lon)
    up = np.array([math.cos(lat) * math.cos(lon), math.cos(lat) * math.sin(lon), math.sin(lat)])
    return (math.atan2(np.linalg.norm(np.cross(sun, moon)), sun @ moon),
            math.asin(SUN_RADIUS / to_sun), math.asin(MOON_RADIUS / to_moon), math.asin(sun @ up / to_sun))


def covered(distance, sun, moon):
    """The part of the Sun's disc, by area, behind the Moon's."""
    if distance >= sun + moon:
        return 0
    if distance <= abs(sun - moon):
        return min(1, (moon / sun) ** 2)
    a = math.acos((distance**2 + sun**2 - moon**2) / (2 * distance * sun))
    b = math.acos((distance**2 + moon**2 - sun**2) / (2 * distance * moon))
    kite = distance * sun * math.sin(a)
    return (sun**2 * a + moon**2 * b - kite) / (math.pi * sun**2)


def local_geometry(library, place, guess):
    apart = lambda t: discs(library, place, t)[0]
    greatest = least(apart, guess, 0.06)
    distance, sun, moon, altitude = discs(library, place, greatest)
    if distance >= sun + moon:
        return None
    outer = lambda t: apart(t) - sum(discs(library, place, t)[1:3])
    inner = lambda t: apart(t) - abs(discs(library, place, t)[1] - discs(library, place, t)[2])
    contacts = [brentq(outer, greatest - 0.12, greatest), None, None, brentq(outer, greatest, greatest + 0.12)]
    kind = "partial"
    if inner(greatest) < 0:
        kind = "total" if moon > sun else "annular"
        contacts[1], contacts[2] = brentq(inner, greatest - 0.02, greatest), brentq(inner, greatest, greatest + 0.02)
    magnitude = (sun + moon - distance) / (2 * sun)
    return greatest, kind, contacts, (greatest, magnitude, covered(distance, sun, moon), math.degrees(altitude))


def local(swiss, ephem, engine, places):
    for place in places:
        d = BEGIN
        while True:
            found = swiss.local_solar_eclipse(d, place)
            if found[0] > END:
                break
            yield place, swiss, *found[1:]
            other = engine.local_solar_eclipse(found[0] - 5, place)
            if abs(other[0] - found[0]) < 1:
                yield place, engine, *other[1:]
            other = local_geometry(ephem, place, other[0] if abs(other[0] - found[0]) < 1 else found[0])
            if other:
                yield place, ephem, *other[1:]
            d = found[0] + 10


def shown(value, decimals):
    return "" if value is None else f"{value:.{decimals}f}"


def moment(d):
    return "" if d is None else iso(d, 1)


def main():
    swiss, ephem, engine = libraries = Swiss(), Ephem(), Engine()
    globally = list(solar(*libraries))
    write("solar-eclipses.csv", ("library", "greatest", "kind", "axis_km", "latitude_deg", "longitude_deg"),
          [(l.name, moment(t), kind, shown(km, 1), shown(lat, 3), shown(lon, 3)) for l, t, kind, km, lat, lon in globally])
    write("lunar-eclipses.csv", ("library", "greatest", "kind", "p1", "u1", "u2", "u3", "u4", "p4",
                                 "penumbral_magnitude", "umbral_magnitude"),
          [(l.name, moment(t), kind, *map(moment, contacts), shown(penumbral, 4), shown(umbral, 4))
           for l, t, kind, contacts, penumbral, umbral in lunar(*libraries)])
    central = [Place(f"central-{iso(t)[:10]}", round(lat, 1), round(lon, 1), 0)
               for l, t, kind, _, lat, lon in globally if l is swiss and kind != "partial"]
    write("local-eclipses.csv", ("library", "place", "latitude_deg", "longitude_deg", "elevation_m", "kind", "first", "second",
                                 "third", "fourth", "greatest", "magnitude", "obscuration", "sun_altitude_deg"),
          [(l.name, p.name, p.lat, p.lon, p.elevation, kind, *map(moment, contacts), moment(g[0]), *(shown(x, 4) for x in g[1:3]),
            shown(g[3], 3)) for p, l, kind, contacts, g in local(*libraries, PLACES + central)])


if __name__ == "__main__":
    main()
