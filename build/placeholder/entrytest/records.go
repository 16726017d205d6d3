package entrytest

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/school"
)

// TwoGroups are marks of 20 April 2027 at Alder Reach, from the shadows that
// testdata/reference/dial-shadows.csv has for the stand "turned" (ERFA's Sun,
// another geometry): plate and gnomon turned 16.2° anticlockwise. Angles are from
// the plate's noon line, read to a tenth of a degree; the second group measured
// points 100 mm from the toe.
const TwoGroups = `group,date,time,angle_deg,x_mm,y_mm
A,2027-04-20,10:00,-30.2,,
A,2027-04-20,11:00,-18.0,,
A,2027-04-20,12:00,-7.1,,
A,2027-04-20,13:00,3.5,,
A,2027-04-20,14:00,14.5,,
A,2027-04-20,15:00,26.5,,
A,2027-04-20,16:00,40.6,,
B,2027-04-20,10:00,,-50.2,86.5
B,2027-04-20,11:00,,-31.0,95.1
B,2027-04-20,12:00,,-12.3,99.2
B,2027-04-20,13:00,,6.2,99.8
B,2027-04-20,14:00,,25.0,96.8
B,2027-04-20,15:00,,44.6,89.5
B,2027-04-20,16:00,,65.1,75.9
`

// TryLog evaluates a log placeholder with the text of its CSV file; given are
// key=value pairs.
func TryLog(t *testing.T, entries []entry.Entry, where, name, text string, given ...string) (result.Result, error) {
	t.Helper()
	e, _ := entry.Find(entries, name)
	i := slices.IndexFunc(e.Settings, func(key form.AnyKey) bool { return strings.HasPrefix(key.Name(), "records.") })
	if i < 0 {
		t.Fatalf("%s reads no records", name)
	}
	key := e.Settings[i].Name()
	field, ok := school.Settings().Field(key)
	if !ok {
		t.Fatalf("no setting %s", key)
	}
	records, faults := field.ReadRecords([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	records.File = "log.csv"
	values, complaint := Pairs(e, given)
	if complaint != "" {
		t.Fatal(complaint)
	}
	values[key] = records
	return e.Reckon(e.Complete(Settings(t, where), values, Day(t, "2027-04-20")))
}

// ReckonLog is TryLog for records that must do.
func ReckonLog(t *testing.T, entries []entry.Entry, where, name, text string, given ...string) result.Result {
	t.Helper()
	r, err := TryLog(t, entries, where, name, text, given...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// SampleLogs are records that bring out every table of the placeholders that read
// them.
var SampleLogs = map[string]string{
	"mission-plans":  Missions,
	"mission-record": Missions,
	"dial-marks":     TwoGroups,
	"rocket-log":     TwoTests,
	"moon-log":       MoonAtAlderReach,
	"strip-log":      "group,body,squares,past_cm\nA,earth,9,10.7\nB,earth,9,10\nA,jupiter,54,\n",
}

// Missions are flights that were done and flights that were planned, some long before
// the term of Settings.
const Missions = `world,flight,who,task,rung,year,state,as_of
Saturn,Cassini,"USA, Europe",stayed,3,2004,,2026-05-01
Saturn,Pioneer 11,USA,flew past,2,1979,done,2026-04-30
Titan,Huygens,Europe,set down,4,2005,done,2026-05-02
Titan,Dragonfly,USA,fly about,5,2034,not_launched,2026-04-11
Mercury,BepiColombo,"Europe, Japan",go into orbit,3,2026,under_way,2026-04-12
Mars,Old Hope,,land,4,2027,cancelled,2026-06-01
`

// MoonAtAlderReach are looks whose lit part, direction and height are pyephem's
// (4.1.4, moon_phase, azimuth and altitude; the lit side is the direction from
// the Moon to the Sun, from its altitudes and azimuths), rounded as a pupil
// would, and looks that contradict them. pyephem, in UTC:
//
//	2027-04-13 19:00  48.3 % lit, azimuth 100.0°, altitude  42.6°, lit at  33° from the top
//	2027-04-16 22:00  81.4 %,             118.5°,           34.2°,          32°
//	2027-04-14 11:00  55.9 %,             359.2°,          −23.4°
//	2027-04-26 12:00  71.6 %,             222.0°,            5.2°,         304°
const MoonAtAlderReach = `group,date,time,seen,lit_percent,lit_side,direction,altitude_deg
B,2027-04-16,19:00,yes,30,left,west,70
A,2027-04-13,16:00,yes,50,upper_right,east,40
A,2027-04-16,19:00,,80,upper_right,southeast,30
B,2027-04-14,8:00,yes,50,,,
C,2027-04-20,22:00,cloud,,,,
C,2027-04-26,9:00,no,,,,
C,2027-04-14,8:00,no,,,,
`

// TwoTests are flights whose angles give the heights of TestLogAgainstScipy, less
// the eye's 1.35 m, from 41 m.
const TwoTests = `group,fins,nose_mm,stamp,baseline_m,angle_deg,second_angle_deg,flight_s
A,3,45,1,41,13.244414,,
A,5,45,1,41,15.862305,,
A,3,45,1,41,17.146908,,
A,5,45,1,41,14.561126,,
A,3,45,1,41,14.561126,,
A,5,45,1,41,18.413984,,
B,3,36,2,,,,3
B,3,54,2,,14,15,
`

// ThreePairs are flights of a class whose groups flew two rockets once each.
const ThreePairs = `group,fins,stamp,pipe_deg,baseline_m,angle_deg,second_angle_deg
1,3,1,90,44,13,14
1,6,1,90,44,11.5,12
2,6,2,90,44,10.5,11
2,3,2,90,44,12,12.5
3,3,3,90,44,14,13.5
3,6,3,90,44,13,12
`
