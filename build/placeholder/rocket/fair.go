package rocket

import (
	"slices"
	"strings"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// A verdict is what was changed between the rockets and what differed besides.
type verdict struct {
	changed []say.Value // names of the traits that differ
	pipe    bool        // the pipe's angle differs
	stamps  []string    // those that not every rocket had, or not equally often
	unnamed bool        // no stamps were written down
}

func (v verdict) fair() bool {
	return len(v.changed) == 1 && !v.pipe && len(v.stamps) == 0 && !v.unnamed
}

func verdictOf(flights []flown) verdict {
	v := verdict{unnamed: true}
	for n, trait := range traits() {
		if len(valuesOf(flights, n)) > 1 {
			v.changed = append(v.changed, say.Words(trait[1]))
		}
	}
	counts := map[[4]string]map[string]int{}
	var stamps []string
	for _, f := range flights {
		v.pipe = v.pipe || f.pipe != flights[0].pipe
		if counts[f.design] == nil {
			counts[f.design] = map[string]int{}
		}
		counts[f.design][f.stamp]++
		if f.stamp != "" {
			v.unnamed = false
			if !slices.Contains(stamps, f.stamp) {
				stamps = append(stamps, f.stamp)
			}
		}
	}
	if len(stamps) < 2 {
		return v
	}
	slices.SortFunc(stamps, byNumber)
	for _, stamp := range stamps {
		for _, count := range counts {
			if count[stamp] != counts[flights[0].design][stamp] {
				v.stamps = append(v.stamps, stamp)
				break
			}
		}
	}
	return v
}

// why says what makes a test fair or unfair; the first fault is named.
func (v verdict) why() say.Value {
	stamps := say.Text(strings.Join(v.stamps, ", "))
	switch {
	case len(v.changed) == 0:
		return say.Words("rocket-log.why_nothing")
	case len(v.changed) > 1:
		return say.Words("rocket-log.why_several", entry.Listed(v.changed))
	case v.pipe:
		return say.Words("rocket-log.why_pipe")
	case v.unnamed:
		return say.Words("rocket-log.why_unnamed")
	case len(v.stamps) > 0:
		return say.Words("rocket-log.why_stamps", stamps)
	}
	return say.Words("rocket-log.why_fair", v.changed[0])
}

func fairness(flights []flown) []result.Fact {
	v := verdictOf(flights)
	return []result.Fact{
		{Name: "fair", Value: say.Yes(v.fair(), "rocket-log.yes", "rocket-log.no")},
		{Name: "fair_why", Value: v.why()},
	}
}

func changedIn(flights []flown) say.Value {
	changed := verdictOf(flights).changed
	if len(changed) == 0 {
		return say.Words("rocket-log.nothing")
	}
	return entry.Listed(changed)
}

func rocketsTable(rockets []compared, by int) result.Table {
	table := result.Table{
		Name: "rockets", Title: say.Line("rocket-log.title_rockets"),
		Columns: []result.Column{{Name: "rocket"}, {Name: "flights"}, {Name: "mean", Unit: "m"}, {Name: "spread", Unit: "m"}, {Name: "doubt", Unit: "m"}, {Name: "stamps"}},
	}
	best := quantity.Length(0)
	for _, c := range rockets {
		best = max(best, c.series.Mean())
	}
	for _, c := range rockets {
		spread := say.None("rocket-log.not_repeated")
		if len(c.series) > 1 {
			spread = say.Metres(c.series.Spread(), 1)
		}
		table.Rows = append(table.Rows, result.Row{Marked: len(rockets) > 1 && c.series.Mean() == best, Cells: []say.Value{
			c.name(by), say.Count(len(c.series)), say.Metres(c.series.Mean(), 1), spread, doubt(c.doubt), say.Text(strings.Join(slices.Compact(slices.Clone(c.stamps)), ", ")),
		}})
	}
	return table
}

func flightsTable(flights []flown) result.Table {
	table := result.Table{
		Name: "flights", Title: say.Line("rocket-log.title_flights"),
		Columns: []result.Column{{Name: "flight"}, {Name: "group"}, {Name: "rocket"}, {Name: "stamp"}, {Name: "way"}, {Name: "height", Unit: "m"}, {Name: "doubt", Unit: "m"}},
	}
	for i, f := range flights {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Count(i + 1), say.Text(f.group), designName(f), say.Text(f.stamp), say.Words(f.way), say.Metres(f.height.Value, 1), doubt(f.height.Spread()),
		}})
	}
	return table
}

// designName lists what was written of a rocket.
func designName(f flown) say.Value {
	var parts []say.Value
	for n, value := range f.design {
		if value != "" {
			parts = append(parts, compared{value: value}.name(n))
		}
	}
	if len(parts) == 0 {
		return say.Words("rocket-log.unnamed")
	}
	return entry.Listed(parts)
}

func flownGroups(flights []flown) []string {
	var groups []string
	for _, f := range flights {
		if !slices.Contains(groups, f.group) {
			groups = append(groups, f.group)
		}
	}
	return groups
}

// logGroupsTable has each group's test by itself.
func logGroupsTable(flights []flown, groups []string) result.Table {
	table := result.Table{
		Name: "groups", Title: say.Line("rocket-log.title_groups"),
		Columns: []result.Column{{Name: "group"}, {Name: "changed"}, {Name: "fair"}, {Name: "finding"}},
	}
	for _, group := range groups {
		own := slices.DeleteFunc(slices.Clone(flights), func(f flown) bool { return f.group != group })
		by := comparedBy(nil, own)
		rockets := rocketsOf(own, by)
		scatter, freedom := rocket.Scatter(seriesOf(rockets)...)
		var finding say.Value
		for _, f := range outcome(rockets, by, scatter, freedom) {
			if f.Name == "finding" {
				finding = f.Value
			}
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Text(group), changedIn(own), verdictOf(own).why(), finding}})
	}
	return table
}

// flightsChart has a dot for each flight above its rocket and a bar at each mean. The flight
// that departs stands out, if there is one.
func flightsChart(rockets []compared, by, odd int) drawing.Drawing {
	top := 0.0
	for _, c := range rockets {
		for _, h := range c.series {
			top = max(top, h.Metres())
		}
	}
	step := drawing.Step(top, 8)
	top = step * ceil(top/step+0.2)
	d := drawing.Drawing{
		Name: "chart rocket-log", Width: entry.ChartWidth, Height: 82,
		Title: say.Line("rocket-log.chart"), Description: say.Line("rocket-log.description"),
	}
	x := drawing.Axis{From: 0, To: float64(len(rockets))}
	for i, c := range rockets {
		x.Ticks = append(x.Ticks, drawing.Tick{At: float64(i) + 0.5, Label: c.name(by)})
	}
	chart := d.Chart(drawing.Frame{Left: 13, Top: 7, Right: 172, Bottom: 74}, x,
		drawing.Axis{To: top, Ticks: drawing.Every(0, top, step, func(h float64) say.Value { return say.Metres(quantity.Metres(h), 0) }), Title: say.Words("rocket-log.axis")})
	for i, c := range rockets {
		for n, h := range c.series {
			aside := (float64(n)+0.5)/float64(len(c.series)) - 0.5
			chart.Measured(drawing.Point{X: float64(i) + 0.5 + 0.3*aside, Y: h.Metres()}, c.flown[n] == odd)
		}
		mean := c.series.Mean().Metres()
		chart.Curve("curve", drawing.Point{X: float64(i) + 0.28, Y: mean}, drawing.Point{X: float64(i) + 0.72, Y: mean})
		chart.Note("mean", drawing.Point{X: float64(i) + 0.74, Y: mean}, drawing.Point{Y: 1.1}, drawing.Start, say.Metres(c.series.Mean(), 1))
	}
	return d
}
