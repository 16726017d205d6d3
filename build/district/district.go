package district

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/recent"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A Unit is the unit that all schools have, and what it takes to read it.
type Unit struct {
	Folder    fs.FS
	Root      string // as problems call the folder
	Own       fs.FS  // noonbook's own pages
	Catalogue []entry.Entry
	Words     func(settings form.Values) (*typeset.Words, error)
}

// A District is a unit beside the list of its schools.
type District struct {
	unit   Unit
	list   *List
	base   form.Values           // what unit.toml says, its records read
	places map[string]form.Place // of that
	alike  recent.Of[*readUnit]
	memory source.Memory // of lessons
	common entry.Shared  // what is evaluated alike at several schools
}

// mostAlike is how many units and their plans are kept, each for schools that are alike.
const mostAlike = 3

// New reads unit.toml beside a list. It need not hold what each school has in its row.
// What is wrong in it concerns all schools; there is no district then.
func New(unit Unit, list *List) (*District, problem.List, error) {
	d := &District{unit: unit, list: list, alike: recent.Of[*readUnit]{Most: mostAlike}}
	d.unit.Folder = source.Keep(unit.Folder)
	var problems problem.List
	src, err := fs.ReadFile(d.unit.Folder, school.SettingsFile)
	at := path.Join(unit.Root, school.SettingsFile)
	if err != nil {
		if !errors.Is(err, fs.ErrNotExist) {
			return nil, nil, fmt.Errorf("reading %s: %w", at, err)
		}
		problems.Add(problem.Place{File: at}, "the file is missing; it holds what is the same for all schools, be it nothing but [unit] and its title")
		return nil, problems, nil
	}
	values, faults, places := list.keys.ReadPart(plain(src))
	for _, f := range faults {
		problems.Add(problem.Place{File: at, Line: f.Line, Column: f.Column}, "%s", f.Text)
	}
	d.places = places
	read, found, err := source.RecordsRead(d.unit.Folder, unit.Root, values)
	if err != nil {
		return nil, nil, err
	}
	d.base = read
	for _, field := range list.keys {
		column := slices.ContainsFunc(list.heads, func(h head) bool { return h.name == field.Name() })
		if field.Required && !field.Key.In(read) && !column && len(faults) == 0 {
			problems.Add(problem.Place{File: at, Line: 1, Column: 1}, "%s is missing: %s; the list has no column for it either", field.Name(), field.Allowed())
		}
	}
	if problems = append(problems, found...); problems.Faults() > 0 {
		return nil, problems.Sorted(), nil
	}
	d.nameFolders()
	return d, nil, nil
}

// given returns the settings of a row as they were written, and what is wrong with its
// cells.
func (d *District) given(r *row) (source.Given, problem.List) {
	problems := append(problem.List(nil), r.wrong...)
	values := maps.Clone(d.base)
	for i, h := range d.list.heads {
		if h.field.Key == nil || i >= len(r.cells) || r.cells[i].text == "" {
			continue
		}
		v, complaint := school.Take(h.field, r.cells[i].text)
		if complaint != "" {
			problems.Add(d.list.at(r, i), "%s %s", h.name, complaint)
			delete(values, h.name)
			continue
		}
		values[h.name] = v
	}
	d.ownWay(r, values)
	return source.Given{Values: values, Place: func(name string) problem.Place { return d.placeOf(r, name) }}, problems
}

// ownWay takes away the way that unit.toml knows where a row has a place of its own and
// says nothing of a way: it would begin at another school. A cell that cannot be takes
// its fellow along.
func (d *District) ownWay(r *row, values form.Values) {
	filled := func(key form.AnyKey) bool {
		text, _, _ := d.list.cell(r, key.Name())
		return text != ""
	}
	wrong := func(key form.AnyKey) bool { return filled(key) && !key.In(values) }
	elsewhere := (filled(school.Latitude) || filled(school.Longitude)) && !filled(school.WayTo) && !filled(school.WayKm)
	if elsewhere || wrong(school.WayTo) || wrong(school.WayKm) {
		delete(values, school.WayTo.Name())
		delete(values, school.WayKm.Name())
	}
}

// checked returns the settings of a row, complete, and all that is wrong with them.
func (d *District) checked(r *row) (source.Given, form.Values, problem.List, error) {
	if r.broken {
		return source.Given{}, nil, r.wrong, nil
	}
	given, problems := d.given(r)
	for _, field := range d.list.keys {
		if text, at, _ := d.list.cell(r, field.Name()); field.Required && !field.Key.In(given.Values) && text == "" {
			problems.Add(at, "%s is missing: %s; neither the row nor unit.toml has it", field.Name(), field.Allowed())
		}
	}
	full, found, err := given.Check(d.unit.Folder, d.unit.Root)
	return given, full, append(problems, found...), err
}

// placeOf is where a setting of a row was written: in its cell, else in unit.toml, else
// nowhere, and then at the row.
func (d *District) placeOf(r *row, name string) problem.Place {
	key, _, _ := strings.Cut(name, "[")
	text, at, _ := d.list.cell(r, key)
	if text != "" {
		return at
	}
	for _, name := range []string{name, key} {
		if in, ok := d.places[name]; ok {
			return problem.Place{File: path.Join(d.unit.Root, school.SettingsFile), Line: in.Line, Column: in.Column}
		}
	}
	return at
}

// plain is a text as build/source reads it.
func plain(src []byte) []byte {
	return bytes.ReplaceAll(bytes.TrimPrefix(src, []byte("\ufeff")), []byte("\r\n"), []byte("\n"))
}
