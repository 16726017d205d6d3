package typeset

import (
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"reflect"
	"slices"

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

// RoomScriptFile is the name of the script of the pages for a projector in the handbook.
const RoomScriptFile = "room.js"

// A Kind is a kind of page: a template, the data that it shows, and its part of
// the style sheet.
type Kind struct {
	Template string // a file of theme/templates
	Data     any    // a value of the type that the template shows
	Style    string // a file of theme/styles, "" where those of every page are enough
}

// Kinds returns every kind of page, in the order in which their parts follow one
// another in the style sheet.
func Kinds() []Kind {
	return []Kind{
		{"cover.html", CoverPage{}, "cover.css"},
		{"lesson.html", LessonPage{}, "lesson.css"},
		{"start.html", StartPage{}, "gathered.css"},
		{"safety.html", SafetyPage{}, "gathered.css"},
		{"glossary.html", GlossaryPage{}, "gathered.css"},
		{"sources.html", SourcesPage{}, ""},
		{"reference.html", ReferencePage{}, "gathered.css"},
		{"printable.html", PrintablePage{}, "paper.css"},
		{"day-sheet.html", DaySheet{}, "sheets.css"},
		{"pupil-sheet.html", PupilSheet{}, "sheets.css"},
		{"card-sheet.html", CardSheet{}, "sheets.css"},
		{"room.html", Room{}, "room.css"},
	}
}

// Templates returns the templates of all pages, with the words of the language in
// reach as {{word "key"}}, and {{word "key" "x"}} for a line with a gap. {{sample text}}
// marks what the text quotes from a file; {{keys list}} and {{facts list}} write keys and
// facts with what they are for.
func Templates(w *Words) (*template.Template, error) { return w.pages() }

func parsePages(w *Words) (*template.Template, error) {
	return template.New("theme").
		Funcs(template.FuncMap{"word": func(key string, with ...string) string {
			values := make([]say.Value, len(with))
			for i, s := range with {
				values[i] = say.Text(s)
			}
			return w.Say(key, values...)
		}, "sample": markSamples, "keys": w.keyList, "facts": factList}).
		ParseFS(theme.Files(), "templates/*.html")
}

// Write writes a page, the data of one of the kinds, through its template.
func Write(out io.Writer, t *template.Template, page any) error {
	for _, k := range Kinds() {
		if reflect.TypeOf(k.Data) == reflect.TypeOf(page) {
			return t.ExecuteTemplate(out, k.Template, page)
		}
	}
	return fmt.Errorf("no kind of page shows a %T", page)
}

// Style returns the style sheet that all schools share: that of every page, then
// the part of each kind.
func Style() []byte {
	files := []string{"page.css", "blocks.css", "drawings.css", "walk.css"}
	for _, k := range Kinds() {
		if k.Style != "" && !slices.Contains(files, k.Style) {
			files = append(files, k.Style)
		}
	}
	var css []byte
	for _, name := range files {
		part, err := fs.ReadFile(theme.Files(), "styles/"+name)
		if err != nil {
			panic(err) // the files are embedded, and a test reads them
		}
		css = append(css, part...)
	}
	return css
}

// SchoolStyle returns the end of the style sheet, for a school's paper and colour.
// Printables have pages without margins, since their sheets are the whole paper.
func SchoolStyle(p drawing.Paper, c Colour) []byte {
	css := fmt.Appendf(nil, "@page{size:%gmm %gmm;margin:18mm 16mm 20mm}\n@page portrait{size:%gmm %gmm;margin:0}\n@page landscape{size:%gmm %gmm;margin:0}\n",
		p.Width, p.Height, p.Width, p.Height, p.Height, p.Width)
	if c.Given {
		css = fmt.Appendf(css, ":root{--cover-band:%s;--school-colour:light-dark(%s,%s)}\n", c.Band, c.OnPaper, c.OnDark)
	}
	return css
}
