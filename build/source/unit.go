package source

import (
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/school"
)

// A Unit is a content folder, read.
type Unit struct {
	Settings  form.Values // complete
	Lessons   []*Lesson   // in the order of the unit
	Files     []File      // pictures and other files that lessons refer to
	Crest     Picture     // of the school; one of the files
	Gone      []string    // what unit.leave_out, draft and its own conditions took out of it, in words
	root      string
	left      map[string]*Lesson                         // the lessons among them, by their name in the folder
	again     func(Answers) (*Unit, problem.List, error) // reads it again with answers
	places    map[string]form.Place                      // of the settings
	elsewhere func(name string) problem.Place            // where they are, if not in unit.toml
}

// A File is one that the handbook carries along.
type File struct {
	file.File
	Source string        // its name in the content folder, with slashes
	Staff  bool          // only answers and staff notes refer to it
	At     problem.Place // where it is first referred to
}

// maxLesson bounds a lesson and unit.toml. Half a million bytes are a book; the
// bound also keeps the parser quick, whose time grows with the square of what opens
// and never closes.
const maxLesson = 512 << 10

// SettingPlace returns where a setting stands in unit.toml.
func (u *Unit) SettingPlace(key form.AnyKey, item ...int) problem.Place {
	return u.settingPlace(itemName(key, item))
}

func (u *Unit) settingPlace(name string) problem.Place {
	if u.elsewhere != nil {
		return u.elsewhere(name)
	}
	at := u.places[name]
	return problem.Place{File: path.Join(u.root, school.SettingsFile), Line: max(1, at.Line), Column: max(1, at.Column)}
}

// itemName is what the places of a text call a key, or one item of its list.
func itemName(key form.AnyKey, item []int) string {
	if len(item) == 0 {
		return key.Name()
	}
	return key.Name() + "[" + strconv.Itoa(item[0]) + "]"
}

// Read reads the content folder. root is what problems call the folder. own
// holds noonbook's pages for the parts that the folder may leave out, named
// en/safety.md and so on. The Unit is whole only when no problem is a fault; the
// error is what the machine did.
func Read(folder fs.FS, root string, own fs.FS, catalogue []entry.Entry) (*Unit, problem.List, error) {
	return new(Memory).Read(folder, root, own, catalogue)
}

// read reads the folder as it is where the answers hold.
func (m *Memory) read(folder fs.FS, root string, own fs.FS, catalogue []entry.Entry, given *Given, answers Answers) (*Unit, problem.List, error) {
	keys := school.Settings()
	r := &reader{folder: folder, root: root, catalogue: catalogue, keys: keys, forms: formsOf(catalogue, keys), unit: &Unit{root: root}, given: given, answers: answers, memory: m}
	names, err := r.lessonNames()
	if err != nil {
		return nil, nil, err
	}
	if err := r.settings(); err != nil {
		return nil, nil, err
	}
	if len(names) == 0 {
		r.problems.Add(problem.Place{File: root}, "no lessons are here; a lesson is a file whose name ends in .md")
	}
	if err := r.lessons(folder, root, names); err != nil {
		return nil, nil, err
	}
	r.leaveOut(names)
	var ours []string
	for _, part := range gathering {
		if !slices.ContainsFunc(r.unit.Lessons, func(l *Lesson) bool { return l.Part() == part }) {
			ours = append(ours, path.Join(school.Language.Of(r.unit.Settings), part+".md"))
		}
	}
	if err := r.lessons(own, "noonbook", ours); err != nil {
		return nil, nil, err
	}
	slices.SortStableFunc(r.unit.Lessons, func(a, b *Lesson) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(BlockOrder.Of(a.Block), BlockOrder.Of(b.Block)))
	})
	r.absentLessons()
	r.pageNames()
	r.number()
	r.ties()
	r.days()
	if err := r.references(); err != nil {
		return nil, nil, err
	}
	return r.unit, r.problems.Sorted(), nil
}

// ReadSettings reads unit.toml alone.
func ReadSettings(folder fs.FS, root string) (form.Values, problem.List, error) {
	r := &reader{folder: folder, root: root, unit: &Unit{root: root}}
	if err := r.settings(); err != nil {
		return nil, nil, err
	}
	return r.unit.Settings, r.problems.Sorted(), nil
}

// rank keeps the pages that gather behind the rest, and the start before it.
func rank(l *Lesson) int {
	return slices.Index([]string{PartStart, PartLesson, PartPage, PartSafety, PartGlossary, PartSources, PartReference}, l.Part())
}

type reader struct {
	folder      fs.FS
	root        string
	catalogue   []entry.Entry
	keys        form.Form                   // of unit.toml
	forms       map[string]func() form.Form // what each placeholder takes
	unit        *Unit
	problems    problem.List
	texts       texts
	carried     int64   // bytes of the files that lessons refer to
	given       *Given  // settings in the place of those of unit.toml
	answers     Answers // of conditions; nil where the unit is first read
	memory      *Memory
	asksRecords bool              // some value named a file of records
	insets      map[string]*Inset // hand-drawn pictures by their name in the folder; nil for one that is no inset
}

// texts are what was read as lesson, settings or records: its name, by its bytes.
type texts map[[sha256.Size]byte]string

// lessonNames lists the Markdown files, first by the number that a name begins
// with, then by name. What systems and editors leave in a folder is passed over.
func (r *reader) lessonNames() ([]string, error) {
	var names []string
	err := fs.WalkDir(r.folder, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fmt.Errorf("reading %s: %w", path.Join(r.root, name), err)
		case name != "." && file.Leaving(d.Name()):
			if d.IsDir() {
				return fs.SkipDir
			}
		case d.IsDir():
		case strings.EqualFold(path.Ext(name), ".md"):
			names = append(names, name)
		case strings.HasSuffix(strings.ToLower(name), ".md.txt"):
			r.problems.Warn(problem.Place{File: path.Join(r.root, name)}, "this file is not read, for the name of a lesson ends in .md; take the .txt away")
		}
		return nil
	})
	slices.SortFunc(names, func(a, b string) int {
		return cmp.Or(cmp.Compare(leadingNumber(a), leadingNumber(b)), cmp.Compare(a, b))
	})
	return names, err
}

func leadingNumber(name string) int {
	n := 0
	for _, c := range path.Base(name) {
		if c < '0' || c > '9' || n > 1e6 {
			break
		}
		n = n*10 + int(c-'0')
	}
	return n
}

func (r *reader) settings() error {
	r.unit.Settings = school.Settings().Complete(form.Values{}) // for what reads on where the file cannot be used
	at := problem.Place{File: path.Join(r.root, school.SettingsFile)}
	src, err := r.read(r.folder, r.root, school.SettingsFile, maxLesson)
	if errors.Is(err, fs.ErrNotExist) {
		hint := ""
		if _, err := fs.Stat(r.folder, school.SettingsFile+".txt"); err == nil {
			hint = "; " + school.SettingsFile + ".txt is here, whose .txt is too much"
		}
		r.problems.Add(at, "the file is missing; without it we do not know where the school is%s", hint)
		return nil
	}
	if err != nil || src == nil {
		return err
	}
	if r.given != nil {
		return r.takeGiven()
	}
	values, faults, places := school.Settings().Read(src)
	for _, f := range faults {
		r.problems.Add(problem.Place{File: at.File, Line: f.Line, Column: f.Column}, "%s", f.Text)
	}
	r.unit.places = places
	return r.together(values)
}

// together reads what the values name, and checks them beside one another.
func (r *reader) together(values form.Values) error {
	if err := r.records(school.Settings(), values, r.unit.settingPlace); err != nil {
		return err
	}
	if err := r.livery(values); err != nil {
		return err
	}
	r.unit.Settings = school.Settings().Complete(values)
	r.term(values)
	r.groups(values)
	r.knownWay(values)
	r.doubts()
	r.manner(values)
	return nil
}

// read returns a text file in UTF-8 with plain line ends and without a byte
// order mark, or nil after reporting why it cannot be used.
func (r *reader) read(folder fs.FS, root, name string, limit int64) ([]byte, error) {
	at := problem.Place{File: path.Join(root, name)}
	info, err := fs.Stat(folder, name)
	if err != nil {
		if escapes(err) {
			r.problems.Add(at, "the file leads outside the content folder")
			return nil, nil
		}
		return nil, fmt.Errorf("reading %s: %w", at, err)
	}
	if info.Size() > limit {
		r.problems.Add(at, "the file has %d kB; up to %d kB are read", info.Size()>>10, limit>>10)
		return nil, nil
	}
	if !info.Mode().IsRegular() {
		r.problems.Add(at, "this is no file that can be read, but %s", kindOf(info.Mode()))
		return nil, nil
	}
	src, err := fs.ReadFile(folder, name)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", at, err)
	}
	if r.texts == nil {
		r.texts = texts{}
	}
	r.texts[sha256.Sum256(src)] = name
	return r.text(at.File, src), nil
}
