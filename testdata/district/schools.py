"""Writes schools.csv: two hundred invented schools for trying a district.

    python3 schools.py > schools.csv

Their names are invented. Positions are a few kilometres from true towns, whose
coordinates are from memory, to a twentieth of a degree or so; the time zones are theirs
(IANA time zone database). Terms and days off are what such a term may look like.
"""

import csv
import sys

# town, latitude, longitude, metres above the sea, time zone, language
CANADA = [
    ("Sackville", 45.90, -64.37, 15, "America/Moncton", "en"),
    ("Shediac", 46.22, -64.54, 10, "America/Moncton", "fr"),
    ("Edmundston", 47.37, -68.33, 140, "America/Moncton", "fr"),
    ("Truro", 45.36, -63.28, 20, "America/Halifax", "en"),
    ("Summerside", 46.40, -63.79, 10, "America/Halifax", "en"),
    ("Corner Brook", 48.95, -57.95, 30, "America/St_Johns", "en"),
    ("Gander", 48.95, -54.61, 140, "America/St_Johns", "en"),
    ("Rimouski", 48.45, -68.52, 40, "America/Toronto", "fr"),
    ("Trois-Rivières", 46.34, -72.54, 30, "America/Toronto", "fr"),
    ("Sherbrooke", 45.40, -71.90, 180, "America/Toronto", "fr"),
    ("Saguenay", 48.43, -71.07, 20, "America/Toronto", "fr"),
    ("Timmins", 48.48, -81.33, 300, "America/Toronto", "en"),
    ("Guelph", 43.55, -80.25, 330, "America/Toronto", "en"),
    ("Kenora", 49.77, -94.49, 340, "America/Winnipeg", "en"),
    ("Brandon", 49.85, -99.95, 400, "America/Winnipeg", "en"),
    ("Steinbach", 49.53, -96.68, 260, "America/Winnipeg", "fr"),
    ("Swift Current", 50.29, -107.80, 750, "America/Regina", "en"),
    ("Prince Albert", 53.20, -105.75, 430, "America/Regina", "en"),
    ("Red Deer", 52.27, -113.81, 855, "America/Edmonton", "en"),
    ("Lethbridge", 49.69, -112.84, 910, "America/Edmonton", "en"),
    ("Kamloops", 50.67, -120.33, 345, "America/Vancouver", "en"),
    ("Prince Rupert", 54.31, -130.32, 40, "America/Vancouver", "en"),
    ("Nanaimo", 49.17, -123.94, 30, "America/Vancouver", "en"),
    ("Whitehorse", 60.72, -135.06, 670, "America/Whitehorse", "en"),
    ("Yellowknife", 62.45, -114.37, 200, "America/Edmonton", "en"),
]
NEW_ZEALAND = [
    ("Kerikeri", -35.23, 173.95, 80, "Pacific/Auckland", "en"),
    ("Whangārei", -35.73, 174.32, 20, "Pacific/Auckland", "en"),
    ("Hamilton", -37.79, 175.28, 40, "Pacific/Auckland", "en"),
    ("Whakatāne", -37.96, 176.99, 5, "Pacific/Auckland", "en"),
    ("Gisborne", -38.66, 178.02, 5, "Pacific/Auckland", "en"),
    ("New Plymouth", -39.06, 174.07, 30, "Pacific/Auckland", "en"),
    ("Masterton", -40.95, 175.66, 110, "Pacific/Auckland", "en"),
    ("Nelson", -41.27, 173.28, 10, "Pacific/Auckland", "en"),
    ("Greymouth", -42.45, 171.21, 5, "Pacific/Auckland", "en"),
    ("Timaru", -44.40, 171.25, 20, "Pacific/Auckland", "en"),
    ("Oamaru", -45.10, 170.97, 30, "Pacific/Auckland", "en"),
    ("Queenstown", -45.03, 168.66, 330, "Pacific/Auckland", "en"),
    ("Invercargill", -46.41, 168.35, 10, "Pacific/Auckland", "en"),
]
KENYA = [
    ("Kisumu", -0.10, 34.75, 1130, "Africa/Nairobi", "en"),
    ("Eldoret", 0.52, 35.27, 2100, "Africa/Nairobi", "en"),
    ("Nakuru", -0.30, 36.07, 1850, "Africa/Nairobi", "en"),
    ("Nyeri", -0.42, 36.95, 1760, "Africa/Nairobi", "en"),
    ("Meru", 0.05, 37.65, 1550, "Africa/Nairobi", "en"),
    ("Garissa", -0.45, 39.65, 150, "Africa/Nairobi", "en"),
    ("Malindi", -3.22, 40.12, 10, "Africa/Nairobi", "en"),
    ("Voi", -3.40, 38.56, 580, "Africa/Nairobi", "en"),
    ("Lodwar", 3.12, 35.60, 500, "Africa/Nairobi", "en"),
    ("Machakos", -1.52, 37.26, 1650, "Africa/Nairobi", "en"),
]
NORWAY = [
    ("Kristiansand", 58.15, 8.00, 10, "Europe/Oslo", "en"),
    ("Stavanger", 58.97, 5.73, 20, "Europe/Oslo", "en"),
    ("Hamar", 60.79, 11.07, 130, "Europe/Oslo", "en"),
    ("Bergen", 60.39, 5.32, 20, "Europe/Oslo", "en"),
    ("Ålesund", 62.47, 6.15, 10, "Europe/Oslo", "en"),
    ("Røros", 62.57, 11.38, 630, "Europe/Oslo", "en"),
    ("Steinkjer", 64.01, 11.50, 10, "Europe/Oslo", "en"),
    ("Bodø", 67.28, 14.40, 15, "Europe/Oslo", "en"),
    ("Narvik", 68.44, 17.43, 30, "Europe/Oslo", "en"),
    ("Hammerfest", 70.66, 23.68, 10, "Europe/Oslo", "en"),
]

# country: towns, schools, names (a gap for a word of the landscape), words, what holds there
COUNTRIES = [
    (CANADA, 90, {"en": "{} School", "fr": "École {}"},
     {"en": ["Sandpiper", "Tamarack", "Beaver Pond", "Windfall", "Kettle Lake", "Heron Bay", "Lantern Hill", "Spruce Ridge"],
      "fr": ["des Marées", "du Vieux-Moulin", "des Bernaches", "de la Grande-Ourse", "des Trembles", "du Phare", "des Épinettes"]},
     {"school.paper": "Letter", "school.clock": {"en": "12-hour", "fr": "24-hour"}, "school.dates": {"en": "month first", "fr": "day first"},
      "term.first_day": "2027-04-12", "term.last_day": "2027-05-21", "term.days_off": "2027-04-30", "term.lesson_times": "9:10-10:00; 10:20-11:10; 13:00-13:50"}),
    (NEW_ZEALAND, 45, {"en": "{} School"},
     {"en": ["Tūī Valley", "Black Sand", "Kōwhai Bank", "Long Beach", "Pukeko Flat", "Southerly Point", "Ponga Gully"]},
     {"school.paper": "A4", "school.clock": "12-hour", "school.dates": "day first",
      "term.first_day": "2027-05-03", "term.last_day": "2027-06-18", "term.days_off": "2027-06-07; 2027-06-08", "term.lesson_times": "9:00-9:50; 11:00-11:50; 13:30-14:20"}),
    (KENYA, 35, {"en": "{} Primary School"},
     {"en": ["Acacia Road", "Weaver Bird", "Red Soil", "Fever Tree", "Morning Star", "Baobab", "Kiboko"]},
     {"school.paper": "A4", "school.clock": "24-hour", "school.dates": "day first",
      "term.first_day": "2027-05-03", "term.last_day": "2027-06-18", "term.days_off": "2027-06-01", "term.lesson_times": "8:20-9:10; 9:30-10:20; 11:20-12:10"}),
    (NORWAY, 30, {"en": "{} skole"},
     {"en": ["Måkeberget", "Tjernlia", "Storsteinen", "Rognebærbakken", "Nordlysveien", "Svaberget"]},
     {"school.paper": "A4", "school.clock": "24-hour", "school.dates": "day first",
      "term.first_day": "2027-04-12", "term.last_day": "2027-05-28", "term.days_off": "2027-05-06; 2027-05-07; 2027-05-17", "term.lesson_times": "8:30-9:20; 10:00-10:50; 12:10-13:00"}),
]

HEADS = ["folder", "school.name", "town", "school.latitude", "school.longitude", "school.elevation_m", "school.time_zone", "school.language",
         "school.paper", "school.clock", "school.dates", "class.name", "class.pupils", "term.first_day", "term.last_day", "term.days_off", "term.lesson_times"]


def main():
    out = csv.DictWriter(sys.stdout, HEADS, lineterminator="\n")
    out.writeheader()
    number = 0
    for towns, schools, names, landscape, holds in COUNTRIES:
        seen = set()
        for i in range(schools):
            town, latitude, longitude, metres, zone, language = towns[i % len(towns)]
            words = landscape[language]
            name = names[language].format(words[(i + i // len(towns)) % len(words)])
            row = {key: value[language] if isinstance(value, dict) else value for key, value in holds.items()}
            folder = ""
            if name in seen:
                folder = f"{town} {number % 97}".lower().replace(" ", "-")
                folder = "".join({"ā": "a", "è": "e", "å": "a", "ø": "o"}.get(c, c) for c in folder)
            seen.add(name)
            around = i // len(towns) + 1
            row |= {
                "folder": folder,
                "school.name": name,
                "town": town,
                "school.latitude": f"{latitude + 0.011 * around * (-1) ** i:.3f}",
                "school.longitude": f"{longitude + 0.017 * around * (-1) ** (i // 2):.3f}",
                "school.elevation_m": str(metres),
                "school.time_zone": zone,
                "school.language": language,
                "class.name": ("classe " if language == "fr" else "class ") + f"{5 + i % 2}{'ABC'[i % 3]}",
                "class.pupils": str(18 + (7 * i) % 13),
            }
            out.writerow(row)
            number += 1


main()
