"""Writes the Moon's tables: places, rise, transit and set.

  rise and set   the topocentric, geometric altitude of the Moon's centre passes
                 -34' less the Moon's topocentric semidiameter (radius 1737.4
                 km): the upper limb on the horizon under 34' of refraction
  transit        the geocentric hour angle passes zero upwards
"""

import math

from libraries import AU_KM, Engine, Ephem, Swiss
from places import PLACES, crossings, date, days, iso, local_day, offset_hours, write
from sun import hour_angle

MOON_RADIUS = 1737.4  # km, mean (IAU working group on cartographic coordinates 2015)
EARTH_RADIUS = 6378.137  # km


def above_horizon(library, place, d):
    """How far the upper limb stands above the horizon with refraction, degrees."""
    altitude = library.horizontal("moon", d, place)[1]
    km = library.apparent("moon", d)[2] * AU_KM
    nearer = 1 + math.sin(math.radians(altitude)) * EARTH_RADIUS / km
    return altitude + 34 / 60 + math.degrees(math.asin(MOON_RADIUS / km)) * nearer


def transits(library, place, begin, end):
    """The sine of the hour angle passes zero upwards at the transit, downwards
    half a turn away."""
    return crossings(lambda d: math.sin(math.radians(hour_angle(library, place, d, "moon"))), begin, end)[0]


def moon_days(libraries):
    for library in libraries:
        for place in PLACES:
            for i in range(19):
                day = days(2026, 1, 9) + 197 * i
                begin = local_day(place, day)
                above = lambda d: above_horizon(library, place, d)
                rises, sets = crossings(above, begin, begin + 1, step=1 / 144)
                speed = [abs(above(t + 1e-4) - above(t - 1e-4)) / 2e-4 / 24 for t in rises + sets]
                yield (library.name, place.name, place.lat, place.lon, place.elevation, offset_hours(place), date(day),
                       ";".join(map(iso, rises)), ";".join(map(iso, transits(library, place, begin, begin + 1))),
                       ";".join(map(iso, sets)), f"{min(speed):.2f}" if speed else "")


def limb_from_zenith(sun, moon):
    """Where the lit limb is on the Moon's disc, from the azimuths and altitudes
    of Sun and Moon: degrees from the top of the disc (the zenith's side)
    clockwise as one faces the Moon, 0 to 360; 90 is right."""
    turn = math.radians(sun[0] - moon[0])
    hs, hm = math.radians(sun[1]), math.radians(moon[1])
    right = math.cos(hs) * math.sin(turn)
    up = math.sin(hs) * math.cos(hm) - math.cos(hs) * math.sin(hm) * math.cos(turn)
    return math.degrees(math.atan2(right, up)) % 360


def moon_positions(libraries):
    instants = [days(2026, 2, 11, 7, 30), days(2027, 4, 10, 16, 18), days(2028, 6, 30, 23, 45), days(2029, 11, 3, 3, 0),
                days(2031, 9, 23, 12, 0), days(2032, 12, 21, 19, 10), days(2034, 3, 28, 9, 20), days(2035, 7, 10, 14, 5)]
    for library in libraries:
        for d in instants:
            ra, dec, au = library.apparent("moon", d)
            for place in PLACES:
                moon, sun = library.horizontal("moon", d, place), library.horizontal("sun", d, place)
                yield (library.name, iso(d, 0), place.name, place.lat, place.lon, place.elevation,
                       f"{math.degrees(ra):.6f}", f"{math.degrees(dec):.6f}", f"{au * AU_KM:.1f}",
                       f"{moon[0]:.5f}", f"{moon[1]:.5f}", f"{limb_from_zenith(sun, moon):.3f}")


def main():
    libraries = [Swiss(), Ephem(), Engine()]
    write("moon-positions.csv", ("library", "utc", "place", "latitude_deg", "longitude_deg", "elevation_m", "ra_deg", "dec_deg",
                                 "distance_km", "azimuth_deg", "altitude_deg", "lit_limb_deg"), moon_positions(libraries))
    write("moon-days.csv", ("library", "place", "latitude_deg", "longitude_deg", "elevation_m", "utc_offset_h", "date",
                            "rise", "transit", "set", "slowest_deg_per_h"), moon_days(libraries))


if __name__ == "__main__":
    main()
