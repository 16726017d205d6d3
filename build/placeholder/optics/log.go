package optics

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

func lensLog() entry.Entry {
	return entry.Entry{
		Name:     "lens-log",
		Summary:  "The class's own focal lengths: mean, spread, and what was misread.",
		Settings: slices.Concat(optics, form.Keys{school.RecordsLensLog}),
		Facts: []entry.Fact{
			{Name: "measurements", Doc: "how many measurements there are"},
			{Name: "misread", Doc: "how many of them the others do not bear out"},
			{Name: "worst", Doc: "the one of these that is furthest off, in words"},
			{Name: "front_mean", Unit: "mm", Doc: "mean focal length of the front lens, without what was misread"},
			{Name: "front_spread", Unit: "mm", Doc: "standard deviation of one measurement of it"},
			{Name: "eye_mean", Unit: "mm", Doc: "mean focal length of the eye lens"},
			{Name: "eye_spread", Unit: "mm", Doc: "standard deviation of one measurement of it"},
			entry.Truth("kept", "whether anything was measured"),
		},
		Sources:  []string{sourceLens, "Misread: more than three times the scatter from the median, the scatter taken from the median deviation, and more than 3 %: common practice, no source"},
		Cautions: []string{entry.CareLenses},
		Reckon:   reckonLensLog,
	}
}

// A logged is the measurements of one kind of lens.
type logged struct {
	label   say.Value
	name    string
	box     *boxed
	focal   []quantity.Length
	rows    []int // of the records
	summary lens.Summary
}

func reckonLensLog(v form.Values) (result.Result, error) {
	c, err := chosenTelescope(v)
	if err != nil {
		return result.Result{}, err
	}
	records := school.RecordsLensLog.Of(v)
	kinds, err := loggedKinds(c.box, records)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name: "lenses", Title: say.Line("lens-log.title"),
		Columns: []result.Column{
			{Name: "lens"}, {Name: "measurements"}, {Name: "mean", Unit: "mm"}, {Name: "spread", Unit: "mm"},
			{Name: "misread"}, {Name: "box", Unit: "mm"}, {Name: "verdict"},
		},
	}
	r := result.Result{}
	misread, furthest, worst := 0, 0.0, say.None("lens-log.nothing_misread")
	for i, k := range kinds {
		table.Rows = append(table.Rows, result.Row{Cells: k.cells()})
		misread += len(k.summary.Misread)
		for _, at := range k.summary.Misread {
			line := misreadLine(kinds, i, at, records)
			r.Notes = append(r.Notes, line)
			if off := math.Abs(float64(k.focal[at]/k.summary.Middle) - 1); off > furthest {
				furthest, worst = off, say.Words(line.Key, line.With...)
			}
		}
		if n := len(k.focal); n == 1 || n == 2 {
			r.Notes = append(r.Notes, say.Line("lens-log.too_few", k.label))
		}
	}
	if len(records.Rows) == 0 {
		r.Notes = append(r.Notes, say.Line("lens-log.no_records"))
	}
	front, frontSpread := kindFacts(kinds, c.frontAt)
	eye, eyeSpread := kindFacts(kinds, c.eyeAt)
	r.Tables = []result.Table{table}
	r.Facts = []result.Fact{
		{Name: "measurements", Value: say.Count(len(records.Rows))},
		{Name: "misread", Value: say.Count(misread)},
		{Name: "worst", Value: worst},
		{Name: "front_mean", Value: front}, {Name: "front_spread", Value: frontSpread},
		{Name: "eye_mean", Value: eye}, {Name: "eye_spread", Value: eyeSpread},
		entry.True("kept", len(records.Rows) > 0),
	}
	r.Working = []say.Phrase{say.Line("lens-log.working_one"), say.Line("lens-log.working_spread")}
	return r.InMetric(), nil
}

// loggedKinds groups the records by lens: the kinds of the box in their order, then
// others as they come.
func loggedKinds(box []boxed, records form.Records) ([]logged, error) {
	var kinds []logged
	for i, b := range box {
		kinds = append(kinds, logged{label: b.label, name: b.label.Plain, box: &box[i]})
	}
	for i, row := range records.Rows {
		focal, err := focalOf(row)
		if err != nil {
			return nil, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		name := school.LensLogLens.Of(row)
		at := slices.IndexFunc(kinds, func(k logged) bool { return k.name == name })
		if at < 0 {
			at = len(kinds)
			kinds = append(kinds, logged{label: say.Text(name), name: name})
		}
		kinds[at].focal, kinds[at].rows = append(kinds[at].focal, focal), append(kinds[at].rows, i)
	}
	for i, k := range kinds {
		if len(k.focal) == 0 {
			continue
		}
		var err error
		if kinds[i].summary, err = lens.Summarise(k.focal); err != nil {
			return nil, err
		}
	}
	return kinds, nil
}

// focalOf is the focal length of one record.
func focalOf(row form.Values) (quantity.Length, error) {
	distances := school.LensLogLampMM.In(row) && school.LensLogCardMM.In(row)
	switch {
	case school.LensLogFocalMM.In(row) && (school.LensLogLampMM.In(row) || school.LensLogCardMM.In(row)):
		return 0, errors.New("a measurement has focal_mm, or lamp_mm and card_mm, not both")
	case school.LensLogFocalMM.In(row):
		return quantity.Millimetres(school.LensLogFocalMM.Of(row)), nil
	case distances:
		return lens.FocalOfDistances(quantity.Millimetres(school.LensLogLampMM.Of(row)), quantity.Millimetres(school.LensLogCardMM.Of(row)))
	}
	return 0, errors.New("a measurement needs lamp_mm and card_mm, or focal_mm")
}

func (k logged) cells() []say.Value {
	mean, spread := k.meanAndSpread()
	box, verdict := say.None("lens-log.not_boxed"), say.None("strip-table.none")
	if k.box != nil {
		box = opticalLength(k.box.Focal, 0)
	}
	switch {
	case len(k.focal) == 0:
	case k.box == nil:
		verdict = say.Words("lens-log.unknown")
	case k.agrees():
		verdict = say.Words("lens-log.agrees")
	default:
		verdict = say.Words("lens-log.differs")
	}
	return []say.Value{k.label, say.Count(len(k.focal)), mean, spread, say.Count(len(k.summary.Misread)), box, verdict}
}

func (k logged) meanAndSpread() (mean, spread say.Value) {
	switch len(k.focal) - len(k.summary.Misread) {
	case 0:
		return say.None("lens-log.none"), say.None("lens-log.none")
	case 1:
		return opticalLength(k.summary.Mean, 0), say.None("lens-log.no_spread")
	}
	return opticalLength(k.summary.Mean, 1), opticalLength(k.summary.Spread, 1)
}

// agrees reports whether the mean is what the box says, within its limits or as
// near as a focal length can be told.
func (k logged) agrees() bool {
	room := quantity.Length(lens.SameFocal) * k.box.Focal
	return k.summary.Mean >= k.box.focus.Least-room && k.summary.Mean <= k.box.focus.Most+room
}

// kindFacts returns mean and spread of the kind at that place in the box.
func kindFacts(kinds []logged, at int) (mean, spread say.Value) {
	if at < 0 {
		return say.None("lens-log.not_boxed"), say.None("lens-log.not_boxed")
	}
	return kinds[at].meanAndSpread()
}

// misreadLine says which record the others do not bear out, and whether it is the
// focal length of another lens.
func misreadLine(kinds []logged, i, at int, records form.Records) say.Phrase {
	k := kinds[i]
	row := k.rows[at]
	who := say.Text(school.LensLogGroup.Of(records.Rows[row]))
	if who.Plain == "" {
		who = say.Words("lens-log.somebody")
	}
	with := []say.Value{who, say.Count(records.Line[row]), opticalLength(k.focal[at], 0), k.label, opticalLength(k.summary.Middle, 0)}
	const near = 0.05 // relative: as much as a careless measurement is off
	for j, other := range kinds {
		if j != i && len(other.focal) > 0 && math.Abs(float64(k.focal[at]/other.summary.Middle)-1) < near {
			return say.Line("lens-log.wrong_bag", append(with, other.label)...)
		}
	}
	return say.Line("lens-log.misread", with...)
}
