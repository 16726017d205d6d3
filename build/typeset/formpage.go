package typeset

import (
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"strings"

	"noonbook/theme"
)

// The data of the pages at the desk on which a school types. They are no pages of a
// handbook and hold no marks.

// A FormPage is the page of the school's settings, or, where it has Columns, of one
// kind of records.
type FormPage struct {
	Words               *Words
	Title, School, Lead string
	Action              string // the page's own name
	Token, Sum          string // hidden: who may write, and the file that the page was made from
	Handbook            string // address of the handbook, "" while there is none
	Mistakes            []Mistake
	Problems            []string // of the file, which no line of the page can mend
	Meanwhile           []string // what another changed in the file since the page was made
	Saved               bool
	Groups              []FormGroup
	Records             []Link // pages of the class's records
	Table                      // of the records
	Save                string // what the button says
	Doubted             bool   // something is hardly right, and may be saved all the same
	Locked              bool   // the file is to be mended first, so that nothing can be typed
	Whole               string // page of the settings, from one of records
}

// A Mistake leads to the line of the page that it is about.
type Mistake struct{ Anchor, Label, Text string }

// A FormGroup is the lines of one table of the settings.
type FormGroup struct {
	ID, Title, Why string
	Fields, Folded []FormField
	Fold           string // names what is folded
	Open           bool   // as something below is wrong
	Noon           *Noon  // the check of the place
}

// A FormField is one line of the page.
type FormField struct {
	ID, Name, Label, Help string
	Kind                  string // "line", "lines", "choice", "several", "table"
	Width                 string // "half", "third" or "whole"
	Value                 string
	Options               []Option
	Wrong                 string // as problems are worded, in English
	Doubt                 string // what is hardly right
	Note                  string // what the file says by now
	Required, Number      bool
	Tongue                string // of what is wrong, where it is not that of the page
	Table                        // of the kind
}

// An Option is one choice.
type Option struct {
	Value, Text string
	Chosen      bool
}

// Tongue is the language of what is wrong: problems are in English.
func (f FormPage) Tongue() string {
	if f.Words.Code == "en" {
		return ""
	}
	return "en"
}

// Described names what explains the line, for its aria-describedby.
func (f FormField) Described() string {
	var ids []string
	for _, part := range []struct{ text, name string }{{f.Wrong, "wrong"}, {f.Doubt, "doubt"}, {f.Note, "note"}, {f.Help, "help"}} {
		if part.text != "" {
			ids = append(ids, f.ID+"-"+part.name)
		}
	}
	return strings.Join(ids, " ")
}

// Lines is how many lines the text of a field of several takes.
func (f FormField) Lines() int { return min(8, max(2, len(f.Value)/60+1)) }

// A Noon says when the Sun's noon is by the clock that is typed.
type Noon struct {
	Known bool
	At    string // how far the Sun of the drawing is to the right, in its units
	Says  string
	Note  string
}

// A Table is rows to type into, of records or of a setting that is a list.
type Table struct {
	Columns []Column
	Rows    []Row
}

// A Column is one column of a table.
type Column struct{ ID, Name, Label, Help string }

// A Row is one row of a table.
type Row struct {
	ID, Label string
	Cells     []Cell
	Note      string // what became of it
}

// A Cell is one value of a row.
type Cell struct {
	ID, Name, Value, Wrong string
	Labels                 string   // ids of its row and its column, which name it
	Options                []Option // where it is one of them
	Tongue                 string   // of what is wrong, where it is not that of the page
}

// WriteForm writes a page to type on.
func WriteForm(out io.Writer, t *template.Template, page FormPage) error {
	return t.ExecuteTemplate(out, "form.html", page)
}

// FormStyle returns the style sheet of the pages to type on.
func FormStyle() []byte {
	var css []byte
	for _, name := range []string{"page.css", "form.css"} {
		part, err := fs.ReadFile(theme.Files(), "styles/"+name)
		if err != nil {
			panic(fmt.Sprint(err)) // the files are embedded, and a test reads them
		}
		css = append(css, part...)
	}
	return css
}
