package register

import (
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// spare is how many empty rows a page offers.
const spare = 5

// mostCSV bounds a file of records, as build/source does.
const mostCSV = 1 << 20

// recordsFile names the file of a kind of records, seen from the unit's folder. named is
// whether unit.toml says so.
func (u unit) recordsFile(f form.Field) (name string, named bool) {
	if r, ok := u.values[f.Name()].(form.Records); ok {
		return r.File, true
	}
	return school.RecordsFile(f), false
}

func recordsLinks(u unit) (links []typeset.Link) {
	for _, f := range school.Settings() {
		if f.Kind() == form.CSV {
			links = append(links, typeset.Link{File: pageOf(f), Title: label(f, u.words), Summary: u.words.Explain(f.Doc)})
		}
	}
	return links
}

// A book is the file of one kind of records, and its page.
type book struct {
	unit
	field  form.Field
	name   string
	named  bool
	src    []byte // nil where there is none
	ledger ledger
	faults []form.Fault // that keep the page from changing the file
}

// book reads the file of a kind of records.
func (r *Register) book(u unit, f form.Field) (book, error) {
	b := book{unit: u, field: f}
	b.name, b.named = u.recordsFile(f)
	if u.src == nil {
		return b, errors.New("there is no unit yet; fill in the page of the school first")
	}
	if !fs.ValidPath(b.name) || strings.EqualFold(b.name, school.SettingsFile) {
		return b, fmt.Errorf("%s: %s cannot be a file of records", f.Name(), b.name)
	}
	src, err := read(u.files, b.name, mostCSV)
	if err != nil {
		return b, err
	}
	return b.as(src), nil
}

// as is the book with another file.
func (b book) as(src []byte) book {
	b.src = src
	b.ledger, b.faults = newLedger(b.field, src)
	return b
}

// rows are those of the file as they are on the page.
func (b book) rows() (rows []typedRow) {
	for i, e := range b.ledger.filled() {
		t := typedRow{of: i}
		for c := range b.ledger.shown() {
			t.cells = append(t.cells, normal(e.cell(c)))
		}
		rows = append(rows, t)
	}
	return rows
}

func (r *Register) showRecords(w http.ResponseWriter, q *http.Request, f form.Field) {
	r.withBook(w, q, f, func(b book) {
		rows := b.rows()
		page := r.recordsPage(b, rows, b.wrong(b.src, identity(b)), nil)
		page.Saved = q.URL.Query().Has("saved")
		r.answer(w, http.StatusOK, page)
	})
}

// identity is what with tells of a file that nobody changed.
func identity(b book) (whose []int) {
	n := 0
	for _, e := range b.ledger.rows {
		if e.blank {
			whose = append(whose, -1)
			continue
		}
		whose = append(whose, n)
		n++
	}
	return whose
}

func (r *Register) withBook(w http.ResponseWriter, q *http.Request, f form.Field, use func(book)) {
	u, closing, err := r.unit(q)
	if err != nil {
		failed(w, err)
		return
	}
	defer closing()
	b, err := r.book(u, f)
	if err != nil {
		http.Error(w, err.Error(), http.StatusConflict)
		return
	}
	use(b)
}

func (r *Register) takeRecords(w http.ResponseWriter, q *http.Request, f form.Field, typed url.Values) {
	r.writes.Lock()
	defer r.writes.Unlock()
	r.withBook(w, q, f, func(b book) {
		if sum := typed.Get("file-sum"); sum != sumOf(b.src) {
			before, known := r.seen.of(sum)
			if sum == "none" {
				before, known = nil, true
			}
			r.staleRecords(w, b, b.as(before).typedRows(typed), b.as(before), known)
			return
		}
		if len(b.faults) > 0 {
			r.answer(w, http.StatusUnprocessableEntity, r.recordsPage(b, nil, nil, nil))
			return
		}
		rows := b.typedRows(typed)
		src, whose := b.ledger.with(rows)
		if wrong := b.wrong(src, whose); len(wrong) > 0 {
			r.answer(w, http.StatusUnprocessableEntity, r.recordsPage(b, rows, wrong, nil))
			return
		}
		if err := b.write(src); err != nil {
			page := r.recordsPage(b, rows, nil, nil)
			page.Mistakes = []typeset.Mistake{{Text: sentence(err.Error(), b.words)}}
			r.answer(w, http.StatusInternalServerError, page)
			return
		}
		r.Press()
		onward(w, pageOf(f)+"?saved")
	})
}

// write saves the rows, and names their file in unit.toml where it is not yet.
func (b book) write(src []byte) error {
	if string(src) != string(b.src) || b.src == nil {
		if err := save(b.folder, b.name, src); err != nil {
			return err
		}
	}
	if b.named {
		return nil
	}
	toml, err := school.Rewrite(b.unit.src, form.Values{b.field.Name(): form.Records{File: b.name}})
	if err != nil {
		return err
	}
	return save(b.folder, school.SettingsFile, toml)
}

// typedRows are the rows that a page sends back.
func (b book) typedRows(typed url.Values) (rows []typedRow) {
	there, columns := len(b.ledger.filled()), b.ledger.shown()
	for i := range there + spare + int(b.field.Max) {
		t := typedRow{of: -1}
		if i < there {
			t.of = i
		}
		sent := false
		for _, f := range columns {
			text, ok := typed[cellName(i, f)]
			sent = sent || ok
			t.cells = append(t.cells, normal(strings.Join(text, " ")))
		}
		switch {
		case i < there && !sent: // it stays as it is
			rows = append(rows, b.rows()[i])
		case i < there || !t.empty():
			rows = append(rows, t)
		case !sent:
			return rows
		}
	}
	return rows
}

func cellName(row int, f form.Field) string { return strconv.Itoa(row) + "." + f.Name() }

// wrong are the faults of a file by typed row and column of the page; a row of −1 has
// those that are about none.
func (b book) wrong(src []byte, whose []int) map[[2]int]string {
	if src == nil {
		return nil
	}
	_, faults := b.field.ReadRecords(plain(src))
	if len(faults) == 0 {
		return nil
	}
	wrong, places, columns := map[[2]int]string{}, b.ledger.places(src), b.ledger.shown()
	// Nearly all faults begin with the name of their column; where one does not, its
	// cell tells, whose number is that of the page as far as the file has columns.
	for _, fault := range faults {
		at, ok := places[form.Place{Line: fault.Line, Column: fault.Column}]
		row, cell := -1, 0
		text := fault.Text
		if ok && at[0] >= 0 && at[0] < len(whose) && whose[at[0]] >= 0 {
			row, cell = whose[at[0]], at[1]
		}
		first, rest, _ := strings.Cut(text, " ")
		for i, f := range columns {
			if f.Name() == first && row >= 0 {
				cell, text = i, rest
			}
		}
		key := [2]int{row, min(cell, len(columns)-1)}
		if wrong[key] == "" {
			wrong[key] = sentence(text, b.words)
		}
	}
	return wrong
}

// recordsPage makes the page of the rows. note has what became of some.
func (r *Register) recordsPage(b book, rows []typedRow, wrong map[[2]int]string, note map[int]string) typeset.FormPage {
	word := b.words.Say
	page := typeset.FormPage{
		Words: b.words, Title: label(b.field, b.words), School: school.Name.Of(b.values),
		Lead:   b.words.Explain(b.field.Doc) + " " + word("form.records_lead"),
		Action: pageOf(b.field), Sum: r.seen.keep(b.src), Save: word("form.save_records"), Whole: Start, Records: recordsLinks(b.unit),
	}
	if len(b.faults) > 0 {
		page.Locked = true
		for _, fault := range b.faults {
			page.Problems = append(page.Problems, fmt.Sprintf("%s:%d:%d: %s", b.name, fault.Line, fault.Column, fault.Text))
		}
		return page
	}
	columns := b.ledger.shown()
	for _, f := range columns {
		page.Columns = append(page.Columns, typeset.Column{ID: "c-" + id(f.Name()), Name: f.Name(), Label: columnLabel(f, b.words), Help: columnHelp(f, b.words)})
	}
	for range spare {
		rows = append(rows, typedRow{of: -1, cells: make([]string, len(columns))})
	}
	for i, t := range rows {
		row := typeset.Row{ID: fmt.Sprintf("r%d", i), Label: word("form.new_row"), Note: note[i]}
		if t.of >= 0 {
			row.Label = word("form.row", say.Count(t.of+1))
		}
		for c, f := range columns {
			one := cell(f, fmt.Sprintf("cell-%d-%d", i, c), cellName(i, f), row.ID+" "+page.Columns[c].ID, t.cells[c], wrong[[2]int{i, c}], b.words)
			if one.Wrong != "" {
				page.Mistakes = append(page.Mistakes, typeset.Mistake{Anchor: one.ID, Label: row.Label + ", " + columnLabel(f, b.words), Text: one.Wrong})
			}
			row.Cells = append(row.Cells, one)
		}
		page.Rows = append(page.Rows, row)
	}
	for key, text := range wrong {
		if key[0] < 0 {
			page.Mistakes = append(page.Mistakes, typeset.Mistake{Text: text})
		}
	}
	return page
}

// cell makes one cell of a table; labels are the ids of what names it.
func cell(f form.Field, id, name, labels, text, wrong string, w *typeset.Words) typeset.Cell {
	one := typeset.Cell{ID: id, Name: name, Labels: labels, Value: text, Wrong: wrong, Tongue: typeset.FormPage{Words: w}.Tongue()}
	if chosen(f) {
		one.Options = cellOptions(f, text, w)
	}
	return one
}

// cellOptions are the choices of a cell, which may be empty.
func cellOptions(f form.Field, text string, w *typeset.Words) []typeset.Option {
	known := ""
	for _, choice := range f.Choices {
		if strings.EqualFold(choice, text) {
			known = choice
		}
	}
	list := []typeset.Option{{Value: "", Text: "–", Chosen: text == ""}}
	if known == "" && text != "" {
		list = append(list, typeset.Option{Value: text, Text: text, Chosen: true})
	}
	for _, choice := range f.Choices {
		value := choice
		if choice == known {
			value = text // as the file has it
		}
		list = append(list, typeset.Option{Value: value, Text: optionName(f, choice, w), Chosen: choice == known})
	}
	return list
}

func columnLabel(f form.Field, w *typeset.Words) string {
	if key := "column." + f.Name(); w.Has(key) {
		return w.Say(key)
	}
	return readable(strings.TrimSuffix(f.Name(), "_"+f.Unit))
}

func columnHelp(f form.Field, w *typeset.Words) string {
	parts := []string{w.Explain(f.Doc)}
	switch {
	case (f.Kind() == form.Number || f.Kind() == form.Whole) && f.Min != f.Max:
		parts = append(parts, w.Say("form.between", bound(f, f.Min), bound(f, f.Max)))
	case f.Unit != "":
		parts = append(parts, w.Say("form.counted_in", say.Text(f.Unit)))
	}
	return strings.Join(parts, " ")
}

// staleRecords sends the page back when the file is another by now: the rows of the
// file, and below them those that were changed or added on the page.
func (r *Register) staleRecords(w http.ResponseWriter, b book, typed []typedRow, before book, known bool) {
	rows := b.rows()
	note := map[int]string{}
	old := map[string]bool{}
	if known {
		for _, t := range before.rows() {
			old[strings.Join(t.cells, "\x00")] = true
		}
	}
	for _, t := range rows {
		old[strings.Join(t.cells, "\x00")] = true
	}
	columns := b.ledger.shown()
	for _, t := range typed {
		if t.empty() || old[strings.Join(t.cells, "\x00")] && sameColumns(before, b) {
			continue
		}
		mine := typedRow{of: -1, cells: make([]string, len(columns))}
		for i, f := range before.ledger.shown() {
			for c, column := range columns {
				if column.Name() == f.Name() {
					mine.cells[c] = t.cells[i]
				}
			}
		}
		note[len(rows)] = b.words.Say("form.row_typed")
		rows = append(rows, mine)
	}
	page := r.recordsPage(b, rows, nil, note)
	page.Meanwhile = []string{b.words.Say("form.more_rows")}
	r.answer(w, http.StatusConflict, page)
}

func sameColumns(a, b book) bool {
	x, y := a.ledger.shown().Names(), b.ledger.shown().Names()
	return strings.Join(x, ",") == strings.Join(y, ",")
}
