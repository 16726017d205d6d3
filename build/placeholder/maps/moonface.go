package maps

import (
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/globe"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What moon-map and moon-blank take.
const (
	moonTime form.Key[time.Duration] = "time"
	moonFace form.Key[string]        = "face"
	moonTurn form.Key[string]        = "turn"
)

// turnField is the argument of how the face is turned.
func turnField(choices ...string) form.Field {
	assumed := "north, on the southern half of the Earth south"
	if slices.Contains(choices, "seen") {
		assumed += ", between the tropics seen"
	}
	return form.Field{Key: moonTurn, Choices: choices, Assumed: assumed, Doc: "What of the Moon is up: its north, its south, or, where there is a moment, what is up as somebody at the school sees it."}
}

// A moonView is the Moon's face of a moment as it is drawn.
type moonView struct {
	globe.View
	place place.Place
	at    time.Time
	face  almanac.Face
	where almanac.Horizontal
	sun   quantity.Angle // how high the Sun is over the school, without air
	turn  string         // "north", "south" or "seen"
	mean  bool           // the mean face, all of it lit
}

// turnedAs is what is up where nobody says it: what a reader of a map expects in either half
// of the Earth. Between the tropics the Moon lies on its side as it rises and as it sets, and
// is seen leaning; a mean face, for any day, has its north or south up there too.
func turnedAs(v form.Values, p place.Place, mean bool) string {
	switch {
	case moonTurn.In(v):
		return moonTurn.Of(v)
	case !mean && entry.Tropical(p.Latitude):
		return "seen"
	case p.Latitude < 0:
		return "south"
	}
	return "north"
}

func moonViewOf(v form.Values) (moonView, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return moonView{}, err
	}
	m := moonView{place: p, at: moonMoment(v, p, date), mean: moonFace.Of(v) == "mean"}
	m.turn = turnedAs(v, p, m.mean)
	m.face, m.where, m.sun = almanac.MoonFaceFrom(p, m.at), almanac.MoonFrom(p, m.at), almanac.SunFrom(p, m.at).Altitude
	if !m.mean {
		m.Centre = globe.Point{Latitude: m.face.Latitude, Longitude: m.face.Longitude}
	}
	m.Turn = turnOf(m.turn, m.face.Lean)
	return m, nil
}

// meanView is the face without libration, for any day.
func meanView(turn string) moonView {
	return moonView{View: globe.View{Turn: turnOf(turn, 0)}, turn: turn, mean: true}
}

func turnOf(turn string, lean quantity.Angle) quantity.Angle {
	switch turn {
	case "seen":
		return lean
	case "south":
		return quantity.Turn / 2
	}
	return 0
}

// moonMoment is the moment that the values ask for, or else that of the evening at which the
// Moon stands highest, from the end of bright twilight to half past nine. Where evenings are
// bright for longer it is half past nine: nobody stays up for it.
func moonMoment(v form.Values, p place.Place, date place.Date) time.Time {
	if moonTime.In(v) {
		clock := moonTime.Of(v)
		return p.Clock(date, int(clock.Hours()), int(clock.Minutes())%60)
	}
	const step = 15 * time.Minute
	n := entry.NightOf(p, date)
	last := n.Clock(21*time.Hour + 30*time.Minute)
	from, _, ok := n.Dark(-almanac.CivilTwilight)
	switch {
	case !ok:
		return last
	case from.Equal(n.Noon): // dark at noon too
		from = n.Clock(17 * time.Hour)
	default:
		from = from.Add(5*time.Minute - 1).Truncate(5 * time.Minute)
	}
	best := last
	for t := from; t.Before(last); t = t.Add(step) {
		if almanac.MoonFrom(p, t).Altitude > almanac.MoonFrom(p, best).Altitude {
			best = t
		}
	}
	return best
}

// up reports whether the Moon is above the horizon, as seen.
func (m *moonView) up() bool { return entry.MoonUp(m.place, m.at) }

// day reports whether some of the Sun is above the horizon.
func (m *moonView) day() bool { return m.sun > entry.SunRise() }

// newMoon is how much of the disc is lit at most where it is too thin to be looked for: the
// share at 20° from the Sun, (1 − cos 20°) / 2, the twilight limit of compute/classroom.
const newMoon = 0.03

// warnings are what must be known before the map is taken for what is in the sky.
func (m *moonView) warnings() (list []say.Phrase) {
	if m.mean {
		return nil
	}
	if m.face.Lit() < newMoon {
		list = append(list, say.Line("moon-map.new", entry.Percent(m.face.Lit())))
	}
	if !m.up() {
		list = append(list, m.below())
	} else if m.day() {
		list = append(list, say.Line("moon-map.by_day"))
	}
	return list
}

// below says that the Moon is down, and when it comes up.
func (m *moonView) below() say.Phrase {
	date := m.place.DateAt(m.at)
	for _, d := range []place.Date{date, date.Add(1)} {
		if d.Year > almanac.LastYear {
			break
		}
		for _, rise := range entry.MoonDay(m.place, d).Rises {
			if rise.After(m.at) {
				return say.Line("moon-map.down", say.Clock(m.at.In(m.place.Zone)), entry.Moment(m.place, rise))
			}
		}
	}
	return say.Line("moon-map.stays_down", say.Clock(m.at.In(m.place.Zone)))
}

// sideOf names where something of a disc is, by its direction from the middle.
func sideOf(x, y float64) say.Value {
	const eighth = math.Pi / 4
	clockwise := math.Atan2(x, -y)
	return say.Words([...]string{"side.top", "side.upper_right", "side.right", "side.lower_right", "side.bottom", "side.lower_left", "side.left", "side.upper_left"}[(int(math.Floor(clockwise/eighth+0.5))+8)%8])
}

// upWord says what is up.
func (m *moonView) upWord() say.Value {
	switch m.turn {
	case "seen":
		return say.Words("moon-map.up_seen")
	case "south":
		return say.Words("moon-map.up_south")
	}
	return say.Words("moon-map.up_north")
}

// sideOfPole says where on the drawing a pole or a rim of the Moon is.
func (m *moonView) sideToward(clockwiseFromNorth quantity.Angle) say.Value {
	a := m.Turn + clockwiseFromNorth
	return sideOf(a.Sin(), -a.Cos())
}

// quarter is from the Moon's north to its east, clockwise with north up.
const quarter = quantity.Turn / 4
