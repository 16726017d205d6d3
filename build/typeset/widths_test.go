package typeset

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The widths are those of the fonts' own tables, testdata/reference/letters.csv, which
// letters.py read: of each letter that of the widest font of the face.
func TestWidthsAreTheFonts(t *testing.T) {
	file, err := os.Open("../../testdata/reference/letters.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows)-1 != len(letterWidths) || len(rows[0]) != 11 {
		t.Fatalf("%d letters of %d fonts, the table has %d", len(rows)-1, len(rows[0])-1, len(letterWidths))
	}
	for _, row := range rows[1:] {
		letter, err := strconv.ParseInt(row[0], 16, 32)
		if err != nil {
			t.Fatal(err)
		}
		most := [4]float64{}
		for i, cell := range row[1:] {
			f := textFace
			if strings.HasPrefix(rows[0][1+i], "label: ") {
				f = labelFace
			}
			if strings.HasSuffix(rows[0][1+i], " Bold") {
				f++
			}
			if wide, err := strconv.ParseFloat(cell, 64); err == nil {
				most[f] = max(most[f], wide/1000)
			}
		}
		for f, want := range most {
			if got := widthOf(string(rune(letter)), face(f)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%c in face %d is %v em wide, want %v", rune(letter), f, got, want)
			}
		}
	}
	if !slices.IsSortedFunc(letterWidths[:], func(a, b [5]rune) int { return int(a[0] - b[0]) }) || letterWidths['~'-' '][0] != '~' {
		t.Error("the letters are not in their order")
	}
}

// Every letter of the words files has a width.
func TestLettersOfAllLanguagesHaveAWidth(t *testing.T) {
	known := map[rune]bool{'☆': true} // a mark of the desk, on no drawing
	for _, w := range letterWidths {
		known[w[0]] = true
	}
	for _, code := range Languages() {
		w, err := Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range w.Keys() {
			for _, r := range w.Raw(key) {
				if !known[r] {
					t.Errorf("%s of %s has the letter %q", key, code, r)
				}
			}
		}
	}
}
