package strip

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/strip"
)

func stripLog() entry.Entry {
	return entry.Entry{
		Name:      "strip-log",
		Summary:   "Where the class put its planets on the strip, beside the computed places: how far off, and which seams were miscounted.",
		Arguments: stripArguments(),
		Settings:  slices.Concat(roll, form.Keys{school.RecordsStripLog}),
		Facts: []entry.Fact{
			{Name: "measurements", Doc: "how many places were measured"},
			{Name: "bodies", Doc: "how many different bodies they belong to"},
			{Name: "missing", Doc: "bodies on the strip that nobody measured"},
			{Name: "usual_off", Unit: "cm", Doc: "how far a place usually lies off: the middle one of all distances, without regard to the side"},
			{Name: "worst", Doc: "the place that lies furthest off, in words"},
			{Name: "miscounted", Doc: "how many places lie off by whole squares"},
			entry.Truth("kept", "whether any place was measured"),
		},
		Sources:  []string{sourceOrbits, entry.SourceOutlier},
		Harmless: "Reads places that were measured already; laying paper out is the work of strip-table.",
		Reckon:   reckonStripLog,
	}
}

// A placed is one measured place on the strip.
type placed struct {
	group   string
	mark    strip.Mark
	squares float64 // as measured
	line    int     // of the file
}

// off is how many squares too far from the Sun the place lies.
func (p placed) off() float64 { return p.squares - p.mark.Squares }

// slipped is how many whole squares of that are a slip in counting seams: half a
// square is more than a pencil is ever off.
func (p placed) slipped() int { return int(math.Round(p.off())) }

func reckonStripLog(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	marks, records := s.Marks(), school.RecordsStripLog.Of(v)
	var places []placed
	for i, row := range records.Rows {
		at := slices.IndexFunc(marks, func(m strip.Mark) bool { return m.Name == school.StripLogBody.Of(row) })
		squares := school.StripLogSquares.Of(row) + school.StripLogPastCM.Of(row)*10/s.Square.Millimetres()
		places = append(places, placed{school.StripLogGroup.Of(row), marks[at], squares, records.Line[i]})
	}
	r := result.Result{Facts: stripLogFacts(s, marks, places)}
	if len(places) == 0 {
		r.Notes = []say.Phrase{say.Line("strip-log.no_records")}
		return r, nil
	}
	r.Drawings = []drawing.Drawing{stripLogChart(s, marks, places)}
	r.Drawings[0].Finding = stripLogFinding(s, places)
	r.Tables = []result.Table{stripLogTable(s, marks, places)}
	for _, p := range places {
		if n := p.slipped(); n != 0 {
			key := "strip-log.too_far"
			if n < 0 {
				key, n = "strip-log.too_near", -n
			}
			r.Notes = append(r.Notes, say.Line(key, p.who(), say.Words("body."+p.mark.Name), say.Count(n), say.Count(p.line)))
		}
	}
	r.Working = []say.Phrase{say.Line("strip-log.working", say.Number(s.Square.Millimetres(), "mm", 0))}
	return r, nil
}

func (p placed) who() say.Value {
	if p.group == "" {
		return say.Words("lens-log.somebody")
	}
	return say.Text(p.group)
}

func centimetres(s strip.Strip, squares float64) say.Value {
	return say.Number(squares*s.Square.Millimetres()/10, "cm", 1)
}

func stripLogFacts(s strip.Strip, marks []strip.Mark, places []placed) []result.Fact {
	usual, worst := say.None("strip-log.none"), say.None("strip-log.none")
	var furthest placed
	slips := 0
	for _, p := range places {
		if math.Abs(p.off()) >= math.Abs(furthest.off()) {
			furthest = p
		}
		if p.slipped() != 0 {
			slips++
		}
	}
	if len(places) > 0 {
		usual = centimetres(s, entry.UsualOff(offs(places)))
		worst = say.Words("strip-log.worst", furthest.who(), say.Words("body."+furthest.mark.Name), centimetres(s, math.Abs(furthest.off())))
	}
	var missing []say.Value
	bodies := 0
	for _, m := range marks {
		there := slices.ContainsFunc(places, func(p placed) bool { return p.mark.Name == m.Name })
		if there {
			bodies++
		} else if m.Orbit > 0 && m.Fits {
			missing = append(missing, say.Words("body."+m.Name))
		}
	}
	return []result.Fact{
		{Name: "measurements", Value: say.Count(len(places))}, {Name: "bodies", Value: say.Count(bodies)},
		{Name: "missing", Value: entry.Listed(missing)}, {Name: "usual_off", Value: usual},
		{Name: "worst", Value: worst}, {Name: "miscounted", Value: say.Count(slips)},
		entry.True("kept", len(places) > 0),
	}
}

// of returns the places of one body.
func of(places []placed, m strip.Mark) []placed {
	return slices.DeleteFunc(slices.Clone(places), func(p placed) bool { return p.mark.Name != m.Name })
}

func stripLogTable(s strip.Strip, marks []strip.Mark, places []placed) result.Table {
	table := result.Table{
		Name:  "places",
		Title: say.Line("strip-log.title"),
		Columns: []result.Column{
			{Name: "body"}, {Name: "computed"}, {Name: "measurements"}, {Name: "mean"}, {Name: "apart", Unit: "cm"}, {Name: "off", Unit: "cm"},
		},
	}
	for _, m := range marks {
		own := of(places, m)
		if len(own) == 0 {
			continue
		}
		least, most, sum := own[0].squares, own[0].squares, 0.0
		for _, p := range own {
			least, most, sum = min(least, p.squares), max(most, p.squares), sum+p.squares
		}
		mean := sum / float64(len(own))
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Words("body." + m.Name), say.Number(m.Squares, "", 1), say.Count(len(own)), say.Number(mean, "", 1),
			centimetres(s, most-least), centimetres(s, mean-m.Squares),
		}})
	}
	return table
}

// A careful place is off by less than a finger's breadth, laying of squares and all:
// common practice, no source.
const carefulCM = 2.0

func offs(places []placed) []float64 {
	all := make([]float64, len(places))
	for i, p := range places {
		all[i] = p.off()
	}
	return all
}

// careful is that distance in squares.
func careful(s strip.Strip) float64 { return carefulCM * 10 / s.Square.Millimetres() }

// stripLogFinding says how good the places are, and which one departs.
func stripLogFinding(s strip.Strip, places []placed) say.Phrase {
	return entry.FindingOff("strip-log", offs(places), careful(s), func(x float64) say.Value { return centimetres(s, x) }, func(at int) say.Value {
		return entry.OfGroup(say.Words("body."+places[at].mark.Name), places[at].group)
	})
}

// stripLogChart has a dot for each measured place: how far off it lies, by body. The one
// that departs stands out.
func stripLogChart(s strip.Strip, marks []strip.Mark, places []placed) drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart strip-log", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title: say.Line("strip-log.chart"), Description: say.Line("strip-log.chart_description"),
	}
	inCM := func(squares float64) float64 { return squares * s.Square.Millimetres() / 10 }
	far := 1.0
	for _, p := range places {
		far = max(far, math.Abs(inCM(p.off())))
	}
	step := drawing.Step(far, 4)
	far = step * math.Ceil(far/step+0.1)
	var bodies []strip.Mark
	for _, m := range marks {
		if len(of(places, m)) > 0 {
			bodies = append(bodies, m)
		}
	}
	x := drawing.Axis{To: float64(len(bodies))}
	for i, m := range bodies {
		x.Ticks = append(x.Ticks, drawing.Tick{At: float64(i) + 0.5, Label: say.Words("body." + m.Name)})
	}
	c := d.Chart(entry.YearFrame(), x, drawing.Axis{From: -far, To: far, Title: say.Words("strip-log.axis"),
		Ticks: drawing.Every(-far, far, step, func(x float64) say.Value { return say.Number(x, "cm", 0) })})
	c.Curve("rule", drawing.Point{}, drawing.Point{X: x.To})
	odd, some := entry.Outlier(offs(places), careful(s))
	for i, m := range bodies {
		own := of(places, m)
		for n, p := range own {
			aside := (float64(n)+0.5)/float64(len(own)) - 0.5
			c.Measured(drawing.Point{X: float64(i) + 0.5 + 0.4*aside, Y: inCM(p.off())}, some && p.line == places[odd].line)
		}
	}
	return d
}
