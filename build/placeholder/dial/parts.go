package dial

import (
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// dialPlate is the picture that opens a lesson about the dial: the dial that the school
// builds, seen from the side, with the names of its parts and the shadow of a morning.
func dialPlate() entry.Entry {
	return entry.Entry{
		Name:      "dial-plate",
		Summary:   "The dial and the names of its parts in a large picture, true to the school's latitude, with the shadow of a morning.",
		Plate:     true,
		Arguments: form.Form{entry.OnDate(), plateWidth},
		Settings:  dialSettings,
		Facts: []entry.Fact{
			{Name: "style_angle", Unit: "deg", Doc: "angle between the style and the plate"},
			{Name: "shown_at", Doc: "the sun time whose shadow is drawn"},
			entry.Truth("casts", "whether a shadow is drawn; the Sun may be too low all morning"),
		},
		Sources:  []string{sourceDial, sourcePolar, "Drawn in parallel projection from the true directions of plate, style and Sun"},
		Harmless: "A picture of the finished dial; drawing, cutting and reading it are the work of the other placeholders.",
		Reckon:   reckonDialPlate,
	}
}

func reckonDialPlate(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	m, err := modelOf(v)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{}
	at, cast := say.None("dial-plate.no_shadow"), false
	for _, hour := range []time.Duration{9, 10, 11} {
		before := (12 - hour) * time.Hour
		_, declination := dial.SunAt(p, entry.NoonOr(p, date).Add(-before))
		if m.light(declination, -quantity.Hours(before.Hours())); m.sun.h >= lowestSun {
			at, cast, m.hour = sunTime(hour*time.Hour), true, int(hour)
			break
		}
	}
	if r.Notes = []say.Phrase{say.Line("dial-plate.too_low", say.Date(date))}; cast {
		r.Notes = []say.Phrase{say.Line("dial-plate.says", say.Date(date), at)}
	} else {
		m.hour = 0
	}
	r.Facts = []result.Fact{
		{Name: "style_angle", Value: say.Number(m.angle.Degrees(), "deg", 1)},
		{Name: "shown_at", Value: at},
		entry.True("casts", cast),
	}
	r.Drawings = []drawing.Drawing{m.drawn()}
	return r, nil
}

// lowestSun is the sine of the Sun's least height above the plate at which its shadow is
// drawn: about 4°, where it is fifteen times as long as what casts it.
const lowestSun = 0.07

// figuresIn is the band for the figures in millimetres of the plate, wider than on a real
// face: they are large in the picture.
const figuresIn = 20.0

// A spot is a place on or above a plate in millimetres, or a direction: s to the east, q along
// the noon line to the pole above the horizon, h out of the plate.
type spot struct{ s, q, h float64 }

func (a spot) plus(b spot) spot          { return spot{a.s + b.s, a.q + b.q, a.h + b.h} }
func (a spot) times(k float64) spot      { return spot{a.s * k, a.q * k, a.h * k} }
func between3(a, b spot, t float64) spot { return a.plus(b.plus(a.times(-1)).times(t)) }

// A model is the dial as it stands: a level plate with a triangle on it, or a plate that is
// tilted by the latitude with a rectangle.
type model struct {
	latitude   quantity.Angle
	slope      quantity.Angle // of the plate
	angle      quantity.Angle // of the style from the plate
	polar      bool
	west, east float64 // ends of the plate, from the noon line; west is negative
	near, far  float64 // from the toe or the middle of the style; near is negative
	lines      []seamLine
	style      [2]spot // its ends: where it begins, or its end away from the pole, first
	foot       [2]spot // below them
	sun        spot    // its direction
	hour       int     // sun time; 0 where no shadow is drawn
}

// A seamLine is an hour line on the plate, and where its figure goes.
type seamLine struct {
	from, to, figure spot
	hour             int
	noon             bool
}

func modelOf(v form.Values) (model, error) {
	latitude := school.Place(v).Latitude
	if builds(v) == dial.Polar {
		return polarModel(v)
	}
	gnomon, err := dial.GnomonOfStyle(latitude, quantity.Millimetres(school.StockStyleMM.Of(v)))
	if err != nil {
		return model{}, err
	}
	p := layOut(dial.Level, latitude, argWidthMM.Of(v), gnomon, 0)
	m := model{
		latitude: latitude, angle: gnomon.Angle,
		west: -p.width / 2, east: p.width / 2, near: -(p.height - footBand - p.toe.Y), far: p.toe.Y,
		style: [2]spot{{}, {q: gnomon.Base.Millimetres(), h: gnomon.Height.Millimetres()}},
		foot:  [2]spot{{}, {q: gnomon.Base.Millimetres()}},
	}
	from, to := dial.Level.Hours(latitude)
	lines, err := dial.HourLines(latitude, from, to, time.Hour)
	if err != nil {
		return model{}, err
	}
	for _, l := range lines {
		if l.SunTime == 24*time.Hour && lines[0].SunTime == 0 {
			continue // the line of 0 h again
		}
		along := spot{s: l.Bearing.Sin(), q: m.polewards() * l.Bearing.Cos()}
		m.lines = append(m.lines, seamLine{
			to: along.times(m.reach(along, figuresIn)), figure: along.times(m.reach(along, figuresIn/2.4)),
			hour: int(l.SunTime / time.Hour), noon: l.HourAngle == 0,
		})
	}
	return m, nil
}

func polarModel(v form.Values) (model, error) {
	p := layOutPolar(v)
	half := p.long/2 + beyondStyle + tickBand + figureBand
	m := model{
		latitude: school.Place(v).Latitude, polar: true,
		west: -p.width / 2, east: p.width / 2, near: -half, far: half,
		style: [2]spot{{q: -p.long / 2, h: p.high}, {q: p.long / 2, h: p.high}},
		foot:  [2]spot{{q: -p.long / 2}, {q: p.long / 2}},
	}
	if m.slope = slopeOf(dial.Polar, m.latitude); m.slope < leastSlope {
		m.slope = 0 // it is built level
	}
	from, to := p.hours()
	lines, err := dial.HourLines(m.latitude, from, to, time.Hour)
	if err != nil {
		return model{}, err
	}
	for _, l := range lines {
		far, ok := dial.PolarDistance(quantity.Millimetres(p.high), l.HourAngle)
		if !ok {
			continue
		}
		s := far.Millimetres()
		m.lines = append(m.lines, seamLine{
			from: spot{s: s, q: -half + figuresIn/2}, to: spot{s: s, q: half - figuresIn}, figure: spot{s: s, q: half - figuresIn/2.4},
			hour: int(l.SunTime / time.Hour), noon: l.HourAngle == 0,
		})
	}
	return m, nil
}

// polewards is the sign of north along the noon line.
func (m model) polewards() float64 {
	if m.latitude < 0 {
		return -1
	}
	return 1
}

// reach is how far a ray from the toe goes on the plate less a band at its edges.
func (m model) reach(along spot, band float64) float64 {
	f := frame{m.west + band, m.near + band, m.east - band, m.far - band}
	end := f.exit(drawing.Point{}, drawing.Point{X: along.s, Y: along.q})
	return drawing.Point{X: end.X, Y: end.Y}.X*along.s + end.Y*along.q
}

// light sets the Sun, in the frame of the plate.
func (m *model) light(declination, hourAngle quantity.Angle) {
	azimuth, altitude := dial.SunDirection(m.latitude, declination, hourAngle)
	level := altitude.Cos()
	pole, up := m.polewards()*level*azimuth.Cos(), altitude.Sin()
	m.sun = spot{
		s: level * azimuth.Sin(),
		q: pole*m.slope.Cos() + up*m.slope.Sin(),
		h: up*m.slope.Cos() - pole*m.slope.Sin(),
	}
}

// cast is where the shadow of a place above the plate falls.
func (m model) cast(p spot) spot { return p.plus(m.sun.times(-p.h / m.sun.h)) }

// world is a place in the frame of the ground: east, north, up.
func (m model) world(p spot) (east, north, up float64) {
	return p.s, m.polewards() * (p.q*m.slope.Cos() - p.h*m.slope.Sin()), p.q*m.slope.Sin() + p.h*m.slope.Cos()
}

// onPlate cuts a polygon on the plate off at its edges: Sutherland & Hodgman,
// Communications of the ACM 17 (1974), 1.
func (m model) onPlate(corners []spot) []spot {
	for _, inside := range []func(spot) float64{
		func(p spot) float64 { return p.s - m.west }, func(p spot) float64 { return m.east - p.s },
		func(p spot) float64 { return p.q - m.near }, func(p spot) float64 { return m.far - p.q },
	} {
		var kept []spot
		for i, b := range corners {
			a := corners[(i+len(corners)-1)%len(corners)]
			in, out := inside(a), inside(b)
			if (in < 0) != (out < 0) {
				kept = append(kept, between3(a, b, in/(in-out)))
			}
			if out >= 0 {
				kept = append(kept, b)
			}
		}
		corners = kept
	}
	return corners
}
