package flow

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/flow"
	"noonbook/compute/quantity"
)

func (c clock) facts() []result.Fact {
	first, last := c.marks[0], c.marks[len(c.marks)-1]
	fast, _ := c.run.Even()
	wider := c.vessel
	wider.Hole += quantity.Millimetres(0.1)
	tenth := c.run
	tenth.Lasts = time.Duration(float64(c.run.Lasts) * math.Pow(float64(c.vessel.Hole/wider.Hole), 2))
	hour := quantity.Length(math.Sqrt(3600/c.run.Lasts.Seconds())) * c.vessel.Width
	return []result.Fact{
		{Name: "run", Value: say.Seconds(c.run.Lasts)},
		{Name: "last", Value: whole(c.run.To)},
		{Name: "step", Value: minutes(c.step)},
		{Name: "first_gap", Value: whole(first.Height - c.marks[1].Height)},
		{Name: "last_gap", Value: whole(c.marks[len(c.marks)-2].Height - last.Height)},
		{Name: "flow_start", Value: rate(c.vessel.Rate(c.run.From))},
		{Name: "flow_end", Value: rate(c.vessel.Rate(c.run.To))},
		{Name: "water", Value: say.Number(flow.Upright(c.vessel.Width, c.run.From-c.run.To).Millilitres(), "ml", 0)},
		{Name: "coefficient", Value: say.Number(c.vessel.Coefficient, "", 2)},
		{Name: "copied", Value: fastOrSlow(c.run.AfterAnHour(c.run.Copied(c.step)))},
		{Name: "even", Value: say.Seconds(fast)},
		{Name: "hole_tenth", Value: fastOrSlow(tenth.AfterAnHour(c.run.Lasts))},
		{Name: "reckoned", Value: c.reckoned()},
		{Name: "hour_width", Value: whole(hour)},
	}
}

// reckoned is how wrong marks are that were made from the formula before the run was timed.
func (c clock) reckoned() say.Value {
	if !c.timed {
		return say.None("water-clock.not_timed")
	}
	return fastOrSlow(c.run.AfterAnHour(c.formed.Lasts))
}

func (c clock) table() result.Table {
	table := result.Table{
		Name:    "marks",
		Title:   say.Line("water-clock.title", say.Millimetres(c.vessel.Width, 0), hole(c.vessel.Hole)),
		Columns: []result.Column{{Name: "after", Unit: "min"}, {Name: "height", Unit: "mm"}, {Name: "below_start", Unit: "mm"}, {Name: "gap", Unit: "mm"}},
	}
	for i, m := range c.marks {
		gap := say.None("water-clock.no_gap")
		if i > 0 {
			gap = whole(c.marks[i-1].Height - m.Height)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{minutes(m.After), whole(m.Height), whole(c.run.From - m.Height), gap}})
	}
	return table
}

// errors has how far clocks are off after an hour that were made in other ways.
func (c clock) errors() result.Table {
	table := result.Table{
		Name: "errors", Title: say.Line("water-clock.title_errors", say.Number(time.Hour.Seconds()/c.run.Lasts.Seconds(), "", 1)),
		Columns: []result.Column{{Name: "made"}, {Name: "off"}},
	}
	add := func(key string, off say.Value) {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Words(key), off}})
	}
	facts := result.Result{Facts: c.facts()}
	off := func(name string) say.Value {
		v, _ := facts.Fact(name)
		return v
	}
	add("water-clock.made_copied", off("copied"))
	add("water-clock.made_even", say.Words("water-clock.right"))
	add("water-clock.made_wide", off("hole_tenth"))
	if c.timed {
		add("water-clock.made_reckoned", off("reckoned"))
	}
	return table
}

// notes say where the marks are from, why they draw together, and where the formula ends.
func (c clock) notes() []say.Phrase {
	from := say.Line("water-clock.note_reckoned", say.Number(100*math.Round(c.vessel.Reynolds(c.run.To)/100), "", 0))
	if c.timed {
		from = say.Line("water-clock.note_timed", say.Seconds(c.run.Lasts), say.Number(c.vessel.Coefficient, "", 2))
	}
	return []say.Phrase{
		say.Line("water-clock.note_slows"), from,
		say.Line("water-clock.note_drops", whole(c.run.To), whole(c.vessel.Held())),
	}
}

func (c clock) working() []say.Phrase {
	start, last := say.Millimetres(c.run.From, 0), say.Millimetres(c.run.To, 0)
	dry := say.Number(c.run.Dry().Seconds(), "s", 0)
	var lines []say.Phrase
	if c.timed {
		from := entry.Enough(dry, func(x []float64) float64 { return x[0] / (1 - math.Sqrt(x[1]/x[2])) }, inFull(c.run.Lasts), last, start)
		lines = append(lines, say.Line("water-clock.working_timed", append(from, dry)...))
	} else {
		from := entry.Enough(dry, func(x []float64) float64 {
			return math.Pow(x[0]/x[1], 2) * math.Sqrt(2*x[2]/flow.Gravity) / x[3]
		}, whole(c.vessel.Width), hole(c.vessel.Hole), say.Metres(c.run.From, 3), say.Number(c.vessel.Coefficient, "", 2))
		lines = append(lines, say.Line("water-clock.working_dry", append(from, dry)...))
	}
	mark := c.marks[1]
	height := say.Millimetres(mark.Height, 1)
	at := entry.Enough(height, func(x []float64) float64 { return c.run.From.Millimetres() * math.Pow(1-mark.After.Seconds()/x[0], 2) }, dry)
	return append(lines, say.Line("water-clock.working_mark", start, inFull(mark.After), at[0], height))
}

// warnings say what must be mended before the marks can be trusted.
func (c clock) warnings(v form.Values) []say.Phrase {
	var lines []say.Phrase
	if c.run.Lasts < leastRun {
		lines = append(lines, say.Line("water-clock.warn_short", say.Seconds(c.run.Lasts)))
	}
	if low := c.vessel.Lowest(); argLastMM.In(v) && c.run.To < low {
		lines = append(lines, say.Line("water-clock.warn_low", whole(c.run.To), whole(low)))
	}
	if k := c.vessel.Coefficient; c.timed && (k < leastCoefficient || k > mostCoefficient) {
		lines = append(lines, say.Line("water-clock.warn_misread", say.Number(k, "", 2), say.Number(leastCoefficient, "", 1), say.Number(mostCoefficient, "", 1)))
	}
	return lines
}

func whole(l quantity.Length) say.Value { return say.Millimetres(l, 0) }

// minutes is a time of a mark, in whole or half minutes.
func minutes(d time.Duration) say.Value {
	return say.Number(d.Minutes(), "min", tenthsOf(d.Minutes()))
}

func rate(r flow.VolumeRate) say.Value { return say.Number(r.MillilitresAMinute(), "ml_min", 0) }

// hole is the width of a hole or a grain, in millimetres in every school, as drills and
// sieves are sold.
func hole(l quantity.Length) say.Value {
	return say.Millimetres(l, tenthsOf(l.Millimetres())).InMetric()
}

func tenthsOf(x float64) int { return entry.WholeOrTenth(x) }

// fastOrSlow is what a clock is after an hour, as people say it.
func fastOrSlow(d time.Duration) say.Value {
	shown := say.Minutes(d.Abs())
	value := say.Minutes(d)
	switch minutes := math.Round(d.Minutes()); {
	case minutes > 0:
		return value.As("water-clock.fast", shown)
	case minutes < 0:
		return value.As("water-clock.behind", shown)
	}
	return value.As("water-clock.right")
}
