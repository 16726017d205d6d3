package source

import (
	"io/fs"
	"maps"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/school"
)

// A Given is settings that were written elsewhere than in the unit.toml of their folder,
// such as in the list of a district's schools.
type Given struct {
	Values form.Values                     // each as its key takes it, without defaults
	Place  func(name string) problem.Place // where one was written; name[0] is an item of a list
}

// Check checks the settings beside one another, and beside the folder, as those of
// unit.toml are checked. It returns them complete.
func (g Given) Check(folder fs.FS, root string) (form.Values, problem.List, error) {
	r := &reader{folder: folder, root: root, unit: &Unit{root: root, elsewhere: g.Place}}
	if err := r.together(maps.Clone(g.Values)); err != nil {
		return nil, nil, err
	}
	return r.unit.Settings, r.problems.Sorted(), nil
}

// Read reads by the memory for a school with these settings. What Check finds is not told
// again.
func (g Given) Read(memory *Memory, folder fs.FS, root string, own fs.FS, catalogue []entry.Entry) (*Unit, problem.List, error) {
	return memory.readFor(&g, folder, root, own, catalogue)
}

// takeGiven takes the settings of the school in the place of those of unit.toml.
func (r *reader) takeGiven() error {
	told := len(r.problems)
	r.unit.elsewhere = r.given.Place
	err := r.together(maps.Clone(r.given.Values))
	r.problems = r.problems[:told]
	return err
}

// Keep returns the folder with a memory: each file is asked for once, however often
// settings are checked beside it.
func Keep(folder fs.FS) fs.FS { return keep(folder) }

// RecordsRead returns the values with the records that they name read, so that Check need
// not read them again; and what is wrong in those files.
func RecordsRead(folder fs.FS, root string, values form.Values) (form.Values, problem.List, error) {
	read := maps.Clone(values)
	problems, err := ReadRecords(folder, root, school.Settings(), read)
	return read, problems, err
}
