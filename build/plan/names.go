package plan

import (
	"strings"

	"noonbook/build/file"
	"noonbook/build/problem"
)

// oneNameEach reports files that would take each other's place on some system, which
// Write would be too late to see: whose they are is known here.
func (p *Plan) oneNameEach(files []file.File) problem.List {
	var problems problem.List
	places := p.placesOfFiles()
	taken := map[string]string{}
	for _, f := range files {
		key := file.Folded(f.Name)
		other, twice := taken[key]
		if !twice {
			taken[key] = f.Name
			continue
		}
		at, known := places[f.Name]
		if !known {
			at, known = places[other]
		}
		switch {
		case !known: // a fault of the program, but nothing of it may be lost
			problems.Add(problem.Place{}, "the handbook would write two files named %s", f.Name)
		case other == f.Name:
			problems.Add(at, "the handbook has a file %s of its own; give this one another name", f.Name)
		default:
			problems.Add(at, "%s and %s are one file on some computers; give this one another name", other, f.Name)
		}
	}
	return problems
}

// placesOfFiles returns where the author can rename what becomes a file: the lesson of
// a page, and the link or picture that brings a file along.
func (p *Plan) placesOfFiles() map[string]problem.Place {
	places := map[string]problem.Place{}
	for _, l := range p.unit.Lessons {
		if !strings.HasPrefix(l.File, "noonbook/") { // our own pages, which the author cannot rename
			places[l.Page] = problem.Place{File: l.File, Line: 1, Column: 1}
		}
	}
	for _, f := range p.unit.Files {
		places[f.Name] = f.At
	}
	return places
}
