"""Writes evenings.csv: for the school days of a term at five places, the first quarter of an
hour from 18:00 on at which an evening of 75 minutes under the sky can begin, so that it is
over by 21:30, by pyephem's Sun; and what Moon and planets do then. The rules are those of the
documentation of compute/classroom, written down again; no code of ours is used.

    python3 evenings.py > evenings.csv
"""

import csv
import datetime as dt
import math
import sys
import zoneinfo

import ephem

PLACES = [
    ("alder reach", 46.09, -64.77, "America/Moncton", "2027-04-12", "2027-05-14"),
    ("dunedin", -45.87, 170.50, "Pacific/Auckland", "2027-04-12", "2027-05-14"),
    ("nairobi", -1.29, 36.82, "Africa/Nairobi", "2027-04-12", "2027-05-14"),
    ("tromso", 69.65, 18.96, "Europe/Oslo", "2027-04-12", "2027-05-14"),
    ("tromso in winter", 69.65, 18.96, "Europe/Oslo", "2026-12-01", "2026-12-18"),
    ("apia", -13.83, -171.77, "Pacific/Apia", "2027-04-12", "2027-05-14"),
]
BODIES = [ephem.Mercury, ephem.Venus, ephem.Mars, ephem.Jupiter, ephem.Saturn]


def seen(body, observer, t, air):
    observer.date = t.astimezone(dt.timezone.utc).replace(tzinfo=None)
    observer.pressure = 1010 if air else 0
    b = body(observer)
    return math.degrees(b.alt), b


def lowest(body, observer, a, b):
    return min(seen(body, observer, a, True)[0], seen(body, observer, b, True)[0])


def evening(observer, begin):
    at = lambda minutes: begin + dt.timedelta(minutes=minutes)
    sun = lambda minutes: seen(ephem.Sun, observer, at(minutes), False)[0]
    if sun(0) > -50 / 60 or sun(47.5) > -9 or sun(62.5) > -12:
        return None
    _, moon = seen(ephem.Moon, observer, at(17.5), False)
    best = ("", "", "")
    for body in BODIES:
        _, b = seen(body, observer, at(32.5), False)
        low = lowest(body, observer, at(25), at(40))
        deep = -6 if b.mag < -1.46 else -9
        if b.mag < 1.5 and low >= 10 and sun(32.5) <= deep and (best[0] == "" or b.mag < best[2]):
            best = (body.__name__, round(low, 3), b.mag)
    return [begin.strftime("%H:%M"), *(round(sun(m), 3) for m in (0, 47.5, 62.5)), round(moon.phase / 100, 4),
            round(lowest(ephem.Moon, observer, at(10), at(25)), 3), *best]


def main():
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow("place latitude_deg longitude_deg zone date begin sun_begin_deg sun_figures_deg sun_count_deg "
                 "moon_lit moon_low_deg planet planet_low_deg planet_magnitude".split())
    for name, latitude, longitude, zone, first, last in PLACES:
        observer = ephem.Observer()
        observer.lat, observer.lon = str(latitude), str(longitude)
        day = dt.date.fromisoformat(first)
        while day <= dt.date.fromisoformat(last):
            if day.weekday() < 5:
                row = None
                for quarter in range(18 * 4, 81 + 1):
                    begin = dt.datetime(day.year, day.month, day.day, quarter // 4, quarter % 4 * 15, tzinfo=zoneinfo.ZoneInfo(zone))
                    if row := evening(observer, begin):
                        break
                out.writerow([name, latitude, longitude, zone, day] + (row or [""] * 9))
            day += dt.timedelta(days=1)


main()
