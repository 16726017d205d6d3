package optics

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// What the entry takes.
const argLongestMM form.Key[float64] = "longest_mm"

func lensPairs() entry.Entry {
	return entry.Entry{
		Name:    "lens-pairs",
		Summary: "Every telescope that can be made of two lenses of the box, best first, with what it shows.",
		Arguments: form.Form{
			{Key: argLongestMM, Unit: "mm", Min: 50, Max: 10000, Default: longestHeld, Doc: "The longest telescope that the class can hold still."},
		},
		Settings: optics,
		Facts: []entry.Fact{
			{Name: "usable", Doc: "how many pairs of kinds make a good telescope"},
			entry.Truth("pair", "whether any pair makes a good telescope"),
			{Name: "best_front", Doc: "front lens of the best pair"},
			{Name: "best_eye", Doc: "eye lens of the best pair"},
			{Name: "best_magnification", Unit: "times", Doc: "how many times larger things look through it"},
			{Name: "best_length", Unit: "mm", Doc: "from lens to lens, for far things"},
			{Name: "best_shows", Doc: "what it shows"},
			{Name: "best_swapped", Unit: "times", Doc: "how large things look through it the other way round"},
		},
		Sources:  []string{sourceLens, sourceDetail},
		Cautions: []string{entry.CareLenses},
		Reckon:   reckonLensPairs,
	}
}

func reckonLensPairs(v form.Values) (result.Result, error) {
	box, err := lensBox(v)
	if err != nil {
		return result.Result{}, err
	}
	pairs, err := lens.Pairs(kindsOf(box), quantity.Millimetres(argLongestMM.Of(v)))
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name: "pairs", Title: say.Line("lens-pairs.title"),
		Columns: []result.Column{
			{Name: "front"}, {Name: "eye"}, {Name: "magnification", Unit: "times"}, {Name: "length", Unit: "mm"},
			{Name: "field", Unit: "deg"}, {Name: "detail", Unit: "arcmin"}, {Name: "shows"},
		},
	}
	usable := 0
	for _, p := range pairs {
		if p.Verdict == lens.Usable {
			usable++
		}
		detail := minutesOfArc(p.View.Detail())
		if p.Verdict == lens.Equal || p.Verdict == lens.Shrinks {
			detail = say.None("strip-table.none")
		}
		table.Rows = append(table.Rows, result.Row{Marked: usable == 1 && p.Verdict == lens.Usable, Cells: []say.Value{
			box[p.FrontAt].label, box[p.EyeAt].label, times(p.View.Magnification()),
			opticalLength(p.View.Front.Focal+p.View.Eye.Focal, 0), say.Number(p.View.Field().Degrees(), "deg", 1), detail, shows(p),
		}})
	}
	r := result.Result{
		Tables: []result.Table{table},
		Notes:  []say.Phrase{say.Line("lens-pairs.note", minutesOfArc(lens.EyeDetail()), minutesOfArc(lens.MoonWidth))},
		Working: []say.Phrase{
			say.Line("lens-pairs.working"),
		},
	}
	if usable == 0 {
		none := say.None("lens-pairs.none")
		r.Facts = []result.Fact{
			{Name: "usable", Value: say.Count(0)}, {Name: "best_front", Value: none}, {Name: "best_eye", Value: none},
			{Name: "best_magnification", Value: none}, {Name: "best_length", Value: none}, {Name: "best_shows", Value: none}, {Name: "best_swapped", Value: none},
			entry.True("pair", false),
		}
		r.Warnings = []say.Phrase{say.Line("lens-pairs.no_pair")}
		return r, nil
	}
	best := pairs[0]
	r.Facts = []result.Fact{
		{Name: "usable", Value: say.Count(usable)},
		{Name: "best_front", Value: box[best.FrontAt].label},
		{Name: "best_eye", Value: box[best.EyeAt].label},
		{Name: "best_magnification", Value: times(best.View.Magnification())},
		{Name: "best_length", Value: opticalLength(best.View.Front.Focal+best.View.Eye.Focal, 0)},
		{Name: "best_shows", Value: shows(best)},
		{Name: "best_swapped", Value: times(best.View.Swapped().Magnification())},
		entry.True("pair", true),
	}
	return r.InMetric(), nil
}

// crater is the width of the great craters of the Moon, such as Ptolemaeus, 153.67 km
// (Gazetteer of Planetary Nomenclature). It looks round when two details go across it.
const crater = quantity.Length(153.67e3)

// letter is how tall a letter must be that an eye reads, in smallest details: five,
// as on an optician's chart; common practice, no source.
const letter = 5

// shows says in words what a pair shows, or what is the matter with it.
func shows(p lens.Pair) say.Value {
	tall := opticalLength(quantity.Metres(letter*50*p.View.Detail().Tan()), 0)
	switch p.Verdict {
	case lens.Bulky:
		return say.Words("lens-pairs.bulky")
	case lens.Narrow:
		return say.Words("lens-pairs.narrow")
	case lens.Coloured:
		return say.Words("lens-pairs.coloured", minutesOfArc(p.View.Fringe()))
	case lens.Dim:
		return say.Words("lens-pairs.dim", opticalLength(p.View.ExitPupil(), 1))
	case lens.Weak:
		return say.Words("lens-pairs.weak")
	case lens.Equal:
		return say.Words("lens-pairs.equal")
	case lens.Shrinks:
		return say.Words("lens-pairs.shrinks")
	}
	if 2*p.View.Detail() < quantity.Atan2(float64(crater), float64(world.ToTheMoon)) {
		return say.Words("lens-pairs.craters", tall)
	}
	return say.Words("lens-pairs.seas", tall)
}
