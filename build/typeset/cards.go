package typeset

import (
	"strings"
	"unicode/utf8"
)

// A table that would scroll sideways on a phone is a list of cards there, a row each: the
// row's name, then each cell behind the name of its column. The style sheet does that to a
// table of the class cards, whose cells carry the names. A browser may forget that a table
// is one when it is laid out otherwise, so its parts say so by their roles.

// CardsOpen opens a table of cards.
const CardsOpen = `<table class="cards" role="table">`

// PhoneEms is the room that a phone has for a table, in the size of its letters: 358 of
// 390 pixels at 14.2.
const PhoneEms = 25.0

// columnGap lies between two columns on a phone.
const columnGap = 0.7

// proseEms is the least width at which words in several lines can be read.
const proseEms = 6.5

// ColumnEms is the width that a column needs at least for a cell: that of its longest word,
// and where there are more of them enough to read.
func ColumnEms(text string) float64 {
	longest := 0.0
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ' ' || r == '\n' || r == '-' }) {
		longest = max(longest, lineEms(word))
	}
	return columnGap + max(longest, min(proseEms, lineEms(text)))
}

// lineEms counts each space as a full one, which the table of widths does of those that do
// not break but for the narrow one.
func lineEms(text string) float64 { return widthOf(strings.ReplaceAll(text, narrow, " "), textFace) }

// wide reports whether a table would scroll on a phone.
func wide(heads []string, texts [][]string, worded []bool) bool {
	ems := 0.0
	for i := range heads {
		column := ColumnEms(heads[i])
		for _, row := range texts {
			if worded[i] && i > 0 || utf8.RuneCountInString(row[i]) > longName {
				column = max(column, ColumnEms(row[i]))
			} else { // stays on one line
				column = max(column, columnGap+lineEms(row[i]))
			}
		}
		ems += column
	}
	return ems > PhoneEms
}

// labelsOf are the names of a table's columns with the units that their cells lack.
func labelsOf(heads, units []string) []string {
	labels := make([]string, len(heads))
	for i := range heads {
		labels[i] = heads[i]
		if units[i] != "" {
			labels[i] += " " + units[i]
		}
	}
	return labels
}

// appendRole says what a part of a table of cards is; labels is nil in other tables.
func appendRole(dst []byte, role string, labels []string) []byte {
	if labels == nil {
		return dst
	}
	return append(append(append(dst, ` role="`...), role...), '"')
}

// appendCell appends what a cell of a card carries: its role, and its column's name or that
// it is but a dash, which a card leaves out.
func appendCell(dst []byte, label, text string) []byte {
	dst = append(dst, ` role="cell"`...)
	switch {
	case isDash(text):
		return append(dst, ` data-dash`...)
	case label == "":
		return dst
	}
	return append(appendAttribute(append(dst, ` data-label="`...), label), '"')
}

// isDash reports whether a cell says only that there is nothing to say.
func isDash(text string) bool { return text == "–" || text == "—" || text == "-" }

// CardCell is what a cell of a card carries, in a table of a lesson. The first of a row is
// its name, whatever it says.
func (w *Words) CardCell(label, text string, first bool) string {
	if first {
		text = ""
	}
	return string(appendCell(nil, w.Typeset(strings.Join(strings.Fields(label), " ")), text))
}
