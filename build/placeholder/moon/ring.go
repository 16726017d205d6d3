package moon

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

const argLit form.Key[bool] = "lit"

func moonRing() entry.Entry {
	return entry.Entry{
		Name:    "moon-ring",
		Summary: "Eight stops of a ball that is carried round a head beside a lamp, numbered the way in which the Moon goes round at the school.",
		Arguments: form.Form{
			entry.OnDate(),
			{Key: argLit, Default: false, Doc: "Whether the lit halves are drawn, and what the carrier sees of each; without them pupils shade the balls themselves."},
		},
		Settings: school.Where(),
		Facts: []entry.Fact{
			{Name: "stop", Doc: "at which of the eight stops the Moon is at noon of the date"},
		},
		Sources:  []string{entry.SourceMoon, entry.SourceSun, sourceRing},
		Cautions: []string{entry.CareLamp, entry.CareDarkRoom},
		Reckon:   reckonMoonRing,
	}
}

func reckonMoonRing(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	stop := stopAt(almanac.Moon.AspectAt(entry.NoonOr(p, date)))
	r := result.Result{
		Facts:    []result.Fact{{Name: "stop", Value: say.Count(stop)}},
		Drawings: []drawing.Drawing{ringDrawing(p, argLit.Of(v), stop)},
	}
	if argLit.Of(v) {
		r.Notes = []say.Phrase{say.Line("moon-ring.note_seen"), say.Line("moon-ring.note_today", say.Count(stop), say.Date(date))}
	}
	return r, nil
}

// stopAt is the stop to which the Moon is nearest: an eighth of its round each, from new
// Moon on, so that stops 3, 5 and 7 are the quarters and the full Moon.
func stopAt(a almanac.Aspect) int {
	round := quantity.Turn/2 - a.PhaseAngle // from the Sun, eastward: how far round it is
	if !a.East {
		round = quantity.Turn - round
	}
	return int(math.Round(round.Degrees()/45))%8 + 1
}

// Measures of the ring in millimetres.
const (
	ringWidth  = 130.0
	ringHeight = 128.0
	ringRadius = 41.0
	ringBall   = 8.5
	ringSeen   = 4.5  // of the small discs
	ringWithin = 23.0 // of their ring
	ringFigure = 12.5 // from a ball's centre to its number
)

// ringDrawing draws the ring from above, the lamp beyond its upper edge. In the north,
// where the top of a head is the side of the north pole, the Moon goes round
// counterclockwise; in the south clockwise. The light comes from one side for all balls,
// as it nearly does where the lamp is several arm's lengths away.
func ringDrawing(p place.Place, lit bool, today int) drawing.Drawing {
	way := 1.0 // counterclockwise
	if p.Latitude < 0 {
		way = -1
	}
	d := drawing.Drawing{Name: "moon-ring", Width: ringWidth, Height: ringHeight, Title: say.Line("moon-ring.title"), Description: ringInWords(way, lit)}
	head := drawing.Point{X: ringWidth / 2, Y: 69}
	on := func(radius, stop float64) drawing.Point {
		a := (90 + way*45*(stop-1)) * math.Pi / 180
		return drawing.Point{X: head.X + radius*math.Cos(a), Y: head.Y - radius*math.Sin(a)}
	}
	d.Label("name", drawing.Point{X: head.X, Y: 4}, drawing.Middle, say.Words("moon-ring.lamp"))
	for _, x := range []float64{15, 35, 55, 75, 95, 115} {
		d.Line("ray", drawing.Point{X: x, Y: 7}, drawing.Point{X: x, Y: 14})
		d.Area("ray-head", drawing.Point{X: x, Y: 16}, drawing.Point{X: x - 1.2, Y: 13.4}, drawing.Point{X: x + 1.2, Y: 13.4})
	}
	var orbit []drawing.Point
	for i := range 73 {
		orbit = append(orbit, on(ringRadius, 1+float64(i)/9))
	}
	d.Line("orbit", orbit...)
	d.Area("arrow", on(ringRadius, 1.61), on(ringRadius-1.8, 1.47), on(ringRadius+1.8, 1.47))
	d.Area("nose", drawing.Point{X: head.X - 2, Y: head.Y - 7.6}, drawing.Point{X: head.X, Y: head.Y - 11}, drawing.Point{X: head.X + 2, Y: head.Y - 7.6})
	d.Disc("skull", head, 8)
	d.Label("name", drawing.Point{X: head.X, Y: head.Y + 1.2}, drawing.Middle, say.Words("moon-ring.head"))
	for stop := 1; stop <= 8; stop++ {
		at := on(ringRadius, float64(stop))
		ringStop(&d, at, lit)
		if lit && stop == today {
			d.Disc("today", at, ringBall+1.6)
		}
		if lit {
			entry.DrawMoon(&d, on(ringWithin, float64(stop)), ringSeen, seenAt(stop, way))
		}
		number := on(ringRadius+ringFigure, float64(stop))
		if stop == 1 { // beside it, because the light comes from above
			number = drawing.Point{X: at.X + ringFigure, Y: at.Y}
		}
		d.Label("stop", drawing.Point{X: number.X, Y: number.Y + 1.6}, drawing.Middle, say.Count(stop))
	}
	return d
}

// ringStop draws a ball from above, the half towards the lamp white.
func ringStop(d *drawing.Drawing, at drawing.Point, lit bool) {
	d.Disc("ball", at, ringBall)
	if !lit {
		return
	}
	var dark []drawing.Point
	for i := range 25 {
		a := math.Pi * float64(i) / 24
		dark = append(dark, drawing.Point{X: at.X + ringBall*math.Cos(a), Y: at.Y + ringBall*math.Sin(a)})
	}
	d.Area("dark", dark...)
}

// seenAt is the ball as its carrier sees it: the lamp is then on the side from which the
// carrier has turned away, the right where the turn is counterclockwise.
func seenAt(stop int, way float64) almanac.Limb {
	round := quantity.Turn / 8 * quantity.Angle(stop-1)
	lean := quantity.Turn / 4 * quantity.Angle(way)
	if round > quantity.Turn/2 {
		lean = -lean
	}
	return almanac.Limb{Lit: (1 - round.Cos()) / 2, Lean: lean}
}

func ringInWords(way float64, lit bool) say.Phrase {
	switch {
	case way > 0 && lit:
		return say.Line("moon-ring.counterclockwise_lit")
	case way > 0:
		return say.Line("moon-ring.counterclockwise")
	case lit:
		return say.Line("moon-ring.clockwise_lit")
	}
	return say.Line("moon-ring.clockwise")
}

const sourceRing = "Stops: eighths of the round, by the angle at the Moon between Sun and Earth; the Moon goes round eastward, counterclockwise as seen from above the north pole"
