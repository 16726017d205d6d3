package moon

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// How well a look by eye is taken to be good, common practice, no source: the
// lit part is judged in tenths, a side to the neighbouring eighth, a direction
// to the neighbouring eighth of the compass, a height to a fist and a half.
const (
	litNear       = 15.0 // percent of the disc
	sideNear      = 45.0 // degrees
	directionNear = 45.0 // degrees
	heightNear    = 15.0 // degrees
)

func moonLog() entry.Entry {
	return entry.Entry{
		Name:     "moon-log",
		Summary:  "The class's Moon diary beside the almanac: when it looked, what it saw, and what was there.",
		Settings: slices.Concat(school.Where(), form.Keys{school.RecordsMoonLog, school.TermFirstDay, school.TermLastDay}),
		Facts: []entry.Fact{
			{Name: "looks", Doc: "how many times somebody looked"},
			{Name: "seen", Doc: "how many times the Moon was seen"},
			{Name: "clouded", Doc: "how many times there were clouds"},
			{Name: "fit", Doc: "of the looks at the Moon, how many the almanac bears out"},
			{Name: "lit_off", Unit: "percent", Doc: "how far the lit part was judged off, as a mean"},
			{Name: "first_day", Doc: "day of the first look"},
			{Name: "last_day", Doc: "day of the last look"},
			{Name: "finding", Doc: "what the diary shows, in words"},
			entry.Truth("kept", "whether somebody looked at all"),
			entry.Truth("this_term", "whether somebody looked between the first and the last day of the term"),
		},
		Sources:  []string{entry.SourceMoon, entry.SourceMoonrise, entry.SourceIANA, "How well an eye judges the Moon: lit part to 15 %, side and direction to 45°, height to 15°: common practice, no source", entry.SourceOutlier},
		Harmless: "Reads looks that were made already; looking by day is the work of moon-school.",
		Reckon:   reckonMoonLog,
	}
}

// A moonLook is one row of the diary with what the almanac has for it.
type moonLook struct {
	row   form.Values
	at    time.Time
	limb  almanac.Limb
	where almanac.Horizontal
	up    bool
}

func reckonMoonLog(v form.Values) (result.Result, error) {
	looks, err := moonLooks(school.Place(v), school.RecordsMoonLog.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{Facts: append(moonLogFacts(looks), entry.True("kept", len(looks) > 0), entry.True("this_term", lookedIn(v, looks)))}
	if len(looks) == 0 {
		r.Notes = []say.Phrase{say.Line("moon-log.no_records")}
		return r, nil
	}
	r.Drawings = []drawing.Drawing{moonLogChart(looks)}
	r.Drawings[0].Finding = moonLogFinding(looks)
	r.Tables = []result.Table{moonLogTable(looks)}
	if mirrored(looks) {
		r.Notes = append(r.Notes, say.Line("moon-log.mirrored"))
	}
	r.Working = []say.Phrase{say.Line("moon-log.working",
		say.Number(litNear, "percent", 0), say.Number(sideNear, "deg", 0), say.Number(heightNear, "deg", 0))}
	return r, nil
}

// lookedIn reports whether some look was in the term.
func lookedIn(v form.Values, looks []moonLook) bool {
	return slices.ContainsFunc(looks, func(l moonLook) bool {
		day := entry.Date.Of(l.row)
		return !day.Before(school.TermFirstDay.Of(v)) && !day.After(school.TermLastDay.Of(v))
	})
}

// moonLooks joins the rows with the almanac, in the order of time.
func moonLooks(p place.Place, records form.Records) ([]moonLook, error) {
	var looks []moonLook
	for i, row := range records.Rows {
		date, minutes := entry.Date.Of(row), int(argTime.Of(row).Minutes())
		if err := entry.RangeOf(date); err != nil {
			return nil, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		if school.MoonLogSeen.Of(row) != "yes" && (school.MoonLogLitPercent.In(row) || argAltitudeDeg.In(row) || school.MoonLogLitSide.Of(row)+school.MoonLogDirection.Of(row) != "") {
			return nil, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], errors.New(`seen is not "yes", and the row says what the Moon looked like`))
		}
		at := p.Clock(date, minutes/60, minutes%60)
		looks = append(looks, moonLook{row, at, almanac.Moon.LimbFrom(p, at), almanac.MoonFrom(p, at), entry.MoonUp(p, at)})
	}
	slices.SortStableFunc(looks, func(a, b moonLook) int { return a.at.Compare(b.at) })
	return looks, nil
}

func (l moonLook) seen() bool { return school.MoonLogSeen.Of(l.row) == "yes" }

// wrong returns the keys of what the almanac does not bear out, none where the
// look fits.
func (l moonLook) wrong() []string {
	if !l.seen() {
		return nil
	}
	if !l.up {
		return []string{"moon-log.was_down"}
	}
	var wrong []string
	if school.MoonLogLitPercent.In(l.row) && math.Abs(school.MoonLogLitPercent.Of(l.row)-100*l.limb.Lit) > litNear {
		wrong = append(wrong, "moon-log.wrong_lit")
	}
	if off, sided := l.sideOff(); sided && off > sideNear+22.5 {
		wrong = append(wrong, "moon-log.wrong_side")
	}
	if i := slices.Index(school.Directions(), school.MoonLogDirection.Of(l.row)); i >= 0 && !l.overhead() && apart(45*float64(i), l.where.Azimuth.Degrees()) > directionNear+22.5 {
		wrong = append(wrong, "moon-log.wrong_direction")
	}
	if argAltitudeDeg.In(l.row) && math.Abs(argAltitudeDeg.Of(l.row)-entry.AsSeen(l.where.Altitude).Degrees()) > heightNear {
		wrong = append(wrong, "moon-log.wrong_height")
	}
	return wrong
}

// sideOff is how far, in degrees round the disc, the side that was written lies
// from the middle of the lit part. A Moon that is nearly full or new has no side, and
// which side is up of one overhead depends on which way one faces.
func (l moonLook) sideOff() (float64, bool) {
	i := slices.Index(school.MoonSides(), school.MoonLogLitSide.Of(l.row))
	if i < 0 || l.overhead() || l.limb.Side == almanac.NoSide || l.limb.Side == almanac.AllSides {
		return 0, false
	}
	return apart(45*float64(i), l.limb.Lean.Degrees()), true
}

// overhead reports whether the Moon stands so near the zenith that a direction off by
// half a turn is off by no more in the sky than a height may be.
func (l moonLook) overhead() bool { return l.where.Altitude.Degrees() > 90-heightNear/2 }

// apart is the angle between two directions in degrees, 0 to 180.
func apart(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// mirrored reports whether most looks have the lit part on the far side, as in a
// picture drawn by somebody who turned the sheet or faced away.
func mirrored(looks []moonLook) bool {
	sided, opposite := 0, 0
	for _, l := range looks {
		if off, ok := l.sideOff(); ok && l.up {
			sided++
			if off > 180-sideNear {
				opposite++
			}
		}
	}
	return sided > 2 && 2*opposite > sided
}

func moonLogFacts(looks []moonLook) []result.Fact {
	var seen, clouded, fit, judged int
	off := 0.0
	for _, l := range looks {
		switch {
		case school.MoonLogSeen.Of(l.row) == "cloud":
			clouded++
		case l.seen():
			seen++
			if len(l.wrong()) == 0 {
				fit++
			}
			if l.up && school.MoonLogLitPercent.In(l.row) {
				judged++
				off += math.Abs(school.MoonLogLitPercent.Of(l.row) - 100*l.limb.Lit)
			}
		}
	}
	litOff, first, last := say.None("moon-log.none"), say.None("moon-log.none"), say.None("moon-log.none")
	if judged > 0 {
		litOff = say.Number(off/float64(judged), "percent", 0)
	}
	finding := say.Words("moon-log.found_nothing")
	if len(looks) > 0 {
		first, last = say.Date(entry.Date.Of(looks[0].row)), say.Date(entry.Date.Of(looks[len(looks)-1].row))
	}
	if seen > 0 {
		finding = say.Words("moon-log.found", say.Count(fit), say.Count(seen))
	}
	return []result.Fact{
		{Name: "looks", Value: say.Count(len(looks))}, {Name: "seen", Value: say.Count(seen)},
		{Name: "clouded", Value: say.Count(clouded)}, {Name: "fit", Value: say.Count(fit)},
		{Name: "lit_off", Value: litOff}, {Name: "first_day", Value: first}, {Name: "last_day", Value: last},
		{Name: "finding", Value: finding},
	}
}

func moonLogTable(looks []moonLook) result.Table {
	table := result.Table{
		Name:  "looks",
		Title: say.Line("moon-log.title"),
		Columns: []result.Column{
			{Name: "date"}, {Name: "time"}, {Name: "group"}, {Name: "lit", Unit: "percent"}, {Name: "lit_true", Unit: "percent"},
			{Name: "side"}, {Name: "side_true"}, {Name: "verdict"},
		},
	}
	dash := say.None("sky.dash")
	for _, l := range looks {
		lit, side, litTrue, sideTrue := dash, dash, entry.Percent(l.limb.Lit), entry.LitSide(l.limb.Side)
		if school.MoonLogLitPercent.In(l.row) {
			lit = say.Number(school.MoonLogLitPercent.Of(l.row), "percent", 0)
		}
		if i := slices.Index(school.MoonSides(), school.MoonLogLitSide.Of(l.row)); i >= 0 {
			side = entry.LitSide(almanac.Top + almanac.Side(i))
		}
		if !l.up {
			sideTrue = say.None("sky.below")
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Date(entry.Date.Of(l.row)), say.Clock(l.at), say.Text(school.MoonLogGroup.Of(l.row)),
			lit, litTrue, side, sideTrue, l.verdict(),
		}})
	}
	return table
}

func (l moonLook) verdict() say.Value {
	wrong := l.wrong()
	switch {
	case school.MoonLogSeen.Of(l.row) == "cloud":
		return say.Words("moon-log.cloud")
	case !l.seen() && l.up:
		return say.Words("moon-log.missed")
	case !l.seen():
		return say.Words("moon-log.rightly_none")
	case len(wrong) == 0:
		return say.Words("moon-log.fits")
	}
	var words []say.Value
	for _, key := range wrong {
		words = append(words, say.Words(key))
	}
	return entry.Listed(words)
}

// litJudged are the looks whose lit part is on the chart, with how far each is from the
// almanac's, in percent of the disc.
func litJudged(looks []moonLook) (on []moonLook, off []float64) {
	for _, l := range looks {
		if l.seen() && school.MoonLogLitPercent.In(l.row) {
			on = append(on, l)
			off = append(off, school.MoonLogLitPercent.Of(l.row)-100*l.limb.Lit)
		}
	}
	return on, off
}

// moonLogFinding says how well the lit part was judged, and which look departs.
func moonLogFinding(looks []moonLook) say.Phrase {
	on, off := litJudged(looks)
	return entry.FindingOff("moon-log", off, litNear, func(x float64) say.Value { return say.Number(x, "percent", 0) }, func(at int) say.Value {
		return entry.OfGroup(say.Date(entry.Date.Of(on[at].row)), school.MoonLogGroup.Of(on[at].row))
	})
}

// moonLogChart draws the lit part through the days of the diary, and what the
// class saw of it. The look that departs most from the almanac stands out.
func moonLogChart(looks []moonLook) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart moon-log", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title: say.Line("moon-log.chart"), Description: say.Line("moon-log.chart_description"),
	}
	first, last := entry.Date.Of(looks[0].row), entry.Date.Of(looks[len(looks)-1].row)
	days := float64(first.DaysUntil(last) + 1)
	step := max(1, drawing.Step(days, 8))
	chart := d.Chart(entry.YearFrame(),
		drawing.Axis{To: days, Ticks: drawing.Every(0, days, step, func(day float64) say.Value { return entry.DayOfYear(first.Add(int(day))) })},
		drawing.Axis{To: 100, Ticks: drawing.Every(0, 100, 25, func(x float64) say.Value { return say.Number(x, "percent", 0) }), Title: say.Words("moon-log.chart_lit")})
	since := func(t time.Time) float64 { return t.Sub(first.UTC()).Hours() / 24 }
	var curve []drawing.Point
	_, shift := looks[0].at.Zone()
	midnight := first.UTC().Add(-time.Duration(shift) * time.Second)
	for hour := 0.0; hour <= 24*days; hour += max(2, days/10) {
		lit := almanac.Moon.AspectAt(midnight.Add(time.Duration(hour * float64(time.Hour)))).Lit
		curve = append(curve, drawing.Point{X: hour / 24, Y: 100 * lit})
	}
	chart.Curve("curve", curve...)
	on, off := litJudged(looks)
	odd, some := entry.Outlier(off, litNear)
	for i, l := range on {
		_, shift := l.at.Zone()
		chart.Measured(drawing.Point{X: since(l.at.Add(time.Duration(shift) * time.Second)), Y: school.MoonLogLitPercent.Of(l.row)}, some && i == odd)
	}
	return d
}
