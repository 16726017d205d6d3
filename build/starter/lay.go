package starter

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
)

// Lay returns the files of a new unit: the lessons and pictures of the folder from,
// without its unit.toml, its crest, its records and the prices of its kit; a blank file
// for each kind of record, but the flights to other worlds as they are; and a unit.toml
// with the values, Usual ones among them. The problems are those of that unit.toml, by the
// name that the new folder will have.
func Lay(from fs.FS, values form.Values, folder string) (fs.FS, problem.List, error) {
	theirs, _, err := source.ReadSettings(from, ".")
	if err != nil {
		return nil, nil, fmt.Errorf("reading the lessons to lay out: %w", err)
	}
	own := form.Values{}
	for _, key := range []form.Key[string]{school.UnitTitle, school.UnitSummary} {
		own[key.Name()] = key.Of(theirs)
	}
	own = own.With(Usual(values)).With(values)
	unit, err := packed(from, theirs, own)
	if err != nil {
		return nil, nil, fmt.Errorf("laying out: %w", err)
	}
	_, problems, err := source.ReadSettings(unit, folder)
	return unit, problems, err
}

// Usual are the settings that a new unit.toml has for everybody, as far as the values
// do not have them: the form's own, but for paper by the place.
func Usual(v form.Values) form.Values {
	usual := form.Values{}
	defaults := school.Settings().Complete(form.Values{})
	for _, key := range []form.Key[string]{school.Measure, school.Language} {
		usual[key.Name()] = key.Of(defaults)
	}
	usual[school.Paper.Name()] = paper(v)
	usual[school.ClassPupils.Name()] = 24 // and these times, until the school writes its own
	usual[school.TermLessonTimes.Name()], _ = school.LessonTimes(form.Values{})
	for _, field := range school.Settings() {
		if field.Kind() == form.CSV {
			usual[field.Name()] = form.Records{File: school.RecordsFile(field)}
		}
	}
	return usual
}

// paper is what schools print on at the place: Letter in North and Central America
// (from memory), A4 elsewhere.
func paper(v form.Values) string {
	lat, lon := school.Latitude.Of(v), school.Longitude.Of(v)
	const panama, dateLine, labrador = 7, -180, -52
	if zone := school.TimeZone.Of(v); zone != nil && strings.HasPrefix(zone.String(), "America/") && lat > panama && lon > dateLine && lon < labrador || zone != nil && zone.String() == "Pacific/Honolulu" {
		return "Letter"
	}
	return "A4"
}

// left names the files of the other unit that are not taken along.
func left(theirs form.Values) []string {
	names := []string{school.SettingsFile, school.Crest.Of(theirs)}
	for _, field := range school.Settings() {
		if key, ok := field.Key.(form.Key[form.Records]); ok && key.In(theirs) {
			names = append(names, key.Of(theirs).File)
		}
	}
	return names
}

// packed holds the new unit in memory, as an archive that can be read as a folder.
func packed(from fs.FS, theirs, own form.Values) (fs.FS, error) {
	var b bytes.Buffer
	without := left(theirs)
	archive := zip.NewWriter(&b)
	put := func(name string, text []byte) error {
		w, err := archive.Create(name)
		if err == nil {
			_, err = w.Write(text)
		}
		return err
	}
	err := fs.WalkDir(from, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || slices.Contains(without, name) {
			return err
		}
		text, err := fs.ReadFile(from, name)
		if err != nil {
			return err
		}
		if path.Ext(name) == ".md" {
			text = unpriced(text)
		}
		return put(name, text)
	})
	if err == nil {
		err = put(school.SettingsFile, school.Write(own))
	}
	for _, field := range school.Settings() {
		if key, ok := field.Key.(form.Key[form.Records]); ok && err == nil {
			// A line that names the columns, ended as spreadsheets do.
			text := []byte(strings.Join(field.Fields.Names(), ",") + "\r\n")
			if key == school.RecordsMissions && key.In(theirs) { // no school's own
				text, err = fs.ReadFile(from, key.Of(theirs).File)
			}
			if err == nil {
				err = put(key.Of(own).File, text)
			}
		}
	}
	if err == nil {
		err = archive.Close()
	}
	if err != nil {
		return nil, err
	}
	return zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
}

var (
	blockBegins = regexp.MustCompile("^(`{3,})lesson[ \t]*\r?\n$")
	priceLine   = regexp.MustCompile(`^[ \t]*(?:price|pack)[ \t]*=[ \t]*[\d.]+[ \t]*(?:#.*)?\r?\n$`)
	priceWithin = regexp.MustCompile(`,[ \t]*(?:price|pack)[ \t]*=[ \t]*[\d.]+`)
	inQuotes    = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
)

// unpriced returns a lesson without the prices of its kit, and without what a pack
// holds: they are one school's, in one year. The rest stays as it is.
func unpriced(lesson []byte) []byte {
	var b bytes.Buffer
	fence := ""
	for line := range strings.Lines(string(lesson)) {
		switch m := blockBegins.FindStringSubmatch(line); {
		case fence == "" && m != nil:
			fence = m[1]
		case fence != "" && strings.TrimSpace(line) == fence:
			fence = ""
		case fence == "":
		case priceLine.MatchString(line):
			continue
		default:
			line = withoutPrices(line)
		}
		b.WriteString(line)
	}
	return b.Bytes()
}

// withoutPrices takes prices out of a thing that is written on one line, and lets
// words in quotes be.
func withoutPrices(line string) string {
	var b strings.Builder
	at := 0
	for _, q := range append(inQuotes.FindAllStringIndex(line, -1), []int{len(line), len(line)}) {
		b.WriteString(priceWithin.ReplaceAllString(line[at:q[0]], ""))
		b.WriteString(line[q[0]:q[1]])
		at = q[1]
	}
	return b.String()
}
