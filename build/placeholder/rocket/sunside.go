package rocket

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argDay  form.Key[place.Date]    = "day"
	argTime form.Key[time.Duration] = "time"
)

// sunArguments say when the class launches.
var sunArguments = form.Form{
	entry.OfLesson(),
	{Key: argDay, Assumed: "the day of the lesson, or the first day of term on a page without one", Doc: "Day of the launches, for the side of the Sun."},
	{Key: argTime, Assumed: "three quarters through the lesson, or the Sun's noon on a page without one", Doc: "Time of the launches by the school's clock."},
}

// Whoever sights has the Sun behind: both stations are on its side of the launcher,
// each an eighth of a turn from the line to it. A quarter of a turn lies between
// them. While the Sun moves an eighth of a turn either way, a sighter who faces the
// launcher keeps it out of the half of the sky before them.
const aside = quantity.Turn / 8

// overhead is how high the Sun stands where its direction means little: a shadow is
// then a third of what throws it, and moves fast. Nobody sights within sunMargin of
// such a Sun. Both from common practice, no source; sunMargin is that of the Moon
// by day.
var overhead, sunMargin = quantity.Degrees(70), quantity.Degrees(20)

// A sunSide is where the Sun is while the class launches.
type sunSide struct {
	at                time.Time // by the school's clock
	up                bool      // at that time; without it there is no side
	bearing, altitude quantity.Angle
	path              []almanac.Horizontal // as seen, through the launches
}

// sunSideOf looks at the Sun three quarters through the lesson, where launches are
// half done, and through the lesson's second half; or twenty minutes either way of a
// time that is told, or of noon.
func sunSideOf(v form.Values) (sunSide, error) {
	p, day := school.Place(v), school.TermFirstDay.Of(v)
	held, n := entry.HeldOn(v).Held, entry.Lesson.Of(v)
	taught := n >= 1 && n <= len(held) && held[n-1].Placed
	if taught {
		day = held[n-1].Date
	}
	if argDay.In(v) {
		day = argDay.Of(v)
	}
	if err := entry.RangeOf(day); err != nil {
		return sunSide{}, err
	}
	clock := func(d time.Duration) time.Time { return p.Clock(day, int(d.Hours()), int(d.Minutes())%60) }
	at, around := entry.NoonOr(p, day), 20*time.Minute
	switch {
	case argTime.In(v):
		at = clock(argTime.Of(v))
	case taught:
		long := held[n-1].To - held[n-1].From
		at, around = clock(held[n-1].From).Add(long*3/4), long/4
	}
	s := sunSide{at: at.In(p.Zone)}
	now := sunSeen(p, at)
	s.up, s.bearing, s.altitude = now.Altitude >= 0, now.Azimuth.Bearing(), now.Altitude
	const looks = 8
	for i := -looks; i <= looks; i++ {
		if h := sunSeen(p, at.Add(around*time.Duration(i)/looks)); h.Altitude >= 0 {
			s.path = append(s.path, h)
		}
	}
	return s, nil
}

// sunSeen is the Sun's centre as seen, lifted by the air.
func sunSeen(p place.Place, t time.Time) almanac.Horizontal {
	h := almanac.SunFrom(p, t)
	h.Altitude = entry.AsSeen(h.Altitude)
	return h
}

// stations are the true bearings of both from the launcher: left and right of
// somebody who stands at the launcher with the Sun behind.
func (s sunSide) stations() (one, two quantity.Angle) {
	return (s.bearing + aside).Bearing(), (s.bearing - aside).Bearing()
}

// steep reports whether the Sun is almost overhead, at some time of the launches.
func (s sunSide) steep() bool {
	for _, h := range s.path {
		if h.Altitude >= overhead {
			return true
		}
	}
	return false
}

// limit is the angle above which nobody sights below a steep Sun, in whole degrees.
func (s sunSide) limit() quantity.Angle {
	lowest := s.altitude
	for _, h := range s.path {
		lowest = min(lowest, h.Altitude)
	}
	return quantity.Degrees(math.Floor((lowest - sunMargin).Degrees()))
}

// apart is the least angle, through the launches, between the Sun and the line from
// a station to any height above the launcher up to the angle.
func (s sunSide) apart(highest quantity.Angle) quantity.Angle {
	least := quantity.Turn / 2
	one, two := s.stations()
	for _, h := range s.path {
		for _, station := range []quantity.Angle{one, two} {
			away := h.Azimuth - station - quantity.Turn/2
			const steps = 16
			for i := range steps + 1 {
				e := highest * quantity.Angle(i) / steps
				cos := e.Sin()*h.Altitude.Sin() + e.Cos()*h.Altitude.Cos()*away.Cos()
				least = min(least, quantity.Angle(math.Acos(max(-1, min(1, cos)))))
			}
		}
	}
	return least
}

// facts say where the Sun and both stations are. highest is the angle at which the
// highest flight is seen.
func (s sunSide) facts(highest quantity.Angle) []result.Fact {
	none := say.None("rocket-zone.no_sun")
	side, bearing, altitude, one, two, apart, limit := none, none, none, none, none, none, none
	if s.up {
		a, b := s.stations()
		side, bearing, altitude = entry.Toward(s.bearing), say.Bearing(s.bearing, 0), say.Degrees(s.altitude, 0)
		one, two = say.Bearing(a, 0), say.Bearing(b, 0)
		apart, limit = say.Degrees(s.apart(highest), 0), say.None("rocket-zone.no_limit")
		if s.steep() {
			limit = say.Degrees(s.limit(), 0)
		}
	}
	return []result.Fact{
		{Name: "sun_time", Value: say.Clock(s.at)}, entry.True("sun_up", s.up), entry.True("sun_high", s.up && s.steep()), {Name: "sun_side", Value: side},
		{Name: "sun_bearing", Value: bearing}, {Name: "sun_altitude", Value: altitude},
		{Name: "station_one", Value: one}, {Name: "station_two", Value: two}, {Name: "waiting", Value: bearing},
		{Name: "sun_apart", Value: apart}, {Name: "sight_limit", Value: limit},
	}
}

// notes say where to stand, and the check that holds at any school and hour.
func (s sunSide) notes(station say.Value) []say.Phrase {
	if !s.up {
		return []say.Phrase{say.Line("rocket-zone.note_no_sun", say.Clock(s.at), station)}
	}
	one, two := s.stations()
	notes := []say.Phrase{
		say.Line("rocket-zone.note_sun", say.Clock(s.at), entry.Toward(s.bearing), say.Bearing(s.bearing, 0), station, say.Bearing(one, 0), say.Bearing(two, 0)),
		say.Line("rocket-zone.note_shadow"),
	}
	if s.steep() {
		notes = append(notes, say.Line("rocket-zone.note_overhead", say.Degrees(s.limit(), 0)))
	}
	return append(notes, say.Line("rocket-zone.note_drift"))
}
