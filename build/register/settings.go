package register

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// usual are the keys that most schools fill in. All others are folded below them.
func usual() form.Keys {
	return form.Keys{
		school.UnitTitle, school.Name, school.Language, school.Paper, school.Measure,
		school.Latitude, school.Longitude, school.TimeZone, school.ElevationM,
		school.ClassName, school.ClassPupils, school.ClassGroupSize,
		school.TermFirstDay, school.TermLastDay, school.TermLessonTimes, school.TermDaysOff, school.TermSchoolDays,
		school.StockStripSquares, school.StockSquareMM, school.StockFrontLensFocalMM, school.StockEyeLensFocalMM, school.StockPipeOutsideMM,
		school.FieldLengthM, school.FieldWidthM,
	}
}

// order is where a key stands on the page: usual ones in their order, others behind.
func order(f form.Field) int {
	if i := slices.IndexFunc(usual(), func(k form.AnyKey) bool { return k == f.Key }); i >= 0 {
		return i
	}
	return len(usual())
}

// A draft is what the lines of the page hold, by key.
type draft struct {
	text  map[string]string
	grids map[string]grid   // of lists of tables
	wrong map[string]string // the complaint, as a sentence; also by cell of a grid
	doubt map[string]string
	note  map[string]string
}

func newDraft() draft {
	return draft{map[string]string{}, map[string]grid{}, map[string]string{}, map[string]string{}, map[string]string{}}
}

// draft is the page of a unit as its file is.
func (u unit) draft() draft {
	d := newDraft()
	for _, f := range school.Settings() {
		if f.Kind() == form.Tables {
			d.grids[f.Name()] = u.grid(f)
		} else {
			d.text[f.Name()] = u.offered(f)
		}
	}
	return d
}

func (r *Register) showSettings(w http.ResponseWriter, q *http.Request) {
	u, closing, err := r.unit(q)
	if err != nil {
		failed(w, err)
		return
	}
	defer closing()
	d := u.draft()
	page := r.settingsPage(u, d)
	if u.src != nil {
		found, err := u.problems()
		if err != nil {
			failed(w, err)
			return
		}
		by, rest := u.byKey(found)
		d.wrong, d.doubt = by.wrong, by.doubt
		page = r.settingsPage(u, d)
		page.Problems = append(page.Problems, rest...)
	}
	r.answer(w, http.StatusOK, page)
}

// settingsPage makes the page of a unit with what its lines hold.
func (r *Register) settingsPage(u unit, d draft) typeset.FormPage {
	word := u.words.Say
	page := typeset.FormPage{
		Words: u.words, Title: word("form.title"), School: school.Name.Of(u.values), Lead: word("form.lead"),
		Action: Start, Sum: r.seen.keep(u.src), Save: word("form.save"), Doubted: len(d.doubt) > 0,
	}
	if u.src != nil {
		if _, err := school.Rewrite(u.src, form.Values{}); err != nil {
			page.Locked = true
			return page
		}
		page.Records = recordsLinks(u)
	}
	fields := slices.Clone(school.Settings())
	slices.SortStableFunc(fields, func(a, b form.Field) int { return order(a) - order(b) })
	for _, name := range groups() {
		g := typeset.FormGroup{ID: "group-" + name, Title: name, Why: ""}
		if key := "form-group." + name; u.words.Has(key) {
			g.Title = word(key)
		}
		if key := "form-why." + name; u.words.Has(key) {
			g.Why = word(key)
		}
		var folded []string
		for _, f := range fields {
			if groupOf(f) != name {
				continue
			}
			line := u.line(f, d)
			if order(f) < len(usual()) {
				g.Fields = append(g.Fields, line)
				continue
			}
			g.Folded = append(g.Folded, line)
			folded = append(folded, line.Label)
			g.Open = g.Open || line.Wrong != "" || line.Doubt != "" || line.Note != "" || len(mistakes("", line.Table)) > 0
		}
		if len(g.Folded) > 0 {
			g.Fold = word("form.fold", say.Text(strings.Join(folded[:min(3, len(folded))], ", ")), say.Count(len(g.Folded)))
		}
		if name == placeGroup {
			noon := noonOf(u.words, d.text, r.Today())
			g.Noon = &noon.Noon
		}
		page.Groups = append(page.Groups, g)
	}
	for _, f := range fields {
		if text := d.wrong[f.Name()]; text != "" {
			page.Mistakes = append(page.Mistakes, typeset.Mistake{Anchor: id(f.Name()), Label: label(f, u.words), Text: text})
		}
		if f.Kind() == form.Tables {
			page.Mistakes = append(page.Mistakes, mistakes(label(f, u.words), u.table(f, d))...)
		}
	}
	for _, f := range fields {
		if text := d.doubt[f.Name()]; text != "" {
			page.Mistakes = append(page.Mistakes, typeset.Mistake{Anchor: id(f.Name()), Label: label(f, u.words), Text: text})
		}
	}
	return page
}

// placeGroup is the group of the keys that say where the school is.
const placeGroup = "place"

// groups are the tables of the settings, in their order, and the place as one of its
// own behind the school.
func groups() (names []string) {
	for _, f := range school.Settings() {
		if name := groupOf(f); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func groupOf(f form.Field) string {
	if slices.Contains(school.Where(), f.Key) {
		return placeGroup
	}
	table, _, _ := strings.Cut(f.Name(), ".")
	return table
}

func id(name string) string {
	return strings.NewReplacer(".", "-", "_", "-", "[", "-", "]", "").Replace(name)
}

// line is the line of one key.
func (u unit) line(f form.Field, d draft) typeset.FormField {
	name := f.Name()
	l := typeset.FormField{
		ID: id(name), Name: name, Label: label(f, u.words), Help: u.help(f), Kind: "line", Width: "half",
		Value: d.text[name], Wrong: d.wrong[name], Doubt: d.doubt[name], Note: d.note[name], Required: f.Required,
		Number: f.Kind() != form.Text, Tongue: typeset.FormPage{Words: u.words}.Tongue(),
	}
	switch {
	case f.Kind() == form.Tables:
		l.Kind, l.Width, l.Table = "table", "whole", u.table(f, d)
	case f.Kind() == form.Texts && chosen(f):
		l.Kind, l.Width = "several", "whole"
		l.Options = options(f, d.text[name], u.words)
	case chosen(f):
		l.Kind, l.Options = "choice", options(f, d.text[name], u.words)
	case f.Kind() == form.Texts || f.Kind() == form.Spans || f.Key == form.AnyKey(school.UnitTitle):
		l.Width = "whole"
	case f.Kind() == form.Dates, f.Key == form.AnyKey(school.UnitSummary), strings.Contains(l.Value, "\n"), len(l.Value) > 90:
		l.Kind, l.Width = "lines", "whole"
	}
	return l
}

// help explains a key: what it is, its bounds, and what holds where it is empty; or as
// the words of the page have it.
func (u unit) help(f form.Field) string {
	if key := "help." + f.Name(); u.words.Has(key) {
		return u.words.Say(key)
	}
	parts := []string{u.words.Explain(f.Doc)}
	switch {
	case f.Kind() == form.Tables:
		parts = append(parts, u.words.Say("form.table_rows"))
	case chosen(f):
		return parts[0]
	case f.Kind() == form.Texts || f.Kind() == form.Dates || f.Kind() == form.Spans:
		parts = append(parts, u.words.Say("form.commas"))
	case (f.Kind() == form.Number || f.Kind() == form.Whole) && f.Min != f.Max:
		parts = append(parts, u.words.Say("form.between", bound(f, f.Min), bound(f, f.Max)))
	case f.Unit != "":
		parts = append(parts, u.words.Say("form.counted_in", say.Text(f.Unit)))
	}
	if without := u.without(f); without != "" {
		parts = append(parts, u.words.Say("form.left_empty", say.Text(without)))
	}
	return named(strings.Join(parts, " "), u.words)
}

// without says what holds where a line is empty; "" where there is nothing to say.
func (u unit) without(f form.Field) string {
	switch x := f.Default.(type) {
	case nil:
		if f.Required || f.Assumed == "" {
			return ""
		}
		return u.words.Explain(f.Assumed)
	case string:
		if x == "" && f.Assumed != "" {
			return u.words.Explain(f.Assumed)
		}
		return x
	case float64:
		return u.words.Text(bound(f, x))
	case int:
		return u.words.Text(bound(f, float64(x)))
	}
	text, _ := f.Typed(f.Default)
	return text
}

// bound writes a number with the unit that its key has.
func bound(f form.Field, x float64) say.Value {
	_, fraction, _ := strings.Cut(strconv.FormatFloat(x, 'f', -1, 64), ".")
	v := say.Number(x, "", len(fraction))
	switch f.Unit {
	case "":
		return v
	case "deg", "percent":
		v.Unit = f.Unit
		return v.InMetric()
	}
	return say.Words("reference.bound", v, say.Text(f.Unit))
}

// languageNames are what speakers call the languages.
var languageNames = map[string]string{"en": "English", "fr": "français"}

// options are the choices of a field; text holds those that are chosen, with commas
// between them.
func options(f form.Field, text string, w *typeset.Words) []typeset.Option {
	values := f.Choices
	if f.Kind() == form.Flag {
		values = []string{"true", "false"}
	}
	var list []typeset.Option
	picked := strings.Split(text, ", ")
	if f.Kind() != form.Texts && (f.Default == nil || f.Default == "") && !f.Required || !slices.Contains(values, text) && f.Kind() != form.Texts {
		shown := "–"
		if text != "" && !slices.Contains(values, text) {
			shown = text // what the file says, though it is no choice
		}
		list = append(list, typeset.Option{Value: "", Text: shown, Chosen: !slices.Contains(values, text)})
		if shown == text {
			list[0].Value = text
		}
	}
	for _, v := range values {
		list = append(list, typeset.Option{Value: v, Text: optionName(f, v, w), Chosen: slices.Contains(picked, v)})
	}
	return list
}

// optionName is what the page calls a choice.
func optionName(f form.Field, value string, w *typeset.Words) string {
	if f.Key == form.AnyKey(school.Language) && languageNames[value] != "" {
		return languageNames[value]
	}
	switch value {
	case "true":
		value = "yes"
	case "false":
		value = "no"
	}
	for _, section := range []string{"option.", "toward.", "side.", "body."} {
		if w.Has(section + value) {
			return w.Say(section + value)
		}
	}
	return value
}
