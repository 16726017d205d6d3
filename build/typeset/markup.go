package typeset

import (
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"noonbook/build/result"
	"noonbook/build/say"
)

// AppendText appends text as HTML, for use between tags. An ampersand that can
// not begin a character reference stays as it is, which HTML allows and the
// minifier does.
func AppendText(dst []byte, s string) []byte {
	if !strings.ContainsAny(s, "&<") {
		return append(dst, s...)
	}
	for i := range len(s) {
		switch {
		case s[i] == '<':
			dst = append(dst, "&lt;"...)
		case s[i] == '&' && i+1 < len(s) && beginsReference(s[i+1]):
			dst = append(dst, "&amp;"...)
		default:
			dst = append(dst, s[i])
		}
	}
	return dst
}

func beginsReference(c byte) bool {
	return c == '#' || '0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'z'
}

// AppendAttribute appends text as HTML, for use between the quotes of an
// attribute.
func AppendAttribute(dst []byte, s string) []byte { return appendAttribute(dst, s) }

var escapeAttribute = strings.NewReplacer("&", "&amp;", `"`, "&#34;")

func appendAttribute(dst []byte, s string) []byte {
	if strings.ContainsAny(s, `&"`) {
		s = escapeAttribute.Replace(s)
	}
	return append(dst, s...)
}

// AppendFact appends one value of a list: what is printed, and for machines the value
// itself.
func (w *Words) AppendFact(dst []byte, v say.Value) []byte { return w.appendFact(dst, v, false) }

// AppendFirst is AppendFact for a value of a sentence that the page has not had before: a
// dotted line marks it as computed.
func (w *Words) AppendFirst(dst []byte, v say.Value) []byte { return w.appendFact(dst, v, true) }

func (w *Words) appendFact(dst []byte, v say.Value, first bool) []byte {
	opened := `">`
	if first {
		opened = `" class="first">`
	}
	if len(v.Also) > 0 { // a machine would take the first for all
		v.Kind = say.Wording
	}
	switch v.Kind {
	case say.Quantity, say.Lasting:
		dst = append(dst, `<data value="`...)
		dst = strconv.AppendFloat(dst, v.Kept(), 'f', -1, 64)
		dst = append(dst, opened...)
		dst = AppendText(dst, w.Text(v))
		return append(dst, `</data>`...)
	case say.TimeOfDay, say.CalendarDay:
		layout := time.RFC3339
		if v.Kind == say.CalendarDay {
			layout = time.DateOnly
		}
		dst = append(dst, `<time datetime="`...)
		dst = v.Time.AppendFormat(dst, layout)
		dst = append(dst, opened...)
		dst = AppendText(dst, w.Text(v))
		return append(dst, `</time>`...)
	}
	if first {
		dst = append(dst, `<span class="fact first">`...)
	} else {
		dst = append(dst, `<span class="fact">`...)
	}
	dst = AppendText(dst, w.Text(v))
	return append(dst, `</span>`...)
}

// AppendBlock appends everything that a placeholder computed, the inside of a
// figure.
func (w *Words) AppendBlock(dst []byte, name string, r result.Result, sources []string) []byte {
	w = w.For(r)
	dst = w.AppendCautions(dst, r.Cautions)
	for _, p := range r.Warnings {
		dst = append(dst, `<p class="warning">`...)
		dst = AppendText(dst, w.Line(p))
		dst = append(dst, `</p>`...)
	}
	if len(r.Tables) == 0 && len(r.Drawings) == 0 {
		dst = w.appendFacts(dst, name, r.Facts)
	}
	// The margin beside a table has room for a few words on it; the rest is below.
	beside := 0
	if len(r.Tables) > 0 {
		beside = w.besideTable(r.Notes)
	}
	dst = w.appendNotes(dst, r.Notes[:beside])
	for i := range r.Drawings {
		d := &r.Drawings[i]
		if walk, ok := r.WalkOf(d.Name); ok {
			dst = w.appendWalk(dst, d, &walk)
		} else {
			dst = w.appendFinding(w.appendDrawingOnce(dst, d), d.Finding)
		}
	}
	for _, t := range r.Tables {
		dst = w.appendTable(dst, name, t)
	}
	dst = w.appendNotes(dst, r.Notes[beside:])
	return w.appendWorking(dst, r.Working, sources)
}

// marginful is the number of letters that are read beside a table without its end
// pushing what else is in the margin from its place: eleven lines.
const marginful = 320

// besideTable returns how many of the notes fill a margin.
func (w *Words) besideTable(notes []say.Phrase) int {
	letters := 0
	for i, p := range notes {
		if letters += utf8.RuneCountInString(w.Line(p)); letters > marginful {
			return i
		}
	}
	return len(notes)
}

func (w *Words) appendNotes(dst []byte, notes []say.Phrase) []byte {
	for _, p := range notes {
		dst = append(dst, `<p class="note">`...)
		dst = AppendText(dst, w.Line(p))
		dst = append(dst, `</p>`...)
	}
	return dst
}

// appendFinding appends what a chart shows, below it.
func (w *Words) appendFinding(dst []byte, finding say.Phrase) []byte {
	if finding.Key == "" {
		return dst
	}
	dst = append(dst, `<p class="finding">`...)
	dst = AppendText(dst, w.Line(finding))
	return append(dst, `</p>`...)
}

// AppendCautions appends the cautions of computed blocks, nothing where there
// are none.
func (w *Words) AppendCautions(dst []byte, cautions []say.Phrase) []byte {
	if len(cautions) == 0 {
		return dst
	}
	dst = append(dst, `<section class="caution"><p class="side-label">`...)
	dst = AppendText(dst, w.Say("page.caution"))
	dst = append(dst, `</p>`...)
	for _, p := range cautions {
		dst = append(dst, `<p>`...)
		dst = AppendText(dst, w.Line(p))
		dst = append(dst, `</p>`...)
	}
	return append(dst, `</section>`...)
}

func (w *Words) appendFacts(dst []byte, name string, facts []result.Fact) []byte {
	if len(facts) == 0 {
		return dst
	}
	dst = append(dst, `<dl class="facts">`...)
	for _, f := range facts {
		if f.Value.Absent {
			continue
		}
		dst = append(dst, `<div><dt>`...)
		dst = AppendText(dst, w.Say(name+".fact."+f.Name))
		dst = append(dst, `</dt><dd>`...)
		dst = w.AppendFact(dst, f.Value)
		dst = append(dst, `</dd></div>`...)
	}
	return append(dst, `</dl>`...)
}

func (w *Words) appendTable(dst []byte, name string, t result.Table) []byte {
	title, worded := w.Line(t.Title), make([]bool, len(t.Columns))
	for i := range t.Columns {
		worded[i] = t.Worded(i)
	}
	if t.File != "" {
		dst = w.appendTableFile(dst, t)
	}
	dst = append(dst, `<div class="table-frame" role="region" tabindex="0" aria-label="`...)
	dst = appendAttribute(dst, title)
	dst = append(dst, `">`...)
	heads, texts := w.heads(name, t), w.cells(t)
	units := w.columnUnits(t, worded, texts)
	var labels []string
	if wide(heads, texts, worded) {
		labels = labelsOf(heads, units)
		dst = append(dst, CardsOpen...)
	} else {
		dst = append(dst, `<table>`...)
	}
	dst = append(dst, `<caption>`...)
	dst = AppendText(dst, title)
	dst = append(dst, `</caption>`...)
	if labels != nil {
		dst = append(dst, `<thead role="rowgroup"><tr role="row">`...)
	} else {
		dst = append(dst, `<thead><tr>`...)
	}
	for i := range t.Columns {
		dst = append(dst, `<th scope="col"`...)
		dst = appendRole(dst, "columnheader", labels)
		dst = appendAlignment(dst, worded[i])
		dst = AppendText(dst, heads[i])
		if units[i] != "" {
			dst = append(dst, "\u00a0<span class=\"unit\">"...)
			dst = AppendText(dst, units[i])
			dst = append(dst, `</span>`...)
		}
		dst = append(dst, `</th>`...)
	}
	dst = append(dst, `</tr></thead><tbody`...)
	dst = append(appendRole(dst, "rowgroup", labels), '>')
	for n, row := range t.Rows {
		dst = appendRow(dst, texts[n], worded, labels, row)
	}
	dst = append(dst, `</tbody></table></div>`...)
	if t.File != "" {
		dst = append(dst, `</div>`...)
	}
	return dst
}

// longTable is the number of rows from which on the link to a table's file goes along in
// the margin while one reads the table.
const longTable = 12

// appendTableFile links the file with a table, at its head, and opens what holds both.
func (w *Words) appendTableFile(dst []byte, t result.Table) []byte {
	dst = append(dst, `<div class="with-file"><p class="table-file`...)
	if len(t.Rows) >= longTable {
		dst = append(dst, ` along`...)
	}
	dst = append(dst, `"><a href="`...)
	dst = appendAttribute(dst, t.File)
	dst = append(dst, `">`...)
	dst = AppendText(dst, w.Say("page.table_file"))
	return append(dst, `</a></p>`...)
}

func appendAlignment(dst []byte, words bool) []byte {
	if words {
		return append(dst, ` class="words">`...)
	}
	return append(dst, '>')
}

// longName is the number of letters from which on a row's name may break: a
// narrow screen has no room for it on one line.
const longName = 26

func appendRow(dst []byte, texts []string, worded []bool, labels []string, row result.Row) []byte {
	dst = appendRole(append(dst, `<tr`...), "row", labels)
	if row.Marked {
		dst = append(dst, ` class="marked"`...)
	}
	dst = append(dst, '>')
	for i, cell := range row.Cells {
		if i == 0 {
			dst = appendRole(append(dst, `<th scope="row"`...), "rowheader", labels)
			if utf8.RuneCountInString(texts[0]) > longName {
				dst = append(dst, ` class="long-name"`...)
			}
			dst = append(dst, '>')
			dst = AppendText(dst, texts[0])
			dst = append(dst, `</th>`...)
			continue
		}
		dst = append(dst, `<td`...)
		if labels != nil {
			dst = appendCell(dst, labels[i], texts[i])
		}
		if cell.Kind == say.CalendarDay && !worded[i] {
			dst = append(dst, ` class="date">`...) // kept on one line
		} else {
			dst = appendAlignment(dst, worded[i])
		}
		dst = AppendText(dst, texts[i])
		dst = append(dst, `</td>`...)
	}
	return append(dst, `</tr>`...)
}

// For returns the words for a result: in metric where it asks for that.
func (w *Words) For(r result.Result) *Words {
	if r.Metric {
		return w.Metric()
	}
	return w
}

// Working writes the steps of a working, in metric, and where the school measures
// in feet a last line with the factors.
func (w *Words) Working(steps []say.Phrase) []string {
	lines := make([]string, 0, len(steps)+1)
	converted := false
	for _, p := range steps {
		s := w.Metric().Line(p)
		converted = converted || s != w.Line(p)
		lines = append(lines, s)
	}
	if converted {
		lines = append(lines, w.Say("page.factors"))
	}
	return lines
}

func (w *Words) appendWorking(dst []byte, working []say.Phrase, sources []string) []byte {
	if len(working) == 0 && len(sources) == 0 {
		return dst
	}
	dst = append(dst, `<figcaption><details><summary>`...)
	dst = AppendText(dst, w.Say("page.working"))
	dst = append(dst, `</summary>`...)
	if len(working) > 0 {
		dst = append(dst, `<ol>`...)
		for _, s := range w.Working(working) {
			dst = append(dst, `<li>`...)
			dst = AppendText(dst, s)
			dst = append(dst, `</li>`...)
		}
		dst = append(dst, `</ol>`...)
	}
	for i, s := range sources {
		if i == 0 {
			dst = append(dst, `<p class="source">`...)
			dst = AppendText(dst, w.Say("page.source"))
			dst = append(dst, ' ')
		} else {
			dst = append(dst, `; `...)
		}
		dst = AppendText(dst, w.Typeset(s))
		if i == len(sources)-1 {
			dst = append(dst, `.</p>`...)
		}
	}
	return append(dst, `</details></figcaption>`...)
}
