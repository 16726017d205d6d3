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

// What sand-glass takes besides.
const (
	argGrainMM form.Key[float64] = "grain_mm"
	argMinutes form.Key[float64] = "minutes"
)

// timedSand is the poured sand of which a class takes the time.
var timedSand = flow.Millilitres(100)

func sandGlass() entry.Entry {
	return entry.Entry{
		Name:    "sand-glass",
		Summary: "How much sand a sand glass of two bottles needs for so many minutes, through which hole, and why it does not slow down.",
		Arguments: form.Form{
			{Key: argGrainMM, Unit: "mm", Min: 0.1, Max: 3, Default: 0.4, Doc: "Width of the grains: sieved sand has it on its bag."},
			{Key: argHoleMM, Unit: "mm", Min: 1, Max: 20, Default: 4.0, Doc: "Width of the hole between the bottles, six grains or more."},
			{Key: argMinutes, Unit: "min", Min: 0.5, Max: 60, Default: 3.0, Doc: "How long the glass is to run."},
			{Key: argBottleMM, Unit: "mm", Min: 20, Max: 200, Default: 65.0, Doc: "Inside width of the bottles."},
			{Key: argTimedS, Unit: "s", Min: 1, Max: 36000, Assumed: "the flow is reckoned", Doc: "Measured: seconds for 100 mL of the sand."},
		},
		Facts: []entry.Fact{
			{Name: "sand", Unit: "ml", Doc: "dry sand that it needs, poured into a measuring cup"},
			{Name: "mass", Unit: "g", Doc: "the same, weighed"},
			{Name: "height", Unit: "mm", Doc: "how high that sand is in the upright part of the bottle"},
			{Name: "flow", Unit: "ml_min", Doc: "flow of sand, full or nearly empty"},
			{Name: "least_hole", Unit: "mm", Doc: "narrowest hole that does not clog"},
			{Name: "hole_tenth", Unit: "s", Doc: "how fast it is after an hour if its hole is a tenth of a millimetre wider than measured"},
			{Name: "reckoned", Unit: "s", Doc: "how wrong a glass filled by the formula alone is after an hour, where a time was measured"},
		},
		Sources:  []string{sourceSand, sourceWalls},
		Cautions: []string{entry.CareBottleHole, entry.CareSand},
		Reckon:   reckonSandGlass,
	}
}

// What the numbers rest on.
const (
	sourceSand  = "W. A. Beverloo, H. A. Leniger and J. van de Velde, Chemical Engineering Science 15 (1961), 260, with C = 0.58 and k = 1.4 from memory; poured dry sand 1.5 kg a litre, from memory; six grains: common practice, no single source"
	sourceWalls = "Walls carry the sand: H. A. Janssen, Zeitschrift des Vereines deutscher Ingenieure 39 (1895), 1045"
)

func reckonSandGlass(v form.Values) (result.Result, error) {
	formed := flow.Glass{
		Hole: quantity.Millimetres(argHoleMM.Of(v)), Grain: quantity.Millimetres(argGrainMM.Of(v)),
		Bulk: flow.DrySand, Coefficient: flow.Beverloo,
	}
	if err := formed.Check(); err != nil {
		return result.Result{}, err
	}
	g, reckoned, how := formed, say.None("water-clock.not_timed"), say.Line("sand-glass.note_reckoned")
	lasts := time.Duration(argMinutes.Of(v) * float64(time.Minute))
	timed := time.Duration(0)
	if argTimedS.In(v) {
		timed = time.Duration(argTimedS.Of(v) * float64(time.Second))
		var err error
		if g.Coefficient, err = formed.CoefficientOf(timedSand, timed); err != nil {
			return result.Result{}, err
		}
		run := flow.Run{Lasts: g.Lasts(formed.Needs(lasts))}
		reckoned = fastOrSlow(run.AfterAnHour(lasts))
		how = say.Line("sand-glass.note_timed", sandVolume(timedSand), say.Seconds(timed))
	}
	sand := g.Needs(lasts)
	wider := g
	wider.Hole += quantity.Millimetres(0.1)
	return result.Result{
		Facts: []result.Fact{
			{Name: "sand", Value: sandVolume(sand)},
			{Name: "mass", Value: say.Number(float64(sand)*float64(g.Bulk)*1000, "g", 0)},
			{Name: "height", Value: whole(quantity.Metres(float64(sand / flow.Upright(quantity.Millimetres(argBottleMM.Of(v)), quantity.Metres(1)))))},
			{Name: "flow", Value: rate(g.VolumeRate())},
			{Name: "least_hole", Value: hole(g.Narrowest())},
			{Name: "hole_tenth", Value: fastOrSlow(flow.Run{Lasts: wider.Lasts(sand)}.AfterAnHour(lasts))},
			{Name: "reckoned", Value: reckoned},
		},
		Tables:  []result.Table{holesTable(g, lasts)},
		Notes:   []say.Phrase{say.Line("sand-glass.note_even"), how, say.Line("sand-glass.note_damp")},
		Working: sandWorking(g, timed, lasts),
	}, nil
}

// holesTable has how much sand each of some holes needs, the chosen one marked.
func holesTable(g flow.Glass, lasts time.Duration) result.Table {
	table := result.Table{
		Name: "holes", Title: say.Line("sand-glass.title", hole(g.Grain)),
		Columns: []result.Column{{Name: "hole", Unit: "mm"}, {Name: "flow", Unit: "ml_min"}, {Name: "sand", Unit: "ml"}, {Name: "hundred", Unit: "s"}},
	}
	chosen, shown := g.Hole, false
	add := func(width quantity.Length) {
		g.Hole = width
		cells := []say.Value{hole(width), say.None("sand-glass.clogs"), say.None("sand-glass.clogs"), say.None("sand-glass.clogs")}
		if g.Check() == nil {
			cells = []say.Value{hole(width), rate(g.VolumeRate()), sandVolume(g.Needs(lasts)), say.Seconds(g.Lasts(timedSand))}
		}
		table.Rows = append(table.Rows, result.Row{Cells: cells, Marked: width == chosen})
	}
	for _, mm := range []float64{2, 3, 4, 5, 6, 8, 10} {
		width := quantity.Millimetres(mm)
		if !shown && chosen <= width {
			shown = true
			if chosen < width {
				add(chosen)
			}
		}
		add(width)
	}
	if !shown {
		add(chosen)
	}
	return table
}

func sandVolume(v flow.Volume) say.Value { return say.Number(v.Millilitres(), "ml", 0) }

// sandWorking goes from the hole, or from the time that was measured, to the sand.
func sandWorking(g flow.Glass, timed, lasts time.Duration) []say.Phrase {
	sand := sandVolume(g.Needs(lasts))
	if timed > 0 {
		return []say.Phrase{say.Line("sand-glass.working_timed", sandVolume(timedSand), inFull(timed), inFull(lasts), sand)}
	}
	run := say.Number(lasts.Minutes(), "", tenthsOf(lasts.Minutes()))
	flowing := entry.Enough(sand, func(x []float64) float64 { return x[0] * lasts.Minutes() }, rate(g.VolumeRate()))[0]
	gravity := say.Number(1000*flow.Gravity, "", 0)
	open := entry.Enough(flowing, func(x []float64) float64 {
		return g.Coefficient * math.Sqrt(entry.AsShown(gravity)) * math.Pow(x[0], 2.5) * 60 / 1000
	}, say.Number((g.Hole-flow.EmptyEdge*g.Grain).Millimetres(), "mm", 2))[0]
	from := entry.Enough(open, func(x []float64) float64 { return x[0] - flow.EmptyEdge*x[1] }, hole(g.Hole), hole(g.Grain))
	return []say.Phrase{
		say.Line("sand-glass.working_open", from[0], from[1], open),
		say.Line("sand-glass.working_flow", say.Number(g.Coefficient, "", 2), gravity, open, flowing),
		say.Line("sand-glass.working_sand", flowing, run, sand),
	}
}

// inFull is a stretch of time in seconds alone, for a calculator.
func inFull(d time.Duration) say.Value { return say.Number(d.Seconds(), "s", tenthsOf(d.Seconds())) }
