package source

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/school"
)

// A Picture is a file of the handbook with its size in CSS pixels.
type Picture struct {
	Name          string // "" for none
	Width, Height int
}

var hexColour = regexp.MustCompile(`^#[0-9A-Fa-f]{6}$`)

// maxCrest bounds the crest, which is on every page and within the file to mail.
const maxCrest = 200 << 10

// livery checks what is the school's own look: its colour, and its crest, which
// the handbook takes along.
func (r *reader) livery(values form.Values) error {
	if colour := school.Colour.Of(values); colour != "" && !hexColour.MatchString(colour) {
		r.problems.Add(r.unit.SettingPlace(school.Colour), `school.colour %q is no colour; want six digits as in "#1a5c3a"`, colour)
	}
	name := school.Crest.Of(values)
	if name == "" {
		return nil
	}
	at := r.unit.SettingPlace(school.Crest)
	if strings.ContainsAny(name, `/\`) || !slices.Contains([]string{".svg", ".png", ".jpg", ".jpeg"}, strings.ToLower(path.Ext(name))) {
		r.problems.Add(at, "school.crest %q is no SVG, PNG or JPEG file beside unit.toml", name)
		return nil
	}
	if err := file.Sound(name); err != nil {
		r.problems.Add(at, "school.crest: %v", err)
		return nil
	}
	info, err := fs.Stat(r.folder, name)
	if err != nil || !info.Mode().IsRegular() {
		r.problems.Add(at, "school.crest: there is no file %s beside unit.toml", name)
		return nil
	}
	if info.Size() > maxCrest {
		r.problems.Add(at, "school.crest: %s has %d kB; up to %d kB are taken along, for it is on every page", name, info.Size()>>10, maxCrest>>10)
		return nil
	}
	src, err := fs.ReadFile(r.folder, name)
	if err != nil {
		return fmt.Errorf("reading %s: %w", path.Join(r.root, name), err)
	}
	if fault, line, column := svgFault(src); strings.EqualFold(path.Ext(name), ".svg") && fault != "" {
		r.problems.Add(problem.Place{File: path.Join(r.root, name), Line: line, Column: column}, "school.crest holds %s; a handbook carries no drawing that could run or load anything", fault)
		return nil
	}
	width, height := pictureSize(src)
	if width == 0 || height == 0 {
		r.problems.Add(at, "school.crest: %s tells no size that can be read; want an SVG with a viewBox, a PNG or a JPEG", name)
		return nil
	}
	r.unit.Crest = Picture{name, width, height}
	r.unit.Files = append(r.unit.Files, File{File: file.File{Name: name, Bytes: src}, Source: name, At: at})
	return nil
}
