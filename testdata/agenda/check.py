#!/usr/bin/env python3
"""Reads what noonbook pressed with programs that are not noonbook's: unit.ics with
the icalendar package, every CSV file with Python's csv module.

  check.py HANDBOOK LESSONS
"""
import csv
import glob
import os
import sys

import icalendar

folder, lessons = sys.argv[1], int(sys.argv[2])
with open(os.path.join(folder, "unit.ics"), "rb") as f:
    raw = f.read()
assert raw.count(b"\n") == raw.count(b"\r\n"), "line ends"
assert max(len(line) for line in raw.split(b"\r\n")) <= 75, "a line of more than 75 octets"
calendar = icalendar.Calendar.from_ical(raw)
events = list(calendar.walk("VEVENT"))
uids = [str(e["UID"]) for e in events]
assert len(set(uids)) == len(uids), "two events with one UID"
held = 0
for e in events:
    for key in ("UID", "DTSTAMP", "DTSTART", "SUMMARY"):
        assert key in e, f"{key} is missing in {e}"
    assert not e.errors, e.errors
    start = e["DTSTART"].dt
    assert start.utcoffset() is not None, "a time without zone"
    if "DTEND" in e:
        assert e["DTEND"].dt > start, "an event that ends before it begins"
    held += str(e["UID"]).startswith("lesson-")
assert held >= lessons, f"{held} lessons in the calendar, {lessons} in the unit"
tables = sorted(glob.glob(os.path.join(folder, "*.csv")))
assert len(tables) >= 20, f"only {len(tables)} tables"
rows = 0
for name in tables:
    with open(name, newline="", encoding="utf-8-sig") as f:
        text = f.read()
        assert text.count("\n") == text.count("\r\n"), f"{name}: line ends"
        f.seek(0)
        table = list(csv.reader(f, strict=True))
    assert len(table) > 1, f"{name} has no rows"
    assert all(len(row) == len(table[0]) for row in table), f"{name} is ragged"
    assert len(set(table[0])) == len(table[0]), f"{name}: two columns of one name"
    rows += len(table) - 1
print(f"{len(events)} events, {len(tables)} tables with {rows} rows")
