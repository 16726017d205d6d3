package district

import (
	"fmt"
	"strings"

	"noonbook/build/form"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// looked are the settings that reading and planning look at: schools that are alike in
// them, and in the answers that the conditions of the unit have, share its pages before
// these are filled. Every other setting is read when a page is filled.
//
//   - build/source reads noonbook's own pages by the language, leaves lessons out, and
//     takes the crest along; which files are records it must know to keep them back.
//   - build/plan has words in the language and its manner.
//
// TestAlike changes each key of unit.toml there is, and wants what is pressed by a shared
// plan to be what a plan of its own gives.
func looked(keys form.Form) form.Form {
	all := keys.Pick(school.Language, school.Measure, school.Clock, school.Dates, school.UnitLeaveOut, school.Crest)
	for _, field := range keys {
		if field.Kind() == form.CSV {
			all = append(all, field)
		}
	}
	return all
}

// alikeAs is a text that is the same for all schools that may share a plan.
func (d *District) alikeAs(settings form.Values) string {
	var b strings.Builder
	for _, field := range looked(d.list.keys) {
		value := settings[field.Name()]
		if records, ok := value.(form.Records); ok {
			value = records.File
		}
		fmt.Fprintf(&b, "%q\n", fmt.Sprint(value))
	}
	return b.String()
}

// A readUnit is the unit as schools have it that are alike.
type readUnit struct {
	problems problem.List // of each of them
	plans    []*plan.Plan // by edition
}

// ofSetting begins the file of a place that is that of a setting, whichever school has it.
const ofSetting = "\x00setting "

// read reads and plans the unit for schools that are alike.
func (d *District) read(given source.Given, settings form.Values, editions []plan.Edition) (*readUnit, error) {
	return d.alike.Get(d.alikeAs(settings), func() (*readUnit, error) {
		given.Place = func(name string) problem.Place { return problem.Place{File: ofSetting + name, Line: 1, Column: 1} }
		unit, problems, err := given.Read(&d.memory, d.unit.Folder, d.unit.Root, d.unit.Own, d.unit.Catalogue)
		if err != nil || problems.Faults() > 0 {
			return &readUnit{problems: problems}, err
		}
		var words *typeset.Words
		if words, err = d.unit.Words(settings); err != nil {
			return nil, err
		}
		read := &readUnit{problems: problems}
		for _, edition := range editions {
			p, err := plan.Make(unit, words, edition, d.unit.Catalogue)
			if err != nil {
				return nil, err
			}
			read.plans = append(read.plans, p)
		}
		return read, nil
	})
}

// here gives problems of a shared unit the places that they have at one school.
func (d *District) here(r *row, found problem.List) problem.List {
	here := make(problem.List, len(found))
	for i, p := range found {
		if name, ok := strings.CutPrefix(p.File, ofSetting); ok {
			p.Place = d.placeOf(r, name)
		}
		here[i] = p
	}
	return here
}
