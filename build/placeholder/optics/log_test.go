package optics_test

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

// lensLog evaluates the log of measurements that a CSV text holds.
func lensLog(t *testing.T, text string) (result.Result, error) {
	t.Helper()
	field, ok := school.Settings().Field("records.lens_log")
	if !ok {
		t.Fatal("no setting records.lens_log")
	}
	records, faults := field.ReadRecords([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	records.File = "log.csv"
	e, _ := entry.Find(entries(), "lens-log")
	given := form.Values{"records.lens_log": records, "stock.front_lens_focal_mm": 250.0, "stock.eye_lens_focal_mm": 50.0}
	given["stock.lenses"] = []form.Values{
		{"label": "A", "count": 12, "diameter_mm": 50.0, "focal_mm": 250.0},
		{"label": "B", "count": 12, "diameter_mm": 30.0, "focal_mm": 50.0},
	}
	return e.Reckon(e.Complete(entrytest.Settings(t, "alder reach"), given, entrytest.Day(t, "2027-04-19")))
}

// Mean and standard deviation by hand: 248, 250 and 252 give 250 and 2.
func TestLensLog(t *testing.T) {
	r, err := lensLog(t, "lens,focal_mm,group\nA,248,k\nA,252,h\nA,250,o\nA,50.5,m\nB,50,k\nB,51,h\nB,90,o\nB,50,m\nC,99,k\n")
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "mean", entrytest.Fact(t, r, "front_mean").Number, 250, 1e-9)
	entrytest.Near(t, "spread", entrytest.Fact(t, r, "front_spread").Number, 2, 1e-9)
	entrytest.Near(t, "eye lens", entrytest.Fact(t, r, "eye_mean").Number, 151.0/3, 1e-9)
	entrytest.Near(t, "misread", entrytest.Fact(t, r, "misread").Number, 2, 0)
	said := map[string]say.Phrase{}
	for _, p := range r.Notes {
		said[p.Key] = p
	}
	if p := said["lens-log.wrong_bag"]; len(p.With) != 6 || p.With[0].Plain != "m" || p.With[1].Number != 5 || p.With[5].Plain != "B" {
		t.Errorf("the swapped lens: %v", p)
	}
	if p := said["lens-log.misread"]; len(p.With) != 5 || p.With[0].Plain != "o" || p.With[1].Number != 8 {
		t.Errorf("the misread lens: %v", p)
	}
	if said["lens-log.too_few"].Key == "" {
		t.Error("one measurement of C is taken for enough")
	}
	rows := r.Tables[0].Rows
	if len(rows) != 3 || rows[2].Cells[6].Phrase.Key != "lens-log.unknown" || rows[0].Cells[6].Phrase.Key != "lens-log.agrees" {
		t.Errorf("rows are %v", rows)
	}
}

// 1/f = 1/o + 1/i, whole fractions: 3000 and 3000/11 belong to 250.
func TestLensLogOfDistances(t *testing.T) {
	r, err := lensLog(t, "lens,lamp_mm,card_mm\nA,3000,272.7272727272727\nA,1000,333.3333333333333\nA,500,500\nB,100,120\nB,100,120\nB,100,120\n")
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "mean", entrytest.Fact(t, r, "front_mean").Number, 250, 1e-9)
	entrytest.Near(t, "spread", entrytest.Fact(t, r, "front_spread").Number, 0, 1e-9)
	entrytest.Near(t, "eye lens", entrytest.Fact(t, r, "eye_mean").Number, 12000.0/220, 1e-9)
	if got := r.Tables[0].Rows[1].Cells[6].Phrase.Key; got != "lens-log.differs" {
		t.Errorf("54.5 mm in the bag of 50 mm: %s", got)
	}
	for text, want := range map[string]string{
		"lens,lamp_mm,card_mm,focal_mm\nA,3000,,\n":       "log.csv, line 2: a measurement needs lamp_mm and card_mm",
		"lens,lamp_mm,card_mm,focal_mm\nA,3000,270,250\n": "not both",
	} {
		if _, err := lensLog(t, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	if r, err := lensLog(t, "lens,focal_mm\n"); err != nil || entrytest.Fact(t, r, "front_mean").Kind != say.Nothing {
		t.Errorf("an empty log: %v", err)
	}
}
