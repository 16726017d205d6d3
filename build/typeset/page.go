package typeset

import (
	"fmt"
	"html/template"
	"io"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/theme"
)

// CalendarFile is the name of the calendar of lessons and sky in the handbook.
const CalendarFile = "unit.ics"

// StyleFile is the name of the style sheet in the handbook.
const StyleFile = "noonbook.css"

// ScriptFile is the name of the script in the handbook.
const ScriptFile = "noonbook.js"

// StyleSheet returns the style sheet for a school's paper and colour. Printables
// have pages without margins, since their sheets are the whole paper.
func StyleSheet(p drawing.Paper, c Colour) []byte {
	css := theme.Style()
	css = fmt.Appendf(css, "@page{size:%gmm %gmm;margin:18mm 16mm 20mm}\n@page portrait{size:%gmm %gmm;margin:0}\n@page landscape{size:%gmm %gmm;margin:0}\n",
		p.Width, p.Height, p.Width, p.Height, p.Height, p.Width)
	if c.Given {
		css = fmt.Appendf(css, ":root{--cover-band:%s;--school-colour:light-dark(%s,%s)}\n", c.Band, c.OnPaper, c.OnDark)
	}
	return css
}

// A Page is what the templates show. A string that depends on the school is a
// mark that the press replaces; marks may stand in text only.
type Page struct {
	Words    *Words
	File     string // its own name
	Title    string
	Summary  string
	School   string        // mark
	Crest    template.HTML // mark: the school's, or nothing
	Resource template.HTML // mark: the page described for machines
	Unit     string        // mark
	Staff    bool          // the staff edition
	Number   string        // of a lesson in the unit, "2"; "" for other pages
	When     string        // mark: the lesson's day and time
	Groups   string        // mark
	Arc      template.HTML
	Glance   []Labelled
	Prints   []Link // the printables of the page
	Goals    []string
	Kit      []string // marks
	Terms    []Labelled
	Body     template.HTML
	Sheet    []SheetPart // of a day sheet
	Lessons  []Link      // every page, for the list of pages
	Others   []Link
	Previous *Link
	Next     *Link
	Start    *Link
	// Of the cover alone:
	Lead string        // mark: the unit's summary
	Line string        // mark: class and dates
	Here string        // mark: where the numbers hold
	Dial template.HTML // mark
}

// Labelled is a value with what it is called.
type Labelled struct{ Label, Value string }

// A SheetPart is one part of a day sheet: what the lesson says, or a blank.
type SheetPart struct {
	Name, Title string
	Body        template.HTML
	Blank       []struct{} // ruled lines, where there is no body
}

// A Link leads to another page. Note is its date or what it is for.
type Link struct {
	Number, Title, File, Summary string
	Note                         string // mark
	Day, Pupil                   string // its sheets, "" for none
	Here                         bool   // the page itself
}

// Templates returns the page templates, with the words of the language in
// reach as {{word "key"}}, and {{word "key" "x"}} for a line with a gap.
func Templates(w *Words) (*template.Template, error) {
	return template.New("theme").
		Funcs(template.FuncMap{"word": func(key string, with ...string) string {
			values := make([]say.Value, len(with))
			for i, s := range with {
				values[i] = say.Text(s)
			}
			return w.Say(key, values...)
		}}).
		ParseFS(theme.Files(), "templates/*.html")
}

// Write writes the page through one of the templates "page" and "cover".
func Write(out io.Writer, t *template.Template, name string, p Page) error {
	return t.ExecuteTemplate(out, name, p)
}
