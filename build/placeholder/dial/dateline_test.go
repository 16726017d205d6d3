package dial_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Schools whose zone keeps the date of the other side of the date line, one whose
// zone lies a quarter of an hour from any, and one beside the line on its own date.
// The clock's offset is that of the IANA time zone database for April 2027.
var dateLine = []struct {
	name, longitude, zone string
	degrees, offset       float64 // east; hours ahead of UTC, standard time
	saving                float64 // minutes
}{
	{"Apia", "-171.77", "Pacific/Apia", -171.77, 13, 0},
	{"Kiritimati", "-157.4", "Pacific/Kiritimati", -157.4, 14, 0},
	{"Tonga", "-175.2", "Pacific/Tongatapu", -175.2, 13, 0},
	{"Chatham", "-176.5", "Pacific/Chatham", -176.5, 12.75, 0},
	{"Uelen", "-169.81", "Asia/Anadyr", -169.81, 12, 0},
	{"Adak's zone in the west", "173", "America/Adak", 173, -10, 60},
	{"Fiji", "178.4", "Pacific/Fiji", 178.4, 12, 0},
}

// What is added to a dial comes to less than half a day, since a dial knows no date.
// By hand: four minutes a degree from the meridian of the zone, the whole day left
// out, less the equation of time of another library (testdata/reference).
func TestDialClockBesideTheDateLine(t *testing.T) {
	equation := erfaEquation(t, "2027-04-21T12:00:00Z")
	for _, c := range dateLine {
		settings := []string{"school.latitude=-13.83", "school.longitude=" + c.longitude, "school.time_zone=" + c.zone}
		longitude := c.offset*60 - 4*c.degrees
		switch {
		case longitude > 720:
			longitude -= 1440
		case longitude < -720:
			longitude += 1440
		}
		r := reckon(t, "alder reach", "dial-clock", "2027-04-21", settings...)
		entrytest.Near(t, c.name+", for the longitude", entrytest.Fact(t, r, "longitude_part").Number, longitude*60, 0.5)        // printed to the second
		entrytest.Near(t, c.name+", to add", entrytest.Fact(t, r, "dial_to_clock").Number, (longitude+c.saving)*60-equation, 45) // the equation of time changes by 14 s a day in April, minutes are rounded
		for _, fact := range []string{"smallest", "largest"} {
			entrytest.Near(t, c.name+", "+fact, entrytest.Fact(t, r, fact).Number, longitude*60, 17*60+3600)
		}
		face := reckon(t, "alder reach", "dial-face", "2027-04-21", append(settings, "lines=clock")...)
		entrytest.Near(t, c.name+", in the lines", entrytest.Fact(t, face, "folded_in").Number, (longitude+c.saving)*60, 0.01)
	}
}

// On the day after 29 December 2011 Apia wrote the 31st (IANA database): the dial's
// marks were right as before.
func TestMarksAcrossASkippedDay(t *testing.T) {
	r := reckon(t, "alder reach", "dial-drift", "2012-01-10", "marked=2011-12-20",
		"school.latitude=-13.83", "school.longitude=-171.77", "school.time_zone=Pacific/Apia")
	entrytest.Near(t, "the clock's part", entrytest.Fact(t, r, "clock_part").Number, 0, 0)
}

// erfaEquation is the equation of time in seconds as ERFA has it.
func erfaEquation(t *testing.T, utc string) float64 {
	t.Helper()
	for _, row := range entrytest.Reference(t, "equation-of-time.csv", "erfa") {
		if row["utc"] == utc {
			return entrytest.Number(t, row["apparent_minus_mean_s"])
		}
	}
	t.Fatalf("no equation of time for %s", utc)
	return 0
}
