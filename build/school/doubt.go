package school

import (
	"fmt"
	"math"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// A Doubt is a setting that is allowed and hardly right.
type Doubt struct {
	Key  form.AnyKey
	Item int    // of a list, from 0; −1 for the whole value
	Text string // as problems are worded
}

// Doubts looks for settings that are hardly right, such as an east longitude that
// lacks its minus: by the Sun's noon on the clock, the half of the year in which the
// clock is put forward, and lesson times at night. Place and zone give one doubt at
// most. Values may lack any key.
func Doubts(v form.Values) []Doubt {
	var all []Doubt
	if d, ok := DoubtedPlace(v, TermFirstDay.Of(v)); ok {
		all = append(all, d)
	}
	for i, span := range TermLessonTimes.Of(v) {
		if text := doubtedTime(span); text != "" {
			all = append(all, Doubt{TermLessonTimes, i, "term.lesson_times: " + text})
		}
	}
	return all
}

// The Sun's noon comes between these times on the clock wherever there is a school,
// with the mean Sun, which leaves out the equation of time: it moves the true Sun's
// noon by 17 minutes at most, and no place should be doubted in one month and not in
// another. The latest that we know is Gambell in Alaska in summer, 15:27 (171.7° W,
// eight hours behind UTC).
const (
	earliestNoon = 9*time.Hour + 30*time.Minute
	latestNoon   = 15*time.Hour + 30*time.Minute
)

// poleward is the latitude from which on a longitude says little about the Sun, since
// a station keeps the clock of those who supply it.
const poleward = 85

// A fix is one way in which a place may have been written wrongly.
type fix struct {
	key  form.Key[float64]
	what string // said of the place as it is then, {} for its value
	to   func(lat, lon float64) (float64, float64)
}

// fixes are in the order from the simplest slip on.
func fixes() []fix {
	return []fix{
		{Longitude, "with longitude {lon} %s; is the sign of the longitude wrong?", func(lat, lon float64) (float64, float64) { return lat, -lon }},
		{Latitude, "with latitude {lat} %s; is the sign of the latitude wrong?", func(lat, lon float64) (float64, float64) { return -lat, lon }},
		{Latitude, "with latitude and longitude exchanged %s; are they swapped?", func(lat, lon float64) (float64, float64) { return lon, lat }},
		{Longitude, "with latitude {lat} and longitude {lon} %s; are both signs wrong?", func(lat, lon float64) (float64, float64) { return -lat, -lon }},
		{Latitude, "with latitude {lat} and longitude {lon} %s; are they swapped, and a sign wrong?", func(lat, lon float64) (float64, float64) { return lon, -lat }},
		{Latitude, "with latitude {lat} and longitude {lon} %s; are they swapped, and a sign wrong?", func(lat, lon float64) (float64, float64) { return -lon, lat }},
		{Latitude, "with latitude {lat} and longitude {lon} %s; are they swapped, and both signs wrong?", func(lat, lon float64) (float64, float64) { return -lon, -lat }},
	}
}

// DoubtedPlace says what is hardly right about latitude, longitude and time zone, as
// the clock runs on the date, and names the simplest slip that would explain it.
func DoubtedPlace(v form.Values, date place.Date) (Doubt, bool) {
	if !Latitude.In(v) || !Longitude.In(v) || TimeZone.Of(v) == nil || date.IsZero() {
		return Doubt{}, false
	}
	lat, lon, zone := Latitude.Of(v), Longitude.Of(v), TimeZone.Of(v)
	clock := clockOf(zone, date)
	offNoon := !plausible(clock.noon(lon))
	if math.Abs(lat) > poleward || clock.fits(lat, lon) || !offNoon && lat < antarctic {
		return Doubt{}, false
	}
	wrong := ""
	noon := SunsNoon(lon, zone, date)
	if offNoon {
		wrong = fmt.Sprintf("the Sun's noon is at %s by the clock of %s here", said(noon), zone)
	} else {
		wrong = fmt.Sprintf("the clock of %s is put forward in the summer of the %s, and latitude %s is in the %s", zone, half(clock.north), degrees(lat), half(!clock.north))
	}
	for _, f := range fixes() {
		a, b := f.to(lat, lon)
		if a < -90 || a > 90 || !clock.fits(a, b) {
			continue
		}
		would := "it would be at " + said(SunsNoon(b, zone, date))
		if !offNoon {
			would = "the two fit"
		}
		text := strings.NewReplacer("{lat}", degrees(a), "{lon}", degrees(b)).Replace(fmt.Sprintf(f.what, would))
		return Doubt{f.key, -1, f.key.Name() + ": " + wrong + "; " + text}, true
	}
	return Doubt{Longitude, -1, fmt.Sprintf("school.longitude: %s, and no change of signs mends that; check school.longitude and school.time_zone", wrong)}, true
}

// SunsNoon is the time since midnight on the zone's clock at which the Sun is highest
// at a longitude, in degrees east, on the date: twelve o'clock less the longitude's
// time, the clock's offset from UTC added, less the equation of time.
func SunsNoon(lon float64, zone *time.Location, date place.Date) time.Duration {
	midday := time.Date(date.Year, date.Month, date.Day, 12, 0, 0, 0, zone)
	return inDay(meanNoon(lon, midday) - almanac.EquationOfTime(midday))
}

func meanNoon(lon float64, midday time.Time) time.Duration {
	_, offset := midday.Zone()
	return inDay(12*time.Hour - time.Duration(lon/15*float64(time.Hour)) + time.Duration(offset)*time.Second)
}

func inDay(d time.Duration) time.Duration {
	const day = 24 * time.Hour
	return (d%day + day) % day
}

func plausible(noon time.Duration) bool { return noon >= earliestNoon && noon <= latestNoon }

// A clock is what a zone's clock says about where it is kept.
type clock struct {
	midday       time.Time // on the date
	known, north bool      // which half of the Earth
}

// clockOf reads the half of the Earth off the months in which the clock is put
// forward, since it is so in summer. Of the 105 zones of the IANA database whose clock
// is put forward in 2027 (zone1970.tab, edition 2025b) none has its principal location
// within 15° of the equator, and Antarctica/Troll alone has it in the other half:
// stations keep the clock of those who supply them.
func clockOf(zone *time.Location, date place.Date) clock {
	offset := func(m time.Month) int {
		_, seconds := time.Date(date.Year, m, 15, 12, 0, 0, 0, zone).Zone()
		return seconds
	}
	c := clock{midday: time.Date(date.Year, date.Month, date.Day, 12, 0, 0, 0, zone)}
	june, december := offset(time.June), offset(time.December)
	steady := june == offset(time.July) && june == offset(time.August) && december == offset(time.January) && december == offset(time.February)
	c.known = steady && june != december // a month of Ramadan by another clock is no summer
	c.north = june > december
	if strings.HasPrefix(zone.String(), "Antarctica/") {
		c.known = false
	}
	return c
}

func (c clock) noon(lon float64) time.Duration { return meanNoon(lon, c.midday) }

// antarctic is the latitude south of which there are stations, whatever their clock.
const antarctic = -60

func (c clock) fits(lat, lon float64) bool {
	return plausible(c.noon(lon)) && (!c.known || lat == 0 || c.north == (lat > 0))
}

func half(north bool) string {
	if north {
		return "north"
	}
	return "south"
}

// degrees writes a coordinate as unit.toml has it, with a sign where there is one.
func degrees(x float64) string {
	text, _ := form.Field{Key: Latitude}.Literal(x)
	return text + "°"
}

func said(t time.Duration) string {
	t = t.Round(time.Minute)
	return fmt.Sprintf("%d:%02d", int(t.Hours())%24, int(t.Minutes())%60)
}

// A school day lies between these times: common practice, no source. Evening schools
// go on longer; those of pupils of eleven do not.
const (
	earliestLesson = 6 * time.Hour
	latestLesson   = 21 * time.Hour
)

func doubtedTime(s form.TimeSpan) string {
	if s.From >= earliestLesson && s.To <= latestLesson {
		return ""
	}
	found := said(s.From) + "-" + said(s.To)
	if half := 12 * time.Hour; s.From < earliestLesson && s.From+half >= earliestLesson && s.To+half <= latestLesson {
		return fmt.Sprintf("%s is at night; is %s-%s meant?", found, said(s.From+half), said(s.To+half))
	}
	return fmt.Sprintf("%s is at night; a lesson is hardly before %s or after %s", found, said(earliestLesson), said(latestLesson))
}
