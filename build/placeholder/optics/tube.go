package optics

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argNearestM    form.Key[float64] = "nearest_m"
	argEyeDioptres form.Key[float64] = "eye_dioptres"
)

func tubePlan() entry.Entry {
	return entry.Entry{
		Name:      "tube-plan",
		Summary:   "Where to cut the tubes of the telescope, so that it focuses on near and far things, with a cutting strip at true size.",
		Printable: true,
		Arguments: form.Form{
			{Key: argNearestM, Unit: "m", Min: 0.1, Max: 1000, Default: 5.0, Doc: "Distance of the nearest thing that should come out sharp."},
			{Key: argEyeDioptres, Unit: "dioptres", Min: 0, Max: 10, Default: 4.0, Doc: "How far eyes without their glasses may differ from a relaxed eye of normal sight, either way."},
		},
		Settings: slices.Concat(optics, form.Keys{school.StockTubes, school.ClassPupils, school.ClassGroupSize, school.Paper}),
		Facts: []entry.Fact{
			{Name: "magnification", Unit: "times", Doc: "how many times larger far things look"},
			{Name: "separation_infinity", Unit: "mm", Doc: "from lens to lens for far things and a relaxed eye"},
			{Name: "separation_nearest", Unit: "mm", Doc: "from lens to lens for the nearest thing and a relaxed eye"},
			{Name: "separation_least", Unit: "mm", Doc: "the least that some eye needs"},
			{Name: "separation_most", Unit: "mm", Doc: "the most that some eye needs"},
			{Name: "travel", Unit: "mm", Doc: "how far the inner tube must slide"},
			{Name: "outer_tube", Unit: "mm", Doc: "length to cut the outer tube to"},
			{Name: "inner_tube", Unit: "mm", Doc: "length to cut the inner tube to, from its front end to the eye lens"},
			{Name: "eye_tube", Unit: "mm", Doc: "length of the piece behind the eye lens that keeps the eye at the right place"},
			{Name: "overlap", Unit: "mm", Doc: "how far the tubes overlap when they are drawn out furthest"},
			{Name: "sticks_out", Unit: "mm", Doc: "how far the inner tube, up to its lens, sticks out for far things"},
			{Name: "lap", Unit: "mm", Doc: "how far the edges of a slit tube lap so that it slides in one of its own kind"},
			{Name: "tubes", Doc: "tubes of the stock that one telescope takes"},
			{Name: "nearest", Unit: "m", Doc: "distance of the nearest thing that comes out sharp"},
		},
		Sources:  []string{sourceLens, "Overlap of at least one diameter, 20 mm to hold, 15 mm for lashes, at most four tubes joined: common practice, no source"},
		Cautions: []string{entry.CareLenses, entry.CareTelescope, entry.CareSaw, entry.CareScissors},
		Reckon:   reckonTubePlan,
	}
}

func reckonTubePlan(v form.Values) (result.Result, error) {
	s, warnings, err := settingOf(v)
	if err != nil {
		return result.Result{}, err
	}
	r, p := result.Result{Warnings: warnings}, s.plan
	r.Facts = s.facts()
	r.Tables = []result.Table{s.cuts()}
	if kit, warning := s.kit(v); len(kit.Rows) > 0 {
		r.Tables = append(r.Tables, kit)
		r.Warnings = append(r.Warnings, warning...)
	}
	if p.fit == lens.Fits {
		r.Drawings = []drawing.Drawing{s.section()}
	}
	paper := drawing.PaperOf(school.Paper.Of(v))
	r.Sheets = paper.Sheets(s.strip(paper))
	r.Notes = s.notes()
	r.Working = s.working()
	return r, nil
}

// settingOf plans the telescope of the values, with warnings where it cannot serve.
func settingOf(v form.Values) (setting, []say.Phrase, error) {
	c, err := chosenTelescope(v)
	if err != nil {
		return setting{}, nil, err
	}
	stock, err := tubeStock(v)
	if err != nil {
		return setting{}, nil, err
	}
	demand := lens.Demand{Nearest: quantity.Metres(argNearestM.Of(v)), Eyes: lens.Power(argEyeDioptres.Of(v))}
	far, err := c.Separation(lens.Infinity, 0)
	if err != nil {
		return setting{}, nil, err
	}
	warnings := pairWarnings(c.Telescope)
	p, err := planTubes(c.Telescope, demand, stock)
	if err != nil {
		warnings = append(warnings, noFocus(c.Telescope, demand))
		p.fit = lens.TooShort
	} else if p.fit != lens.Fits {
		warnings = append(warnings, misfit(p))
	}
	return setting{chosen: c, plan: p, demand: demand, far: far, known: err == nil}, warnings, nil
}

// A setting is a telescope with its plan.
type setting struct {
	chosen
	plan   plan
	demand lens.Demand
	far    quantity.Length // separation for far things
	known  bool            // whether the nearest thing and every eye can be served
}

// noFocus says why the telescope cannot be set to the demand.
func noFocus(t lens.Telescope, d lens.Demand) say.Phrase {
	if d.Nearest <= t.Front.Focal {
		return say.Line("tube-plan.too_near", say.Number(d.Nearest.Metres(), "m", 2), opticalLength(t.Front.Focal, 0).InMetric())
	}
	return say.Line("tube-plan.weak_eye_lens", opticalLength(t.Eye.Focal, 0).InMetric())
}

// misfit says why the tubes in stock do not serve, and what would.
func misfit(p plan) say.Phrase {
	need := opticalLength(p.Most+p.outer.Inside, 0)
	switch p.fit {
	case lens.TooWide:
		return say.Line("tube-plan.too_wide", opticalLength(p.inner.Outside, 0), opticalLength(p.outer.Inside, 0))
	case lens.TooLoose:
		return say.Line("tube-plan.too_loose", opticalLength(p.inner.Outside, 0), opticalLength(p.outer.Inside, 0))
	case lens.TooShort:
		return say.Line("tube-plan.too_short", opticalLength(p.Least, 0), opticalLength(p.outer.Inside, 0))
	}
	return say.Line("tube-plan.too_long", need, opticalLength(p.outer.Length, 0), opticalLength(p.inner.Length, 0))
}

func (s setting) facts() []result.Fact {
	p := s.plan
	length := func(l quantity.Length, decimals int, known bool) say.Value {
		if !known {
			return say.None("tube-plan.no_length")
		}
		return opticalLength(l, decimals)
	}
	near, err := s.Separation(s.demand.Nearest, 0)
	fits := p.fit == lens.Fits
	lap, tubes := say.None("tube-plan.no_slit"), say.None("tube-plan.no_length")
	if p.lapped {
		lap = opticalLength(p.outer.Slit(), 0)
	}
	if fits {
		tubes = say.Count(p.OuterTubes + p.InnerTubes)
	}
	return []result.Fact{
		{Name: "magnification", Value: times(s.Magnification())},
		{Name: "separation_infinity", Value: opticalLength(s.far, 1)},
		{Name: "separation_nearest", Value: length(near, 1, err == nil)},
		{Name: "separation_least", Value: length(p.Least, 1, s.known)},
		{Name: "separation_most", Value: length(p.Most, 1, s.known)},
		{Name: "travel", Value: length(p.Most-p.Least, 0, s.known)},
		{Name: "outer_tube", Value: length(p.Outer, 0, fits)},
		{Name: "inner_tube", Value: length(p.Inner, 0, fits)},
		{Name: "eye_tube", Value: length(p.EyeTube, 0, fits)},
		{Name: "overlap", Value: length(p.Overlap, 0, fits)},
		{Name: "sticks_out", Value: length(p.OutOf(s.far), 0, fits)},
		{Name: "lap", Value: lap},
		{Name: "tubes", Value: tubes},
		{Name: "nearest", Value: say.Number(s.demand.Nearest.Metres(), "m", 1)},
	}
}

// A stop is a target with the separation that a relaxed eye needs.
type stop struct {
	name       say.Value
	separation quantity.Length
}

// stops returns far things, some distances beyond the nearest, and the nearest.
func (s setting) stops() []stop {
	list := []stop{{say.Words("tube-plan.far"), s.far}}
	for _, m := range []float64{50, 20, 10, 5, 0} {
		d := quantity.Metres(m)
		if d <= s.demand.Nearest {
			d, m = s.demand.Nearest, s.demand.Nearest.Metres()
		}
		if l, err := s.Separation(d, 0); err == nil {
			list = append(list, stop{say.Number(m, "m", decimalsOf(m)), l})
		}
		if d == s.demand.Nearest {
			break
		}
	}
	return list
}

func decimalsOf(m float64) int {
	if m == float64(int(m)) {
		return 0
	}
	return 1
}

func (s setting) cuts() result.Table {
	table := result.Table{
		Name: "focus", Title: say.Line("tube-plan.title", opticalLength(s.Front.Focal, 0).InMetric(), opticalLength(s.Eye.Focal, 0).InMetric()),
		Columns: []result.Column{{Name: "target"}, {Name: "separation", Unit: "mm"}, {Name: "sticks_out", Unit: "mm"}},
	}
	for i, at := range s.stops() {
		out := say.None("tube-plan.no_length")
		if s.plan.fit == lens.Fits {
			out = opticalLength(s.plan.OutOf(at.separation), 1)
		}
		table.Rows = append(table.Rows, result.Row{Marked: i == 0, Cells: []say.Value{at.name, opticalLength(at.separation, 1), out}})
	}
	return table
}

// kit counts lenses and tubes for the groups, with a warning where the box holds
// too few.
func (s setting) kit(v form.Values) (result.Table, []say.Phrase) {
	groups := max(1, len(classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v))))
	table := result.Table{
		Name: "kit", Title: say.Line("tube-plan.kit_title", say.Count(groups)),
		Columns: []result.Column{{Name: "thing"}, {Name: "each"}, {Name: "needed"}, {Name: "stock"}},
	}
	var warnings []say.Phrase
	add := func(thing say.Value, each, have int, known bool) {
		stock := say.None("strip-table.none")
		if known {
			stock = say.Count(have)
			if have < each*groups {
				warnings = append(warnings, say.Line("tube-plan.too_few", thing, say.Count(each*groups), say.Count(have)))
			}
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{thing, say.Count(each), say.Count(each * groups), stock}})
	}
	entered := school.StockLenses.In(v)
	for _, one := range []struct {
		at   int
		lens lens.Lens
	}{{s.frontAt, s.Front}, {s.eyeAt, s.Eye}} {
		have := 0
		if one.at >= 0 {
			have = s.box[one.at].Count
		}
		add(s.named(one.at, one.lens), 1, have, entered)
	}
	if p := s.plan; p.fit == lens.Fits && !p.assumed {
		if p.lapped {
			add(p.outer.label, p.OuterTubes+p.InnerTubes, p.outer.count, true)
		} else {
			add(p.outer.label, p.OuterTubes, p.outer.count, true)
			add(p.inner.label, p.InnerTubes, p.inner.count, true)
		}
	}
	return table, warnings
}

func (s setting) notes() []say.Phrase {
	p := s.plan
	if p.fit != lens.Fits {
		return nil
	}
	var notes []say.Phrase
	if p.assumed {
		notes = append(notes, say.Line("tube-plan.assumed", opticalLength(s.Front.Diameter, 0)))
	}
	if p.OuterTubes+p.InnerTubes > 2 {
		notes = append(notes, say.Line("tube-plan.joined", say.Count(p.OuterTubes), say.Count(p.InnerTubes)))
	}
	if p.lapped {
		notes = append(notes, say.Line("tube-plan.lapped", opticalLength(p.outer.Slit(), 0)))
	} else if !p.assumed {
		notes = append(notes, say.Line("tube-plan.play", opticalLength(p.Play, 1)))
	}
	return notes
}

func (s setting) working() []say.Phrase {
	front, eye, magnification, far := opticalLength(s.Front.Focal, 0), opticalLength(s.Eye.Focal, 0), times(s.Magnification()), opticalLength(s.far, 1)
	m := entry.Enough(magnification, func(x []float64) float64 { return x[0] / x[1] }, front, eye)
	f := entry.Enough(far, func(x []float64) float64 { return x[0] + x[1] }, front, eye)
	lines := []say.Phrase{
		say.Line("tube-plan.working_magnification", m[0], m[1], magnification),
		say.Line("tube-plan.working_far", f[0], f[1], far),
	}
	if near, err := s.Separation(s.demand.Nearest, 0); err == nil {
		apart := opticalLength(near, 1)
		n := entry.Enough(apart, func(x []float64) float64 { return x[0]*x[1]/(x[1]-x[0]) + x[2] }, front, opticalLength(s.demand.Nearest, 0), eye)
		lines = append(lines, say.Line("tube-plan.working_near", n[0], n[1], n[2], apart))
	}
	if s.plan.fit == lens.Fits {
		together := opticalLength(s.plan.Most+s.plan.outer.Inside, 1)
		c := entry.Enough(together, func(x []float64) float64 { return x[0] + x[1] }, opticalLength(s.plan.Most, 1), opticalLength(s.plan.outer.Inside, 0))
		lines = append(lines, say.Line("tube-plan.working_cut", c[0], c[1], opticalLength(s.plan.Outer+s.plan.Inner, 0), together))
	}
	return lines
}
