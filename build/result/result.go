// Package result holds what a placeholder computes: facts, tables, drawings,
// the working that leads to them and warnings about them. It is the vocabulary
// that placeholder and typeset share; nothing in it knows a language or HTML.
package result

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
)

// A Result is what one evaluation of a placeholder answers. The names of facts,
// tables and columns are those of the catalogue; the words for them stand in
// the words file under placeholder.name.
type Result struct {
	Facts    []Fact
	Tables   []Table
	Drawings []drawing.Drawing
	Sheets   []drawing.Sheet // printables at true size, on a page of their own
	Walks    []Walk          // through its drawings
	Notes    []say.Phrase    // sentences that belong with the tables
	Working  []say.Phrase    // steps that a teacher can repeat on a calculator
	Warnings []say.Phrase    // what the reader of the page must know first
	Upkeep   []say.Phrase    // what proof says in place of them, to the person who can mend it
	Cautions []say.Phrase    // where the work can hurt someone; the page shows them before all else
	Metric   bool            // written in metric in every school
}

// InMetric returns r, written in metric in every school, as lenses are sold and
// their formulas want it.
func (r Result) InMetric() Result {
	r.Metric = true
	facts := make([]Fact, len(r.Facts))
	for i, f := range r.Facts {
		facts[i] = Fact{f.Name, f.Value.InMetric()}
	}
	r.Facts = facts
	return r
}

// ForProof returns what proof and press print on the terminal: the upkeep, or the
// warnings of the page where they say all that there is to do.
func (r Result) ForProof() []say.Phrase {
	if len(r.Upkeep) > 0 {
		return r.Upkeep
	}
	return r.Warnings
}

// A Fact is one named value.
type Fact struct {
	Name  string
	Value say.Value
}

// Fact returns the value of that name.
func (r Result) Fact(name string) (say.Value, bool) {
	for _, f := range r.Facts {
		if f.Name == name {
			return f.Value, true
		}
	}
	return say.Value{}, false
}

// A Table has a heading row of columns; each row has one cell a column, the
// first of which names the row.
type Table struct {
	Name    string
	Title   say.Phrase
	Columns []Column
	Rows    []Row
	File    string // CSV file beside the page, "" for none; set by the plan
}

// Bare reports whether some cell of column i is printed as a number without its
// unit, so that the head of the column must name it.
func (t Table) Bare(i int) bool {
	for _, row := range t.Rows {
		if v := row.Cells[i]; v.Kind == say.Quantity && v.Phrase.Key == "" {
			return true
		}
	}
	return false
}

// Worded reports whether column i holds words, to be read from the left like text.
func (t Table) Worded(i int) bool {
	for _, row := range t.Rows {
		switch row.Cells[i].Kind {
		case say.Wording, say.Name, say.Truth:
			return true
		}
	}
	return false
}

// A Column names its values and the unit they all share.
type Column struct{ Name, Unit string }

// A Row is the cells of a table row. Marked rows stand out, such as noon.
type Row struct {
	Cells  []say.Value
	Marked bool
}
