package source

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"

	"noonbook/build/form"
	"noonbook/build/problem"
)

// maxRecords bounds a CSV file.
const maxRecords = 1 << 20

// records reads the CSV files that the values name, paths counted from the
// content folder, and puts their rows in the values. Of a file that has a fault
// nothing is kept. at says where a value was written.
func (r *reader) records(f form.Form, values form.Values, at func(name string) problem.Place) error {
	for _, name := range slices.Sorted(maps.Keys(values)) {
		named, isCSV := values[name].(form.Records)
		if !isCSV || named.Rows != nil { // read already
			continue
		}
		field, known := f.Field(name)
		if !known {
			continue
		}
		delete(values, name)
		r.asksRecords = true
		if !fs.ValidPath(named.File) {
			r.problems.Add(at(name), "%s: %s leads outside the content folder; want a path within it", name, named.File)
			continue
		}
		if _, err := fs.Stat(r.folder, named.File); errors.Is(err, fs.ErrNotExist) {
			r.problems.Add(at(name), "%s: file %s is not in the content folder", name, named.File)
			continue
		}
		src, err := r.read(r.folder, r.root, named.File, maxRecords)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if src == nil {
			continue // reported
		}
		read, faults := field.ReadRecords(src)
		for _, fault := range faults {
			r.problems.Add(problem.Place{File: path.Join(r.root, named.File), Line: fault.Line, Column: fault.Column}, "%s", fault.Text)
		}
		if len(faults) == 0 {
			read.File = named.File
			values[name] = read
		}
	}
	return nil
}

// ReadRecords reads the CSV files that values written outside a unit name, such
// as those of a command line.
func ReadRecords(folder fs.FS, root string, f form.Form, values form.Values) (problem.List, error) {
	r := &reader{folder: folder, root: root}
	err := r.records(f, values, func(string) problem.Place { return problem.Place{} })
	return r.problems.Sorted(), err
}
