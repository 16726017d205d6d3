"""Writes the Sun's tables. Every library gives places of the Sun and sidereal
time; rise, transit and set are searched on them here, so that all follow one
convention:

  rise and set   the geocentric altitude of the Sun's centre, on the geodetic
                 latitude, passes -50' (zenith distance 90 deg 50'); no parallax,
                 no dip for elevation, UT1 = UTC, TT - UTC = 69.184 s
  transit        the geocentric hour angle passes zero upwards
"""

import math

from libraries import Engine, Ephem, Erfa, Swiss
from places import PLACES, SCHOOLS, crossings, date, days, iso, local_day, offset_hours, write

HORIZON = -50 / 60  # degrees
POLES = ("north-pole", "south-pole")


def altitude(library, place, d):
    """Geocentric altitude on the geodetic latitude, degrees."""
    ra, dec, _ = library.apparent("sun", d)
    ha = library.sidereal(d) + math.radians(place.lon) - ra
    lat = math.radians(place.lat)
    return math.degrees(math.asin(math.sin(lat) * math.sin(dec) + math.cos(lat) * math.cos(dec) * math.cos(ha)))


def hour_angle(library, place, d, body="sun"):
    """Local hour angle, -180 to 180 degrees."""
    ra, _, _ = library.apparent(body, d)
    return (math.degrees(library.sidereal(d) - ra) + place.lon + 180) % 360 - 180


def transit(library, place, begin):
    """The first passage of hour angle zero after begin."""
    guess = begin + (-hour_angle(library, place, begin) % 360) / 360
    for _ in range(3):
        guess -= hour_angle(library, place, guess) / 360.0
    return guess


def sun_days(libraries):
    dates = [days(2026, 1, 9) + 197 * i for i in range(19)]
    at_poles = [days(2027, 3, 18) + i for i in range(3)] + [days(2027, 9, 23) + i for i in range(3)]
    for library in libraries:
        for place in PLACES:
            for day in dates + (at_poles if place.name in POLES else []):
                begin = local_day(place, day)
                above = lambda d: altitude(library, place, d) - HORIZON
                rises, sets = crossings(above, begin, begin + 1)
                noon = transit(library, place, begin)
                speed = [abs(above(t + 1e-4) - above(t - 1e-4)) / 2e-4 / 24 for t in rises + sets]
                yield (library.name, place.name, place.lat, place.lon, place.elevation, offset_hours(place), date(day),
                       ";".join(map(iso, rises)), iso(noon) if noon < begin + 1 else "", ";".join(map(iso, sets)),
                       f"{min(speed):.2f}" if speed else "")


def sun_twilights(libraries):
    """As rise and set, for the altitudes at which the twilights begin and end."""
    for library in libraries:
        for place in SCHOOLS[:5]:
            for i in range(6):
                day = days(2026, 6, 20) + 583 * i
                begin = local_day(place, day)
                for degrees in (-6, -12, -18):
                    passed = crossings(lambda d: altitude(library, place, d) - degrees, begin, begin + 1, 1 / 144)
                    yield (library.name, place.name, place.lat, place.lon, place.elevation, offset_hours(place), date(day),
                           degrees, *(";".join(map(iso, moments)) for moments in passed))


def sun_positions(libraries):
    instants = [days(2026, 2, 11, 7, 30), days(2027, 4, 20, 16, 18), days(2028, 6, 20, 23, 45), days(2029, 11, 3, 3, 0),
                days(2031, 9, 23, 12, 0), days(2032, 12, 21, 19, 10), days(2034, 3, 20, 9, 20), days(2035, 7, 5, 14, 5)]
    for library in libraries:
        for d in instants:
            ra, dec, au = library.apparent("sun", d)
            for place in PLACES:
                azimuth, alt = library.horizontal("sun", d, place)
                yield (library.name, iso(d, 0), place.name, place.lat, place.lon, place.elevation,
                       f"{math.degrees(ra):.6f}", f"{math.degrees(dec):.6f}", f"{au:.7f}", f"{azimuth:.5f}", f"{alt:.5f}")


def equation_of_time(libraries):
    for library in libraries:
        for i in range(0, 4 * 365, 5):
            d = days(2026, 1, 1, 12) + i
            apparent = math.degrees(library.sidereal(d) - library.apparent("sun", d)[0])
            yield library.name, iso(d, 0), f"{((apparent - d * 360 + 180) % 360 - 180) * 240:.3f}"


def shadow_bearings(libraries):
    for place in SCHOOLS:
        for i in range(0, 365, 28):
            for hour in range(24):
                d = days(2027, 1, 6, hour) + i
                seen = [library.horizontal("sun", d, place) for library in libraries]
                if seen[0][1] < 1:
                    continue
                yield (place.name, place.lat, place.lon, iso(d, 0), f"{seen[0][1]:.3f}",
                       *(f"{(azimuth + 180) % 360:.4f}" for azimuth, _ in seen))


def main():
    libraries = [Erfa(), Swiss(), Ephem(), Engine()]
    names = [library.name for library in libraries]
    write("versions.csv", ("library", "version"), [(l.name, l.version) for l in libraries])
    write("equation-of-time.csv", ("library", "utc", "apparent_minus_mean_s"), equation_of_time(libraries))
    write("sun-positions.csv", ("library", "utc", "place", "latitude_deg", "longitude_deg", "elevation_m", "ra_deg", "dec_deg",
                                "distance_au", "azimuth_deg", "altitude_deg"), sun_positions(libraries))
    write("shadow-bearings.csv", ("place", "latitude_deg", "longitude_deg", "utc", "altitude_deg", *names), shadow_bearings(libraries))
    write("sun-days.csv", ("library", "place", "latitude_deg", "longitude_deg", "elevation_m", "utc_offset_h", "date",
                           "rise", "transit", "set", "slowest_deg_per_h"), sun_days(libraries))
    write("sun-twilights.csv", ("library", "place", "latitude_deg", "longitude_deg", "elevation_m", "utc_offset_h", "date",
                                "altitude_deg", "rising", "falling"), sun_twilights(libraries))


if __name__ == "__main__":
    main()
